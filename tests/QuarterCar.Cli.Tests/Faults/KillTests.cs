using System.Diagnostics;

using QuarterCar.Reports.Files;
using QuarterCar.TestKit.Programs;

using Xunit.Abstractions;

namespace QuarterCar.Cli.Tests.Faults;

/// <summary>
/// The program killed (SIGKILL) at random moments while it writes into a folder that holds earlier results: half of them anywhere in that time, half at a random one of the moves.
/// <para>
/// What a reader of the folder can see afterwards: where the kill came before the moves, the earlier results and a hidden part folder; where it came after them, the new ones. Where it came in the middle of the moves, which take
/// some milliseconds, files of both runs stand side by side and some may be missing until the next run with --out to the folder, which first moves the rest in: each file is whole, and quartercar-unfinished.txt says in sight that they
/// are of two runs. A folder cannot change its many files in one step, so this window can be made small but not closed.
/// </para>
/// </summary>
public sealed class KillTests(ITestOutputHelper output) : IDisposable
{
    private const int Seed = 8, UsualKills = 20, Often = 10;

    private readonly Scratch _scratch = new();

    private string Folder => _scratch.At("results");

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public void Killed_at_random_moments_the_folder_holds_one_runs_results_or_the_next_run_brings_them()
    {
        int kills = Study.Times("QUARTERCAR_KILLS", UsualKills), done = 0, late = 0, earlier = 0, between = 0, after = 0;
        var random = new Random(Seed);
        Study.Comparison.Lay(Folder);
        var (now, next) = (Study.Comparison, Study.Other);
        var (writing, moving) = Windows(ref now, ref next);
        while (done < kills)
        {
            bool atMoves = done % 2 > 0;
            bool killed = atMoves && Traced.IsHere
                ? Traced.KilledAtRename(1 + random.Next(1 + now.Files.Count + next.Files.Count), _scratch.Folder, next.Into(Folder))
                : Kill(next, atMoves, (atMoves ? moving : writing) * random.NextDouble());
            bool note = File.Exists(Path.Combine(Folder, "quartercar-unfinished.txt"));
            Found(now, next, note);
            if (!killed)
            {
                late++;
                Assert.InRange(late, 0, 5 + kills);
                if (atMoves) moving *= 0.9;
                else writing *= 0.9;
            }
            else
            {
                done++;
                if (note) between++;
                else if (now.Is(Folder)) earlier++;
                else after++;
            }

            if (done % Often == 0 && killed) Ran(ref now, ref next);
            else ResultFolder.Open(Folder).Dispose(); // what every run with --out does first
            Assert.Empty(Study.Remnants(Folder));
            if (!now.Is(Folder)) (now, next) = (next, now);
            Found(now, next, note: false);
        }

        output.WriteLine($"{done} kills: {earlier} before the moves, {between} between two moves, {after} after them; {late} came too late and are not counted; windows {writing.TotalMilliseconds:0} ms and {moving.TotalMilliseconds:0.0} ms");
    }

    /// <summary>Runs once undisturbed, to see how long it writes and how long it moves.</summary>
    private (TimeSpan Writing, TimeSpan Moving) Windows(ref Study now, ref Study next)
    {
        using var sighting = new Sighting(Folder);
        using Process process = ProgramProcess.Start(_scratch.Folder, next.Into(Folder));
        Assert.True(sighting.Writing(process));
        var watch = Stopwatch.StartNew();
        Assert.True(sighting.Moving(process));
        TimeSpan moves = watch.Elapsed;
        process.WaitForExit();
        (now, next) = (next, now);
        Found(now, next, note: false);
        return (watch.Elapsed, (watch.Elapsed - moves) / 2);
    }

    private bool Kill(Study study, bool atMoves, TimeSpan delay)
    {
        using var sighting = new Sighting(Folder);
        using Process process = ProgramProcess.Start(_scratch.Folder, study.Into(Folder));
        if (!(atMoves ? sighting.Moving(process) : sighting.Writing(process))) return false;
        for (var watch = Stopwatch.StartNew(); watch.Elapsed < delay && !process.HasExited;) Thread.Yield(); // a moment of its own, not a wait for something
        process.Kill();
        process.WaitForExit();
        return process.ExitCode == 128 + 9;
    }

    private void Ran(ref Study now, ref Study next)
    {
        ProcessResult result = ProgramProcess.Run(_scratch.Folder, next.Into(Folder));
        Assert.True(result.Code == 0, result.Messages);
        Assert.True(next.Is(Folder));
    }

    private void Found(Study now, Study next, bool note)
    {
        Assert.Equal("mine", File.ReadAllText(Path.Combine(Folder, Study.Foreign)));
        if (!note)
        {
            Assert.True(now.Is(Folder) || next.Is(Folder), string.Join('\n', Study.All(Folder)));
            return;
        }

        foreach (string name in Study.Ours(Folder))
        {
            byte[] bytes = File.ReadAllBytes(Path.Combine(Folder, name));
            Assert.Contains((Study[])[now, next], s => s.Files.TryGetValue(name, out byte[]? whole) && bytes.AsSpan().SequenceEqual(whole));
        }
    }
}
