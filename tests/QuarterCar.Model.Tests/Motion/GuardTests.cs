using System.Runtime.Intrinsics;

using QuarterCar.Model.Motion;
using QuarterCar.Model.Terrain;
using QuarterCar.Numerics.Integration;

using Xunit;

namespace QuarterCar.Model.Tests.Motion;

/// <summary>Where a piece ends, in metres, m/s and newtons by hand, and the same guards as polynomials along a step.</summary>
public class GuardTests
{
    // Cell from 125 to 250 mm of wheel (the zone), 0 to 2 m/s of shaft (the top-out's loss lets go at 2), rolling below 50 mm.
    [Theory]
    [InlineData(CornerGuard.TravelLow, 0.075)]
    [InlineData(CornerGuard.TravelHigh, 0.05)]
    [InlineData(CornerGuard.VelocityLow, 0.4)]
    [InlineData(CornerGuard.VelocityHigh, 1.6)]
    [InlineData(CornerGuard.DeflectionLow, 0.01)]
    [InlineData(CornerGuard.DeflectionHigh, 0.04)]
    [InlineData(CornerGuard.TyreForce, 2100)]
    public void A_guard_is_the_distance_to_the_piece_s_end(int guard, double distance)
    {
        // On a climb of one in ten at 5 m/s, 0.2 s in: the road is at 100 mm and rises 0.5 m/s.
        Vector256<double> y = CornerState.Of(0.2, 0.5, 0.09, 0.3);
        CornerMotion motion = Rig.At(Rig.Geared(Rig.OnShaft), CornerState.Of(0.2, 0.5, -0.01, 0.3), road: Rig.Over(new RampPiece(1, 10)), speed: 5);
        Near(distance, motion.Guard(guard, 0.2, y), 1e-6 * distance);
        Same(motion, guard, 0.2, y);
    }

    [Fact]
    public void Past_the_end_it_is_negative() =>
        Near(-0.0025, Rig.At(Rig.Geared(Rig.OnShaft), Rig.State(-0.01, 0)).Guard(CornerGuard.TravelLow, 0, Rig.State(-0.065, 0)), 1e-12); // springs touch at −62.5 mm

    // What has no end there is infinitely far from it.
    [Fact]
    public void Outermost_pieces_have_no_end()
    {
        CornerMotion low = Rig.At(Rig.Geared(Rig.OnShaft), Rig.State(-1, 0)), high = Rig.At(Rig.Geared(Rig.OnShaft), Rig.State(1, 0, -0.01));
        Assert.Equal(double.PositiveInfinity, low.Guard(CornerGuard.TravelLow, 0, Rig.State(-2, 0)));
        Near(0.9375, low.Guard(CornerGuard.TravelHigh, 0, Rig.State(-1, 0)), 1e-12); // springs touch at −62.5 mm
        Assert.Equal(double.PositiveInfinity, high.Guard(CornerGuard.TravelHigh, 0, Rig.State(2, 0)));
        Assert.Equal(double.PositiveInfinity, high.Guard(CornerGuard.DeflectionLow, 0, Rig.State(1, 0, -1)));
        Near(0.01, high.Guard(CornerGuard.DeflectionHigh, 0, Rig.State(1, 0, -0.01)), 1e-12);
        CornerMotion fast = Rig.At(Rig.Geared(Rig.OnShaft), Rig.State(0.1, 3), 1), back = Rig.At(Rig.Geared(Rig.OnShaft), Rig.State(0.1, -20), -3);
        Assert.Equal(double.PositiveInfinity, fast.Guard(CornerGuard.VelocityHigh, 0, Rig.State(0.1, 30)));
        Near(0.4, fast.Guard(CornerGuard.VelocityLow, 0, Rig.State(0.1, 3)), 1e-9); // 0.8 · 3 − 2
        Assert.Equal(double.PositiveInfinity, back.Guard(CornerGuard.VelocityLow, 0, Rig.State(0.1, -30)));
        Near(6, back.Guard(CornerGuard.VelocityHigh, 0, Rig.State(0.1, -20)), 1e-9); // −10 + 16
        CornerMotion rim = Rig.At(Rig.Geared(null), Rig.State(0.1, 0, 0.06));
        Assert.Equal(double.PositiveInfinity, rim.Guard(CornerGuard.DeflectionHigh, 0, Rig.State(0.1, 0, 0.06)));
        Near(0.01, rim.Guard(CornerGuard.DeflectionLow, 0, Rig.State(0.1, 0, 0.06)), 1e-12);
    }

