using System.Runtime.Intrinsics;

using QuarterCar.Model.Motion;
using QuarterCar.Model.Terrain;
using QuarterCar.Numerics.Integration;

using Xunit;

namespace QuarterCar.Model.Tests.Motion;

/// <summary>
/// Which ends of its piece a step may cross: none that it stays clear of, every one that it reaches at an end or by its bulge. The piece is that of 125 to 250 mm
/// of wheel travel, 0 to 2 m/s of shaft velocity and 0 to 50 mm of tyre deflection.
/// </summary>
public class SuspectTests
{
    private static readonly Vector256<double> s_start = Rig.State(0.2, 0.5);

    [Fact]
    public void A_step_that_stays_inside_is_not_suspected() => Assert.Equal(0u, Suspects(Rig.State(0.21, 0.6, 0.02, 0.1)));

    [Theory]
    [InlineData(0.12, 0.5, 0.01, 0.2, CornerGuard.TravelLow)]
    [InlineData(0.26, 0.5, 0.01, 0.2, CornerGuard.TravelHigh)]
    [InlineData(0.2, -0.1, 0.01, 0.2, CornerGuard.VelocityLow)]
    [InlineData(0.2, 2.6, 0.01, 0.2, CornerGuard.VelocityHigh)]  // 0.8 · 2.6 m/s
    [InlineData(0.2, 0.5, 0.06, 0.2, CornerGuard.DeflectionHigh)]
    [InlineData(0.2, 0.5, 0.001, -1, CornerGuard.TyreForce)]     // 200 − 500 N
    public void An_end_past_a_kink_is_suspected(double w, double wDot, double deflection, double speed, int guard) =>
        Assert.Equal(1u << guard, Suspects(Rig.State(w, wDot, deflection, speed)));

    [Fact]
    public void A_lift_off_passes_the_force_s_end_and_the_deflection_s() =>
        Assert.Equal((1u << CornerGuard.DeflectionLow) | (1u << CornerGuard.TyreForce), Suspects(Rig.State(0.2, 0.5, -0.01, 0)));

    // θ(1 − θ) is at most a quarter.
    [Theory]
    [InlineData(0.189, 0u)]
    [InlineData(-0.189, 0u)]
    [InlineData(0.191, 1u << CornerGuard.TravelHigh)]   // 202.5 and 47.75 mm
    [InlineData(-0.191, 1u << CornerGuard.TravelHigh)]  // which way it bulges is not asked
    [InlineData(0.301, (1u << CornerGuard.TravelLow) | (1u << CornerGuard.TravelHigh))] // 200 less 75.25
    public void A_bulge_past_a_kink_is_suspected(double bulge, uint suspects) =>
        Assert.Equal(suspects, Rig.At(Rig.Geared(Rig.OnShaft), s_start).Suspects(Straight(s_start, Rig.State(0.2025, 0.5)) with { C2 = Vector256.Create(bulge, 0, 0, 0) }));

    [Fact]
    public void A_bulge_of_the_unsprung_mass_is_the_tyres()
    {
        CornerMotion motion = Rig.At(Rig.Geared(Rig.OnShaft), s_start);
        DenseStep step = Straight(s_start, s_start);
        Assert.Equal(0u, motion.Suspects(step with { C2 = Vector256.Create(0, 0, 0.039, 0) })); // 10 mm less 9.75, and 2100 N less 1950
        Assert.Equal(1u << CornerGuard.TyreForce, motion.Suspects(step with { C2 = Vector256.Create(0, 0, 0.039, 2) })); // and 250 N of damping
        Assert.Equal((1u << CornerGuard.DeflectionLow) | (1u << CornerGuard.TyreForce), motion.Suspects(step with { C2 = Vector256.Create(0, 0, 0.0425, 0) }));
        Assert.Equal(
            (1u << CornerGuard.DeflectionLow) | (1u << CornerGuard.DeflectionHigh) | (1u << CornerGuard.TyreForce),
            motion.Suspects(step with { C2 = Vector256.Create(0, 0, 0.161, 0) })); // 40.25 mm
    }

    [Fact]
    public void In_the_air_the_force_is_not_asked_and_level_ground_is()
    {
        Vector256<double> high = Rig.State(0.2, 0.5, -0.5, 0), low = Rig.State(0.2, 0.5, -0.1, 1), landed = Rig.State(0.2, 0.5, 0.001, 1);
        CornerMotion motion = Rig.At(Rig.Geared(Rig.OnShaft), high);
        Assert.Equal(0u, motion.Suspects(Straight(high, low)));
        Assert.Equal(1u << CornerGuard.DeflectionHigh, motion.Suspects(Straight(high, landed)));
    }

