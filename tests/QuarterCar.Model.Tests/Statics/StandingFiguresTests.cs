using QuarterCar.Model.Statics;

using Xunit;

namespace QuarterCar.Model.Tests.Statics;

/// <summary>Standing figures against corners worked by hand in mm, N and N/mm (closed forms of springs in series, of the free two-mass system and of work).</summary>
public class StandingFiguresTests
{
    private const double Rounding = 1e-11;

    [Fact]
    public void A_single_spring_stands_where_load_over_ratio_meets_its_force()
    {
        StandingFigures f = StandingWork.Figures(Bench.Of(Bench.Single, 2000, 0.3, 0.05, ratio: 0.8));
        Near(2500, f.SpringForce, 1e-8);  // 2000 / 0.8
        Near(0.075, f.ShaftTravel);       // 2500 / 20 − 50
        Near(0.09375, f.WheelTravel);     // 75 / 0.8
        Near(0.225, f.RideHeight);        // 300 − 75
        Near(-0.05, f.BindClearanceFullBump); // 300 of travel, 350 asked
        Assert.Equal(20e3, f.PrimaryRate, 1e-6);
        Assert.Equal(0, f.GasForce);
        Assert.Null(f.SecondaryRate);
        Assert.Null(f.CrossoverForce);
        Assert.Null(f.CrossoverShaftTravel);
        Assert.Null(f.StopNutGapRideHeight);
        Assert.Null(f.StopNutGapFullDroop);
    }

    [Fact]
    public void The_reserve_is_the_work_from_ride_height_to_bind_less_that_of_the_load()
    {
        // Bind at 250 mm of shaft, 312.5 mm of wheel travel: ½·20·(300² − 125²) N·mm less 2000 N · 218.75 mm.
        StandingFigures f = StandingWork.Figures(Bench.Of(Bench.Single, 2000, 0.3, 0.05, ratio: 0.8));
        Near(743.75 - 437.5, f.ReserveEnergy, 1e-8);
        Near(Math.Sqrt(2 * 306.25 * 9.80665 / 2000), f.ReserveWheelSpeed, 1e-10);
    }

    [Fact]
    public void The_frequencies_are_roots_of_the_free_two_mass_system()
    {
        Corner corner = Bench.Of(Bench.Single, 2000, 0.3, 0.05, ratio: 0.8);
        StandingFigures f = StandingWork.Figures(corner);
        double kw = 0.64 * 20e3, kt = 2e5, ms = 2000 / 9.80665, mu = 300 / 9.80665;
        Near(Math.Sqrt(kw / ms) / (2 * Math.PI), f.SpringFrequency, 1e-10);
        foreach (double hertz in (double[])[f.RideFrequency!.Value, f.WheelHopFrequency])
        {
            double lambda = Math.Pow(2 * Math.PI * hertz, 2); // det(K − λM) = 0
            Assert.Equal(0, ((kw - (lambda * ms)) * (kw + kt - (lambda * mu))) - (kw * kw), 1e-9 * kw * kt);
        }

        Assert.True(f.RideFrequency < f.SpringFrequency && f.SpringFrequency < f.WheelHopFrequency);
    }

    [Fact]
    public void The_stop_nut_hands_over_where_the_upper_spring_has_given_what_the_nut_lets_it()
    {
        StandingFigures f = StandingWork.Figures(Bench.Of(Bench.Pair, 1500, 0.25, 0.06, held: 0.08));
        Near(0.065, f.ShaftTravel);                        // 1500 / 12 − 60
        Near(1600, f.CrossoverForce, 1e-8);                // 20 · 80
        Near((1600.0 / 12 - 60) / 1000, f.CrossoverShaftTravel);
        Near((250 + 60 - 1600.0 / 12) / 1000, f.CrossoverShaftShowing);
        Near(0.005, f.StopNutGapRideHeight);               // 80 − 1500 / 20
        Near(0.044, f.StopNutGapFullDroop);                // 80 − 720 / 20
        Near(12e3, f.PrimaryRate, 1e-7);
        Assert.Equal(30e3, f.SecondaryRate);

        // Bind of the lower at 280 mm: ½·20·80² + ½·30·200² less ½·12·125² and 1500 N · 155 mm.
        Near(664 - 93.75 - 232.5, f.ReserveEnergy, 1e-8);
    }

