using System.Collections.Immutable;

using QuarterCar.Scenarios;
using QuarterCar.Studies.Setups;

namespace QuarterCar.Studies.Sweeps;

/// <summary>What a sweep found out. Its rows went to their taker one by one and are not kept.</summary>
/// <param name="Scenario">The scenario as written.</param>
/// <param name="Grid">What was run.</param>
/// <param name="Goal">What was looked for.</param>
/// <param name="Limits">Limits held against every point.</param>
/// <param name="Rows">Points run in this part.</param>
/// <param name="Holding">Points that hold every limit.</param>
/// <param name="Failed">Points that could not be run.</param>
/// <param name="FirstFailure">Why the first of them could not; null where all ran.</param>
/// <param name="Leaders">The best points that hold every limit, best first, a few.</param>
/// <param name="Nearest">The limit that the best comes nearest to; null without best.</param>
/// <param name="Unlimited">The best point, limits or not; null where nothing ran.</param>
/// <param name="Field">The points that the answer was picked from; null where the goal's figure applies to none that ran.</param>
/// <param name="Breaks">What broke where: points on metal first, then in the order of the limits; only those that broke.</param>
/// <param name="Map">Points kept for a picture: all of a small grid, an even choice of a large one.</param>
public sealed record SweepResult(
    Scenario Scenario,
    SweepGrid Grid,
    Goal Goal,
    LimitSet Limits,
    long Rows,
    long Holding,
    long Failed,
    string? FirstFailure,
    ImmutableArray<StudyRow> Leaders,
    NearestLimit? Nearest,
    StudyRow? Unlimited,
    SweepField? Field,
    ImmutableArray<SweepBreak> Breaks,
    SweepMap? Map)
{
    /// <summary>Most of the best points that are kept.</summary>
    public const int MostLeaders = 10;

    /// <summary>The best point inside the limits; null where nothing holds them all.</summary>
    public StudyRow? Best => Leaders.IsEmpty ? null : Leaders[0];
}

/// <summary>The points that a sweep's answer was picked from: those that hold every limit and have the goal's figure; where none does, all that have it.</summary>
/// <param name="Points">How many.</param>
/// <param name="Poorest">The goal's figure at the poorest of them.</param>
public readonly record struct SweepField(long Points, double Poorest);

/// <summary>Where a limit broke.</summary>
/// <param name="Limit">The limit; null for the points that stand on metal or bound coils, limited or not.</param>
/// <param name="Points">How many points broke it.</param>
/// <param name="Worst">Largest value of its figure; NaN without a limit, and for the points that stand on the stop whose touches it counts.</param>
/// <param name="Least">Least value of each path among them, SI, in the order of the paths; NaN for what is no number.</param>
/// <param name="Most">Largest.</param>
public sealed record SweepBreak(Limit? Limit, long Points, double Worst, ImmutableArray<double> Least, ImmutableArray<double> Most);

/// <summary>The goal over a grid of one or two axes, for a picture.</summary>
/// <param name="Axes">The axes, in order.</param>
/// <param name="Goal">The goal's figure, last axis fastest; NaN where it was not run.</param>
/// <param name="Broken">The first limit that a point breaks: an index into the limits, -1 for none; that on metal contacts where it stands on metal.</param>
/// <param name="Limited">The limited figures, one list a limit.</param>
public sealed record SweepMap(ImmutableArray<SweepMapAxis> Axes, ImmutableArray<double> Goal, ImmutableArray<int> Broken, ImmutableArray<ImmutableArray<double>> Limited);

/// <summary>Points kept along one axis.</summary>
/// <param name="Paths">What it changes.</param>
/// <param name="At">Positions: SI values, or indices of a list.</param>
/// <param name="Titles">Titles of a list's points; empty where the axis is numeric.</param>
public sealed record SweepMapAxis(ImmutableArray<string> Paths, ImmutableArray<double> At, ImmutableArray<string> Titles)
{
    /// <summary>True where positions are numbers along one path.</summary>
    public bool Numeric => Titles.IsEmpty;
}
