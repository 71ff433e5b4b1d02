using System.Runtime.Intrinsics;

using QuarterCar.Numerics.Integration;
using QuarterCar.TestKit;
using QuarterCar.TestKit.KnownAnswers;
using QuarterCar.TestKit.Running;

using Xunit;

namespace QuarterCar.Numerics.Tests.Integration;

public class OrderTests
{
    private static readonly Tolerance s_order = new(0.3, "the next term of the error is a share of the step; halved steps show it small");

    [Fact]
    public void Halved_steps_of_a_decay_have_order_eight() => s_order.Holds(8, Order(default(Decay), 4, 16));

    [Fact]
    public void Halved_steps_of_oscillators_have_order_eight() => s_order.Holds(8, Order(default(HarmonicOscillators), 6, 20));

    [Fact]
    public void Halved_steps_of_curved_equations_have_order_eight() => s_order.Holds(8, Order(default(Curved), 2, 8));

    [Fact]
    public void The_interpolant_of_a_decay_has_order_seven() => s_order.Holds(7, InterpolantOrder(default(Decay), 0.4));

    [Fact]
    public void The_interpolant_of_oscillators_has_order_seven() => s_order.Holds(7, InterpolantOrder(default(HarmonicOscillators), 0.3));

    [Fact]
    public void The_interpolant_of_curved_equations_has_order_seven() => s_order.Holds(7, InterpolantOrder(default(Curved), 0.1));

    [Fact]
    public void Powers_up_to_the_eighth_are_exact_at_the_end_and_up_to_the_seventh_on_the_way()
    {
        var problem = default(Powers);
        TestRun run = TestRun.Smooth(problem, problem.Start, 2, TestRun.Uncontrolled(2));
        Assert.Equal(1, run.Outcome.Steps);
        var rounding = Tolerance.Share(3e-15, "sixteen-digit weights, values up to 256");
        for (int i = 0; i < 4; i++)
            rounding.Holds(problem.Exact(2)[i], run.Outcome.State[i], $"component {i}");
        for (double t = 0.1; t < 2; t += 0.1)
        {
            var dense = new Tolerance(1e-11, "sixteen-digit weights up to 528 times derivatives up to 1000");
            for (int i = 1; i < 4; i++)
                dense.Holds(problem.Exact(t)[i], run.At(t)[i], $"component {i} at {t}");
        }
    }

    [Fact]
    public void The_interpolant_meets_state_and_derivative_at_both_ends()
    {
        var problem = default(Curved);
        TestRun run = TestRun.Smooth(problem, problem.Start, 1, TestRun.Uncontrolled(1));
        DenseStep step = run.Log.Steps[0];
        Vector256<double> end = run.Outcome.State;
        var rounding = new Tolerance(2e-14, "rounding of eight nested terms of size 10");
        for (int i = 0; i < 4; i++)
        {
            rounding.Holds(problem.Start[i], step.AtTheta(0)[i]);
            rounding.Holds(end[i], step.AtTheta(1)[i]);
            rounding.Holds(problem.Derivative(0, problem.Start)[i], step.DerivativeAtTheta(0)[i]);
            rounding.Holds(problem.Derivative(1, end)[i], step.DerivativeAtTheta(1)[i]);
        }
    }

    [Fact]
    public void The_interpolants_derivative_is_the_slope_of_the_interpolant()
    {
        var problem = default(Curved);
        DenseStep step = TestRun.Smooth(problem, problem.Start, 0.5, TestRun.Uncontrolled(0.5)).Log.Steps[0];
        const double d = 1e-4;
        for (double theta = 0.1; theta < 1; theta += 0.2)
        {
            Vector256<double> slope = (step.AtTheta(theta + d) - step.AtTheta(theta - d)) / Vector256.Create(2 * d * step.Length);
            for (int i = 0; i < 4; i++)
                new Tolerance(1e-7, "central difference: d²/6 of the third derivative by θ, below 10").Holds(slope[i], step.DerivativeAtTheta(theta)[i]);
        }
    }

    // The interpolant never strays further from its chord than the bound says, and the bound is no idle one.
    [Fact]
    public void The_bulge_bounds_the_way_from_the_chord()
    {
        var problem = default(HarmonicOscillators);
        DenseStep step = TestRun.Smooth(problem, problem.Start, 2, TestRun.Uncontrolled(2)).Log.Steps[0];
        Vector128<double> bound = DenseStep.Bulge(
            step.C2.GetLower(), step.C3.GetLower(), step.C4.GetLower(), step.C5.GetLower(), step.C6.GetLower(), step.C7.GetLower());
        double most = 0;
        for (double theta = 0; theta <= 1; theta += 1.0 / 64)
            most = Math.Max(most, Math.Abs(step.AtTheta(theta)[0] - (step.C0[0] + theta * step.C1[0])));
        Assert.InRange(most, 0.3 * bound[0], bound[0]);
    }

    private static double Order<TProblem>(TProblem problem, double end, int steps)
        where TProblem : struct, IKnownMotion => Math.Log2(Error(problem, end, steps) / Error(problem, end, 2 * steps));

    private static double Error<TProblem>(TProblem problem, double end, int steps)
        where TProblem : struct, IKnownMotion
    {
        double h = end / steps;
        TestRun run = TestRun.Smooth(problem, problem.Start, end, TestRun.Uncontrolled(h), TestRun.Grid(h, end));
        Assert.Equal(steps, run.Outcome.Steps);
        return Size(run.Outcome.State - problem.Exact(end));
    }

    // From an exact start, one step's interpolant of order seven misses with the eighth power of the step.
    private static double InterpolantOrder<TProblem>(TProblem problem, double h)
        where TProblem : struct, IKnownMotion => Math.Log2(InterpolantError(problem, 2 * h) / InterpolantError(problem, h)) - 1;

    private static double InterpolantError<TProblem>(TProblem problem, double h)
        where TProblem : struct, IKnownMotion
    {
        DenseStep step = TestRun.Smooth(problem, problem.Start, h, TestRun.Uncontrolled(h)).Log.Steps[0];
        return Enumerable.Range(1, 63).Max(i => Size(step.AtTheta(i / 64.0) - problem.Exact(i / 64.0 * h)));
    }

    private static double Size(Vector256<double> y) => Math.Sqrt(Vector256.Dot(y, y));
}