    [Fact]
    public void Each_spring_has_its_compressions_and_its_bind()
    {
        SpringStanding[] rows = [.. StandingWork.Springs(Bench.Of(Bench.Pair, 1500, 0.25, 0.06, held: 0.08))];
        Assert.Equal(["upper", "lower"], rows.Select(r => r.Position));
        Row(rows[0], 0.036, 0.075, 0.080, 0.120, null);      // 720/20, 1500/20, held; 200 − 80 to spare
        Row(rows[1], 0.024, 0.050, 0.200, -0.030, 0.030);    // 720/30, 1500/30, solid; 310 − 80 asked of 200; bind at 280 − 60 of 250
    }

    [Fact]
    public void A_tender_is_solid_before_it_is_named_and_is_no_bind()
    {
        var set = Bench.Pair with { Tender = new SpringData(4e3, 0.1, 0.06) };
        Corner corner = Bench.Of(set, 1500, 0.25, 0.06);
        SpringStanding tender = StandingWork.Springs(corner).First();
        Assert.Equal("tender", tender.Position);

        // Solid at 160 N, where the pair has given 160/12: 53.33 mm, so 6.67 mm before full droop. 100 mm of travel are asked of springs that have 200.
        Near((250 + 60 - 40 - 160.0 / 12) / 1000, tender.BindsAtShaftShowing);
        Near(0.040, tender.CompressionFullDroop);
        Near(200e-3 - 270 * 12.0 / 20 / 1000, StandingWork.BindClearance(corner)); // 310 − 40 on the pair, the upper's share 12/20
    }

    [Theory]
    [InlineData(1, 12690.226)] // 10 000 + 480.3975 · 0.35 / 0.25²
    [InlineData(1.4, 13766.3164)] // 1.4 times the gas
    public void Gas_at_rest_is_isothermal_and_moving_gas_stiffer_by_its_exponent(double exponent, double rate)
    {
        var set = new SpringSetData(null, null, new SpringData(10e3, 0.5, 0.1));
        Corner corner = Bench.Of(set, 1000 + 642.159, 0.3, 0, gas: Bench.Gas with { Exponent = exponent });
        Near(0.1, corner.Standing, 1e-10); // NL-11: 642.159 N at 0.1 m
        Near(642.159, StandingWork.Figures(corner).GasForce, 1e-6);
        Near(12690.226, StandingWork.WheelRate(corner, 0.1, movingGas: false), 1e-5);
        Near(rate, StandingWork.WheelRate(corner, 0.1, movingGas: true), 1e-5);
        Near(Math.Sqrt(rate / corner.SprungMass) / (2 * Math.PI), StandingWork.Figures(corner).SpringFrequency, 1e-9);
    }

    [Theory] // mm: 300 of spring less 50 of preload; full bump before that; 80 to the stop nut and 200 of the lower less 60 of preload
    [InlineData(false, 0.3, 0.05, 0.25)]
    [InlineData(false, 0.24, 0.05, 0.24)]
    [InlineData(true, 0.3, 0.06, 0.22)]
    public void The_way_in_ends_at_full_bump_or_where_nothing_is_left_to_compress(bool held, double stroke, double preload, double end) =>
        Near(end, Bench.Of(held ? Bench.Pair : Bench.Single, 1500, stroke, preload, held: held ? 0.08 : null).EndOfTravel);

