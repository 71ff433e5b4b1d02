using System.Collections.Immutable;

namespace QuarterCar.Model.Tests.Statics;

/// <summary>Corners for figures that are worked by hand: unsprung 300 N, tyre 200 N/mm, no damper, no friction, standard stops.</summary>
internal static class Bench
{
    /// <summary>20 N/mm, 300 mm of travel.</summary>
    public static SpringSetData Single { get; } = new(null, null, new SpringData(20e3, 0.4, 0.1));

    /// <summary>The same with 500 mm of travel: nothing binds.</summary>
    public static SpringSetData Long { get; } = new(null, null, new SpringData(20e3, 0.6, 0.1));

    /// <summary>12 N/mm in series, 200 mm of travel each.</summary>
    public static SpringSetData Pair { get; } = new(null, new SpringData(20e3, 0.3, 0.1), new SpringData(30e3, 0.35, 0.15));

    /// <summary>3e-4 m², 1.5 MPa, a gas column of 350 mm: the charge of which check-values NL-11 gives the forces (formula from memory).</summary>
    public static GasData Gas { get; } = new(1.5e6, Math.Sqrt(4 * 3e-4 / Math.PI), 0.35 * 3e-4);

    /// <summary>A corner, SI; the load is the sprung weight, or what the springs carry at ride height.</summary>
    public static Corner Of(
        SpringSetData springs, double load, double stroke, double preload, double ratio = 1, double? held = null, GasData? gas = null,
        BumpStopData? bump = null, ImmutableArray<TablePoint>? table = null, StopNutData? nut = null, bool onSprings = false) => Corner.Build(new CornerData(
        onSprings ? null : load, onSprings ? load : null, 300, table ?? [new TablePoint(0, ratio)], new TyreData(2e5),
        new CoiloverData(
            stroke, springs, preload, held is { } h ? new StopNutData(h, StopNutReference.UpperTravel) : nut,
            null, gas, 0, bump, StopData.DefaultBottomOut, StopData.DefaultTopOut, null)));

    /// <summary>60 mm long: 1 kN at 20 mm, 5 kN at 60 mm.</summary>
    public static BumpStopData Bump(bool onAxle) => new(onAxle, 0.06, [new(0.02, 1000), new(0.06, 5000)]);
}
