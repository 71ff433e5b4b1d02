using System.Diagnostics;
using System.Globalization;

using QuarterCar.TestKit.Programs;

namespace QuarterCar.Cli.Tests.Faults;

/// <summary>Ctrl-C, a polite request to end and a terminal that is closed, sent once the program has begun to write.</summary>
public sealed class SignalTests : IDisposable
{
    private const string Long = "coilover.preload=1:9:300 cm";

    private readonly Scratch _scratch = new();

    private string Folder => _scratch.At("results");

    public void Dispose() => _scratch.Dispose();

    [Theory]
    [InlineData("INT", 1, "sweep", "--vary", Long, "--vary", "coilover.stop_nut.gap=1:3:300 cm")]
    [InlineData("TERM", 1, "sweep", "--vary", Long, "--vary", "coilover.stop_nut.gap=1:3:300 cm")]
    [InlineData("INT", 1, "spread", "--samples", "100000")]
    [InlineData("TERM", 0, "spread", "--samples", "100000")]
    [InlineData("INT", 1, "run")]
    [InlineData("TERM", 1, "run")]
    [InlineData("HUP", 1, "run")]
    [InlineData("HUP", 1, "sweep", "--vary", Long, "--vary", "coilover.stop_nut.gap=1:3:300 cm")]
    public void A_signal_while_it_writes_leaves_earlier_results_and_nothing_else(string signal, int probes, string verb, params string[] options)
    {
        Study.Run.Lay(Folder);
        string scenario = _scratch.Write("plain.yaml", Scenarios.Plain(limit: 2) + "\ntolerances: { corner.sprung_weight: 4 % }\n");
        ProcessResult result = Signalled(signal, probes, [verb, scenario, .. options, "--out", Folder]);
        Interrupted(result);
        Assert.True(Study.Run.Is(Folder));
    }

    [Fact]
    public void A_gathering_that_is_interrupted_leaves_nothing_or_is_whole()
    {
        string scenario = _scratch.Write("plain.yaml", Scenarios.Plain(limit: 2));
        foreach (string part in (string[])["1/2", "2/2"]) Asked.Of("sweep", scenario, "--vary", "coilover.preload=1:9:60 cm", "--part", part, "--out", _scratch.At("part" + part[0]));
        Study.Run.Lay(Folder);
        ProcessResult result = Signalled("INT", 1, "gather", _scratch.At("part1"), _scratch.At("part2"), "--out", Folder);
        if (result.Code == 0)
        {
            Assert.Equal(ExitCode.Done, Asked.Of("sweep", scenario, "--vary", "coilover.preload=1:9:60 cm", "--out", _scratch.At("whole")).Code);
            Assert.All(Study.All(_scratch.At("whole")), n => Assert.Equal(File.ReadAllBytes(Path.Combine(_scratch.At("whole"), n)), File.ReadAllBytes(Path.Combine(Folder, n))));
        }
        else
        {
            Interrupted(result);
            Assert.True(Study.Run.Is(Folder));
        }

        Assert.Empty(Study.Remnants(_scratch.At("temporary")));
    }

    [Theory]
    [InlineData("INT")]
    [InlineData("TERM")]
    [InlineData("HUP")]
    public void A_page_that_is_ended_by_a_signal_ends_as_interrupted(string signal)
    {
        using Process process = ProgramProcess.Start(_scratch.Folder, "serve");
        Assert.StartsWith("http://127.0.0.1:", process.StandardOutput.ReadLine(), StringComparison.Ordinal);
        Send(signal, process);
        ProcessResult result = ProgramProcess.End(process);
        Assert.Equal(130, result.Code);
        Assert.DoesNotContain("   at ", result.Messages, StringComparison.Ordinal);
        Assert.Empty(_scratch.Files());
    }

    [Fact]
    public void A_run_under_nohup_outlives_its_terminal()
    {
        _scratch.Write("plain.yaml", Scenarios.Plain(limit: 2));
        ProcessResult shell = ProgramProcess.Shell(_scratch.Folder, $"nohup $QUARTERCAR sweep plain.yaml --vary '{Long}' --out results 2> messages > shown & p=$!; sleep 0.7; kill -HUP $p; wait $p; echo $?");
        Assert.Equal("0", shell.Out.TrimEnd());
        Assert.Contains("results/sweep.csv", _scratch.Files());
    }

    private ProcessResult Signalled(string signal, int probes, params string[] command)
    {
        Directory.CreateDirectory(_scratch.At("temporary"));
        using var sighting = new Sighting(Folder, probes);
        Process process = ProgramProcess.Start(_scratch.Folder, [("TMPDIR", _scratch.At("temporary"))], command);
        if (sighting.Writing(process)) Send(signal, process);
        return ProgramProcess.End(process);
    }

    private static void Send(string signal, Process process)
    {
        using var kill = Process.Start("kill", ["-" + signal, process.Id.ToString(CultureInfo.InvariantCulture)]);
        kill.WaitForExit();
    }

    private void Interrupted(ProcessResult result)
    {
        Assert.True(result.Code == 130, $"{result.Code}: {result.Messages}");
        Assert.Equal("quartercar: interrupted: no results were written", result.Messages.TrimEnd().Split('\n')[^1]);
        Assert.DoesNotContain("   at ", result.Messages, StringComparison.Ordinal);
        Assert.Equal("", result.Out);
        Assert.Empty(Study.Remnants(Folder));
        Assert.Empty(Study.Remnants(_scratch.At("temporary")));
        Assert.Equal("mine", File.ReadAllText(Path.Combine(Folder, Study.Foreign)));
    }
}
