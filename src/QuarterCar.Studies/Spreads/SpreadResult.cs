using System.Collections.Immutable;

namespace QuarterCar.Studies.Spreads;

/// <summary>How a figure is spread over the samples, in the unit of its name.</summary>
/// <param name="Name">Dotted name.</param>
/// <param name="P05">5th percentile.</param>
/// <param name="P50">Median.</param>
/// <param name="P95">95th percentile.</param>
/// <param name="Mean">Mean.</param>
/// <param name="Least">Smallest.</param>
/// <param name="Most">Largest.</param>
/// <param name="Samples">How many samples it comes from: those that ran and that it applies to.</param>
public sealed record FigureSpread(string Name, double P05, double P50, double P95, double Mean, double Least, double Most, int Samples);

/// <summary>The share of a figure's variance that each tolerance brings.</summary>
/// <param name="Figure">Dotted name.</param>
/// <param name="Shares">By path, in the order of the tolerances; null where it cannot be told.</param>
public sealed record VarianceShare(string Figure, ImmutableArray<KeyValuePair<string, double?>> Shares)
{
    /// <summary>What no straight line through the samples explains: kinks, contacts, tolerances acting together; null where it cannot be told.</summary>
    public double? Rest => Shares.Any(s => s.Value is null) ? null : Math.Max(0, 1 - Shares.Sum(s => s.Value!.Value));
}

/// <summary>What a spread study gives.</summary>
/// <param name="Samples">Every sample.</param>
/// <param name="Figures">In the order of <see cref="FigureTable.Names"/>; null where the figure applies to no sample.</param>
/// <param name="ContactShare">By event name, the share of samples that ran with at least one; null where none ran.</param>
/// <param name="VarianceShare">Of ride height and of up-travel used.</param>
public sealed record SpreadResult(
    SpreadSamples Samples,
    ImmutableArray<KeyValuePair<string, FigureSpread?>> Figures,
    ImmutableArray<KeyValuePair<string, double?>> ContactShare,
    ImmutableArray<VarianceShare> VarianceShare)
{
    /// <summary>One figure's spread; null where it applies to no sample.</summary>
    public FigureSpread? Figure(string name) => Figures.FirstOrDefault(f => f.Key == name).Value;

    /// <summary>The share of samples with an event; null where none ran.</summary>
    public double? Share(string name) => ContactShare.FirstOrDefault(c => c.Key == name).Value;
}
