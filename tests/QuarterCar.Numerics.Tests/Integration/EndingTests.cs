using System.Runtime.Intrinsics;

using QuarterCar.Numerics.Integration;
using QuarterCar.TestKit;
using QuarterCar.TestKit.KnownAnswers;
using QuarterCar.TestKit.Running;

using Xunit;

namespace QuarterCar.Numerics.Tests.Integration;

public class EndingTests
{
    private static readonly Vector256<double> s_one = Vector256.Create(1.0, 0, 0, 0);

    [Fact]
    public void A_finished_run_ends_exactly_at_its_end_time()
    {
        IntegrationOutcome outcome = TestRun.Smooth(default(Decay), s_one, 0.3, TestRun.Tight, 0.1, 0.2).Outcome;
        Assert.Equal((IntegrationEnd.Finished, 0.3), (outcome.End, outcome.Time));
    }

    // y' = −1/√(1 − t) has no value past t = 1.
    [Fact]
    public void A_derivative_that_is_no_number_ends_the_run_where_the_numbers_end()
    {
        IntegrationOutcome outcome = TestRun.Smooth(new Right((t, _) => -Math.Sqrt(1 - t)), s_one, 2, TestRun.Settings(1e-6, 1e-6)).Outcome;
        Assert.Equal(IntegrationEnd.NotFinite, outcome.End);
        new Tolerance(1e-9, "steps shrink towards the last number until they are below 1e-13").Holds(1, outcome.Time);
    }

    [Fact]
    public void A_start_that_is_no_number_ends_at_once()
    {
        IntegrationOutcome outcome = TestRun.Smooth(default(Decay), Vector256.Create(double.NaN), 1, TestRun.Tight).Outcome;
        Assert.Equal((IntegrationEnd.NotFinite, 0.0, 0L), (outcome.End, outcome.Time, outcome.Steps));
    }

    // y' = −λy from 1 never leaves [−1, 1]. A first trial of length 1 runs away as λ¹², and the squares of its errors come out
    // anywhere up to the largest numbers and past them: whatever they are, the trial must not be kept.
    [Fact]
    public void A_first_trial_that_runs_away_is_never_kept()
    {
        IntegrationSettings settings = TestRun.Settings(0, 1e-10) with { FirstStep = 1, MostSteps = 20, MostLastTerm = double.PositiveInfinity };
        for (double lambda = 10; lambda < 1e30; lambda *= 1.01)
        {
            double rate = lambda;
            IntegrationOutcome outcome = TestRun.Smooth(new Right((_, y) => -rate * y), s_one, 1, settings).Outcome;
            Assert.InRange(outcome.State[0], -1, 1);
        }
    }

    // y' = y² from 1 is 1/(1 − t).
    [Fact]
    public void A_solution_that_runs_away_ends_the_run_at_its_pole()
    {
        IntegrationOutcome outcome = TestRun.Smooth(new Right((_, y) => y * y), s_one, 2, TestRun.Settings(1e-9, 1e-9)).Outcome;
        Assert.Contains(outcome.End, new[] { IntegrationEnd.StepTooSmall, IntegrationEnd.NotFinite });
        new Tolerance(1e-6, "an error of 1e-9 a step moves the pole by as much").Holds(1, outcome.Time);
    }

    [Fact]
    public void A_jump_that_no_guard_announces_ends_in_too_small_a_step()
    {
        IntegrationSettings settings = TestRun.Settings(1e-12, 1e-12) with { LeastStep = 1e-6 };
        IntegrationOutcome outcome = TestRun.Smooth(new Right((t, _) => t < 0.4321 ? 1 : 100), s_one, 1, settings).Outcome;
        Assert.Equal(IntegrationEnd.StepTooSmall, outcome.End);
        new Tolerance(1e-5, "the step is cut to a quarter or more until it is below 1e-6").Holds(0.4321, outcome.Time);
    }

    [Fact]
    public void More_steps_than_allowed_end_the_run()
    {
        IntegrationOutcome outcome = TestRun.Smooth(default(HarmonicOscillators), s_one, 1000, TestRun.Tight with { MostSteps = 20 }).Outcome;
        Assert.Equal((IntegrationEnd.TooManyEvents, 20L), (outcome.End, outcome.Steps));
    }

    [Fact]
    public void A_run_that_is_called_off_throws()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();
        var system = new Smooth<HarmonicOscillators>(default);
        Assert.Throws<OperationCanceledException>(() =>
            new Integrator().Run(ref system, 0, 1e6, s_one, [], TestRun.Tight, source.Token));
    }

    [Fact]
    public void Counts_add_up()
    {
        TestRun run = TestRun.Smooth(default(HarmonicOscillators), default(HarmonicOscillators).Start, 10, TestRun.Settings(1e-9, 1e-9));
        Assert.Equal(run.Log.Count, run.Outcome.Steps);

        // Eleven evaluations a trial, four more for a step that is kept and its interpolant, one at the start.
        Assert.InRange(run.Outcome.Evaluations, 1 + 15 * run.Outcome.Steps + 11 * run.Outcome.Rejected, 1 + 15 * (run.Outcome.Steps + run.Outcome.Rejected));
    }

    // Known break times save steps; without them the jumps are found by trial and error.
    [Fact]
    public void Break_times_save_steps_and_errors()
    {
        double[] breaks = TestRun.Grid(1, 10);
        var model = new Right((t, y) => ((long)Math.Floor(t) % 2 == 0 ? 1 : -1) - y);
        IntegrationOutcome with = TestRun.Switched(default(Square), 1, s_one, 10, TestRun.Settings(1e-9, 1e-9), breaks).Outcome;
        IntegrationOutcome without = TestRun.Smooth(model, s_one, 10, TestRun.Settings(1e-9, 1e-9)).Outcome;
        Assert.True(3 * (with.Steps + with.Rejected) < without.Steps + without.Rejected, $"{with} against {without}");

        // From 1 at 0 the state is 1 until 1, then relaxes towards −1 and 1 in turns: y(n+1) = s + (y(n) − s)/e.
        double y = 1;
        for (int n = 0; n < 10; n++)
            y = (n % 2 == 0 ? 1 : -1) + (y - (n % 2 == 0 ? 1 : -1)) / Math.E;
        new Tolerance(1e-8, "ten pieces at 1e-9").Holds(y, with.State[0]);
    }

    [Fact]
    public void Breaks_at_or_before_the_start_lie_behind()
    {
        TestRun run = TestRun.Switched(default(Square), 1, s_one, 0.5, TestRun.Tight, -1, 0);
        new Tolerance(1e-14, "y = 1 is kept").Holds(1, run.Outcome.State[0]);
    }

    /// <summary>One equation, by a function.</summary>
    private readonly struct Right(Func<double, double, double> f) : IRightHandSide
    {
        public Vector256<double> Derivative(double t, Vector256<double> y) => Vector256.Create(f(t, y[0]), 0, 0, 0);
    }

    /// <summary>y' = ±1 − y, the sign turned at break times.</summary>
    private readonly record struct Square : ISwitched
    {
        public int Switches => 0;

        public Vector256<double> Derivative(double t, Vector256<double> y, uint on) => Vector256.Create((on == 1 ? 1 : -1) - y[0], 0, 0, 0);

        public double Switch(int index, double t, Vector256<double> y) => 1;

        public uint Pass(uint on) => on ^ 1;
    }
}
