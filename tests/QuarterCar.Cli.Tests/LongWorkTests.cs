using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;

using QuarterCar.TestKit.Programs;

using Xunit.Abstractions;

namespace QuarterCar.Cli.Tests;

/// <summary>A long sweep: its memory stays flat, its estimate is honest, its interrupt is quick. QUARTERCAR_SWEEP_SETUPS makes it longer than a plain test.</summary>
public sealed partial class LongWorkTests(ITestOutputHelper output) : IDisposable
{
    private const int Short = 2_000;

    private static readonly int s_long = int.Parse(Environment.GetEnvironmentVariable("QUARTERCAR_SWEEP_SETUPS") ?? "20000", CultureInfo.InvariantCulture);

    // Rows that were held instead of written would cost some 500 bytes each: of 18,000 more setups 9 MB, of 200,000 a hundred. What one collection more or less makes is less than a third of the whole.
    private const double MostOverShort = 1.3;

    private static readonly TimeSpan s_patience = TimeSpan.FromMinutes(30);

    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public async Task A_sweep_of_many_setups_takes_no_more_memory_than_one_of_few_and_says_honestly_how_long_it_takes()
    {
        Sweep few = await Run(Short), many = await Run(s_long);
        Assert.All([few, many], s => Assert.True(s.Code == 0, s.Messages));
        Assert.Equal(s_long + 1, File.ReadLines(_scratch.At($"out{s_long}/sweep.csv")).Count());
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{Short:#,0} setups {few.Seconds:0.0} s, peak {few.Peak / 1e6:0} MB; {s_long:#,0} setups {many.Seconds:0.0} s, peak {many.Peak / 1e6:0} MB; {many.Estimates.Count} estimates, worst {Worst(many):0.00}"));
        Assert.InRange(many.Peak / few.Peak, 0, MostOverShort);

        // The setups cost alike, so what is left is the time so far in the proportion of what is left to what is done. The clock here began with the process,
        // that of the estimate when it was ready, up to 5 s later on a machine with other work, which may also come and go: whether the time was kept is told, not asserted.
        Assert.All(many.Estimates, e => Assert.InRange(e.Left, (e.At - 5) * e.ToDo * 0.98, (e.At * e.ToDo) + Rounded(e.Left)));
    }

    [Fact]
    public async Task An_interrupt_ends_it_at_once_and_leaves_nothing()
    {
        using Process process = Start(s_long * 10, "out");
        await Task.Delay(TimeSpan.FromSeconds(2));
        var watch = Stopwatch.StartNew();
        using (Process kill = Process.Start("kill", ["-INT", process.Id.ToString(CultureInfo.InvariantCulture)])) await kill.WaitForExitAsync();
        ProcessResult result = ProgramProcess.End(process);
        double seconds = watch.Elapsed.TotalSeconds;
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"ended {seconds:0.00} s after the interrupt"));
        Assert.Equal(130, result.Code);
        Assert.InRange(seconds, 0, 2); // 0.8 s of patience, and a machine that does other things meanwhile
        Assert.Equal(["plain.yaml"], _scratch.Files());
    }

    // What was still to go when an estimate was made, over what it said; the farthest from 1.
    private static double Worst(Sweep sweep) => sweep.Estimates.Select(e => (sweep.Seconds - e.At) / e.Left).DefaultIfEmpty(1).MaxBy(r => Math.Abs(Math.Log(r)));

    // Up to the next second below 90 of them, then to the next minute.
    private static double Rounded(double seconds) => seconds < 90 ? 1 : 60;

    private async Task<Sweep> Run(int setups)
    {
        var watch = Stopwatch.StartNew();
        using Process process = Start(setups, $"out{setups}");
        Task<string> shown = process.StandardOutput.ReadToEndAsync();
        var estimates = new List<Estimate>();
        Task<string> said = Said(process.StandardError, watch, estimates);
        double peak = 0;
        while (!process.HasExited && watch.Elapsed < s_patience)
        {
            peak = Math.Max(peak, Peak(process.Id));
            await Task.WhenAny(process.WaitForExitAsync(), Task.Delay(20));
        }

        double seconds = watch.Elapsed.TotalSeconds;
        await shown;
        return new(process.ExitCode, await said, seconds, peak, estimates);
    }

    private static async Task<string> Said(StreamReader messages, Stopwatch watch, List<Estimate> estimates)
    {
        var all = new List<string>();
        while (await messages.ReadLineAsync() is { } line)
        {
            all.Add(line);
            if (Line().Match(line) is not { Success: true } m) continue;
            double[] n = [.. m.Groups.Values.Skip(1).Take(3).Select(g => double.Parse(g.Value.Replace(",", "", StringComparison.Ordinal), CultureInfo.InvariantCulture))];
            estimates.Add(new(watch.Elapsed.TotalSeconds, (n[1] - n[0]) / n[0], n[2] * m.Groups[4].Value switch { "h" => 3600, "min" => 60, _ => 1 }));
        }

        return string.Join('\n', all);
    }

    // The kernel's own mark of the most that was resident, kB.
    private static double Peak(int process)
    {
        try
        {
            string? line = File.ReadLines($"/proc/{process}/status").FirstOrDefault(l => l.StartsWith("VmHWM:", StringComparison.Ordinal));
            return line is null ? 0 : double.Parse(line.AsSpan("VmHWM:".Length, line.Length - "VmHWM:".Length - "kB".Length), CultureInfo.InvariantCulture) * 1024;
        }
        catch (IOException)
        {
            return 0; // it has just ended
        }
    }

    private Process Start(int setups, string folder)
    {
        _scratch.Write("plain.yaml", Scenarios.Plain(limit: 2).Replace("duration: 2 s", "duration: 0.2 s", StringComparison.Ordinal));
        return ProgramProcess.Start(_scratch.Folder, "sweep", "plain.yaml", "--vary", string.Create(CultureInfo.InvariantCulture, $"coilover.preload=0:40:{setups} mm"), "--out", folder);
    }

    private sealed record Sweep(int Code, string Messages, double Seconds, double Peak, List<Estimate> Estimates);

    // When it was said, what was left to do over what was done, and what it said was left; times in s.
    private sealed record Estimate(double At, double ToDo, double Left);

    [GeneratedRegex(@"([0-9,]+) of ([0-9,]+) setups, ([0-9.]+) (s|min|h) left$")]
    private static partial Regex Line();
}
