using System.Collections.Immutable;
using System.Runtime.Intrinsics;

using QuarterCar.Model.Motion;
using QuarterCar.Model.Terrain;

namespace QuarterCar.Model.Tests.Motion;

/// <summary>
/// A corner whose forces are worked by hand: 500 kg on 50 kg; a spring of 20 N/mm under 50 mm of preload in a stroke of 300 mm; 1 kN at 1 m/s in, 2 kN out, twice and
/// three times that from 100 to 200 mm; 80 N of friction; a bump stop of 60 mm with 1 kN at 20 mm and 5 kN at 60; metal 10 kN/mm with 0.1 s/m, top-out 1 kN/mm with 0.5 s/m;
/// a tyre of 200 N/mm with 500 N·s/m, whose rim adds 1000 N/mm from 50 mm on.
/// </summary>
internal static class Rig
{
    public const double Sprung = 500, Unsprung = 50;

    public static BumpStopData OnShaft { get; } = new(false, 0.06, [new(0.02, 1000), new(0.06, 5000)], 0.2);

    public static BumpStopData OnAxle { get; } = OnShaft with { OnAxle = true };

    public static DamperData Damper { get; } = new([new(1, 1000)], [new(1, 2000)], [new DamperZone(0.1, 0.2, 2, 3)]);

    /// <summary>450 mm of spring travel: nothing binds.</summary>
    public static SpringSetData Spring { get; } = new(null, null, new SpringData(20e3, 0.55, 0.1));

    public static Road Level { get; } = Over();

    public static Corner Of(ImmutableArray<TablePoint> ratio, BumpStopData? bump = null, GasData? gas = null, DamperData? damper = null, SpringSetData? springs = null, double? held = null) =>
        Corner.Build(new CornerData(
            Sprung * Corner.Gravity, null, Unsprung * Corner.Gravity, ratio, new TyreData(2e5, 500, Sidewall: 0.05, RimRate: 1e6),
            new CoiloverData(
                0.3, springs ?? Spring, 0.05, held is { } h ? new StopNutData(h, StopNutReference.UpperTravel) : null, damper, gas, 80, bump, new StopData(1e7, 0.1), new StopData(1e6, 0.5), null)));

    /// <summary>A constant ratio of 0.8, with damper.</summary>
    public static Corner Geared(BumpStopData? bump) => Of([new(0, 0.8)], bump, damper: Damper);

    /// <summary>The road of a point contact.</summary>
    public static Road Over(params TerrainPiece[] pieces) => Road.Build(Ground.Build([.. pieces]), TyreContact.Point, 0, 0);

    /// <summary>A motion that stands in a state on level ground of height 0; the velocity is reached through as many kinks as lie below or above.</summary>
    public static CornerMotion At(Corner corner, Vector256<double> state, int velocityCells = 0, Road? road = null, double speed = 0)
    {
        var motion = new CornerMotion();
        motion.Begin(corner, road ?? Level, speed, state);
        for (int i = 0; i < Math.Abs(velocityCells); i++)
            motion.Cross(velocityCells < 0 ? CornerGuard.VelocityLow : CornerGuard.VelocityHigh, 0, state);
        return motion;
    }

    /// <summary>A state by the tyre's deflection on ground of height 0 and its speed.</summary>
    public static Vector256<double> State(double w, double wDot, double deflection = 0.01, double deflectionSpeed = 0.2) =>
        CornerState.Of(w, wDot, -deflection, -deflectionSpeed);
}
