using System.Collections.Immutable;

namespace QuarterCar.Model.Tests.Statics;

/// <summary>Corners for figures that are worked by hand: unsprung 300 N, tyre 200 N/mm, no damper, no friction, standard stops.</summary>
internal static class Bench
{
    /// <summary>A corner, SI.</summary>
    public static Corner Of(
        SpringSetData springs, double load, double stroke, double preload, double ratio = 1, double? held = null, GasData? gas = null,
        BumpStopData? bump = null, ImmutableArray<TablePoint>? table = null, StopNutData? nut = null) => Corner.Build(new CornerData(
        load, null, 300, table ?? [new TablePoint(0, ratio)], new TyreData(2e5),
        new CoiloverData(
            stroke, springs, preload, held is { } h ? new StopNutData(h, StopNutReference.UpperTravel) : nut,
            null, gas, 0, bump, StopData.DefaultBottomOut, StopData.DefaultTopOut, null)));

    /// <summary>60 mm long: 1 kN at 20 mm, 5 kN at 60 mm.</summary>
    public static BumpStopData Bump(bool onAxle) => new(onAxle, 0.06, [new(0.02, 1000), new(0.06, 5000)]);
}
