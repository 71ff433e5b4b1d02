using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Reading;

using Xunit;

namespace QuarterCar.Studies.Tests.Properties;

/// <summary>A bump stop on the axle and a motion ratio from a table: the run against the plain laws in fixed steps, because the reference numbers of desert_table describe the same stop on the shaft.</summary>
public class AxleBumpStopTests
{
    private static readonly Scenario s_desert = Scenes.Good(ScenarioReader.Read(
        Path.Combine(AppContext.BaseDirectory, "reference", "desert_table.yaml"), ReadOptions.Plain with { Sets = ["run.tolerance=1e-9"] }));

    [Fact]
    public void A_run_agrees_with_the_plain_laws_in_fixed_steps()
    {
        Assert.True(s_desert.Corner.Coilover.BumpStop!.OnAxle);
        RunResult run = SingleRun.Of(s_desert);
        Assert.True(Scenes.Count(run, "bump_stop") > 0, "the stop is part of what is compared");
        const double spacing = 0.01;
        double[] plain = new PlainSteps((RunTrack)run.Track).ShaftTravels(spacing, 5);

        // A bend inside a fixed step h costs a velocity of up to h² times the change of acceleration rate, some 1e-9·200 m/s³
        // twenty times over the run and carried for seconds: below 1e-7 m, a tenth of what the contract allows a length.
        Assert.All(plain.Select((x, k) => (x, k)), p => Assert.Equal(p.x, run.Track.At(p.k * spacing).ShaftTravel, 1e-7));
    }

    [Fact]
    public void Its_energy_closes_and_its_force_is_the_wheels_alone()
    {
        RunResult run = SingleRun.Of(s_desert);
        Assert.InRange(Math.Abs(run.Figures.Energy.ResidualRelative), 0, 1e-7);
        double ms = run.Standing.Corner.SprungMass;
        Sample[] touching = [.. run.Track.Rows().Where(s => s.BumpStopForce > 0)];
        Assert.NotEmpty(touching);
        foreach (Sample s in touching)
        {
            double ratio = run.Standing.Corner.Ratio.Ratio(s.WheelTravel);
            Assert.Equal(ms * (s.SprungAcceleration + 9.80665), ratio * s.ShaftForce + s.BumpStopForce, 1e-6);
        }
    }

    // physics.md section 4: q = w − (w_full − length) with X(w_full) = stroke.
    [Fact]
    public void It_touches_its_length_of_wheel_travel_before_full_bump()
    {
        RunResult run = SingleRun.Of(s_desert);
        Sample touch = run.Track.At(Scenes.First(run, "bump_stop").Time);
        const double inch = 0.0254;

        // X(w) of the table by trapezoids: 7 in · 0.605 + 9 in · 0.685, then up to the stroke at 0.74 + slope 0.01/in.
        double past = 13.5 - 7 * (0.58 + 0.63) / 2 - 9 * (0.63 + 0.74) / 2, full = 16 + (-0.74 + Math.Sqrt(0.74 * 0.74 + 2 * 0.01 * past)) / 0.01;
        Assert.Equal((full - 4.2) * inch, touch.WheelTravel, 1e-6);
    }
}
