using System.Collections.Immutable;

using QuarterCar.Scenarios;
using QuarterCar.Studies.Setups;

namespace QuarterCar.Studies.Sweeps;

/// <summary>The limits that a setup of a study is held against: sweep and reach take the scenario's own, and no metal and no bound coils where it does not set them.</summary>
public sealed class LimitSet
{
    private const string Counts = "counts.", Metal = "counts.bottom_out";

    private static readonly ImmutableArray<Limit> Always = [new(Metal, 0), new("counts.coil_bind", 0)];

    private readonly ImmutableArray<int> _places;

    private LimitSet(ImmutableArray<Limit> limits) => (Limits, _places) = (limits, [.. limits.Select(l => FigureTable.Names.IndexOf(l.Figure))]);

    /// <summary>The scenario's limits in its order, then those that always hold.</summary>
    public ImmutableArray<Limit> Limits { get; }

    /// <summary>The limits of what is no count of contacts.</summary>
    public IEnumerable<Limit> BesideCounts => Limits.Where(l => !l.Figure.StartsWith(Counts, StringComparison.Ordinal));

    /// <summary>Place of the limit on metal contacts among <see cref="Limits"/>.</summary>
    public int MetalPlace => Limits.IndexOf(Limits.First(l => l.Figure == Metal));

    /// <summary>The limits of a scenario.</summary>
    public static LimitSet Of(Scenario scenario) =>
        new([.. scenario.Limits, .. Always.Where(a => !scenario.Limits.Any(l => l.Figure == a.Figure))]);

    /// <summary>Those alone that a scenario sets itself, in its order.</summary>
    public static LimitSet Own(ImmutableArray<Limit> limits) => new(limits);

    /// <summary>Every limit against a row's figures. A figure that does not apply breaks nothing.</summary>
    /// <param name="figures">In the order of <see cref="FigureTable.Names"/>.</param>
    public ImmutableArray<LimitVerdict> Check(ImmutableArray<double?> figures) =>
        [.. Limits.Select((l, i) => new LimitVerdict(l.Figure, l.Largest, figures[_places[i]], figures[_places[i]] > l.Largest))];

    /// <summary>True where every limit holds. A row without figures holds none, for nothing is known of it; nor does a corner that stands on metal or bound coils: its limits on travel do not apply and its contacts are no events. A limit on touches of a stop that the corner leans on at rest does not hold either.</summary>
    public bool Holds(StudyRow row)
    {
        if (row.Figures is not { } f || row.Rest is not null)
            return false;
        for (int i = 0; i < _places.Length; i++)
        {
            if (Breaks(row, f, i))
                return false;
        }

        return true;
    }

    /// <summary>Every limit against a row that ran: one on touches of a stop that the corner leans on at rest is broken, whatever their count is.</summary>
    public ImmutableArray<LimitVerdict> Check(StudyRow row) => row.Figures is not { } f
        ? []
        : [.. Limits.Select((l, i) => new LimitVerdict(l.Figure, l.Largest, f[_places[i]], Breaks(row, f, i)))];

    private bool Breaks(StudyRow row, ImmutableArray<double?> figures, int i) => figures[_places[i]] > Limits[i].Largest || row.StandsOn(Limits[i].Figure);

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
