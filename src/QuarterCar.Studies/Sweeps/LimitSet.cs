using System.Collections.Immutable;

using QuarterCar.Scenarios;

namespace QuarterCar.Studies.Sweeps;

/// <summary>The limits that sweep and reach hold a setup against: the scenario's own, and no metal and no bound coils where it does not set them.</summary>
public sealed class LimitSet
{
    private const string Counts = "counts.";

    private static readonly ImmutableArray<Limit> Always = [new("counts.bottom_out", 0), new("counts.coil_bind", 0)];

    private readonly ImmutableArray<int> _places;

    private LimitSet(ImmutableArray<Limit> limits) => (Limits, _places) = (limits, [.. limits.Select(l => FigureTable.Names.IndexOf(l.Figure))]);

    /// <summary>The scenario's limits in its order, then those that always hold.</summary>
    public ImmutableArray<Limit> Limits { get; }

    /// <summary>The limits of a scenario.</summary>
    public static LimitSet Of(Scenario scenario) =>
        new([.. scenario.Limits, .. Always.Where(a => !scenario.Limits.Any(l => l.Figure == a.Figure))]);

    /// <summary>Every limit against a row's figures. A figure that does not apply breaks nothing.</summary>
    /// <param name="figures">In the order of <see cref="FigureTable.Names"/>.</param>
    public ImmutableArray<LimitVerdict> Check(ImmutableArray<double?> figures) =>
        [.. Limits.Select((l, i) => new LimitVerdict(l.Figure, l.Largest, figures[_places[i]], figures[_places[i]] > l.Largest))];

    /// <summary>True where every limit holds.</summary>
    /// <param name="figures">In the order of <see cref="FigureTable.Names"/>; null breaks, for nothing is known.</param>
    public bool Holds(ImmutableArray<double?>? figures)
    {
        if (figures is not { } f)
            return false;
        for (int i = 0; i < _places.Length; i++)
        {
            if (f[_places[i]] > Limits[i].Largest)
                return false;
        }

        return true;
    }

    /// <summary>
    /// The limit that a setup comes nearest to: the least room left as a share of the limit. A count that holds is no measure of nearness
    /// (none is none, near or far), so counts are named only where nothing else is limited.
    /// </summary>
    /// <param name="figures">In the order of <see cref="FigureTable.Names"/>; every limit holds.</param>
    public NearestLimit? Nearest(ImmutableArray<double?> figures) =>
        Check(figures).Where(v => v.Value is not null)
            .Select(v => new NearestLimit(v.Figure, v.Largest, v.Value!.Value))
            .OrderBy(n => n.Figure.StartsWith(Counts, StringComparison.Ordinal)).ThenBy(n => n.Share)
            .FirstOrDefault();
}

/// <summary>The limit that a setup comes nearest to.</summary>
/// <param name="Figure">Full dotted name.</param>
/// <param name="Limit">Largest allowed.</param>
/// <param name="Value">What came out.</param>
public sealed record NearestLimit(string Figure, double Limit, double Value)
{
    /// <summary>Room left, in the figure's unit.</summary>
    public double Distance => Limit - Value;

    /// <summary>Room left as a share of the limit; of 1 for a limit of 0.</summary>
    public double Share => Distance / (Limit == 0 ? 1 : Math.Abs(Limit));
}
