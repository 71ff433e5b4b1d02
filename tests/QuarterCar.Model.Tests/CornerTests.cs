using QuarterCar.Model.Tests.Statics;

using Xunit;

namespace QuarterCar.Model.Tests;

/// <summary>What a corner makes of a load on its springs and of a nut measured at full droop, by hand in mm, N and N/mm (physics.md sections 1 and 3).</summary>
public class CornerTests
{
    [Fact]
    public void A_load_on_the_springs_and_the_gas_at_that_travel_make_the_sprung_weight()
    {
        // 1500 N at 125 mm, 65 mm of shaft; gas of 3e-4 m² and 1.5 MPa in a column of 350 mm: 480.3975 · 350/285 − 30.3975 N; ratio 0.8.
        Corner corner = Build(1500, gas: Bench.Gas);
        Assert.Equal(0.8 * (1500 + (480.3975 * 350 / 285) - 30.3975), corner.SprungWeight, 1e-9);
        Assert.Equal(0.065, corner.StandingShaftTravel, 1e-12);
    }

    [Theory]
    [InlineData(719, "less than the springs push at full droop with this preload")]      // 12 · 60 = 720
    [InlineData(3721, "more than the springs carry within the stroke")]                  // 12 · 310 = 3720
    [InlineData(2881, "a load under which the bump stop touches", false)]                // 180 mm of shaft: 12 · 240 = 2880
    [InlineData(3049, "a load under which the bump stop touches", true)]                 // 312.5 − 70 mm of wheel, 194 of shaft: 12 · 254 = 3048
    public void A_load_that_the_springs_cannot_carry_clear_of_the_stops_is_refused(double load, string found, bool? bumpOnAxle = null)
    {
        BumpStopData? bump = bumpOnAxle is { } axle ? new BumpStopData(axle, 0.07, [new(0.02, 1000)]) : null;
        CornerException e = Assert.Throws<CornerException>(() => Build(load, bump));
        Assert.Equal("corner.spring_load", e.Key);
        Assert.Equal(found, e.Found);
        Assert.NotEmpty(e.Wanted);
        Assert.Equal($"{e.Key}: found {e.Found}; wanted {e.Wanted}", e.Message);
    }

    [Theory]
    [InlineData(false, 2879)]
    [InlineData(true, 3047)]
    public void A_load_just_clear_of_the_bump_stop_stands(bool onAxle, double load) =>
        Assert.Equal(0.8 * load, Build(load, new BumpStopData(onAxle, 0.07, [new(0.02, 1000)])).SprungWeight, 1e-9);

    [Fact]
    public void A_gap_at_full_droop_adds_to_what_the_preload_presses_the_upper_spring() =>
        Assert.Equal(0.036 + 0.044, Build(1500, nut: new StopNutData(0.044, StopNutReference.FullDroop)).Stack.HeldTravel!.Value, 1e-14); // 720 / 20

    [Fact]
    public void A_nut_that_would_press_on_loose_springs_is_refused()
    {
        CornerException e = Assert.Throws<CornerException>(() => Build(1500, nut: new StopNutData(-0.001, StopNutReference.UpperTravel)));
        Assert.Equal("coilover.stop_nut", e.Key);
        Assert.NotEmpty(e.Found);
        Assert.NotEmpty(e.Wanted);
        Assert.Equal(0, Build(2400, nut: new StopNutData(0, StopNutReference.UpperTravel)).Stack.HeldTravel);
    }

    // 60 mm of preload, 250 mm of stroke.
    private static Corner Build(double load, BumpStopData? bump = null, GasData? gas = null, StopNutData? nut = null) =>
        Bench.Of(Bench.Pair, load, 0.25, 0.06, ratio: 0.8, gas: gas, bump: bump, nut: nut, onSprings: true);
}
