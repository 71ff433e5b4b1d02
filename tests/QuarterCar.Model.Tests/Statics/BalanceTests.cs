using QuarterCar.Model.Statics;

using Xunit;

namespace QuarterCar.Model.Tests.Statics;

/// <summary>Where a corner stands, and the standing curve, against hand work in mm, N and N/mm.</summary>
public class BalanceTests
{
    [Fact]
    public void Below_the_preload_s_force_it_stands_on_its_top_out() =>
        Near(-900 / 1.02e6, Bench.Of(Bench.Single, 100, 0.3, 0.05).Standing, 1e-12); // (20 + 1000) N/mm take the 900 N that are too much

    [Fact]
    public void Above_all_that_springs_carry_it_stands_on_metal() =>
        Near(0.2 + (16_000 / 10.02e6), Bench.Of(Bench.Single, 20_000, 0.2, 0).Standing, 1e-12); // 4 kN of spring at full bump

    [Fact]
    public void Past_bind_coils_carry_at_their_own_rate() =>
        Near(0.3 + (3000 / 5e6), Bench.Of(Bench.Single, 9000, 0.35, 0).Standing, 1e-12); // 6 kN at bind

    [Fact]
    public void A_load_that_metal_would_give_way_under_by_a_thousand_kilometres_is_refused()
    {
        CornerException e = Assert.Throws<CornerException>(() => Bench.Of(Bench.Single, 1e15, 0.3, 0));
        Assert.Equal("a load that even the stops do not carry", e.Found);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_bump_stop_that_touches_carries_its_part(bool onAxle) =>
        Near(0.28, Bench.Of(Bench.Long, 6600 + 3000, 0.3, 0.05, bump: Bench.Bump(onAxle)).Standing, 1e-12); // 20 · 330, and 3 kN at 40 mm

    [Theory]
    [InlineData(false, 7680, 0.35)]  // 280 mm of shaft: 0.8 · (20 · 330 + 3000)
    [InlineData(true, 8344, 0.355)]  // 284 mm of shaft, 40 mm into a stop that is touched at 375 − 60: 0.8 · 20 · 334 + 3000
    public void A_bump_stop_on_the_axle_is_not_geared(bool onAxle, double load, double standing) =>
        Near(standing, Bench.Of(Bench.Long, load, 0.3, 0.05, ratio: 0.8, bump: Bench.Bump(onAxle)).Standing, 1e-12);

    // The vehicle stands on its bump stop at 250 mm; the gap counts from where its springs alone would let it stand.
    [Fact]
    public void A_gap_at_ride_height_is_measured_without_the_bump_stop()
    {
        Corner corner = Bench.Of(Bench.Pair, 1500, 0.11, 0.06, bump: Bench.Bump(onAxle: false), nut: new StopNutData(0.005, StopNutReference.RideHeight));
        Near(0.080, corner.Stack.HeldTravel, 1e-11); // 1500 / 20 + 5
        Near(0.065 - (0.015 * 50 / 62), corner.Standing, 1e-11); // past 50 mm the stop's 50 N/mm take their part
    }

    [Fact]
    public void A_falling_ratio_is_searched_for_the_least_travel()
    {
        // r = 1 − 2 w/m, X = w − w²/m: force 20 · (X + 50) rises, its share at the wheel falls. r·F = 0.8 · 20 · (90 + 50) = 2240 N at 100 mm,
        // where d(r·F)/dw = 0.64 · 20 − 2 · 2.8 = 7.2 N/mm is still above 0.
        Corner corner = Bench.Of(Bench.Single, 2240, 0.2, 0.05, table: [new(0, 1), new(0.2, 0.6)]);
        Near(0.1, corner.Standing, 1e-12);
        Near(7200, StandingWork.WheelRate(corner, 0.1, movingGas: false), 1e-6);
    }

    [Fact]
    public void A_wheel_force_that_falls_again_before_the_next_break_is_met_on_its_rise()
    {
        // r = 1 − 2 w/m, so r·F = 0.7 · 20 · (150 − 22.5 + 50) = 2485 N at 150 mm, at most 2530 N near 184 mm, and 2236 N at full bump, where X = 200 mm.
        Near(0.15, Bench.Of(Bench.Single, 2485, 0.2, 0.05, table: [new(0, 1), new(0.3, 0.4)]).Standing, 1e-12);
    }

    [Theory]
    [InlineData(2525, true)]
    [InlineData(2530, false)] // (1 − 2w)² = 2 · (w − w² + 0.05 m) at w = 183.77 mm: 0.63246 · 20 · 200 = 2529.822 N
    public void A_load_past_the_crest_of_a_falling_ratio_stands_past_full_bump_alone(double load, bool onRise)
    {
        double standing = Bench.Of(Bench.Single, load, 0.2, 0.05, table: [new(0, 1), new(0.3, 0.4)]).Standing;
        Assert.Equal(onRise, standing < 0.1838);
        Assert.Equal(!onRise, standing > (1 - Math.Sqrt(0.2)) / 2); // w² − w + 0.2 = 0
    }

    [Fact]
    public void Gas_that_lifts_the_corner_off_hangs_it_on_its_top_out()
    {
        // 1.5 MPa on 120 mm of rod over 350 mm: 16 965 N at full droop, against 1 kN of load and 1000 N/mm: −15.2 mm (root by mpmath).
        var gas = new GasData(1.5e6, 0.12, 0.35 * Math.PI * 0.06 * 0.06);
        Near(-0.0152103293093691706, Bench.Of(Bench.Single, 1000, 0.3, 0, gas: gas).Standing, 1e-14);
    }

    [Fact]
    public void A_load_that_only_gas_squeezed_to_nothing_would_carry_is_refused()
    {
        CornerException e = Assert.Throws<CornerException>(() => Bench.Of(Bench.Single, 1e9, 0.3, 0, gas: Bench.Gas));
        Assert.Equal("corner", e.Key);
        Assert.NotEmpty(e.Wanted);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void The_force_bends_at_the_ends_of_the_stroke_the_springs_breaks_and_the_bump_stops_points(bool withBumpStop)
    {
        // Preload 50: springs touch at −50 and bind at 250 mm of shaft, over 0.8; full bump at 300 of wheel; the bump stop touches at 180 mm of
        // shaft and bends at 200, its last line goes on.
        double[] all = [-0.0625, 0, 0.225, 0.25, 0.3, 0.3125];
        double[] bare = [-0.0625, 0, 0.3, 0.3125];
        Bends(withBumpStop ? all : bare, Bench.Of(Bench.Single, 2000, 0.24, 0.05, ratio: 0.8, bump: Bench.Bump(onAxle: false)), withBumpStop);
    }

    [Fact]
    public void A_bump_stop_on_the_axle_bends_the_force_at_wheel_travels() =>
        Bends([-0.0625, 0, 0.24, 0.26, 0.3, 0.3125], Bench.Of(Bench.Single, 2000, 0.24, 0.05, ratio: 0.8, bump: Bench.Bump(onAxle: true)), withBumpStop: true);

    [Fact]
    public void A_ratio_bends_the_force_at_each_point_of_its_table()
    {
        // X = w to 100 mm, then w − (w − 100)²/2 m to 300 mm, then 0.8 a mm on from 280; held at 1 below 0. Full bump at 280, springs from −50 to 250.
        Corner corner = Bench.Of(Bench.Single, 2000, 0.28, 0.05, table: [new(0, 1), new(0.1, 1), new(0.3, 0.8)]);
        Bends([-0.05, 0, 0, 0.1, 0.1 + 1 - Math.Sqrt(1 - (2 * 0.15)), 0.3, 0.3], corner, withBumpStop: true);
    }

    private static void Bends(double[] expected, Corner corner, bool withBumpStop)
    {
        double[] found = Balance.Breaks(corner, withBumpStop);
        Assert.Equal(expected.Length, found.Length);
        for (int i = 0; i < found.Length; i++)
            Near(expected[i], found[i], 1e-14);
    }

    [Fact]
    public void The_curve_runs_from_full_droop_to_full_bump_with_a_row_at_the_crossover()
    {
        Corner corner = Bench.Of(Bench.Pair, 1500, 0.2, 0.06, held: 0.0802);
        CurveRow[] rows = [.. StandingCurve.Of(corner)];
        Assert.Equal(242, rows.Length); // 240 even stretches and the crossover
        Assert.Equal(0, rows[0].WheelTravel);
        Assert.Equal(0.2, rows[^1].WheelTravel);
        Near(0.2, rows[0].ShaftShowing, 1e-15);
        Near(720, rows[0].ShaftForce, 1e-8);
        Assert.Equal(RateRegion.Primary, rows[0].Region);

        CurveRow crossover = rows.Single(r => Math.Abs(r.ShaftTravel - ((1604.0 / 12 - 60) / 1000)) < 1e-12);
        Near(1604, crossover.SpringForce, 1e-7);
        Near(12e3, crossover.SpringRate, 1e-6); // the side toward droop

        CurveRow bump = rows[^1];                    // 260 mm: the upper held at 80.2, the lower at 179.8
        Near(5394, bump.SpringForce, 1e-7);
        Near(1604, bump.CoilNutForce, 1e-7);
        Near(3790, bump.StopNutForce, 1e-7);
        Near(30e3, bump.SpringRate, 1e-6);
        Near(30e3, bump.WheelRate, 1e-6);
        Assert.Equal(RateRegion.Secondary, bump.Region);
    }

    [Theory]
    [InlineData(false, 10_000, 8000)] // 0.8 · (5000 + 5000)
    [InlineData(true, 5000, 9000)]    // 0.8 · 5000 + 5000
    public void The_curve_gears_a_bump_stop_on_the_shaft_and_not_one_on_the_axle(bool onAxle, double shaft, double wheel)
    {
        CurveRow bump = StandingCurve.Of(Bench.Of(Bench.Single, 2000, 0.2, 0.05, ratio: 0.8, bump: Bench.Bump(onAxle)))[^1];
        Near(5000, bump.SpringForce, 1e-7);
        Near(5000, bump.BumpStopForce, 1e-7);
        Near(shaft, bump.ShaftForce, 1e-7);
        Near(wheel, bump.WheelForce, 1e-7);
        Assert.Equal(0.8, bump.MotionRatio);
    }

    [Fact]
    public void The_curve_has_the_gas_in_its_forces_and_a_row_where_the_bump_stop_touches_and_bends()
    {
        CurveRow[] rows = [.. StandingCurve.Of(Bench.Of(Bench.Long, 2000, 0.3, 0.05, ratio: 0.8, gas: Bench.Gas, bump: Bench.Bump(onAxle: false)))];
        Assert.Equal(241, rows.Length); // 240 even stretches of 1.5625 mm; the stop touches at 300 mm of wheel and bends at 325, the ends of the 192nd and the 208th
        CurveRow touch = rows.Single(r => Math.Abs(r.ShaftTravel - 0.26) < 1e-12);
        double gas = (480.3975 * 350 / 90) - 30.3975;
        Near(0.04, touch.ShaftShowing, 1e-12);
        Near(6200, touch.SpringForce, 1e-7); // 20 · 310
        Near(gas, touch.GasForce, 1e-7);
        Near(1000, touch.BumpStopForce, 1e-7);
        Near(7200 + gas, touch.ShaftForce, 1e-7);
        Near(0.8 * (7200 + gas), touch.WheelForce, 1e-7);
        Near(0.64 * (20e3 + 50e3 + (480.3975 * 0.35 / (0.09 * 0.09))), touch.WheelRate, 1e-5); // the side toward droop
    }

    [Fact]
    public void What_a_wrench_meets_is_the_force_and_energy_of_the_preload()
    {
        HandlingFigures figures = HandlingFigures.Of(Bench.Of(Bench.Pair, 1500, 0.2, 0.06));
        Near(720, figures.PreloadForce, 1e-8);
        Near(21.6, figures.PreloadEnergy, 1e-10); // ½ · 12 · 60² N·mm
        Assert.Null(figures.Gas);
    }

    [Fact]
    public void Gas_pressures_follow_the_gas_laws()
    {
        // A column of 350 mm of 10 bar at 20 °C: at rest 100 mm in, then fast to 200 mm with n = 1.4; outside 101 325 Pa.
        const double p1 = 1e6 + 101_325;
        var gas = new GasData(1e6, 0.02, 0.35 * Math.PI * 1e-4);
        GasPressures p = GasPressures.Of(gas, 0.1, 0.2);
        double rest = p1 * 350 / 250, bump = rest * Math.Pow(250.0 / 150, 1.4);
        Assert.Equal(1e6, p.Charge);
        Near(rest - 101_325, p.RideHeight, 1e-6);
        Near(bump - 101_325, p.FullBump, 1e-5);
        Near((bump * 363.15 / 293.15) - 101_325, p.FullBumpHot, 1e-5);
        Assert.Equal(363.15, p.HotAt);
        Assert.Equal(380, GasPressures.Of(gas with { Temperature = 380 }, 0.1, 0.2).HotAt);
    }

    private static void Near(double expected, double? found, double within) => Assert.Equal(expected, found!.Value, within);
}
