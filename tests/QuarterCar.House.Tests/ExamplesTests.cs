using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;

using QuarterCar.TestKit.Programs;

namespace QuarterCar.House.Tests;

/// <summary>Every example runs as printed: on the help page of each verb, in README.md and in DEVELOPERS.md.</summary>
public sealed partial class ExamplesTests : IDisposable
{
    private const string FromCheckout = "dotnet run --project src/QuarterCar.Cli -- ";

    /// <summary>Commands of the pages that are not the program's own: .ci/run and the build itself run or replace them.</summary>
    private static readonly string[] s_others =
    [
        "dotnet test", "dotnet run -c Release --project tests/QuarterCar.Benchmarks", "dotnet publish src/QuarterCar.Cli", "dotnet format", "dotnet restore", ".ci/run",
        "dotnet build src/QuarterCar.Library", "dotnet tool restore", "mkdir -p out && cd notebooks-csharp", "RECORD_NOTEBOOKS=1 dotnet test",
    ];

    private readonly Scratch _scratch = new Scratch().WithScenarios();

    public static TheoryData<string> VerbNames => [.. Verbs()];

    public static TheoryData<string> PageCommands => [.. Commands("README.md").Concat(Commands("DEVELOPERS.md")).Select(Program).OfType<string>().Distinct()];

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public void Every_verb_has_an_example() => Assert.All(Verbs(), v => Assert.NotEmpty(Examples(v)));

    [Theory]
    [MemberData(nameof(VerbNames))]
    public void Examples_of_a_help_page_run_one_after_the_other(string verb) => Assert.All(Examples(verb), Runs);

    [Theory]
    [MemberData(nameof(PageCommands))]
    public void Command_of_a_page_runs(string line) => Runs(line);

    [Fact]
    public void Commands_of_the_pages_are_the_programs_or_known_ones() =>
        Assert.All(
            Commands("README.md").Concat(Commands("DEVELOPERS.md")).Where(c => Program(c) is null),
            c => Assert.True(s_others.Any(o => c.StartsWith(o, StringComparison.Ordinal)), c));

    [Fact]
    public void Setting_up_takes_exactly_the_first_two_commands_of_the_readme() =>
        Assert.Equal([FromCheckout + "run scenarios/quarry-ledge.yaml --out out/quarry-ledge", "dotnet test"], Commands("README.md").Take(2));

    [Fact]
    public void The_readme_shows_what_its_first_command_prints()
    {
        string shown = TextBlock().Match(File.ReadAllText(Checkout.At("README.md"))).Groups[1].Value;
        Assert.Equal(ProgramProcess.Run(Checkout.Root, "run", "scenarios/quarry-ledge.yaml").Out, shown);
    }

    [Fact]
    public void The_readme_shows_what_terrain_prints_of_the_farm_track() =>
        Assert.Contains(ProgramProcess.Run(Checkout.Root, "terrain", "scenarios/farm-track.csv").Out, TextBlock().Matches(File.ReadAllText(Checkout.At("README.md"))).Select(m => m.Groups[1].Value));

    private static string[] Verbs() =>
        [.. VerbLine().Matches(Help().Split("Commands:")[1].Split("\n\n")[0]).Select(m => m.Groups[1].Value)];

    private static IEnumerable<string> Examples(string verb) =>
        Help(verb).Split('\n').Select(l => l.Trim()).SkipWhile(l => l is not ("Example:" or "Examples:")).Skip(1).Where(l => l.StartsWith("quartercar ", StringComparison.Ordinal));

    private static string Help(params string[] verb) => ProgramProcess.Run(Checkout.Root, [.. verb, "--help"]).Out;

    /// <summary>Lines of the page's shell blocks.</summary>
    private static IEnumerable<string> Commands(string page) =>
        ShellBlock().Matches(File.ReadAllText(Checkout.At(page))).SelectMany(m => m.Groups[1].Value.Split('\n')).Select(l => l.Trim()).Where(l => l.Length > 0);

    /// <summary>A page's command as a call of the program; null where it is another program's.</summary>
    private static string? Program(string command) =>
        command.StartsWith("quartercar ", StringComparison.Ordinal) ? command
        : command.StartsWith(FromCheckout, StringComparison.Ordinal) ? "quartercar " + command[FromCheckout.Length..]
        : null;

    private void Runs(string line)
    {
        if (line.StartsWith("quartercar serve", StringComparison.Ordinal))
        {
            Serves(line);
            return;
        }

        var result = ProgramProcess.Shell(_scratch.Folder, "$QUARTERCAR " + line["quartercar ".Length..]);
        Assert.True(result.Code == 0, $"{line}: exit code {result.Code}: {result.Messages}");
        Assert.NotEqual("", result.Out);
    }

    // A page is served until Ctrl-C; an example runs where its address is printed and it ends then.
    private void Serves(string line)
    {
        using Process process = ProgramProcess.Start(_scratch.Folder, line.Split(' ')[1..]);
        string address = process.StandardOutput.ReadLine() ?? process.StandardError.ReadToEnd();
        Assert.StartsWith("http://127.0.0.1:", address, StringComparison.Ordinal);
        using (Process kill = Process.Start("kill", ["-INT", process.Id.ToString(CultureInfo.InvariantCulture)])) kill.WaitForExit();
        Assert.True(process.WaitForExit(ProgramProcess.Patience), line);
        Assert.Equal(130, process.ExitCode);
    }

    [GeneratedRegex(@"^  ([a-z]+) .*$", RegexOptions.Multiline | RegexOptions.CultureInvariant)]
    private static partial Regex VerbLine();

    [GeneratedRegex(@"^```text\n(.*?)^```", RegexOptions.Multiline | RegexOptions.Singleline | RegexOptions.CultureInvariant)]
    private static partial Regex TextBlock();

    [GeneratedRegex(@"^```sh\n(.*?)^```", RegexOptions.Multiline | RegexOptions.Singleline | RegexOptions.CultureInvariant)]
    private static partial Regex ShellBlock();
}
