using System.Collections.Immutable;

using QuarterCar.Scenarios;
using QuarterCar.Studies.Setups;

namespace QuarterCar.Studies.Sweeps;

/// <summary>How far a path can go, for one setup or for several.</summary>
/// <param name="Scenario">The scenario as written.</param>
/// <param name="Axis">The way.</param>
/// <param name="Limits">Limits held against every point.</param>
/// <param name="Setups">In the order asked for; one without other setups.</param>
public sealed record ReachResult(Scenario Scenario, SweepAxis Axis, LimitSet Limits, ImmutableArray<ReachSetup> Setups)
{
    /// <summary>True where --hold finds each setup's preload.</summary>
    public bool Held { get; init; }
}

/// <summary>How far a path can go for one setup.</summary>
/// <param name="Request">The setup, the path itself not in it.</param>
/// <param name="NutWord">stays, reset, or empty without a stop nut.</param>
/// <param name="Largest">The last value that holds, SI; null where the first breaks already.</param>
/// <param name="FirstBroken">What breaks first beyond it; null where the whole way holds.</param>
/// <param name="Resolution">How closely the break was pinned, SI; the scan's spacing where nothing broke.</param>
/// <param name="Scan">Points scanned evenly, both ends among them.</param>
/// <param name="LargestFigures">Figures at the largest; null without one.</param>
public sealed record ReachSetup(
    SetupRequest Request,
    string NutWord,
    double? Largest,
    ReachBreak? FirstBroken,
    double Resolution,
    ImmutableArray<ReachPoint> Scan,
    ImmutableArray<double?>? LargestFigures)
{
    /// <summary>What --hold set at the largest; empty without one.</summary>
    public string HeldBy { get; init; } = "";

    /// <summary>True where points beyond the first break hold again: the largest value is not the last one that holds.</summary>
    public bool HoldsAgain => Scan.SkipWhile(p => p.Holds).Any(p => p.Holds);

    /// <summary>True where a point could not be run.</summary>
    public bool Failed => Scan.Any(p => p.Failure is not null);
}

/// <summary>What broke at the first value that does not hold.</summary>
/// <param name="At">That value, SI.</param>
/// <param name="Verdict">The first broken limit in their order; null where the setup could not be run there, or stands on metal or bound coils. On a stop whose touches are limited that limit, with the count that does not tell.</param>
/// <param name="Failure">Why it could not be run; null where it ran.</param>
/// <param name="Rest">Metal, bound coils, or a stop whose touches are limited that it stands on, in words; null where it stands on none.</param>
public sealed record ReachBreak(double At, LimitVerdict? Verdict, string? Failure, string? Rest);

/// <summary>A point of the scan.</summary>
/// <param name="At">Value, SI.</param>
/// <param name="Holds">True where every limit holds.</param>
/// <param name="Failure">Why it could not be run; null where it ran.</param>
/// <param name="Rest">Metal, bound coils, or a stop whose touches are limited that it stands on, in words; null where it stands on none.</param>
public sealed record ReachPoint(double At, bool Holds, string? Failure, string? Rest);
