using System.Diagnostics;

using QuarterCar.TestKit.Programs;

namespace QuarterCar.Cli.Tests;

/// <summary>The program as a process: hostile files, full disks, pipes that break, Ctrl-C. Never a stack trace.</summary>
public sealed class ProgramTests : IDisposable
{
    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Theory]
    [InlineData("missing.yaml", null, "missing.yaml: found no such file")]
    [InlineData(".", null, ".: found a directory")]
    [InlineData("prose.yaml", "Dear Sir, the buggy bottoms", "prose.yaml:1:")]
    [InlineData("brackets.yaml", "corner: [1, 2\ntyre: }", "brackets.yaml:")]
    [InlineData("empty.yaml", "", "empty.yaml: found an empty file")]
    [InlineData("tab.yaml", "corner:\n\tsprung_weight: 1 N\n", "tab.yaml:2: found a tab in the indentation")]
    [InlineData("twice.yaml", "title: a\ntitle: b\n", "twice.yaml:2: title: found the key a second time (first in line 1)")]
    [InlineData("unknown.yaml", "titel: a\n", "unknown.yaml:1: titel: found an unknown key; wanted 'title'")]
    [InlineData("bomb.yaml", "a: &a [x, x]\nb: &b [*a, *a, *a]\nc: &c [*b, *b, *b]\nd: [*c, *c]\n", "found a YAML anchor (&a)")]
    [InlineData("bytes.yaml", "\0\u0001\u0002", "bytes.yaml: found bytes that are not UTF-8 text")]
    public void A_file_that_is_no_scenario_is_bad_input(string name, string? text, string words)
    {
        if (text is not null) _scratch.Write(name, text);
        foreach (string verb in (string[])["check", "run"]) Refused(ProgramProcess.Run(_scratch.Folder, verb, name), words);
    }

    [Fact]
    public void A_file_of_a_hundred_megabytes_is_refused_at_once()
    {
        using (var file = File.Create(_scratch.At("big.yaml"))) file.SetLength(100_000_000);
        var watch = Stopwatch.StartNew();
        Refused(ProgramProcess.Run(_scratch.Folder, "run", "big.yaml"), "big.yaml: found more than 10 MB");
        Assert.InRange(watch.Elapsed.TotalSeconds, 0, 5); // reading and parsing it would take far longer
    }

    [Fact]
    public void The_version_is_that_of_the_summary_and_names_the_commit()
    {
        string[] version = ProgramProcess.Run(_scratch.Folder, "--version").Out.Trim().Split(' ');
        Assert.Matches("^\\([0-9a-f]{12}\\)$", version[1]);
        Assert.Equal(version[0], Asked.Of("run", Scenarios.QuarryLedge, "--json").Json().GetProperty("version").GetString());
    }

    [Fact]
    public void A_pipe_without_an_end_is_refused_too() =>
        Refused(ProgramProcess.Shell(_scratch.Folder, "$QUARTERCAR check /dev/zero"), "found more than 10 MB");

    [Fact]
    public void A_reader_that_leaves_early_does_no_harm()
    {
        var shell = ProgramProcess.Shell(_scratch.Folder, $"$QUARTERCAR run '{Scenarios.QuarryLedge}' | head -1; echo ${{PIPESTATUS[0]}}");
        Assert.Equal(["Quarry ledge, rear corner of a two-seat trail buggy", "0"], shell.Out.TrimEnd().Split('\n'));
        Assert.Equal("", shell.Messages);
    }

    [Fact]
    public void A_full_disk_behind_standard_output_is_a_failure()
    {
        var shell = ProgramProcess.Shell(_scratch.Folder, $"$QUARTERCAR run '{Scenarios.QuarryLedge}' > /dev/full");
        Assert.Equal(3, shell.Code);
        Assert.Contains("cannot write the results", shell.Messages, StringComparison.Ordinal);
        NoTrace(shell);
    }

    [Fact]
    public void A_folder_that_cannot_be_written_is_bad_input()
    {
        var result = ProgramProcess.Run(_scratch.Folder, "run", Scenarios.QuarryLedge, "--out", "/proc/quartercar");
        Refused(result, "cannot write results to '/proc/quartercar'");
        Assert.Equal("", result.Out);
    }

    [MountFact]
    public void A_disk_that_fills_up_leaves_earlier_results_as_they_were()
    {
        // A disk of 1 MB in a mount namespace of its own: the trace alone needs more.
        Directory.CreateDirectory(_scratch.At("disk"));
        const string script =
            """
            mount -t tmpfs -o size=1m none disk
            echo earlier > disk/summary.json
            $QUARTERCAR run "$0" --out disk > said.txt; code=$?
            ls -A disk; cat disk/summary.json; exit $code
            """;
        var start = new ProcessStartInfo("unshare", ["-m", "bash", "-c", script, Scenarios.QuarryLedge])
        {
            WorkingDirectory = _scratch.Folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["QUARTERCAR"] = "dotnet " + Path.Combine(AppContext.BaseDirectory, "quartercar.dll");
        var result = ProgramProcess.End(Process.Start(start)!);
        Assert.Equal(3, result.Code);
        Assert.Equal("summary.json\nearlier\n", result.Out);
        Assert.Contains("cannot write results", result.Messages, StringComparison.Ordinal);
        NoTrace(result);
    }

    [Theory]
    [InlineData("-INT", 0.3)]
    [InlineData("-INT", 1.5)]
    [InlineData("-TERM", 1.0)]
    public void An_interrupted_program_ends_within_a_second_and_leaves_no_half_file(string signal, double after)
    {
        string text = File.ReadAllText(Scenarios.QuarryLedge)
            .Replace("duration: 6 s, sample: 1 ms", "duration: 9000 s, sample: 5 ms", StringComparison.Ordinal)
            .Replace("flat: 60 ft", "random: { iso8608: E, length: 20000 m, seed: 3 }", StringComparison.Ordinal);
        _scratch.Write("long.yaml", text);
        using var process = ProgramProcess.Start(_scratch.Folder, "run", "long.yaml", "--out", "out");
        Assert.True(SpinWait.SpinUntil(() => Listens(process.Id), ProgramProcess.Patience)); // before its first line the system alone ends it, without a word
        Thread.Sleep(TimeSpan.FromSeconds(after));
        var watch = Stopwatch.StartNew();
        using (var kill = Process.Start("kill", [signal, process.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)])) kill.WaitForExit();
        var result = ProgramProcess.End(process);
        double seconds = watch.Elapsed.TotalSeconds;
        Assert.Equal(130, result.Code);
        Assert.InRange(seconds, 0, 2); // 0.8 s of patience, and a machine that does other things meanwhile
        Assert.Contains("interrupted", result.Messages, StringComparison.Ordinal);
        Assert.Equal(["long.yaml"], _scratch.Files());
        NoTrace(result);
    }

    // SigCgt: the signals that a process takes itself, a bit each, SIGINT the second.
    private static bool Listens(int process) =>
        File.ReadLines($"/proc/{process}/status").FirstOrDefault(l => l.StartsWith("SigCgt:", StringComparison.Ordinal)) is { } line && (Convert.ToUInt64(line[7..].Trim(), 16) & 2) != 0;

    private static void Refused(ProcessResult result, string words)
    {
        Assert.Equal(2, result.Code);
        Assert.Contains(words, result.Messages, StringComparison.Ordinal);
        Assert.Equal("", result.Out);
        NoTrace(result);
    }

    private static void NoTrace(ProcessResult result) => Assert.DoesNotContain("   at ", result.Messages, StringComparison.Ordinal);
}
