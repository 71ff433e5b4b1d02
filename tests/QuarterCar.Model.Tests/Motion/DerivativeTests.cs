using System.Runtime.Intrinsics;

using QuarterCar.Model.Motion;
using QuarterCar.Model.Terrain;
using QuarterCar.Model.Tests.Statics;

using Xunit;

namespace QuarterCar.Model.Tests.Motion;

/// <summary>The equations of motion against forces worked by hand (physics.md sections 1 to 4): both forms, and the plain reading that traces use.</summary>
public class DerivativeTests
{
    // Shaft travel and velocity are 0.8 of the wheel's; the force at the wheel is 0.8 of the shaft's.
    [Theory]
    [InlineData(0.1, 0.5, 0, 2464)]          // 20 · 130 + 400 + 80 = 3080
    [InlineData(0.2, 0.5, 0, 4064)]          // in the zone: 20 · 210 + 2 · 400 + 80
    [InlineData(0.2, -0.5, -1, 1376)]        // coming out: 4200 − 3 · 800 − 80
    [InlineData(0.35, 0.5, 0, 8256)]         // 40 mm into the bump stop: 6600 + 400 + 80 + 3000 · (1 + 0.2 · 0.4)
    [InlineData(0.31, 0.5, 0, 5497.6)]       // 8 mm in: 5960 + 400 + 80 + 400 · 1.08
    [InlineData(0.35, -0.5, -1, 6784)]       // 6600 − 800 − 80 + 3000 · 0.92
    [InlineData(0.35, -7.5, -2, -4384)]      // it has let go: 1 − 0.2 · 6 < 0; 6600 − 12000 − 80
    [InlineData(0.38, 0.5, 0, 43993.6)]      // 4 mm of metal: 7080 + 400 + 80 + 5400 · 1.08 + 40000 · 1.04
    [InlineData(0.38, -15, -3, -13600)]      // metal has let go too: 7080 − 24000 − 80 = −17000
    [InlineData(-0.01, 0.5, 0, -4064)]       // 8 mm of top-out: 840 + 400 + 80 − 8000 · (1 − 0.5 · 0.4)
    [InlineData(-0.01, -0.5, -1, -7712)]     // 840 − 800 − 80 − 8000 · 1.2
    [InlineData(-0.01, 3, 1, 2656)]          // 1 − 0.5 · 2.4 < 0: 840 + 2400 + 80
    [InlineData(-0.07, 0.5, 0, -35456)]      // 56 mm past full droop the springs are loose: 400 + 80 − 56000 · 0.8 = −44320
    public void Suspension_by_hand_with_a_bump_stop_on_the_shaft(double w, double wDot, int cells, double wheel)
    {
        CornerMotion motion = Rig.At(Rig.Geared(Rig.OnShaft), Rig.State(w, wDot), cells);
        Assert.True(motion.IsPlain);
        Forces(motion, Rig.State(w, wDot), wheel, 2100);
        CornerForces plain = CornerForces.At(Rig.Geared(Rig.OnShaft), w, wDot, 0);
        Near(wheel, plain.Wheel, 1e-8);
        Near(0.8 * w, plain.ShaftTravel, 1e-16);
        Near(0.8 * wDot, plain.ShaftVelocity, 1e-15);
    }

    // Touched at 375 − 60 = 315 mm of wheel travel; its force is not geared.
    [Theory]
    [InlineData(0.355, 0.5, 0, 9028)]     // 0.8 · (20 · 334 + 400 + 80) + 3000 · (1 + 0.2 · 0.5)
    [InlineData(0.325, 0.5, 0, 5894)]     // 10 mm in: 0.8 · (20 · 310 + 480) + 500 · 1.1
    [InlineData(0.355, -0.5, -1, 7340)]   // 0.8 · (6680 − 800 − 80) + 3000 · 0.9
    public void Suspension_by_hand_with_a_bump_stop_on_the_axle(double w, double wDot, int cells, double wheel)
    {
        Forces(Rig.At(Rig.Geared(Rig.OnAxle), Rig.State(w, wDot), cells), Rig.State(w, wDot), wheel, 2100);
        Near(wheel, CornerForces.At(Rig.Geared(Rig.OnAxle), w, wDot, 0).Wheel, 1e-8);
    }

