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

    // .NET puts off its first collections by the processor's cache: with 260 MB of it the longer sweep, though flat, stands at 235 MB and the shorter at 150. 32 MB here, hexadecimal.
    private static readonly (string, string)[] s_collectAnywhereAlike = [("DOTNET_GCgen0size", "2000000")];

    private static readonly TimeSpan s_patience = TimeSpan.FromMinutes(30);

    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public async Task A_sweep_of_many_setups_takes_no_more_memory_than_one_of_few_and_says_honestly_how_long_it_takes()
    {
        Sweep few = await Run(Short), many = await Run(s_long);
        Assert.All([few, many], s => Assert.True(s.Code == 0, s.Messages));
        Assert.Equal(s_long + 1, File.ReadLines(_scratch.At($"out{s_long}/sweep.csv")).Count());
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{Short:#,0} setups {few.Seconds:0.0} s, peak {few.Peak / 1e6:0} MB; {s_long:#,0} setups {many.Seconds:0.0} s, peak {many.Peak / 1e6:0} MB; {many.Estimates.Count} estimates, worst {Worst(many, e => (many.Seconds - e.At) / e.Left):0.00} in time, {Worst(many, e => Left(many, e).Took / Left(many, e).Said):0.00} in work"));
        Assert.InRange(many.Peak / few.Peak, 0, MostOverShort);

        // Other work comes and goes, so whether the time was kept is told; asserted is that the processor time was, at the share of it that the program had
        // of late. The seconds are whole ones, and the report is written after the last setup.
        Assert.All(many.Estimates, e =>
        {
            (double said, double took) = Left(many, e);
            Assert.InRange(took, (0.6 * said) - 2, (1.5 * said) + 3);
        });
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

    // What was still to go over what was said, the farthest from 1 of the estimates of at least five seconds.
    private static double Worst(Sweep sweep, Func<Estimate, double> kept) => sweep.Estimates.Where(e => e.Left >= 5).Select(kept).DefaultIfEmpty(1).MaxBy(r => Math.Abs(Math.Log(r)));

    // Processor time that the time left would have brought, and that was still to go.
    private static (double Said, double Took) Left(Sweep sweep, Estimate e)
    {
        (double at, double work) = sweep.Works.Last(w => w.At <= e.At / 2);
        return (e.Left * (e.Work - work) / (e.At - at), sweep.Works[^1].Work - e.Work);
    }

    private async Task<Sweep> Run(int setups)
    {
        var watch = Stopwatch.StartNew();
        using Process process = Start(setups, $"out{setups}");
        Task<string> shown = process.StandardOutput.ReadToEndAsync();
        var estimates = new List<Estimate>();
        Task<string> said = Said(process, watch, estimates);
        var works = new List<(double At, double Work)> { (0, 0) };
        double peak = 0;
        while (!process.HasExited && watch.Elapsed < s_patience)
        {
            peak = Math.Max(peak, Peak(process.Id));
            if (Work(process.Id) is > 0 and var work) works.Add((watch.Elapsed.TotalSeconds, work));
            await Task.WhenAny(process.WaitForExitAsync(), Task.Delay(20));
        }

        double seconds = watch.Elapsed.TotalSeconds;
        await shown;
        return new(process.ExitCode, await said, seconds, works, peak, estimates);
    }

    private static async Task<string> Said(Process process, Stopwatch watch, List<Estimate> estimates)
    {
        var all = new List<string>();
        while (await process.StandardError.ReadLineAsync() is { } line)
        {
            all.Add(line);
            if (Line().Match(line) is not { Success: true } m) continue;
            double left = double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture) * m.Groups[2].Value switch { "h" => 3600, "min" => 60, _ => 1 };
            estimates.Add(new(watch.Elapsed.TotalSeconds, Work(process.Id), left));
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

    // Processor time so far, s: user and system ticks of a hundredth, the 12th and 13th word after the name in brackets.
    private static double Work(int process)
    {
        try
        {
            string stat = File.ReadAllText($"/proc/{process}/stat");
            string[] words = stat[(stat.LastIndexOf(')') + 2)..].Split(' ');
            return words[0] == "Z" ? 0 : (double.Parse(words[11], CultureInfo.InvariantCulture) + double.Parse(words[12], CultureInfo.InvariantCulture)) / 100;
        }
        catch (IOException)
        {
            return 0; // it has just ended
        }
    }

    private Process Start(int setups, string folder)
    {
        _scratch.Write("plain.yaml", Scenarios.Plain(limit: 2).Replace("duration: 2 s", "duration: 0.2 s", StringComparison.Ordinal));
        return ProgramProcess.Start(_scratch.Folder, s_collectAnywhereAlike, "sweep", "plain.yaml", "--vary", string.Create(CultureInfo.InvariantCulture, $"coilover.preload=0:40:{setups} mm"), "--out", folder);
    }

    private sealed record Sweep(int Code, string Messages, double Seconds, List<(double At, double Work)> Works, double Peak, List<Estimate> Estimates);

    // When it was said, the processor time until then, and what it said was left; s.
    private sealed record Estimate(double At, double Work, double Left);

    [GeneratedRegex(@"[0-9,]+ of [0-9,]+ setups, ([0-9.]+) (s|min|h) left$")]
    private static partial Regex Line();
}
