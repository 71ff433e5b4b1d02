using QuarterCar.TestKit;
using QuarterCar.TestKit.KnownAnswers;
using QuarterCar.TestKit.Running;

using Xunit;

namespace QuarterCar.Numerics.Tests.Integration;

// check-values section 6, all computed (C), formulas from memory (M); ODE-PRJ of section 7.
public class NonlinearDampingTests
{
    private static readonly Tolerance s_tight = Tolerance.Share(1e-11, "an allowed error of 1e-13 a step, some tens of steps; twelve printed digits");
    private static readonly Tolerance s_digits = new(1e-11, "twelve printed decimals at most, an allowed error of 1e-13 a step");

    // NL-5.
    [Fact]
    public void Dry_friction_takes_the_same_off_every_half_swing_and_holds_the_mass_in_the_end()
    {
        var problem = new DryFriction(300, 20e3, 150, 0.1);
        TestRun run = TestRun.Switched(problem, 0, problem.Start, 5, TestRun.Tight);
        double[] turns = [-.085, .07, -.055, .04, -.025, .01, .005];
        Assert.Equal(turns.Length, run.Events.Count);
        for (int i = 0; i < turns.Length; i++)
            s_digits.Holds(turns[i], run.Events[i].State[0], $"turn {i}");
        s_tight.Holds(2.693354643339915, run.Events[^1].Time);
        s_digits.Holds(.005, run.Outcome.State[0]);
    }

    // NL-6.
    [Theory]
    [InlineData(.05, .730115380179, .854467893)]
    [InlineData(.2, .277329255639, .526620599)]
    [InlineData(.3, .138626728410, .372326105)]
    [InlineData(.7, .002114887890, .045987910)]
    public void Peaks_fall_by_the_logarithmic_decrement(double zeta, double ratio, double overshoot)
    {
        var problem = new DampedMass(1, 100, 20 * zeta, 0, 1);
        TestRun run = TestRun.Switched(problem, 0, problem.Start, 2.5, TestRun.Tight);
        s_digits.Holds(ratio, run.Turn(0, false).State[0]);
        new Tolerance(6e-10, "nine printed decimals").Holds(overshoot, -run.Turn(0, true).State[0]);
    }

    // NL-7; the answers don't depend on k.
    [Theory]
    [InlineData(100)]
    [InlineData(2500)]
    public void Quadratic_damping_leaves_the_peaks_of_its_first_integral(double rate)
    {
        var problem = new DampedMass(1, rate, 0, 0.5, 1);
        TestRun run = TestRun.Switched(problem, 0, problem.Start, 2, TestRun.Tight);
        double[] peaks = [.593624260040, .423953549609, .330078741860, .270350769469];
        for (int i = 0; i < peaks.Length; i++)
            s_digits.Holds(peaks[i], Math.Abs(run.Events[i].State[0]), $"peak {i + 1}");
    }

    // NL-8.
    [Theory]
    [InlineData(2000, 2000, 0, 0, 197.3920880218)]
    [InlineData(1000, 3000, 0, 0, 197.3920880218)]
    [InlineData(0, 0, 1500, 0, 78.9568352087)]
    [InlineData(0, 0, 0, 100, 20)]
    public void A_driven_damper_takes_its_closed_energy_in_a_cycle(double right, double left, double quadratic, double friction, double work)
    {
        var problem = new DrivenDamper(0.05, 4 * Math.PI, right, left, quadratic, friction);
        TestRun run = TestRun.Switched(problem, 1, problem.Start, 0.5, TestRun.Tight);
        s_tight.Holds(work, run.Outcome.State[0]);
        Assert.Equal(2, run.Events.Count);
    }

    // ODE-PRJ: printed (R), converged (C).
    [Fact]
    public void A_projectile_comes_down_where_it_is_known_to()
    {
        var problem = default(Projectile);
        TestRun run = TestRun.Switched(problem, 1, problem.Start, 10, TestRun.Tight);
        SwitchEvent down = run.Turn(0, false);
        var printed = new Tolerance(6e-9, "nine printed digits");
        printed.Holds(7.28829312, down.Time);
        printed.Holds(.474857002, down.State[1]);
        printed.Holds(-.760107605, down.State[2]);
        printed.Holds(1.54932982, run.At(2)[0]);
        printed.Holds(1.74230476, run.At(4)[0]);
        printed.Holds(1.00553625, run.At(6)[0]);
    }
}
