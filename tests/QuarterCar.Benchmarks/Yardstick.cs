using System.Diagnostics;
using System.Globalization;
using System.Text;

using QuarterCar.Model.Motion;

namespace QuarterCar.Benchmarks;

/// <summary>Our time against the peer's, in turn, in one run on one machine: medians of interleaved blocks.</summary>
internal static class Yardstick
{
    private const int Blocks = 11, RunsPerBlock = 150, WarmRuns = 2500;
    private const int SweepRuns = 6000, SweepThreads = 2, SweepBlocks = 5;
    private const double FirstGap = 0.5 * 0.0254, LastGap = 2 * 0.0254;
    private const string SweepScenario = "quarry_ledge";

    private static readonly string[] s_scenarios = ["quarry_ledge", "fast_whoops", "ramp_and_drop"];

    /// <summary>Prints one line a scenario and one for the sweep.</summary>
    public static void Print(string? peerPath, string? parameters)
    {
        Peer? peer = peerPath is null ? null : new Peer(Path.GetFullPath(peerPath), Path.GetFullPath(parameters ?? Path.GetDirectoryName(Path.GetFullPath(peerPath)) ?? "."));
        foreach (string name in s_scenarios)
            One(name, peer);
        Sweep(peer);
    }

    private static void One(string name, Peer? peer)
    {
        var yard = new Yard(name);
        Warm(() => yard.Once());
        string tolerance = peer?.Tolerance(name) ?? "";
        var ours = new List<double>();
        var theirs = new List<double>();
        double[] block = new double[RunsPerBlock];
        for (int b = 0; b < Blocks; b++)
        {
            for (int i = 0; i < RunsPerBlock; i++)
            {
                long start = Stopwatch.GetTimestamp();
                yard.Once();
                block[i] = Stopwatch.GetElapsedTime(start).TotalMicroseconds;
            }

            ours.Add(Median(block));
            if (peer is not null)
                theirs.Add(peer.Microseconds(name, tolerance, RunsPerBlock));
        }

        (double travel, double events) = yard.Errors();
        Line(name, Median(ours), theirs.Count > 0 ? Median(theirs) : null, travel, events);
        if (peer is not null)
            Console.Error.WriteLine($"  {name}: peer at its loosest tolerance that holds 1e-6 m and 1e-6 s: {tolerance}");
    }

    private static void Sweep(Peer? peer)
    {
        var yards = Enumerable.Range(0, SweepThreads).Select(_ => new Yard(SweepScenario)).ToArray();
        Warm(() => yards[0].Once(FirstGap));
        var ours = new List<double>();
        var theirs = new List<double>();
        for (int b = 0; b < SweepBlocks; b++)
        {
            long start = Stopwatch.GetTimestamp();
            Thread[] threads = [.. Enumerable.Range(0, SweepThreads).Select(n => new Thread(() => Share(yards[n], n)))];
            Array.ForEach(threads, t => t.Start());
            Array.ForEach(threads, t => t.Join());
            ours.Add(Stopwatch.GetElapsedTime(start).TotalMicroseconds / SweepRuns);
            if (peer is not null)
                theirs.Add(1e6 / peer.SweepRate(SweepScenario, SweepRuns, SweepThreads));
        }

        (double travel, double events) = SweepErrors(yards[0]);
        Line("sweep_2_threads", Median(ours), theirs.Count > 0 ? Median(theirs) : null, travel, events);
    }

    private static double Gap(int i) => FirstGap + (LastGap - FirstGap) * i / (SweepRuns - 1);

    private static void Share(Yard yard, int thread)
    {
        for (int i = SweepRuns * thread / SweepThreads; i < SweepRuns * (thread + 1) / SweepThreads; i++)
            yard.Once(Gap(i));
    }

    // The sweep's setups have no reference of their own: some of them against the same run at a ten-thousandth of the tolerance.
    private static (double Travel, double Event) SweepErrors(Yard yard)
    {
        var exact = new MotionRun();
        double travel = 0, time = 0;
        for (int i = 0; i < SweepRuns; i += SweepRuns / 24)
        {
            double[] a = yard.NewGrid(), b = yard.NewGrid();
            yard.Once(yard.Run, a, yard.Tolerance, Gap(i));
            yard.Once(exact, b, 1e-4 * yard.Tolerance, Gap(i));
            for (int k = 0; k < a.Length; k++)
                travel = Math.Max(travel, Math.Abs(a[k] - b[k]));
            NotedEvent[] ea = yard.Run.Events.Events.ToArray(), eb = exact.Events.Events.ToArray();
            time = ea.Length == eb.Length ? Math.Max(time, ea.Zip(eb, (p, q) => p.Event == q.Event ? Math.Abs(p.Time - q.Time) : double.PositiveInfinity).Max()) : double.PositiveInfinity;
        }

        return (travel, time);
    }

    // Until the compiler has seen enough to make its last version, and has made it.
    private static void Warm(Action run)
    {
        for (int round = 0; round < 3; round++)
        {
            for (int i = 0; i < WarmRuns / 3; i++)
                run();
            Thread.Sleep(200);
        }
    }

    private static double Median(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return sorted.Length % 2 == 1 ? sorted[sorted.Length / 2] : 0.5 * (sorted[sorted.Length / 2 - 1] + sorted[sorted.Length / 2]);
    }

    private static void Line(string name, double ours, double? peer, double travel, double events)
    {
        var line = new StringBuilder();
        line.Append(CultureInfo.InvariantCulture, $"{name} ours_us={ours:0.0}");
        if (peer is { } p)
            line.Append(CultureInfo.InvariantCulture, $" peer_us={p:0.0} ratio={ours / p:0.000}");
        line.Append(CultureInfo.InvariantCulture, $" travel_error_m={travel:0.0e-0} event_error_s={events:0.0e-0}");
        Console.WriteLine(line);
    }
}
