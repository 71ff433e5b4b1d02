using Xunit;

using static QuarterCar.Studies.Tests.Scenes;

namespace QuarterCar.Studies.Tests;

/// <summary>What the course, load-case and linkage scenarios teach: closed forms where there are some, else comparisons with margins far above the errors of the figures.</summary>
public class CourseLessonTests
{
    private const double Length = 1e-10;

    // F(ride) = W: no gas and a ratio of 1.
    [Theory, InlineData("empty", 5600), InlineData("laden", 10_200)]
    public void On_the_loading_ramp_a_case_moves_the_shaft_by_its_load_over_the_series_rate(string name, double weight)
    {
        Model.Statics.StandingFigures f = Check("loading-ramp").Figures, other = CheckCase("loading-ramp", name).Figures;
        double series = 120e3 * 170 / 290;
        Assert.Equal((weight - 8800) / series, other.ShaftTravel - f.ShaftTravel, Length);
        Assert.Equal(-(weight - 8800) / 120e3, other.StopNutGapRideHeight!.Value - f.StopNutGapRideHeight!.Value, Length);
        Assert.Equal(0.085, f.StopNutGapFullDroop!.Value, Length);
        Assert.Equal(0.085 - (8800 - series * 0.015) / 120e3, f.StopNutGapRideHeight.Value, Length);
    }

    [Fact]
    public void Doubled_rebound_packs_the_corner_down_over_the_whoops()
    {
        RunResult run = Run("whoops"), packed = Run("whoops", "coilover.damper.rebound=[[4 in/s, 660 lbf], [20 in/s, 1800 lbf], [80 in/s, 5800 lbf]]");

        // A millimetre of mean travel and a third of the droop are a thousand times the errors of either.
        Assert.True(packed.Figures.Travel.MeanShaftTravel > run.Figures.Travel.MeanShaftTravel + 1e-3);
        Assert.True(packed.Figures.Travel.DroopUsed < 0.67 * run.Figures.Travel.DroopUsed);
        Assert.True(packed.Figures.Tyre.Airborne > 1.5 * run.Figures.Tyre.Airborne);
    }

    [Fact]
    public void A_drop_of_h_lands_after_the_root_of_2h_over_g()
    {
        RunResult run = Run("drop-test");
        Assert.Equal(Math.Sqrt(2 * 0.7 / 9.80665), First(run, "touchdown").Time, 1e-6);
        Assert.True(run.Figures.Energy.Damper > 2 * run.Figures.Bottoming.Sum(c => c.Energy), "the damper takes most of the fall");
    }

    [Fact]
    public void One_class_rougher_is_twice_the_height_everywhere_and_rides_at_least_half_as_hard_again()
    {
        RunResult d = Run("gravel-lane"), e = Run("gravel-lane", "terrain[1].random.iso8608=E");
        for (double s = 0; s < 160; s += 0.37)
            Assert.Equal(2 * ((RunTrack)d.Track).Course.Ground.Height(s), ((RunTrack)e.Track).Course.Ground.Height(s), 1e-12);
        Assert.True(e.Figures.Acceleration.WeightedRms > 1.5 * d.Figures.Acceleration.WeightedRms);
        Assert.True(e.Figures.Tyre.DynamicLoadCoefficient > 1.5 * d.Figures.Tyre.DynamicLoadCoefficient);
    }

    [Theory, InlineData("laden"), InlineData("hot"), InlineData("light")]
    public void Load_and_heat_leave_the_crossover_where_it_was(string name) => Assert.Equal(
        Check("load-cases").Figures.CrossoverShaftTravel!.Value, CheckCase("load-cases", name).Figures.CrossoverShaftTravel!.Value, Length);

    [Fact]
    public void More_preload_under_a_nut_that_stays_moves_the_crossover_by_upper_over_lower_and_spares_the_lower_spring_nothing()
    {
        StandingResult laden = CheckCase("load-cases", "laden"), raised = CheckCase("load-cases", "laden, raised");
        Assert.Equal(0.015 * 95 / 135, raised.Figures.CrossoverShaftTravel!.Value - laden.Figures.CrossoverShaftTravel!.Value, Length);
        Assert.Equal(laden.Springs[1].CompressionFullBump, raised.Springs[1].CompressionFullBump, Length);
        Assert.Equal(0.015 * 95 / (95 + 135), raised.Figures.StopNutGapFullDroop!.Value - laden.Figures.StopNutGapFullDroop!.Value, Length);
        Assert.True(raised.Figures.RideHeight > laden.Figures.RideHeight + 0.010);
    }

    [Fact]
    public void Hot_gas_raises_the_corner_and_load_lowers_it()
    {
        double ride = Check("load-cases").Figures.RideHeight;
        Assert.True(CheckCase("load-cases", "hot").Figures.RideHeight > ride + 1e-3);
        Assert.True(CheckCase("load-cases", "light").Figures.RideHeight > ride + 5e-3);
        Assert.True(CheckCase("load-cases", "laden").Figures.RideHeight < ride - 5e-3);
    }

    [Fact]
    public void A_rising_ratio_stiffens_the_wheel_while_the_springs_stay_straight()
    {
        StandingResult check = Check("rising-ratio");
        Model.Statics.CurveRow[] primary = [.. check.Curve.Where(r => r.Region == Model.RateRegion.Primary && r.ShaftTravel > 1e-6)];
        Assert.All(primary, r => Assert.Equal(330.0 * 470 / 800 * PoundPerInch, r.SpringRate, 1e-6));
        Assert.All(primary.Zip(primary.Skip(1)), p => Assert.True(p.Second.WheelRate > p.First.WheelRate));
        Assert.Equal(0.58, check.Curve[0].MotionRatio, 1e-12);
        Assert.InRange(Math.Pow(check.Curve[^1].MotionRatio / check.Curve[0].MotionRatio, 2), 1.75, 1.85); // "1.8 times as stiff"
    }

    [Fact]
    public void An_axle_stop_touches_at_its_length_of_wheel_travel_a_shaft_stop_at_its_length_of_shaft()
    {
        RunResult axle = Run("axle-bump-stop"), shaft = Run("axle-bump-stop", "coilover.bump_stop.on=shaft");
        Assert.Equal(0.305 - 0.85 * 0.090, First(axle, "bump_stop").ShaftTravel, 1e-6);
        Assert.Equal(0.305 - 0.090, First(shaft, "bump_stop").ShaftTravel, 1e-6);
        Assert.True(Hardest(shaft) > 1.1 * Hardest(axle), "at the shaft the same work at the wheel needs more force");
    }
}