    [Fact]
    public void A_tyre_that_would_pull_is_guarded_by_its_formula_turned_round()
    {
        Vector256<double> y = Rig.State(0.1, 0, 0.001, -1); // 200 − 500 N
        CornerMotion motion = Rig.At(Rig.Geared(null), y);
        Near(300, motion.Guard(CornerGuard.TyreForce, 0, y), 1e-6);
        Same(motion, CornerGuard.TyreForce, 0, y);
        motion.Cross(CornerGuard.TyreForce, 0, y);
        Near(-300, motion.Guard(CornerGuard.TyreForce, 0, y), 1e-6);
        Same(motion, CornerGuard.TyreForce, 0, y);
    }

    [Fact]
    public void The_loss_of_a_bump_stop_on_the_axle_is_a_guard_of_its_own()
    {
        Vector256<double> y = Rig.State(0.355, -2);
        CornerMotion motion = Rig.At(Rig.Geared(Rig.OnAxle), y, -1);
        Near(0.6, motion.Guard(CornerGuard.AxleLoss, 0, y), 1e-9); // 1 − 0.2 · 2
        Same(motion, CornerGuard.AxleLoss, 0, y);
        motion.Cross(CornerGuard.AxleLoss, 0, y);
        Near(-0.6, motion.Guard(CornerGuard.AxleLoss, 0, y), 1e-9);
        Same(motion, CornerGuard.AxleLoss, 0, y);
    }

    // On its end a guard is still positive, by 1e-13 m, 1e-10 m/s or 1e-7 N: rest on a boundary does not chatter.
    [Theory]
    [InlineData(CornerGuard.TravelLow, 0.125, 0.5, 0.01, 0.2, 1e-13)]
    [InlineData(CornerGuard.TravelHigh, 0.25, 0.5, 0.01, 0.2, 1e-13)]
    [InlineData(CornerGuard.VelocityLow, 0.2, 0, 0.01, 0.2, 1e-10)]
    [InlineData(CornerGuard.VelocityHigh, 0.2, 2.5, 0.01, 0.2, 1e-10)]
    [InlineData(CornerGuard.DeflectionLow, 0.2, 0.5, 0, 0.2, 1e-13)]
    [InlineData(CornerGuard.DeflectionHigh, 0.2, 0.5, 0.05, 0.2, 1e-13)]
    [InlineData(CornerGuard.TyreForce, 0.2, 0.5, 0.0025, -1, 1e-7)]
    public void On_the_end_there_is_a_little_slack(int guard, double w, double wDot, double deflection, double speed, double slack)
    {
        CornerMotion motion = Rig.At(Rig.Geared(Rig.OnShaft), Rig.State(0.2, 0.5));
        Vector256<double> y = Rig.State(w, wDot, deflection, speed);
        Near(slack, motion.Guard(guard, 0, y), 1e-3 * slack);
        Assert.True(motion.TryLinear(guard, 0, out LinearGuard linear));
        Near(slack, Value(linear, 0, y), 1e-3 * slack);
    }

    [Fact]
    public void On_the_end_of_a_loss_there_is_a_little_slack()
    {
        Vector256<double> y = Rig.State(0.355, -5); // 1 − 0.2 · 5
        CornerMotion motion = Rig.At(Rig.Geared(Rig.OnAxle), y, -1);
        Near(1e-10, motion.Guard(CornerGuard.AxleLoss, 0, y), 1e-14);
        Assert.True(motion.TryLinear(CornerGuard.AxleLoss, 0, out LinearGuard linear));
        Near(1e-10, Value(linear, 0, y), 1e-14);
    }

    [Fact]
    public void Guards_of_a_rim_and_of_fast_pieces_are_linear_from_their_own_ends()
    {
        Vector256<double> deep = Rig.State(0.1, 3, 0.06);
        CornerMotion rim = Rig.At(Rig.Geared(Rig.OnShaft), deep, 1);
        Near(22_100, rim.Guard(CornerGuard.TyreForce, 0, deep), 1e-6); // 12 kN, 10 kN of rim, 100 N
        foreach (int guard in new[] { CornerGuard.DeflectionLow, CornerGuard.TyreForce, CornerGuard.VelocityLow })
            Same(rim, guard, 0, deep);
        Vector256<double> back = Rig.State(0.1, -20);
        Same(Rig.At(Rig.Geared(Rig.OnShaft), back, -3), CornerGuard.VelocityHigh, 0, back);
    }

    // r = 1 − 3(w − 100 mm)/m: 0.7 at 200 mm.
    [Fact]
    public void A_velocity_under_a_changing_ratio_is_geared_from_its_own_piece() =>
        Near(1.4, Rig.At(Rig.Of([new(0, 1), new(0.1, 1), new(0.3, 0.4)]), Rig.State(0.2, 2)).Guard(CornerGuard.VelocityLow, 0, Rig.State(0.2, 2)), 1e-9);

