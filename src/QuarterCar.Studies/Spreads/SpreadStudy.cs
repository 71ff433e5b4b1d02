using System.Collections.Immutable;

using QuarterCar.Model;
using QuarterCar.Scenarios;
using QuarterCar.Studies.Setups;

namespace QuarterCar.Studies.Spreads;

/// <summary>How sure are we? The scenario run again and again with its uncertain values drawn from their tolerances.</summary>
public static class SpreadStudy
{
    /// <summary>The figures whose variance is traced to the tolerances.</summary>
    public static readonly ImmutableArray<string> Traced = ["static.ride_height_m", "travel.up_travel_used"];

    /// <summary>Runs it.</summary>
    /// <param name="study">The base; its scenario has tolerances.</param>
    /// <param name="samples">From 2 to <see cref="SpreadPlan.MostSamples"/>.</param>
    /// <param name="seed">Any.</param>
    /// <param name="options">Threads and part.</param>
    /// <param name="progress">Told how many of how many are done.</param>
    /// <param name="cancel">Stops it with <see cref="OperationCanceledException"/>.</param>
    public static SpreadResult Of(StudyBase study, int samples, ulong seed, StudyOptions options, Action<long, long>? progress = null, CancellationToken cancel = default)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(samples, 2);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(samples, SpreadPlan.MostSamples);
        if (study.Scenario.Tolerances.IsEmpty) throw new ArgumentException("a spread study needs tolerances", nameof(study));
        var kept = new SpreadSamples(SpreadPlan.Of(study.Scenario.Tolerances, samples, seed));
        StudyEngine.Run(study, kept.Plan, options, kept.Add, progress, cancel);
        return Of(study.Scenario, seed, kept);
    }

    /// <summary>The figures over samples that were run before.</summary>
    /// <param name="scenario">The base.</param>
    /// <param name="seed">Of the sample.</param>
    /// <param name="samples">Every sample, in order.</param>
    public static SpreadResult Of(Scenario scenario, ulong seed, SpreadSamples samples) => new(
        scenario,
        seed,
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
        return new FigureSpread(name, Percentiles.At(sorted, 0.05), Percentiles.At(sorted, 0.5), Percentiles.At(sorted, 0.95), mean, sorted[0], sorted[^1]);
    }

    private static double? Share(double[] counts) => counts.Length == 0 ? null : (double)counts.Count(c => c > 0) / counts.Length;

    private static VarianceShare Trace(string figure, SpreadSamples samples)
    {
        double[] values = samples.Figure(figure);
        int[] told = [.. Enumerable.Range(0, values.Length).Where(i => double.IsFinite(values[i]))];
        double[][] inputs = [.. samples.Inputs().Select(column => told.Select(i => column[i]).ToArray())];
        ImmutableArray<double>? shares = VarianceShares.Of(inputs, [.. told.Select(i => values[i])]);
        return new VarianceShare(figure, [.. samples.Plan.Paths.Select((p, i) => KeyValuePair.Create(p, shares is { } s ? s[i] : (double?)null))]);
    }
}
