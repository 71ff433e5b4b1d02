using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;

using QuarterCar.TestKit.Programs;

namespace QuarterCar.Fuzzing;

/// <summary>Many inputs over all readers, in turns of the same time, with faults written to files as they are met.</summary>
internal static class LongRun
{
    private static readonly TimeSpan s_turn = TimeSpan.FromSeconds(5);

    /// <summary>Runs; gives the exit code.</summary>
    /// <param name="readers">Readers.</param>
    /// <param name="inputs">Inputs over all of them.</param>
    /// <param name="time">Longest time.</param>
    /// <param name="seed">Of all choices.</param>
    public static int Of(ImmutableArray<Reader> readers, long inputs, TimeSpan time, int seed)
    {
        Campaign[] campaigns = [.. readers.Select(r => new Campaign(r, seed))];
        var watch = Stopwatch.StartNew();
        int faults = 0;
        for (int turn = 0; watch.Elapsed < time && campaigns.Sum(c => c.Count) < inputs; turn++)
        {
            Campaign campaign = campaigns[turn % campaigns.Length];
            foreach (Found found in campaign.Run(inputs - campaigns.Sum(c => c.Count), s_turn))
            {
                faults++;
                Console.WriteLine($"{readers[turn % readers.Length].Name}: {found.Words}\n  kept as {Keep(readers[turn % readers.Length], found)}");
            }

            if (turn % campaigns.Length == campaigns.Length - 1) Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{watch.Elapsed.TotalSeconds,6:0} s {campaigns.Sum(c => c.Count),12:#,0} inputs, {faults} faults"));
        }

        foreach (Campaign campaign in campaigns) Console.WriteLine(campaign.Report());
        if (Coverage.IsOn) Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"branches met: {Coverage.Met:#,0}"));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{campaigns.Sum(c => c.Count):#,0} inputs in {watch.Elapsed.TotalSeconds:0} s, {faults} faults, peak memory {Process.GetCurrentProcess().PeakWorkingSet64 / 1e6:0} MB"));
        return faults == 0 ? 0 : 1;
    }

    private static string Keep(Reader reader, Found found)
    {
        string folder = Checkout.At("tests", "QuarterCar.Fuzzing", "found", reader.Name);
        Directory.CreateDirectory(folder);
        string kind = string.Concat(Trial.Kind(found.Words).Select(c => char.IsAsciiLetterOrDigit(c) ? char.ToLowerInvariant(c) : '-'));
        string file = Path.Combine(folder, kind + ".txt");
        File.WriteAllBytes(file, found.Input);
        return Path.GetRelativePath(Checkout.Root, file);
    }
}
