using System.Collections.Immutable;

using QuarterCar.Model;
using QuarterCar.Model.Statics;
using QuarterCar.Scenarios;

namespace QuarterCar.Studies;

/// <summary>What `check` answers: the corner at rest, without a run.</summary>
/// <param name="Scenario">What was asked.</param>
/// <param name="Corner">The model that it stands on.</param>
/// <param name="Figures">Standing figures.</param>
/// <param name="Springs">One row a spring, from the coil nut down.</param>
/// <param name="Damping">Damping ratios; empty without damper.</param>
/// <param name="Fit">Fit on the body; null without its lengths.</param>
/// <param name="Cases">Standing figures of the load cases.</param>
/// <param name="Curve">Standing force over travel, full droop to full bump.</param>
/// <param name="Warnings">Of reading and standing, joined.</param>
public sealed record StandingResult(
    Scenario Scenario,
    Corner Corner,
    StandingFigures Figures,
    ImmutableArray<SpringStanding> Springs,
    ImmutableArray<DampingRatio> Damping,
    FitFigures? Fit,
    ImmutableArray<CaseStanding> Cases,
    ImmutableArray<CurveRow> Curve,
    ImmutableArray<Warning> Warnings);

/// <summary>Damping ratio of one region and direction at one shaft velocity (physics.md section 6).</summary>
/// <param name="Region">primary or secondary.</param>
/// <param name="Direction">compression or rebound.</param>
/// <param name="ShaftVelocity">m/s, positive.</param>
/// <param name="Ratio">Of critical.</param>
public sealed record DampingRatio(string Region, string Direction, double ShaftVelocity, double Ratio);

/// <summary>A load case's standing figures.</summary>
/// <param name="Name">The case.</param>
/// <param name="Static">Its figures.</param>
public sealed record CaseStanding(string Name, StandingFigures Static);