    // A parabola of the road: 0.25/m under a footprint of 0.4 m over a kink of 0.1; 0.05 s at 5 m/s run 0.25 m: ⅛ · 0.25 · 0.0625 = 1.95 mm of bend.
    [Theory]
    [InlineData(0.0021, 0u)]
    [InlineData(0.0018, 1u << CornerGuard.DeflectionLow)]
    public void A_bent_road_takes_its_part(double clear, uint suspects)
    {
        Road road = Road.Build(Ground.Build([new FlatPiece(1), new RampPiece(1, 10)]), TyreContact.Footprint, 0, 0.4);
        Near(0.25, road.Segments[1].PolynomialBend, 1e-12);
        Vector256<double> begin = CornerState.Of(0.2, 0.5, 0, 0);
        CornerMotion motion = Rig.At(WithoutTyreDamping(), Rig.State(0.2, 0.5), road: road, speed: 5);
        motion.PassBreak(0, 0.16, Rig.State(0.2, 0.5));
        Vector256<double> from = begin.WithElement(2, road.Height(0.8) - clear), to = begin.WithElement(2, road.Height(1.05) - clear);
        Assert.Equal(suspects, motion.Suspects(Straight(from, to) with { Start = 0.16, Length = 0.05 }));
    }

    // 25 m and 12 waves of 100 mm may hold anything; 50 mm of them hold no metre.
    [Theory]
    [InlineData(5, 1u << CornerGuard.DeflectionHigh)]
    [InlineData(0.01, 0u)]
    public void A_long_step_over_waves_is_suspected(double length, uint suspects)
    {
        Vector256<double> high = Rig.State(0.2, 0.5, -1, 0);
        CornerMotion motion = Rig.At(Rig.Geared(Rig.OnShaft), high, road: Rig.Over(new FlatPiece(1), new HaversinePiece(0.1, 2, 40)), speed: 5);
        motion.PassBreak(0, 0.2, high);
        Assert.Equal(suspects, motion.Suspects(Straight(high, high) with { Start = 0.2, Length = length }));
    }

    // An arc of 400 mm of radius about the edge of a step of 50 mm, from 190 to 10 mm before it: 1.989 and 49.875 mm high, 37.298 between, so 11.37 above the
    // line of its ends. It has no bound of its bend: four times that is feared.
    [Theory]
    [InlineData(0.045, 1u << CornerGuard.DeflectionHigh)]
    [InlineData(0.046, 0u)]
    public void An_arc_is_looked_at_in_the_middle(double clear, uint suspects)
    {
        Road road = Road.Build(Ground.Build([new FlatPiece(1), new StepPiece(0.05)]), TyreContact.RollingCircle, 0.4, 0);
        int arc = road.IndexAt(0.9);
        Assert.Equal(RoadForm.Arc, road.Segments[arc].Form);
        Vector256<double> from = CornerState.Of(0.2, 0.5, road.Height(0.81) + clear, 0), to = CornerState.Of(0.2, 0.5, road.Height(0.99) + clear, 0);
        CornerMotion motion = Rig.At(Rig.Geared(Rig.OnShaft), from, road: road, speed: 5);
        for (int i = 0; i < arc; i++)
            motion.PassBreak(i, road.Breaks[i] / 5, from);
        Assert.Equal(suspects, motion.Suspects(Straight(from, to) with { Start = 0.81 / 5, Length = 0.18 / 5 }));
    }

    // The same arc under a wheel that rises 1.3 m/s along the line of its ends. The road climbs 2.699, 1.291 and 0.125 m/s: 699, −4 and −587 N of damping; in the
    // middle 2273 N more of spring. Twice the second difference is 8849 N.
    [Theory]
    [InlineData(0.046, (1u << CornerGuard.DeflectionHigh) | (1u << CornerGuard.TyreForce))]
    [InlineData(0.048, 1u << CornerGuard.DeflectionHigh)]
    public void An_arc_s_force_is_looked_at_in_the_middle_too(double deflection, uint suspects)
    {
        Road road = Road.Build(Ground.Build([new FlatPiece(1), new StepPiece(0.05)]), TyreContact.RollingCircle, 0.4, 0);
        Vector256<double> from = CornerState.Of(0.2, 0.5, road.Height(0.81) - deflection, 1.3), to = CornerState.Of(0.2, 0.5, road.Height(0.99) - deflection, 1.3);
        CornerMotion motion = Rig.At(Rig.Geared(Rig.OnShaft), Rig.State(0.2, 0.5, deflection), road: road, speed: 5);
        for (int i = 0; i < road.IndexAt(0.9); i++)
            motion.PassBreak(i, road.Breaks[i] / 5, from);
        Assert.Equal(suspects, motion.Suspects(Straight(from, to) with { Start = 0.81 / 5, Length = 0.18 / 5 }));
    }

    // The parabola of the footprint again: 200 N/mm · 1.953 mm, and 500 N·s/m · 5 m/s · ½ · 0.25/m · 0.25 m: 390.6 and 78.1 N.
    [Theory]
    [InlineData(0.0024, 0u)]
    [InlineData(0.0023, 1u << CornerGuard.TyreForce)]
    public void A_bent_road_bends_the_tyre_s_force_by_height_and_climb(double deflection, uint suspects)
    {
        Road road = Road.Build(Ground.Build([new FlatPiece(1), new RampPiece(1, 10)]), TyreContact.Footprint, 0, 0.4);
        Vector256<double> y = Rig.State(0.2, 0.5);
        CornerMotion motion = Rig.At(Rig.Geared(Rig.OnShaft), y, road: road, speed: 5);
        motion.PassBreak(0, 0.16, y);
        Vector256<double> from = CornerState.Of(0.2, 0.5, road.Height(0.8) - deflection, 0), to = CornerState.Of(0.2, 0.5, road.Height(1.05) - deflection, 0);
        Assert.Equal(suspects, motion.Suspects(Straight(from, to) with { Start = 0.16, Length = 0.05 }));
    }

