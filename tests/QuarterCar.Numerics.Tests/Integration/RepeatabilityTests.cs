using System.Runtime.Intrinsics;

using QuarterCar.Numerics.Integration;
using QuarterCar.TestKit;
using QuarterCar.TestKit.KnownAnswers;
using QuarterCar.TestKit.Running;

using Xunit;

namespace QuarterCar.Numerics.Tests.Integration;

public class RepeatabilityTests
{
    private static readonly ReferenceCorner s_model = new(ReferenceRoad.Drop);

    [Fact]
    public void Two_runs_on_two_threads_are_the_same_to_the_last_bit()
    {
        var runs = new TestRun[2];
        Thread[] threads = [.. Enumerable.Range(0, 2).Select(i => new Thread(() => runs[i] = Run(new Integrator())))];
        Array.ForEach(threads, t => t.Start());
        Array.ForEach(threads, t => t.Join());
        Assert.Equal(runs[0].Outcome, runs[1].Outcome);
        Assert.Equal(runs[0].Events, runs[1].Events);
        Assert.Equal(runs[0].Log.Steps.ToArray(), runs[1].Log.Steps.ToArray());
    }

    [Fact]
    public void An_integrator_that_has_run_before_gives_what_a_new_one_gives()
    {
        var integrator = new Integrator();
        var other = new Smooth<HarmonicOscillators>(default);
        integrator.Run(ref other, 0, 10, default(HarmonicOscillators).Start, [], TestRun.Tight);
        TestRun again = Run(integrator), fresh = Run(new Integrator());
        Assert.Equal(fresh.Outcome, again.Outcome);
        Assert.Equal(fresh.Log.Steps.ToArray(), again.Log.Steps.ToArray());
    }

    [Theory]
    [InlineData(2)]
    [InlineData(5)]
    public void A_second_run_allocates_nothing(double end)
    {
        var integrator = new Integrator();
        IntegrationSettings settings = TestRun.Settings(1e-9, 1e-9);
        var first = new Switched<ReferenceCorner>(s_model, ReferenceCorner.OnAtStart);
        integrator.Run(ref first, 0, end, s_model.Start, [], settings);
        IntegrationOutcome outcome = default;
        Assert.Equal(0, Heap.Taken(() =>
        {
            var second = new Plain();
            outcome = integrator.Run(ref second, 0, end, s_model.Start, [], settings);
        }));
        Assert.Equal(IntegrationEnd.Finished, outcome.End);
        Assert.True(outcome.Events > 10);
    }

    // At rest the damper's switch turns on rounding alone; each turn must still get on in time.
    [Fact]
    public void A_corner_that_comes_to_rest_is_not_handed_to_and_fro_for_ever()
    {
        TestRun run = TestRun.Switched(s_model, ReferenceCorner.OnAtStart, s_model.Start, 8, TestRun.Settings(1e-9, 1e-9) with { MostEvents = 50_000 });
        Assert.Equal(IntegrationEnd.Finished, run.Outcome.End);
        new Tolerance(1e-8, "some hundred steps at 1e-9").Holds(ReferenceCorner.Static[0], run.Outcome.State[0]);
    }

    [Fact]
    public void A_time_finds_its_step()
    {
        TestRun run = Run(new Integrator());
        ReadOnlySpan<DenseStep> steps = run.Log.Steps;
        for (int i = 0; i < steps.Length; i++)
        {
            Assert.Equal(i, run.Log.IndexAt(steps[i].Start));
            Assert.Equal(i, run.Log.IndexAt(0.5 * (steps[i].Start + steps[i].End)));
            Assert.Equal(i, run.Log.IndexAt(Math.BitDecrement(steps[i].End)));
            Assert.Equal(i == 0 ? 0 : steps[i - 1].End, steps[i].Start);
        }

        Assert.Equal(0, run.Log.IndexAt(-1));
        Assert.Equal(steps.Length - 1, run.Log.IndexAt(99));
    }

    [Fact]
    public void States_run_on_continuously_from_step_to_step()
    {
        ReadOnlySpan<DenseStep> steps = Run(new Integrator()).Log.Steps;
        for (int i = 1; i < steps.Length; i++)
        {
            Vector256<double> before = steps[i - 1].At(steps[i - 1].End), after = steps[i].At(steps[i].Start);
            for (int c = 0; c < 4; c++)
                new Tolerance(1e-14, "rounding of the nested form at states up to 2.5").Holds(before[c], after[c], $"step {i}");
        }
    }

    [Fact]
    public void Reading_the_interpolant_changes_nothing()
    {
        TestRun run = Run(new Integrator());
        DenseStep[] before = run.Log.Steps.ToArray();
        for (double t = 0; t < 2; t += 1e-3)
            run.At(t);
        Assert.Equal(before, run.Log.Steps.ToArray());
    }

    private static TestRun Run(Integrator integrator)
    {
        var events = new List<SwitchEvent>();
        var system = new Switched<ReferenceCorner>(s_model, ReferenceCorner.OnAtStart, events);
        IntegrationOutcome outcome = integrator.Run(ref system, 0, 2, s_model.Start, [], TestRun.Settings(1e-9, 1e-10));
        return new TestRun(outcome, events, integrator.Log);
    }

    /// <summary>The reference corner without the test kit's default interface methods, which box.</summary>
    private struct Plain() : IPiecewiseSystem
    {
        private uint _on = ReferenceCorner.OnAtStart;

        public readonly int Piece => (int)_on;

        public readonly Vector256<double> Derivative(double t, Vector256<double> y) => s_model.Derivative(t, y, _on);

        public readonly uint Suspects(in DenseStep step) => 0b11111;

        public readonly double Guard(int guard, double t, Vector256<double> y) => (_on >> guard & 1) != 0 ? s_model.Switch(guard, t, y) : -s_model.Switch(guard, t, y);

        public bool TryLinear(int guard, double start, out LinearGuard linear)
        {
            linear = default;
            return false;
        }

        public int Stretches(int guard, in DenseStep step) => 1;

        public void Cross(int guard, double t, Vector256<double> y) => _on ^= 1u << guard;

        public readonly void PassBreak(int index, double t, Vector256<double> y)
        {
        }

        public readonly bool IsAtRest(Vector256<double> y, Vector256<double> dydt) => false;
    }
}
