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