    [Fact]
    public void Gas_adds_its_work_to_the_reserve()
    {
        // ½·10·(300² − 100²), gas 480.3975 N · 350 mm · ln(250/50) less the atmosphere's 30.3975 N · 200 mm, load 1642.159 N · 200 mm.
        var set = new SpringSetData(null, null, new SpringData(10e3, 0.5, 0.1));
        StandingFigures f = StandingWork.Figures(Bench.Of(set, 1642.159, 0.3, 0, gas: Bench.Gas with { Exponent = 1 }));
        Near(400 + (480.3975 * 0.35 * Math.Log(5)) - (30.3975 * 0.2) - (1642.159 * 0.2), f.ReserveEnergy, 1e-7);
    }

    [Fact]
    public void A_rising_ratio_adds_force_times_its_slope()
    {
        // r = 0.8 + w/m, X = 0.8 w + w²/2: 85 mm at 100 mm of wheel, 20 · (85 + 50) = 2700 N, 0.9 of it at the wheel.
        Corner corner = Bench.Of(Bench.Single, 2430, 0.3, 0.05, table: [new(0, 0.8), new(0.2, 1.0)]);
        Near(0.1, corner.Standing);
        Near(0.81 * 20e3 + 2700, StandingWork.WheelRate(corner, 0.1, movingGas: true), 1e-6);
        Near(0.64 * 20e3 + 0, StandingWork.WheelRate(corner, 0, movingGas: true), 1e-6); // at the table's first point the side toward droop: constant
    }

    // r = 0.8 + 0.5 w/m, X = 0.8 w + 0.25 w²: each stop's force gets the ratio's slope, its rate the ratio squared; on the axle neither.
    [Theory]
    [InlineData(false, 0.3, 0.95, 20e3 + 100e3, (20e3 * 0.3125) + 1250, 0)]              // X 262.5: 22.5 mm into the bump stop, 1250 N
    [InlineData(true, 0.3, 0.95, 20e3, 20e3 * 0.3125, 100e3)]                             // full bump at 339.1 of wheel, touched at 279.1
    [InlineData(null, 0.35, 0.975, 20e3 + 1e7, (20e3 * 0.360625) + 106_250, 0)]           // X 310.625: 10.625 mm into 10 kN/mm of metal
    [InlineData(null, -0.01, 0.795, 20e3 + 1e6, (20e3 * 0.042025) - 7975, 0)]             // X −7.975 mm on 1 kN/mm of top-out
    public void A_changing_ratio_gears_each_stops_force_by_its_slope(bool? onAxle, double w, double r, double rate, double force, double axle)
    {
        Corner corner = Bench.Of(Bench.Long, 2000, 0.3, 0.05, table: [new(-0.1, 0.75), new(0.4, 1.0)], bump: onAxle is { } on ? Bench.Bump(on) : null);
        Near((r * r * rate) + (0.5 * force) + axle, StandingWork.WheelRate(corner, w, movingGas: false), 1e-5);
    }

    // r = 0.8 + w/m: 135 mm on the spring and X = 85 mm at 100 of wheel, where it stands; at 50 mm X = 41.25, r = 0.85. The gas left 265 of 350 mm, then has 308.75.
    [Fact]
    public void A_changing_ratio_gears_the_gass_force_by_its_slope()
    {
        double there = (480.3975 * 350 / 265) - 30.3975, rest = (480.3975 * 350 / 308.75) - 30.3975, moving = (480.3975 * 350 / 265 * Math.Pow(265 / 308.75, 1.4)) - 30.3975;
        Corner corner = Bench.Of(Bench.Single, 0.9 * (2700 + there), 0.3, 0.05, table: [new(0, 0.8), new(0.2, 1.0)], gas: Bench.Gas with { Exponent = 1.4 });
        Near(0.1, corner.Standing, 1e-10);
        Near((0.7225 * (20e3 + ((rest + 30.3975) / 0.30875))) + (20e3 * 0.09125) + rest, StandingWork.WheelRate(corner, 0.05, movingGas: false), 1e-5);
        Near((0.7225 * (20e3 + (1.4 * (moving + 30.3975) / 0.30875))) + (20e3 * 0.09125) + moving, StandingWork.WheelRate(corner, 0.05, movingGas: true), 1e-5);
    }

