using System.Collections.Immutable;

using QuarterCar.Model;
using QuarterCar.Model.Terrain;
using QuarterCar.Scenarios;

namespace QuarterCar.Studies.Tests.Properties;

/// <summary>Scenarios made in code.</summary>
internal static class Corners
{
    /// <summary>A course driven by a corner.</summary>
    public static Scenario Driven(CornerData corner, double speed, RunSettings run, params ImmutableArray<TerrainPiece> pieces) =>
        new("made in a test", "test", "", UnitSystem.Si, corner, new Course(pieces, speed), run, [], [], [], []);

    /// <summary>Two masses on straight springs with straight damping and nothing that touches: one spring of the given rate, a stroke that is never used up, a ratio of 1.</summary>
    public static CornerData Linear(double sprungMass, double unsprungMass, double rate, double damping, double tyreRate, double tyreDamping) => new(
        sprungMass * Corner.Gravity,
        null,
        unsprungMass * Corner.Gravity,
        [new TablePoint(0, 1)],
        new TyreData(tyreRate, tyreDamping),
        new CoiloverData(
            1,
            new SpringSetData(null, null, new SpringData(rate, 2, 0.1)),
            0,
            null,
            damping > 0 ? new DamperData([new TablePoint(1, damping)], [new TablePoint(1, damping)], []) : null,
            null,
            0,
            null,
            StopData.DefaultBottomOut,
            StopData.DefaultTopOut,
            null));

    /// <summary>Every figure of a run by name, standing figures first; counts, run account and events are compared apart.</summary>
    public static IEnumerable<(string Name, double? Value)> Figures(RunResult run) =>
        Scenarios.Keys.FigureNames.All.Select(n => (n, FigureTable.Value(n, run.Standing.Figures, run.Figures)));
}