    // A footprint over a corner of the ground is a parabola; force and deflection follow it to the second power of time.
    [Theory]
    [InlineData(CornerGuard.DeflectionLow)]
    [InlineData(CornerGuard.DeflectionHigh)]
    [InlineData(CornerGuard.TyreForce)]
    public void Guards_over_a_bent_road_are_polynomials_of_time(int guard)
    {
        Road road = Road.Build(Ground.Build([new FlatPiece(1), new RampPiece(1, 10)]), TyreContact.Footprint, 0, 0.4);
        Vector256<double> y = CornerState.Of(0.1, 0.5, -0.02, 0.1);
        CornerMotion motion = Rig.At(Rig.Geared(null), y, road: road, speed: 5);
        motion.PassBreak(0, 0.16, y); // the parabola from 0.8 to 1.2 m
        Assert.NotEqual(0, road.Segments[1].PolynomialBend);
        Assert.True(motion.TryLinear(guard, 0.18, out LinearGuard linear));
        foreach (double after in new[] { 0, 0.01, 0.03 })
            Near(motion.Guard(guard, 0.18 + after, y), Value(linear, after, y), 1e-9);
        motion.Cross(CornerGuard.TyreForce, 0.18, y);
        Assert.True(motion.TryLinear(guard, 0.18, out linear));
        Near(motion.Guard(guard, 0.21, y), Value(linear, 0.03, y), 1e-9);
    }

    [Fact]
    public void Over_an_arc_or_waves_the_tyres_guards_are_no_polynomials_and_under_a_changing_ratio_the_velocitys_are_none()
    {
        Vector256<double> y = Rig.State(0.1, 0.5);
        CornerMotion wave = Rig.At(Rig.Of([new(0, 1), new(0.3, 0.4)]), y, road: Rig.Over(new HaversinePiece(0.1, 2, 3)), speed: 5);
        bool[] linear = [.. Enumerable.Range(0, 8).Where(g => g != CornerGuard.AxleLoss).Select(g => wave.TryLinear(g, 0, out _))];
        Assert.Equal([true, true, false, false, false, false, false], linear);
        Near(0.4, wave.Guard(CornerGuard.VelocityLow, 0, y), 1e-9); // 0.8 · 0.5

        Road circle = Road.Build(Ground.Build([new FlatPiece(1), new StepPiece(0.05)]), TyreContact.RollingCircle, 0.4, 0);
        int arc = Enumerable.Range(0, circle.Segments.Length).First(i => circle.Segments[i].Form == RoadForm.Arc);
        CornerMotion step = Rig.At(Rig.Geared(null), y, road: circle, speed: 5);
        for (int i = 0; i < arc; i++)
            step.PassBreak(i, circle.Breaks[i] / 5, y);
        Assert.False(step.TryLinear(CornerGuard.DeflectionLow, circle.Breaks[arc - 1] / 5, out _));
        Assert.True(step.TryLinear(CornerGuard.VelocityHigh, 0, out _));
    }

    // Three waves of 2 m at 5 m/s: 0.4 s a wave. In half a second lie 2.5 half waves, so it is looked at in 3 stretches; a velocity always in 2.
    [Fact]
    public void A_step_is_looked_at_half_wave_by_half_wave()
    {
        CornerMotion motion = Rig.At(Rig.Geared(null), Rig.State(0.1, 0), road: Rig.Over(new HaversinePiece(0.1, 2, 3)), speed: 5);
        var step = new DenseStep { Start = 0, Length = 0.5 };
        Assert.Equal(3, motion.Stretches(CornerGuard.DeflectionLow, step));
        Assert.Equal(3, motion.Stretches(CornerGuard.DeflectionHigh, step));
        Assert.Equal(3, motion.Stretches(CornerGuard.TyreForce, step));
        Assert.Equal(2, motion.Stretches(CornerGuard.VelocityHigh, step));
        Assert.Equal(20_001, motion.Stretches(CornerGuard.DeflectionHigh, step with { Length = 1e9 }));
        Assert.Equal(1, Rig.At(Rig.Geared(null), Rig.State(0.1, 0)).Stretches(CornerGuard.DeflectionHigh, step));
    }

    private static void Same(CornerMotion motion, int guard, double t, Vector256<double> y)
    {
        Assert.True(motion.TryLinear(guard, t, out LinearGuard linear));
        Near(motion.Guard(guard, t, y), Value(linear, 0, y), 1e-9);
        Near(motion.Guard(guard, t + 0.01, y), Value(linear, 0.01, y), 1e-9);
    }

    private static double Value(LinearGuard guard, double after, Vector256<double> y) =>
        guard.Offset + Vector256.Dot(guard.Weights, y) + (after * (guard.PerSecond + (after * guard.PerSecondSquared)));

    private static void Near(double expected, double found, double within) => Assert.Equal(expected, found, within);
}
