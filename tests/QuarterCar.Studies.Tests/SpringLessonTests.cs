using Xunit;

using static QuarterCar.Studies.Tests.Scenes;

namespace QuarterCar.Studies.Tests;

/// <summary>What the spring scenarios teach, against closed forms. Standing lengths are found to the last bits, so 1e-10 m and 1e-6 N/m are rounding with room.</summary>
public class SpringLessonTests
{
    private const double Length = 1e-10, Rate = 1e-6;

    [Fact]
    public void Coil_bind_springs_add_up_to_enough_travel_and_the_upper_is_short_all_the_same()
    {
        StandingResult check = Check("coil-bind");
        Assert.True(0.150 + 0.200 > 0.300 + 0.020, "the sum looks safe");

        // 40 and 60 N/mm in series take 60 and 40 % of the 320 mm at full bump.
        Assert.Equal(0.150 - 0.6 * 0.320, check.Springs[0].BindClearanceFullBump, Length);
        Assert.Equal(0.200 - 0.4 * 0.320, check.Springs[1].BindClearanceFullBump, Length);

        // The upper is closed when the stack is in by 150 mm / 0.6 = 250 mm, which is 230 mm of shaft travel.
        Assert.Equal(0.070, check.Springs[0].BindsAtShaftShowing!.Value, Length);
        Assert.Contains(check.Warnings, w => w.Code == "binds_before_full_bump" && w.Message.Contains("upper", StringComparison.Ordinal) && w.Message.Contains("coil nut", StringComparison.Ordinal));
        RunResult run = Run("coil-bind");
        Assert.Equal(0.230, First(run, "upper_bind").ShaftTravel, 1e-6);
        Assert.True(First(run, "upper_bind").Time < First(run, "bump_stop").Time);
    }

    [Fact]
    public void Coil_bind_is_cured_by_a_stop_nut_that_holds_the_slider_first()
    {
        StandingResult cured = Check("coil-bind", "coilover.stop_nut={ gap: 40 mm, at: ride_height }");
        double held = 2600 / 0.72 / 40_000 + 0.040; // upper's compression at ride height, and the gap
        Assert.Equal(0.150 - held, cured.Springs[0].BindClearanceFullBump, Length);
        Assert.Equal(0.200 - (0.320 - held), cured.Springs[1].BindClearanceFullBump, Length);
        Assert.DoesNotContain(cured.Warnings, w => w.Code == "binds_before_full_bump");
        Assert.Equal(0, Count(Run("coil-bind", "coilover.stop_nut={ gap: 40 mm, at: ride_height }"), "upper_bind"));
    }

    [Fact]
    public void A_single_spring_raises_the_ride_height_by_its_preload()
    {
        Model.Statics.StandingFigures f = Check("single-spring").Figures, more = Check("single-spring", "coilover.preload=1.15 in").Figures;
        Assert.Equal(0.75 * Inch, more.RideHeight - f.RideHeight, Length);
        Assert.Equal((8 - (700 / 0.9 / 250 - 0.4)) * Inch, f.RideHeight, Length);
        Assert.Null(f.SecondaryRate);
        Assert.Null(f.CrossoverShaftTravel);
        double mass = 700 * Pound / 9.80665;
        Assert.Equal(Math.Sqrt(0.9 * 0.9 * 250 * PoundPerInch / mass) / (2 * Math.PI), f.SpringFrequency!.Value, 1e-12);
    }

    [Fact]
    public void The_tender_is_solid_well_before_ride_height_and_open_at_full_droop()
    {
        StandingResult check = Check("tender-triple");
        double travel = 3.6 * Inch;
        Assert.Equal(travel, check.Springs[0].CompressionRideHeight, Length);

        // Under 60 lbf/in · 3.6 in the stack is in by 216·(1/60 + 1/220 + 1/320) in, 3.2 of which are preload.
        double solidAt = 216 * (1 / 60.0 + 1 / 220.0 + 1 / 320.0) - 3.2;
        Assert.Equal((13 - solidAt) * Inch, check.Springs[0].BindsAtShaftShowing!.Value, Length);
        Assert.InRange(solidAt * Inch, 0, check.Figures.ShaftTravel / 2);
        Assert.Equal(220.0 * 320 / (220 + 320) * PoundPerInch, check.Figures.PrimaryRate, Rate);
    }

    [Fact]
    public void The_tender_opens_where_the_shelf_lets_the_wheel_down_and_closes_on_landing()
    {
        RunResult run = Run("tender-triple");
        double solidAt = (216 * (1 / 60.0 + 1 / 220.0 + 1 / 320.0) - 3.2) * Inch;
        Assert.Equal(solidAt, First(run, "tender_free").ShaftTravel, 1e-6);
        Assert.Equal(solidAt, First(run, "tender_solid").ShaftTravel, 1e-6);
        Assert.True(First(run, "liftoff").Time < First(run, "tender_solid").Time);
        Assert.True(run.Figures.Travel.MinShaftTravel < solidAt);
    }

    [Fact]
    public void A_corner_weighed_by_its_springs_stands_where_that_load_puts_it()
    {
        StandingResult check = Check("weighed-corner");
        Assert.Equal(780 * Pound, check.Figures.SpringForce, 1e-8);
        Assert.Equal((11 - (780 * (1 / 200.0 + 1 / 300.0) - 1.6)) * Inch, check.Figures.RideHeight, Length);
        Assert.Equal(0.8 * (780 * Pound + check.Figures.GasForce), check.Corner.SprungWeight, 1e-8);
    }
}
