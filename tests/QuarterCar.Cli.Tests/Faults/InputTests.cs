using System.Diagnostics;

using QuarterCar.TestKit.Programs;

namespace QuarterCar.Cli.Tests.Faults;

/// <summary>Input that is no plain file, or that goes or changes while the program is at work.</summary>
public sealed class InputTests : IDisposable
{
    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    public static TheoryData<string[]> Readers => new()
    {
        new[] { "check", "INPUT" },
        new[] { "run", "INPUT", "--out", "OUT" },
        new[] { "compare", "INPUT", "--vary", "coilover.preload=1,2 cm", "--out", "OUT" },
        new[] { "compare", "plain.yaml", "--setups", "INPUT" },
        new[] { "compare", "plain.yaml", "--split", "20/30,30/40 N/mm", "--springs", "INPUT" },
        new[] { "sweep", "INPUT", "--vary", "coilover.preload=1:2:2 cm", "--part", "1/2", "--out", "OUT" },
        new[] { "spread", "INPUT", "--samples", "2" },
        new[] { "reach", "INPUT", "--vary", "drop.height=0.1:0.2 m" },
        new[] { "tweak", "INPUT" },
        new[] { "terrain", "INPUT" },
        new[] { "sheet", "INPUT", "--out", "sheet.html" },
        new[] { "weigh", "--file", "INPUT" },
        new[] { "pick", "--load", "3500 N", "--stroke", "300 mm", "--ride-height", "130 mm", "--springs", "INPUT" },
        new[] { "gather", "INPUT", "--out", "OUT" },
        new[] { "serve", "INPUT" },
    };

    [Theory]
    [MemberData(nameof(Readers))]
    public void An_input_that_is_a_folder_or_leads_nowhere_is_bad_input_by_its_name(string[] command)
    {
        _scratch.Write("plain.yaml", Scenarios.Plain());
        Directory.CreateDirectory(_scratch.At("folder"));
        File.CreateSymbolicLink(_scratch.At("broken"), "nowhere");
        File.CreateSymbolicLink(_scratch.At("round"), "round");
        foreach (string input in (string[])["folder", "broken", "round", "plain.yaml/below"])
        {
            string[] words = [.. command.Select(w => w is "INPUT" ? _scratch.At(input) : w is "OUT" or "sheet.html" or "plain.yaml" ? _scratch.At(w) : w)];
            Asked asked = Asked.Of(words);
            Assert.True(asked.Code == ExitCode.BadInput, $"{input}: {asked.Code} {asked.Messages}");
            Assert.Contains(_scratch.At(input) + ": found", asked.Messages, StringComparison.Ordinal);
            Assert.Equal("", asked.Out);
        }

        Assert.Equal(["broken", "plain.yaml", "round"], _scratch.Files());
    }

    [Fact]
    public void A_pipe_in_place_of_a_scenario_gives_what_the_file_gives()
    {
        string script = $"$QUARTERCAR run <(cat '{Study.Run.Arguments[1]}') --set run.sample='10 ms' --out out";
        ProcessResult result = ProgramProcess.Shell(_scratch.Folder, script);
        Assert.True(result.Code == 0, result.Messages);
        Assert.True(Study.Run.Is(_scratch.At("out"), elsewhere: true));
    }

    [Fact]
    public void A_pipe_that_breaks_off_is_bad_input_with_the_place()
    {
        ProcessResult result = ProgramProcess.Shell(_scratch.Folder, $"$QUARTERCAR run <(head -c 150 '{Study.Run.Arguments[1]}') --out out");
        Assert.Equal(2, result.Code);
        Assert.Matches("^quartercar: /dev/fd/[0-9]+(:[0-9]+)?: ", result.Messages);
        Assert.DoesNotContain("   at ", result.Messages, StringComparison.Ordinal);
        Assert.Empty(_scratch.Files());
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_scenario_that_goes_or_changes_after_it_was_read_changes_nothing(bool goes)
    {
        string folder = _scratch.At("results"), scenario = _scratch.Write("changing.yaml", File.ReadAllText(Study.Comparison.Arguments[1]));
        Directory.CreateDirectory(folder);
        using var sighting = new Sighting(folder, probes: 0); // the folder is asked about once the scenario is read
        Process process = ProgramProcess.Start(_scratch.Folder, ["compare", scenario, .. Study.Comparison.Arguments[2..], "--out", folder]);
        Assert.True(sighting.Writing(process));
        if (goes) File.Delete(scenario);
        else File.WriteAllText(scenario, "title: quite another\n");
        ProcessResult result = ProgramProcess.End(process);
        Assert.True(result.Code == 0, result.Messages);
        Assert.True(Study.Comparison.Is(folder));
    }

    [Fact]
    public void A_profile_that_is_gone_when_the_scenario_asks_for_it_is_bad_input()
    {
        string text = Scenarios.Plain().Replace("drop: { height: 0.3 m }", "terrain:\n  - profile: { file: course.csv }\nspeed: 2 m/s", StringComparison.Ordinal);
        _scratch.Write("course.csv", "distance_m,height_m\n0,0\n2,0\n3,0.1\n4,0\n");
        _scratch.Write("bumpy.txt", text);

        // The reader has opened the pipe, and so begun, once its writer is let through.
        ProcessResult result = ProgramProcess.Shell(_scratch.Folder, "mkfifo bumpy.yaml; { exec 3> bumpy.yaml; rm course.csv; cat bumpy.txt >&3; } & $QUARTERCAR run bumpy.yaml --out out");
        Assert.Equal(2, result.Code);
        Assert.Contains("bumpy.yaml:14: terrain[0].profile.file: found", result.Messages, StringComparison.Ordinal);
        Assert.Contains("course.csv", result.Messages, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", result.Messages, StringComparison.Ordinal);
        Assert.Equal(["bumpy.txt", "bumpy.yaml"], _scratch.Files());
    }
}
