using System.Collections.Immutable;

using QuarterCar.Model;

namespace QuarterCar.Studies.Spreads;

/// <summary>How sure are we? The scenario run again and again with its uncertain values drawn from their tolerances.</summary>
public static class SpreadStudy
{
    /// <summary>The figures whose variance is traced to the tolerances.</summary>
    public static readonly ImmutableArray<string> Traced = ["static.ride_height_m", "travel.up_travel_used"];

    /// <summary>The figures over samples that were run.</summary>
    public static SpreadResult Of(SpreadSamples samples) => new(
        samples,
        [.. FigureTable.Names.Select(n => KeyValuePair.Create(n, Spread(n, samples.Figure(n))))],
        [.. EventNames.All.Select(n => KeyValuePair.Create(n, Share(samples.Figure("counts." + n))))],
        [.. Traced.Select(n => Trace(n, samples))]);

    private static FigureSpread? Spread(string name, double[] values)
    {
        double[] sorted = [.. values.Where(double.IsFinite)];
        if (sorted.Length == 0)
            return null;
        double mean = sorted.Sum() / sorted.Length; // before sorting: in the order of the samples
        Array.Sort(sorted);
        return new FigureSpread(name, Percentiles.At(sorted, 0.05), Percentiles.At(sorted, 0.5), Percentiles.At(sorted, 0.95), mean, sorted[0], sorted[^1], sorted.Length);
    }

    private static double? Share(double[] counts) => counts.Length == 0 ? null : (double)counts.Count(c => c > 0) / counts.Length;

    private static VarianceShare Trace(string figure, SpreadSamples samples)
    {
        double[] values = samples.Figure(figure);
        int[] told = [.. Enumerable.Range(0, values.Length).Where(i => double.IsFinite(values[i]))];
        double[][] inputs = [.. samples.Inputs().Select(column => told.Select(i => column[i]).ToArray())];
        ImmutableArray<double>? shares = VarianceShares.Of(inputs, [.. told.Select(i => values[i])]);
        return new VarianceShare(figure, [.. samples.Paths.Select((p, i) => KeyValuePair.Create(p, shares is { } s ? s[i] : (double?)null))]);
    }
}