    [Fact]
    public void What_the_bump_stop_holds_at_ride_height_is_no_reserve() => // ½·20·(350² − 330²), 4 kN · 20 mm, less 9600 N · 20 mm
        Near(136 + 80 - 192, StandingWork.Figures(Bench.Of(Bench.Long, 9600, 0.3, 0.05, bump: Bench.Bump(onAxle: false))).ReserveEnergy, 1e-8);

    [Fact]
    public void A_top_out_that_is_pressed_gives_back_its_energy_first()
    {
        // −900/1020 mm; bind at 250: ½·20·(300² − (50 − 0.882)²) less ½·1000·0.882² and 100 N · 250.882 mm.
        const double gone = 0.9 / 1020;
        double spring = 0.5 * 20e3 * ((0.3 * 0.3) - ((0.05 - gone) * (0.05 - gone)));
        Near(spring - (0.5e6 * gone * gone) - (100 * (0.25 + gone)), StandingWork.Figures(Bench.Of(Bench.Single, 100, 0.3, 0.05)).ReserveEnergy, 1e-8);
    }

    [Fact]
    public void There_is_no_reserve_past_bind_nor_where_a_falling_ratio_gives_way()
    {
        StandingFigures bound = StandingWork.Figures(Bench.Of(Bench.Single, 9000, 0.35, 0));
        Assert.Null(bound.ReserveEnergy);
        Assert.Null(bound.ReserveWheelSpeed);

        // r = 1 − 2 w/m: from 150 mm to full bump at 276 the spring takes ½·20·(250² − 177.5²) = 310 J, the load brings 2485 N · 126 mm = 314.
        Assert.Null(StandingWork.Figures(Bench.Of(Bench.Single, 2485, 0.2, 0.05, table: [new(0, 1), new(0.3, 0.4)])).ReserveEnergy);
    }

    [Theory]
    [InlineData(false, 0.280, 20e3 + 100e3)]
    [InlineData(true, 0.280, 20e3 + 100e3)]
    [InlineData(false, 0.260, 20e3 + 50e3)] // on the kink itself the side toward droop
    [InlineData(true, 0.240, 20e3)]
    [InlineData(false, 0.301, 20e3 + 100e3 + 1e7)]
    [InlineData(false, -0.001, 20e3 + 1e6)]
    public void Stops_add_their_slopes(bool onAxle, double w, double rate) =>
        Near(rate, StandingWork.WheelRate(Bench.Of(Bench.Long, 2000, 0.3, 0.05, bump: Bench.Bump(onAxle)), w, movingGas: false), 1e-5);

    [Fact]
    public void A_bump_stop_on_the_axle_counts_in_wheel_travel_and_is_not_geared()
    {
        Corner corner = Bench.Of(Bench.Single, 2000, 0.24, 0.05, ratio: 0.8, bump: Bench.Bump(onAxle: true));
        Near(0.04, corner.BumpStopCompression(0.28)); // 300 mm of wheel travel, touched 60 mm before
        Near(0.64 * 20e3 + 100e3, StandingWork.WheelRate(corner, 0.28, movingGas: false), 1e-5);

        // ½·20·(290² − 125²) and under the bump stop's lines ½·1·20 + ½·(1 + 5)·40 J, less 2000 N · 206.25 mm.
        Near(841 - 156.25 + 130 - 412.5, StandingWork.Figures(corner).ReserveEnergy, 1e-8);
    }

    private static void Row(SpringStanding row, double droop, double ride, double bump, double clearance, double? binds)
    {
        Near(droop, row.CompressionFullDroop);
        Near(ride, row.CompressionRideHeight);
        Near(bump, row.CompressionFullBump);
        Near(clearance, row.BindClearanceFullBump);
        if (binds is { } at) Near(at, row.BindsAtShaftShowing);
        else Assert.Null(row.BindsAtShaftShowing);
    }

    private static void Near(double expected, double? found, double within = Rounding) => Assert.Equal(expected, found!.Value, within);
}
