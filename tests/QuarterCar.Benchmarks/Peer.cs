using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;

namespace QuarterCar.Benchmarks;

/// <summary>The C program that the yardstick is held against: the same equations by an eighth-order pair, run as a process of its own.</summary>
/// <param name="path">The built program.</param>
/// <param name="parameters">Folder of its parameter files.</param>
internal sealed partial class Peer(string path, string parameters)
{
    private const string Method = "dp853";

    // Loosest first, three to the decade.
    private static readonly string[] s_tolerances = ["1e-5", "4.64e-6", "2.15e-6", "1e-6", "4.64e-7", "2.15e-7", "1e-7", "4.64e-8"];

    /// <summary>The loosest tolerance at which the peer keeps shaft travel within 1e-6 m and events within 1e-6 s of the reference.</summary>
    public string Tolerance(string name)
    {
        string grid = Path.GetTempFileName();
        try
        {
            foreach (string tolerance in s_tolerances)
            {
                Execute(name, tolerance, "1", grid);
                string[][] rows = [.. File.ReadLines(grid).Select(l => l.Split(' '))];
                double[] travel = [.. rows.Where(r => r[0] == "g").Select(r => double.Parse(r[2], CultureInfo.InvariantCulture))];
                (string, double)[] events = [.. rows.Where(r => r[0] == "e").Select(r => (r[1], double.Parse(r[2], CultureInfo.InvariantCulture)))];
                (double x, double t) = Yard.Errors(name, i => i < travel.Length ? travel[i] : double.NaN, events);
                if (x <= 1e-6 && t <= 1e-6)
                    return tolerance;
            }
        }
        finally
        {
            File.Delete(grid);
        }

        throw new InvalidOperationException($"the peer does not reach the accuracy on {name}");
    }

    /// <summary>Median of a block of runs, µs.</summary>
    public double Microseconds(string name, string tolerance, int runs) => Number(Execute(name, tolerance, runs.ToString(CultureInfo.InvariantCulture)), Median());

    /// <summary>Runs a second over stop-nut gaps.</summary>
    public double SweepRate(string name, int runs, int threads) =>
        Number(Execute(name, "1e-6", "sweep", runs.ToString(CultureInfo.InvariantCulture), threads.ToString(CultureInfo.InvariantCulture)), Rate());

    private string Execute(string name, string tolerance, params string[] rest)
    {
        var info = new ProcessStartInfo(path, [Path.Combine(parameters, name + ".txt"), Method, tolerance, .. rest]) { RedirectStandardOutput = true };
        using Process process = Process.Start(info) ?? throw new InvalidOperationException("the peer does not start: " + path);
        string text = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0 ? text : throw new InvalidOperationException($"the peer failed on {name}");
    }

    private static double Number(string text, Regex pattern) => double.Parse(pattern.Match(text).Groups[1].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"median_us ([0-9.]+)")]
    private static partial Regex Median();

    [GeneratedRegex(@"^([0-9.]+) runs/s")]
    private static partial Regex Rate();
}
