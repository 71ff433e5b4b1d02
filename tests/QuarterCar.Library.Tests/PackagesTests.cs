using System.Globalization;
using System.Text.RegularExpressions;

using QuarterCar.TestKit.Programs;

namespace QuarterCar.LibraryTests;

/// <summary>Both packages, installed as a user does: from a folder, into an empty project and into a tool path.</summary>
public sealed partial class PackagesTests : IDisposable
{
    // A version of its own each time, for the machine keeps what it once unpacked.
    private readonly string _version = "0.0.1-try" + DateTime.UtcNow.Ticks.ToString(CultureInfo.InvariantCulture);
    private readonly Scratch _folder = new();

    [Fact]
    public void Library_installs_into_an_empty_project_and_runs()
    {
        Pack("src/QuarterCar.Library");
        Write("app/nuget.config", """<configuration><packageSources><add key="here" value="../packages" /></packageSources></configuration>""");
        Write("app/app.csproj", $"""
            <Project Sdk="Microsoft.NET.Sdk">
              <PropertyGroup><OutputType>Exe</OutputType><TargetFramework>net10.0</TargetFramework><ImplicitUsings>enable</ImplicitUsings><NuGetAudit>false</NuGetAudit></PropertyGroup>
              <ItemGroup><PackageReference Include="QuarterCar.Library" Version="{_version}" /></ItemGroup>
            </Project>
            """);
        Write("app/Program.cs", """
            using QuarterCar;
            Scenario corner = Scenario.Load(args[0]);
            Run run = corner.With("coilover.preload", UnitsNet.Length.FromInches(1.4)).Run();
            run.WriteTo("out");
            Console.Write(run.Figures.Number("static.ride_height_m").ToString("0.000000", System.Globalization.CultureInfo.InvariantCulture));
            """);
        ProcessResult ran = Shell("app", $"dotnet run -- '{Checkout.At("scenarios/quarry-ledge.yaml")}'");
        Assert.True(ran.Code == 0, ran.Out + ran.Messages);
        Assert.Equal("0.135233", ran.Out); // tests/data/reference/quarry_ledge.expected.json
        Assert.True(File.Exists(_folder.At("app/out/shaft_travel.png")));

        string readme = File.ReadAllText(Checkout.At("README.md"));
        Write("app/Program.cs", ReadmeProgram().Match(readme).Groups[1].Value);
        File.Copy(Checkout.At("scenarios/quarry-ledge.yaml"), _folder.At("quarry-ledge.yaml"));
        ProcessResult shown = Shell("app", "dotnet run");
        Assert.Contains("```text\n" + shown.Out + "```", readme, StringComparison.Ordinal);

        Write("app/Program.cs", "Console.Write(new QuarterCar.Model.SpringData(1, 1, 1));");
        ProcessResult inner = Shell("app", "dotnet build");
        Assert.True(inner.Code != 0 && inner.Out.Contains("error CS", StringComparison.Ordinal), "the inner assemblies must not show at compile time");
    }

    [Fact]
    public void Tool_installs_into_a_folder_and_runs()
    {
        Pack("src/QuarterCar.Cli");
        ProcessResult installed = Shell(".", $"dotnet tool install quartercar --tool-path tools --add-source packages --version {_version}");
        Assert.True(installed.Code == 0, installed.Out + installed.Messages);
        ProcessResult made = Shell(".", "tools/quartercar new corner.yaml && tools/quartercar run corner.yaml --out out");
        Assert.True(made.Code == 0, made.Out + made.Messages);
        Assert.True(File.Exists(_folder.At("out/report.html")));
    }

    [GeneratedRegex(@"^```csharp\n(.*?)^```", RegexOptions.Multiline | RegexOptions.Singleline | RegexOptions.CultureInvariant)]
    private static partial Regex ReadmeProgram();

    public void Dispose()
    {
        _folder.Dispose();
        string kept = Path.Combine(Environment.GetEnvironmentVariable("NUGET_PACKAGES") ?? Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".nuget", "packages"), "quartercar.library", _version);
        if (Directory.Exists(kept)) Directory.Delete(kept, recursive: true);
    }

    private void Pack(string project)
    {
        ProcessResult packed = ProgramProcess.Shell(Checkout.Root, $"dotnet pack {project} -c Debug --no-build -o '{_folder.At("packages")}' -p:PackageVersion={_version}");
        Assert.True(packed.Code == 0, packed.Out);
    }

    private ProcessResult Shell(string folder, string line) => ProgramProcess.Shell(_folder.At(folder), line);

    private void Write(string file, string text)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(_folder.At(file))!);
        File.WriteAllText(_folder.At(file), text);
    }
}
