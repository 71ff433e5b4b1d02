using System.Runtime.Intrinsics;

using QuarterCar.Numerics.Integration;
using QuarterCar.TestKit;
using QuarterCar.TestKit.KnownAnswers;
using QuarterCar.TestKit.Running;

using Xunit;

namespace QuarterCar.Numerics.Tests.Integration;

// check-values section 6, all computed (C), formulas from memory (M).
public class ContactTests
{
    private static readonly Tolerance s_tight = Tolerance.Share(1e-11, "an allowed error of 1e-13 a step, some tens of steps; twelve printed digits");
    private static readonly Tolerance s_digits = new(1e-11, "twelve printed decimals at most, an allowed error of 1e-13 a step");

    // NL-12.
    [Fact]
    public void An_elastic_stop_throws_the_mass_back_after_half_a_period()
    {
        var problem = new MassOnStop(300, 500e3, 0, 2);
        TestRun run = TestRun.Switched(problem, 0b111, problem.Start, 0.2, TestRun.Tight);
        s_digits.Holds(.048989794856, run.Turn(2, false).State[0]);
        s_digits.Holds(.076952989810, run.Turn(0, false).Time);
        s_tight.Holds(-2, run.Outcome.State[1]);
    }

    // NL-13, first definition: left where the force is zero.
    [Fact]
    public void A_damped_stop_that_never_pulls_lets_go_where_its_force_is_zero()
    {
        var problem = new MassOnStop(300, 500e3, 2000, 2);
        Assert.Equal(4000, problem.Force(problem.Start));
        TestRun run = TestRun.Switched(problem, 0b111, problem.Start, 0.2, TestRun.Tight);
        SwitchEvent deepest = run.Turn(2, false), free = run.Turn(1, false);
        s_digits.Holds(.043363748942, deepest.State[0]);
        s_digits.Holds(.036596458178, deepest.Time);
        s_digits.Holds(.073192916355, free.Time);
        s_digits.Holds(-1.567012268617, free.State[1]);
        s_digits.Holds(.783506134309, -run.Outcome.State[1] / 2);
    }

    // NL-9: first impacts, g 9.81 and standard.
    [Theory]
    [InlineData(9.81, .451523640985731, 1.173961466563, 1.751911727025, 2.214271935394)]
    [InlineData(9.80665, .451600755751788, 1.174161964955, double.NaN, double.NaN)]
    public void A_ball_bounces_at_its_known_times(double gravity, double first, double second, double third, double fourth)
    {
        (_, List<double> times) = Bounce(gravity, 3, TestRun.Tight);
        double[] expected = [first, second, third, fourth];
        for (int i = 0; i < 4 && !double.IsNaN(expected[i]); i++)
            s_digits.Holds(expected[i], times[i], $"impact {i + 1}");
    }

    // NL-9: the bounces pile up at t₁(1 + e)/(1 − e) = 4.0637…, so the run can't come past there by stepping.
    [Theory]
    [InlineData(40)]
    [InlineData(200)]
    public void A_ball_whose_bounces_pile_up_ends_the_run_with_a_reason(int most)
    {
        (IntegrationOutcome outcome, List<double> times) = Bounce(9.81, 10, TestRun.Tight with { MostEvents = most });
        Assert.Equal(IntegrationEnd.TooManyEvents, outcome.End);
        Assert.Equal(most + 1, times.Count);

        // After n impacts eⁿ of the way to the accumulation is left: t∞ − t₁·2eⁿ⁺¹/(1 − e) with n counted from 0.
        double after40 = 4.063712768871578 - 0.451523640985731 * 2 * Math.Pow(0.8, 41) / 0.2;
        new Tolerance(1e-10, "41 impacts, each located to 1e-13 s, and late ones on long steps where the interpolant's rounding is seen").Holds(after40, times[40]);
    }

    private static (IntegrationOutcome Outcome, List<double> Times) Bounce(double gravity, double end, IntegrationSettings settings)
    {
        var times = new List<double>();
        var ball = new BouncingBall(0.8, gravity, times);
        return (new Integrator().Run(ref ball, 0, end, Vector256.Create(1.0, 0, 0, 0), [], settings), times);
    }
}