    // 200 − 500 N: it would pull. From there to 200 − 150.
    [Theory]
    [InlineData(-0.3, 1u << CornerGuard.TyreForce)]
    [InlineData(-0.5, 0u)]
    public void A_tyre_that_would_pull_is_suspected_where_it_may_push_again(double speed, uint suspects)
    {
        Vector256<double> y = Rig.State(0.2, 0.5, 0.001, -1);
        Assert.Equal(suspects, Rig.At(Rig.Geared(null), y).Suspects(Straight(y, Rig.State(0.2, 0.5, 0.001, speed))));
    }

    // A piece is left past its end, not on it.
    [Theory]
    [InlineData(0.125, 0.5, 0.01, 0.2)]
    [InlineData(0.25, 0.5, 0.01, 0.2)]
    [InlineData(0.2, 0, 0.01, 0.2)]
    [InlineData(0.2, 2.5, 0.01, 0.2)]
    [InlineData(0.2, 0.5, 0.05, 0.2)]
    [InlineData(0.2, 0.5, 0.0025, -1)]  // 500 − 500 N
    [InlineData(0.2, 0.5, 0, 0)]
    public void An_end_on_a_kink_is_not_suspected(double w, double wDot, double deflection, double speed) =>
        Assert.Equal(0u, Suspects(Rig.State(w, wDot, deflection, speed)));

    [Theory]
    [InlineData(-4.9, 0u)]                               // 1 − 0.2 · 4.9 still pushes
    [InlineData(-5.1, 1u << CornerGuard.AxleLoss)]
    public void A_bump_stop_on_the_axle_that_would_pull_is_suspected(double wDot, uint suspects)
    {
        Vector256<double> y = Rig.State(0.355, -1), to = Rig.State(0.354, wDot);
        CornerMotion motion = Rig.At(Rig.Geared(Rig.OnAxle), y, -1);
        Assert.Equal(suspects, motion.Suspects(Straight(y, to)));
        motion.Cross(CornerGuard.AxleLoss, 0, to);
        Assert.Equal(1u << CornerGuard.AxleLoss, motion.Suspects(Straight(y, to))); // open: it may close at any time
    }

    [Fact]
    public void A_bump_stop_on_the_axle_that_is_not_touched_lets_nothing_go() =>
        Assert.Equal(0u, Rig.At(Rig.Geared(Rig.OnAxle), Rig.State(0.2, -1), -1).Suspects(Straight(Rig.State(0.2, -1), Rig.State(0.21, -6))));

    // r = 1 − 3(w − 100 mm)/m: 0.7 at 200 mm and 0.55 at 250, of which the steeper counts.
    [Theory]
    [InlineData(2.8, 0, 0u)]
    [InlineData(2.9, 0, 1u << CornerGuard.VelocityHigh)] // 0.7 · 2.9 = 2.03
    [InlineData(-14.2, -1, 0u)]
    [InlineData(-14.4, -1, 1u << CornerGuard.VelocityLow)] // 0.7 · 14.4 = 10.08
    public void Velocity_is_geared_by_the_ratio_along_the_step(double wDot, int cells, uint suspects)
    {
        Vector256<double> y = Rig.State(0.2, 0.1 * Math.Sign(wDot));
        Assert.Equal(suspects, Rig.At(Rig.Of([new(0, 1), new(0.1, 1), new(0.3, 0.4)]), y, cells).Suspects(Straight(y, Rig.State(0.25, wDot))));
    }

    // r = 1 − 2w/m: 0.6 at 200 mm.
    [Theory]
    [InlineData(3.2, 0u)]
    [InlineData(3.4, 1u << CornerGuard.VelocityHigh)] // 0.6 · 3.4 = 2.04
    public void Velocity_is_geared_where_the_step_is(double wDot, uint suspects)
    {
        Vector256<double> y = Rig.State(0.2, 0.5);
        Assert.Equal(suspects, Rig.At(Rig.Of([new(0, 1), new(0.3, 0.4)]), y).Suspects(Straight(y, Rig.State(0.2, wDot))));
    }

    private static Corner WithoutTyreDamping()
    {
        CornerData data = Rig.Geared(Rig.OnShaft).Data;
        return Corner.Build(data with { Tyre = data.Tyre with { Damping = 0 } });
    }

    private static uint Suspects(Vector256<double> end) => Rig.At(Rig.Geared(Rig.OnShaft), s_start).Suspects(Straight(s_start, end));

    private static DenseStep Straight(Vector256<double> from, Vector256<double> to) => new() { Start = 0, Length = 0.01, End = 0.01, C0 = from, C1 = to - from };

    private static void Near(double expected, double found, double within) => Assert.Equal(expected, found, within);
}
