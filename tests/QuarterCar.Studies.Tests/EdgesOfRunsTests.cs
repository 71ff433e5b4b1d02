using QuarterCar.Model;
using QuarterCar.Scenarios.Reading;

using Xunit;

namespace QuarterCar.Studies.Tests;

/// <summary>Runs in which something falls on the very edge of a row, of the run or of a law: a last bit must not choose what is said.</summary>
public class EdgesOfRunsTests
{
    private const string Corner = """
        title: Light corner on metal
        corner: { sprung_weight: 90 kg, unsprung_weight: 14 kg }
        tyre: { rate: 150 N/mm }
        coilover:
          stroke: 150 mm
          springs: { lower: { rate: 18 N/mm, free_length: 260 mm, solid_length: 80 mm } }
          damper:
            compression: [[0.1 m/s, 100 N], [0.5 m/s, 250 N], [2 m/s, 600 N]]
            rebound: [[0.1 m/s, 150 N], [0.5 m/s, 450 N], [2 m/s, 1200 N]]

        """;

    private const string Course = Corner + """
        terrain: [ { flat: 0.9 m }, { step: -0.3 m }, { flat: 2 m } ]
        speed: 3 m/s
        run: { duration: 0.5 s }
        """;

    private const string Drop = Corner + """
        drop: { height: 0.8 m }
        run: { duration: 1.5 s }
        """;

    // 0.9 m at 3 m/s: 3 · 0.3 is 0.8999999999999999 in doubles, 0.9 / 3 is 0.3.
    [Fact]
    public void A_row_on_a_step_of_the_road_has_the_values_after_it()
    {
        RunResult run = Run(Course);
        Assert.Equal(0.3, Scenes.First(run, "liftoff").Time, 1e-12);
        Sample before = run.Track.Rows().ElementAt(299), on = run.Track.Rows().ElementAt(300);
        Assert.Equal((0, 0), (before.Road, before.Ground));
        Assert.Equal((-0.3, -0.3, 0), (on.Road, on.Ground, on.TyreForce));
        Assert.Equal(0.9, on.Distance);
    }

    // 0.98 / 0.7 is the double after 1.4, 0.7 · 1.4 the one before 0.98.
    [Theory]
    [InlineData(0.5, 1, 0.5)]
    [InlineData(0.98, 0.7, 1.4)]
    [InlineData(0.99, 0.3, 3.3)]
    public void A_step_of_the_road_met_as_the_run_ends_is_its_last_event(double flat, double speed, double end)
    {
        RunResult run = Run(Course, FormattableString.Invariant($"terrain[0].flat={flat} m"), FormattableString.Invariant($"speed={speed} m/s"), FormattableString.Invariant($"run.duration={end} s"));
        Assert.Equal(end, Assert.Single(run.Events, e => e.Event == "liftoff").Time);
        Assert.Equal((-0.3, 0), (run.Track.Rows().Last().Road, run.Track.Rows().Last().TyreForce));
        Assert.InRange(Math.Abs(run.Figures.Energy.ResidualRelative), 0, 1e-5);
    }

    // The slider stands on its nut at ride height: physics.md section 3.
    [Theory]
    [InlineData("0.3")]
    [InlineData("0.4")]
    [InlineData("0.7")]
    [InlineData("1.1")]
    [InlineData("1.4")]
    [InlineData("1.7")]
    public void With_a_gap_of_nothing_the_corner_stands_in_the_secondary_rate(string preload)
    {
        RunResult run = Scenes.Run("quarry-ledge", "coilover.stop_nut={ gap: 0 in, at: ride_height }", $"coilover.preload={preload} in", "run.duration=0.1 s");
        Assert.All(run.Track.Rows(), r => Assert.Equal((RateRegion.Secondary, 0), (r.Region, r.SliderGap)));
        Assert.Equal(0.1, run.Figures.Travel.TimeInSecondary, 1e-12);
    }

    // 20 mm of slack and no gas: nothing pushes anywhere in those, and full droop is meant (physics.md section 5).
    [Theory]
    [InlineData("[[-120 mm, 0.9], [-100 mm, 0.93], [150 mm, 0.97]]")]
    [InlineData("[[-70 mm, 0.9], [-33 mm, 0.83], [100 mm, 0.95]]")]
    [InlineData("0.9")]
    public void A_drop_on_loose_springs_begins_at_full_droop(string ratio) =>
        Assert.Equal(0, Run(Drop, "coilover.preload=-20 mm", $"corner.motion_ratio={ratio}").Track.Rows().First().ShaftTravel, 1e-12);

    [Fact]
    public void Where_nothing_is_lost_nothing_is_left_of_what_is_lost()
    {
        RunResult run = Run(Drop, "drop.height=0.05 m", "coilover.damper=none", "run.duration=0.3 s");
        Assert.Equal((0, 0, 0), (run.Figures.Energy.ResidualRelative, run.Figures.Energy.Tyre, run.Figures.Energy.Damper));
        Assert.InRange(Math.Abs(run.Figures.Energy.Residual), 0, 1e-4);
        Assert.NotEqual(0, Run(Drop).Figures.Energy.ResidualRelative);
    }

    // Blows of a millisecond on metal: the filter of ISO 2631-1 as four sections one after the other, by Runge–Kutta at 25 µs over a trace of 50 µs.
    [Theory]
    [InlineData("1e7 N/m", 17.597331667, 35.063438310)]
    [InlineData("1e8 N/m", 17.146741535, 34.945293689)]
    public void A_blow_between_two_samples_counts_in_the_dose(string rate, double rms, double dose)
    {
        RunResult run = Run(Drop, $"coilover.bottom_out={{ rate: {rate} }}");
        Assert.Equal(rms, run.Figures.Acceleration.WeightedRms, 5e-3 * rms);
        Assert.Equal(dose, run.Figures.Acceleration.DoseValue, 5e-3 * dose);
    }

    private static RunResult Run(string text, params string[] sets) =>
        SingleRun.Of(Scenes.Good(ScenarioReader.ReadText("edge.yaml", text, ReadOptions.Plain with { Sets = [.. sets], Base = StandingBase.Instance }, null)));
}
