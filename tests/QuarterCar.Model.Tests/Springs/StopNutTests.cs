using CsCheck;

using QuarterCar.Model.Statics;

using Xunit;

namespace QuarterCar.Model.Tests.Springs;

/// <summary>Where the stop nut stands and what it does (physics.md section 3), on random corners with upper and lower spring, constant ratio, no gas, no stop touched.</summary>
public class StopNutTests
{
    // Lengths below a metre; the balance is found to a bit or two.
    private const double Length = 1e-11;

    private sealed record Bench(double Upper, double Lower, double Preload, double Gap, double Ratio, double Load)
    {
        public static readonly Gen<Bench> Any = Gen.Select(
            Gen.Double[15e3, 60e3], Gen.Double[15e3, 90e3], Gen.Double[0, 0.05], Gen.Double[1e-3, 0.08], Gen.Double[0.6, 1], Gen.Double[0.1, 0.2],
            (upper, lower, preload, gap, ratio, travel) => new Bench(upper, lower, preload, gap, ratio, travel * upper * lower / (upper + lower)));

        // The load is the spring force after 0.1 to 0.2 m of shaft travel without preload: inside a stroke of 0.4 m.
        public Corner Corner(StopNutData nut) => Model.Corner.Build(new CornerData(
            Ratio * Load, null, 600, [new TablePoint(0, Ratio)], new TyreData(2e5),
            new CoiloverData(0.4, new SpringSetData(null, new SpringData(Upper, 1, 0.1), new SpringData(Lower, 1, 0.1)), Preload, nut, null, null, 0, null, StopData.DefaultBottomOut, StopData.DefaultTopOut, null)));

        public Corner Corner() => Corner(new StopNutData(Gap, StopNutReference.RideHeight));
    }

    [Fact]
    public void Closing_a_gap_takes_one_plus_upper_over_lower_times_as_much_shaft_travel() => Bench.Any.Sample(b =>
    {
        StandingFigures f = StandingWork.Figures(b.Corner());
        Assert.Equal(b.Gap * (1 + b.Upper / b.Lower), f.CrossoverShaftTravel!.Value - f.ShaftTravel, Length);
        Assert.Equal(b.Gap, f.StopNutGapRideHeight!.Value, Length);
    });

    // Common practice, no source: the sentence that every workshop knows.
    [Fact]
    public void Equal_springs_act_at_half_the_rate_and_use_twice_the_gap_in_shaft_travel() => Bench.Any.Sample(any =>
    {
        Bench b = any with { Lower = any.Upper, Load = 0.15 * any.Upper / 2 };
        StandingFigures f = StandingWork.Figures(b.Corner());
        Assert.Equal(b.Upper / 2, f.PrimaryRate, 1e-8);
        Assert.Equal(2 * b.Gap, f.CrossoverShaftTravel!.Value - f.ShaftTravel, Length);
    });

    [Fact]
    public void More_preload_raises_the_ride_height_by_as_much() => Gen.Select(Bench.Any, Gen.Double[0, 0.04]).Sample((b, more) =>
    {
        double ride = StandingWork.Figures(b.Corner()).RideHeight, raised = StandingWork.Figures((b with { Preload = b.Preload + more }).Corner()).RideHeight;
        Assert.Equal(more, raised - ride, Length);
    });

    [Fact]
    public void Under_a_nut_that_stays_more_preload_opens_the_gap_by_as_much_at_ride_height_and_by_the_uppers_share_at_full_droop() =>
        Gen.Select(Bench.Any, Gen.Double[0, 0.04]).Sample((b, more) =>
        {
            Corner before = b.Corner();
            Corner after = (b with { Preload = b.Preload + more }).Corner(new StopNutData(before.Stack.HeldTravel!.Value + more, StopNutReference.UpperTravel));
            StandingFigures f = StandingWork.Figures(before), g = StandingWork.Figures(after);
            Assert.Equal(more, g.StopNutGapRideHeight!.Value - f.StopNutGapRideHeight!.Value, Length);
            Assert.Equal(more * b.Upper / (b.Upper + b.Lower), g.StopNutGapFullDroop!.Value - f.StopNutGapFullDroop!.Value, Length);
        });

    [Fact]
    public void Under_a_nut_that_stays_more_preload_leaves_the_lower_spring_its_length_at_full_bump() => Gen.Select(Bench.Any, Gen.Double[0, 0.04]).Sample((b, more) =>
    {
        Corner before = b.Corner();
        Corner after = (b with { Preload = b.Preload + more }).Corner(new StopNutData(before.Stack.HeldTravel!.Value + more, StopNutReference.UpperTravel));
        if (StandingWork.Figures(after).CrossoverShaftTravel > after.Stroke)
            return;
        Assert.Equal(StandingWork.Springs(before).Last().CompressionFullBump, StandingWork.Springs(after).Last().CompressionFullBump, Length);
    });

    [Fact]
    public void A_gap_at_full_droop_and_the_gap_that_it_leaves_at_ride_height_mean_the_same_nut() => Bench.Any.Sample(b =>
    {
        Corner one = b.Corner();
        Corner other = b.Corner(new StopNutData(StandingWork.Figures(one).StopNutGapFullDroop!.Value, StopNutReference.FullDroop));
        Assert.Equal(one.Stack.HeldTravel!.Value, other.Stack.HeldTravel!.Value, Length);
    });
}
