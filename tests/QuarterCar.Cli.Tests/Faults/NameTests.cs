using QuarterCar.TestKit.Programs;

namespace QuarterCar.Cli.Tests.Faults;

/// <summary>Files and folders with names that nobody thinks of, and with very long ones.</summary>
public sealed class NameTests : IDisposable
{
    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    public static TheoryData<string> Names => new()
    {
        " two spaces, it's \"quoted\" ", "Grünau cafe\u0301 Ижевск 採石場の縁 שלום مرحبا ١٢٣ 🛞", "`back` $(ticks) ${HOME} %20 ~;&|<>*?[1]{2}!#=", "-dash", "--out", "@response", "first\nsecond\tline\r",
        "\u202eright to left", ".hidden", "setups", new string('n', 240), string.Concat(Enumerable.Repeat("縁", 80)),
    };

    [Theory]
    [MemberData(nameof(Names))]
    public void Scenario_folder_sheet_and_parts_by_any_name_give_the_same_files(string name)
    {
        string folder = _scratch.At(name), scenario = _scratch.Write(name + "/" + name + ".yaml", File.ReadAllText(Study.Run.Arguments[1])), sheet = Path.Combine(folder, name + ".html"), fresh = Path.Combine(folder, "new " + name);
        Ran("run", scenario, "--set", "run.sample=10 ms", "--out", folder);
        Assert.True(Study.Run.Is(folder, elsewhere: true));
        Ran("sheet", scenario, "--out", sheet);
        Assert.Equal(Path.GetFileName(sheet), Assert.Single(Directory.GetFiles(folder, "*.html").Select(f => Path.GetFileName(f)), f => f != "report.html"));
        string[] sweep = ["sweep", scenario, "--vary", "coilover.preload=1:2:2 cm"];
        foreach (string part in (string[])["1/2", "2/2"]) Ran([.. sweep, "--part", part, "--out", Path.Combine(folder, "part" + part[0])]);
        Ran([.. sweep, "--out", Path.Combine(folder, "whole")]);
        File.Delete(scenario);
        Ran("gather", Path.Combine(folder, "part1"), Path.Combine(folder, "part2"), "--out", Path.Combine(folder, "gathered"));
        Assert.All(Study.All(Path.Combine(folder, "whole")), n => Assert.Equal(File.ReadAllBytes(Path.Combine(folder, "whole", n)), File.ReadAllBytes(Path.Combine(folder, "gathered", n))));
        Ran("new", fresh);
        Ran("check", fresh);
        Assert.Empty(Study.Remnants(folder));
    }

    [Fact]
    public void A_shell_hands_such_names_on_and_a_leading_dash_does_not_make_an_option_of_a_file()
    {
        _scratch.Write("-x y'z.yaml", Scenarios.Plain());
        _scratch.Write("採石場\nの縁.yaml", Scenarios.Plain());
        ProcessResult shell = ProgramProcess.Shell(_scratch.Folder, "$QUARTERCAR check -- \"-x y'z.yaml\" | head -1; $QUARTERCAR check $'採石場\\nの縁.yaml' --out $'é\\n縁' | head -1; $QUARTERCAR check \"-x y'z.yaml\" | head -1");
        string[] lines = shell.Out.TrimEnd().Split('\n');
        Assert.Equal(["Plain corner", "Plain corner", "Plain corner"], lines);
        Assert.True(File.Exists(_scratch.At("é\n縁/curve.csv")));
    }

    [Theory]
    [InlineData(3900, true)]
    [InlineData(5000, false)]
    public void A_path_of_any_length_works_or_is_said_to_be_too_long(int length, bool works)
    {
        string deep = _scratch.Folder;
        while (deep.Length < length) deep += "/" + new string('d', Math.Min(200, Math.Max(1, length - deep.Length - 1)));
        if (works) Directory.CreateDirectory(deep);
        string scenario = works ? deep + "/s.yaml" : Study.Run.Arguments[1];
        if (works) File.Copy(Study.Run.Arguments[1], scenario);
        Asked run = Asked.Of("run", scenario, "--set", "run.sample=10 ms", "--out", deep + "/out");
        if (works)
        {
            Assert.True(run.Code == ExitCode.Done, run.Messages);
            Assert.True(Study.Run.Is(deep + "/out", elsewhere: true));
            return;
        }

        Refused(run);
        Refused(Asked.Of("check", deep + "/s.yaml"));
        Refused(Asked.Of("sheet", scenario, "--out", deep + "/s.html"));
        Refused(Asked.Of("new", deep + "/s.yaml"));
        Assert.Empty(Directory.EnumerateFiles(_scratch.Folder, "*", SearchOption.AllDirectories));
    }

    [Fact]
    public void A_name_longer_than_a_name_can_be_is_refused_and_nothing_is_left()
    {
        string name = new('n', 300), scenario = Study.Run.Arguments[1];
        Refused(Asked.Of("check", _scratch.At(name)));
        Refused(Asked.Of("run", scenario, "--out", _scratch.At("a/" + name)));
        Refused(Asked.Of("sheet", scenario, "--out", _scratch.At(name)));
        Refused(Asked.Of("new", _scratch.At(name)));
        Assert.Empty(Directory.EnumerateFileSystemEntries(_scratch.Folder));
    }

    private static void Ran(params string[] command)
    {
        Asked asked = Asked.Of([.. command]);
        Assert.True(asked.Code == ExitCode.Done, $"{command[0]}: {asked.Messages}");
    }

    private static void Refused(Asked asked)
    {
        Assert.True(asked.Code == ExitCode.BadInput, asked.Messages);
        Assert.DoesNotContain("foreseen", asked.Messages, StringComparison.Ordinal);
        Assert.Equal("", asked.Out);
    }
}
