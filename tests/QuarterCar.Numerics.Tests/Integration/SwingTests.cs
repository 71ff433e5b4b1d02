using QuarterCar.TestKit;
using QuarterCar.TestKit.KnownAnswers;
using QuarterCar.TestKit.Running;

using Xunit;

namespace QuarterCar.Numerics.Tests.Integration;

// check-values section 6, all computed (C), formulas from memory (M).
public class SwingTests
{
    private static readonly Tolerance s_tight = Tolerance.Share(1e-11, "an allowed error of 1e-13 a step, some tens of steps; twelve printed digits");

    // NL-10.
    [Fact]
    public void Two_masses_in_the_air_swing_about_a_centre_that_falls()
    {
        var problem = new FallingPair(300, 60, 20e3, 0);
        TestRun run = TestRun.Switched(problem, 1, problem.Start, 2, TestRun.Tight);
        double start = problem.Centre(problem.Start);
        for (double t = 0.1; t < 2; t += 0.1)
            new Tolerance(1e-11, "heights up to 20 m at 1e-13").Holds(start + 1.5 * t - 0.5 * 9.80665 * t * t, problem.Centre(run.At(t)));
        s_tight.Holds(5 / 3.183098861838, run.Turn(0, true, 5).Time - run.Turn(0, true).Time);
    }

    // NL-10 with damping: critical ratio 0.75, so the gap between zero crossings is half the damped period.
    [Fact]
    public void A_damper_between_two_masses_in_the_air_has_three_quarters_of_the_critical_ratio()
    {
        var problem = new FallingPair(300, 60, 20e3, 1500);
        TestRun run = TestRun.Switched(problem, 1, problem.Start, 1, TestRun.Tight);
        s_tight.Holds(Math.PI / (20 * Math.Sqrt(1 - 0.75 * 0.75)), run.Turn(0, true).Time - run.Turn(0, false).Time);
    }

    // NL-14.
    [Fact]
    public void A_pendulum_let_go_level_takes_eighteen_percent_longer()
    {
        var problem = new Pendulum(Math.PI / 2);
        TestRun run = TestRun.Switched(problem, 1, problem.Start, 16, TestRun.Tight);
        s_tight.Holds(1.180340599016096 * 2 * Math.PI, run.Turn(0, false, 1).Time - run.Turn(0, false).Time);
    }

    // NL-14.
    [Fact]
    public void Duffings_spring_has_its_elliptic_period()
    {
        var problem = new Duffing(1);
        TestRun run = TestRun.Switched(problem, 1, problem.Start, 12, TestRun.Tight);
        s_tight.Holds(4.768022029102461, run.Turn(0, false, 1).Time - run.Turn(0, false).Time);
    }
}