    // Past its inner point the damper's line does not go through the origin: 600 N + 400 N·s/m · 1 m/s in, twice that in the zone.
    [Fact]
    public void A_damper_of_two_points_follows_its_second_line()
    {
        DamperData damper = Rig.Damper with { Compression = [new(0.5, 800), new(1.5, 1200)] };
        Vector256<double> y = Rig.State(0.2, 1.25);
        Forces(Rig.At(Rig.Of([new(0, 0.8)], damper: damper), y, 1), y, 0.8 * (4200 + 2000 + 80), 2100);
    }

    [Fact]
    public void A_bump_stop_on_the_axle_lets_go_where_it_would_pull()
    {
        // 0.8 · (6680 − 9600 − 80) = −2400; 1 − 0.2 · 6 = −0.2 of 3000 would pull.
        Vector256<double> y = Rig.State(0.355, -6);
        CornerMotion motion = Rig.At(Rig.Geared(Rig.OnAxle), y, -1);
        Forces(motion, y, -3000, 2100);
        motion.Cross(CornerGuard.AxleLoss, 0, y);
        Forces(motion, y, -2400, 2100);
        motion.Cross(CornerGuard.AxleLoss, 0, y);
        Forces(motion, y, -3000, 2100);
        Near(-2400, CornerForces.At(Rig.Geared(Rig.OnAxle), 0.355, -6, 0).Wheel, 1e-9);
    }

    [Theory]
    [InlineData(0.01, 0.2, 2100)]
    [InlineData(0.06, 0.2, 22_100)]   // 12 kN, 10 kN of rim, 100 N
    [InlineData(-0.01, 0.2, 0)]       // in the air
    [InlineData(0, 0.2, 0)]
    [InlineData(0.001, -1, 0)]        // 200 − 500: it does not pull
    [InlineData(0.003, -1, 100)]
    public void Tyre_by_hand(double deflection, double speed, double tyre)
    {
        Vector256<double> y = Rig.State(0.1, 0.5, deflection, speed);
        Forces(Rig.At(Rig.Geared(null), y), y, 2464, tyre);
    }

    [Fact]
    public void Tyre_feels_the_roads_climb()
    {
        // 1 m up over 10 m at 5 m/s; after 0.2 s the road is at 100 mm and climbs 0.5 m/s.
        Vector256<double> start = CornerState.Of(0.1, 0.5, -0.01, 0), y = CornerState.Of(0.1, 0.5, 0.09, 0.3);
        CornerMotion motion = Rig.At(Rig.Geared(null), start, road: Rig.Over(new RampPiece(1, 10)), speed: 5);
        Forces(motion, y, 2464, 2100, t: 0.2);
    }

    [Fact]
    public void A_ratio_that_changes_gears_travel_velocity_and_force()
    {
        // r = 1 − 2w/m: 0.8 at 100 mm, where the shaft has moved 90. 0.8 · (20 · 140 + 400 + 80).
        Corner corner = Rig.Of([new(0, 1), new(0.3, 0.4)], damper: Rig.Damper);
        Vector256<double> y = Rig.State(0.1, 0.5);
        CornerMotion motion = Rig.At(corner, y);
        Assert.False(motion.IsPlain);
        Derivative(motion.Derivative(0, y), y, 2624, 2100);
        Near(2624, CornerForces.At(corner, 0.1, 0.5, 0).Wheel, 1e-9);

        // Held past the table's end: X(0.3) = 210 mm, r = 0.4.
        Vector256<double> past = Rig.State(0.35, 0.5);
        Derivative(Rig.At(corner, past).Derivative(0, past), past, 0.4 * ((20_000 * 0.28) + 200 + 80), 2100);
    }

