using System.Runtime.Intrinsics;

using QuarterCar.Numerics.Integration;
using QuarterCar.TestKit;
using QuarterCar.TestKit.Running;

using Xunit;

namespace QuarterCar.Numerics.Tests.Integration;

/// <summary>A state at rest is kept without stepping until the next break, and a linear guard is found where its line is crossed.</summary>
public class RestAndLinearGuardTests
{
    // At rest until 3, then y' = (2, −1, 0.5, 0), under the guard 1.5 + 0.25·t − 0.5·y₀ + 2·y₁.
    [Fact]
    public void Rest_is_one_step_and_the_guards_line_is_crossed_at_its_own_time()
    {
        var system = new StartsLate([]);
        var integrator = new Integrator();
        IntegrationOutcome outcome = integrator.Run(ref system, 0, 5, Vector256.Create(0.4, 0, 0, 0), [3.0], TestRun.Settings(1e-9, 1e-9));
        StepLog log = integrator.Log;
        Assert.Equal((0.0, 3.0, 3.0, 0), (log.Steps[0].Start, log.Steps[0].Length, log.Steps[0].End, log.Steps[0].Piece));
        Assert.Equal(0.4, log.Steps[0].At(1.7)[0]);
        Assert.Equal(3.0, log.Steps[1].Start);

        // With τ = t − 3, y₀ = 0.4 + 2τ and y₁ = −τ: 1.5 + 0.75 − 0.2 + (0.25 − 1 − 2)·τ = 0.
        new Tolerance(1e-11, "the guard's resolution in time").Holds(3 + 2.05 / 2.75, Assert.Single(system.Crossings));
        new Tolerance(1e-12, "straight lines").Holds(0.4 + 2 * 2, outcome.State[0]);
        Assert.Equal(1, outcome.Events);
    }

    // What a break costs: one derivative on the piece behind it.
    [Fact]
    public void Evaluations_count_the_one_after_a_break()
    {
        var system = new StartsLate([]);
        IntegrationOutcome outcome = new Integrator().Run(ref system, 0, 3.5, Vector256.Create(0.4, 0, 0, 0), [3.0], TestRun.Settings(1e-9, 1e-9));
        Assert.Equal(0, outcome.Rejected);
        Assert.Equal(2 + 15 * (outcome.Steps - 1), outcome.Evaluations);
    }

    private struct StartsLate(List<double> crossings) : IPiecewiseSystem
    {
        private bool _moves, _past;

        public readonly List<double> Crossings => crossings;

        public readonly int Piece => _past ? 2 : _moves ? 1 : 0;

        public readonly Vector256<double> Derivative(double t, Vector256<double> y) => _moves ? Vector256.Create(2, -1, 0.5, 0) : Vector256<double>.Zero;

        public readonly uint Suspects(in DenseStep step) => _moves && !_past ? 1u : 0;

        public readonly double Guard(int guard, double t, Vector256<double> y) => 1.5 + 0.25 * t - 0.5 * y[0] + 2 * y[1];

        public readonly bool TryLinear(int guard, double start, out LinearGuard linear)
        {
            linear = new LinearGuard(Vector256.Create(-0.5, 2, 0, 0), 1.5 + 0.25 * start, 0.25);
            return true;
        }

        public readonly int Stretches(int guard, in DenseStep step) => 1;

        public void Cross(int guard, double t, Vector256<double> y)
        {
            _past = true;
            crossings.Add(t);
        }

        public void PassBreak(int index, double t, Vector256<double> y) => _moves = true;

        public readonly bool IsAtRest(Vector256<double> y, Vector256<double> dydt) => dydt == Vector256<double>.Zero;
    }
}