    [Fact]
    public void Gas_pushes_from_where_the_motion_began()
    {
        // NL-11 (check-values, formula from memory): 739.0517640641 N at 100 mm of gas that stood at 0, 642.159 N of gas that stands there.
        Corner corner = Rig.Of([new(0, 1)], gas: Bench.Gas);
        Vector256<double> y = Rig.State(0.1, 0.5);
        CornerMotion begun = Rig.At(corner, Rig.State(0, 0)), standing = Rig.At(corner, y);
        Assert.False(begun.IsPlain); // 50 mm of column at full bump: too steep for a polynomial
        Assert.Equal(0, begun.GasStart);
        Assert.Equal(0.1, standing.GasStart);
        Derivative(begun.Derivative(0, y), y, 3080 + 739.0517640641, 2100);
        Derivative(standing.Derivative(0, y), y, 3080 + 642.159, 2100);
        Near(3080 + 739.0517640641, CornerForces.At(corner, 0.1, 0.5, 0).Wheel, 1e-9);
    }

    // A column of 900 mm: 480.3975 N · (900 / (900 − x))^1.4 less the atmosphere's 30.3975 N.
    [Fact]
    public void Gas_as_a_polynomial_is_geared_and_ends_a_tenth_past_the_stroke()
    {
        Corner corner = Rig.Of([new(0, 0.5)], gas: Bench.Gas with { Volume = 0.9 * 3e-4 });
        Vector256<double> y = Rig.State(0.4, 0);
        CornerMotion motion = Rig.At(corner, Rig.State(0, 0));
        Assert.True(motion.IsPlain);
        Forces(motion, y, 0.5 * ((20_000 * 0.25) + (480.3975 * Math.Pow(900.0 / 700, 1.4)) - 30.3975), 2100, 1e-8); // 200 mm of shaft
        Assert.False(double.IsNaN(motion.DerivativePlain(0, Rig.State(-0.0599, 0)).GetElement(1)));
        Assert.True(double.IsNaN(motion.DerivativePlain(0, Rig.State(-0.0601, 0)).GetElement(1)));
        Assert.False(double.IsNaN(motion.DerivativePlain(0, Rig.State(0.6599, 0)).GetElement(1)));
        Assert.True(double.IsNaN(motion.DerivativePlain(0, Rig.State(0.6601, 0)).GetElement(1)));
    }

    [Fact]
    public void A_motion_that_is_used_again_forgets_the_corner_before()
    {
        GasData wide = Bench.Gas with { Volume = 0.9 * 3e-4 };
        CornerMotion motion = Rig.At(Rig.Of([new(0, 1)], gas: wide), Rig.State(0.1, 0.5));
        Vector256<double> y = Rig.State(0.1, 0.5);
        motion.Begin(Rig.Of([new(0, 1)], gas: wide with { Exponent = 1 }), Rig.Level, 0, Rig.State(0, 0));
        Forces(motion, y, 3080 + (480.3975 * 900 / 800) - 30.3975, 2100, 1e-8);
        motion.Begin(Rig.Of([new(0, 1)], gas: Bench.Gas), Rig.Level, 0, y);
        Assert.False(motion.IsPlain);
        motion.Begin(Rig.Geared(null), Rig.Level, 0, y);
        Forces(motion, y, 2464, 2100);
    }

    private static void Forces(CornerMotion motion, Vector256<double> y, double wheel, double tyre, double within = 1e-9, double t = 0)
    {
        Derivative(motion.Derivative(t, y), y, wheel, tyre, within);
        Derivative(motion.DerivativePlain(t, y), y, wheel, tyre, within);
    }

    // ẅ = (F_t − F_w)/m_u − F_w/m_s, v̇_u = (F_t − F_w)/m_u − g.
    private static void Derivative(Vector256<double> found, Vector256<double> y, double wheel, double tyre, double within = 1e-9)
    {
        double unsprung = (tyre - wheel) / Rig.Unsprung;
        Assert.Equal(y.GetElement(1), found.GetElement(0));
        Near(unsprung - (wheel / Rig.Sprung), found.GetElement(1), within);
        Assert.Equal(y.GetElement(3), found.GetElement(2));
        Near(unsprung - 9.80665, found.GetElement(3), within);
    }

    private static void Near(double expected, double found, double within) => Assert.Equal(expected, found, within);
}
