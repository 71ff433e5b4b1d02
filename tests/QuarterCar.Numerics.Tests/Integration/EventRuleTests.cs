using System.Runtime.Intrinsics;

using QuarterCar.Numerics.Integration;
using QuarterCar.TestKit;
using QuarterCar.TestKit.Running;

using Xunit;

namespace QuarterCar.Numerics.Tests.Integration;

// The rule: a crossing belongs to (start, end]; only guards of the present piece are watched, in the direction that leaves it.
public class EventRuleTests
{
    private static readonly Tolerance s_located = new(2e-13, "the locator stops within 1e-13 s");

    // The five cases of a guard over one step from 0 to 1: value at the start, value at the end, expected crossing.
    [Theory]
    [InlineData(0.4, -0.6, 0.4)]
    [InlineData(0.4, 0.6, double.NaN)]
    [InlineData(0.0, 0.6, double.NaN)]
    [InlineData(0.0, -0.6, 0.0)]
    [InlineData(-1e-12, 0.6, double.NaN)]
    public void A_guard_is_crossed_where_it_leaves_its_piece(double from, double to, double expected)
    {
        TestRun run = Once(new Line(from, to - from, double.NaN, 0), 1);
        if (double.IsNaN(expected))
            Assert.Empty(run.Events);
        else
            s_located.Holds(expected, Assert.Single(run.Events).Time);
    }

    // A zero exactly at the end of a step is met once, by the step that goes on past it, at that time.
    [Theory]
    [InlineData(0.5)]
    [InlineData(0.25)]
    public void A_zero_on_a_step_end_is_one_event_at_that_time(double at)
    {
        TestRun run = TestRun.Switched(new Line(at, -1, double.NaN, 0), 1, default, 1, TestRun.Uncontrolled(0.25), 0.25, 0.5, 0.75);
        s_located.Holds(at, Assert.Single(run.Events).Time);
    }

    [Fact]
    public void A_zero_that_a_step_ends_on_for_good_is_no_event() =>
        Assert.Empty(TestRun.Switched(new Line(1, -1, double.NaN, 0), 1, default, 1, TestRun.Uncontrolled(0.5), 0.5).Events);

    [Fact]
    public void An_event_at_the_start_does_not_fire_again()
    {
        TestRun run = TestRun.Switched(new Line(0, -1, double.NaN, 0), 1, default, 5, TestRun.Tight, TestRun.Grid(0.1, 5));
        Assert.Single(run.Events);
    }

    [Fact]
    public void Two_events_in_one_step_come_in_order_of_time()
    {
        TestRun run = Once(new Line(0.7, -1, 0.2, -1), 0b11);
        Assert.Equal([1, 0], run.Events.Select(e => e.Index));
        s_located.Holds(0.2, run.Events[0].Time);
        s_located.Holds(0.7, run.Events[1].Time);
    }

    [Fact]
    public void Events_at_the_same_time_come_in_order_of_their_numbers()
    {
        TestRun run = Once(new Line(0.3, -1, 0.3, -1), 0b11);
        Assert.Equal([0, 1], run.Events.Select(e => e.Index));
        s_located.Holds(run.Events[0].Time, run.Events[1].Time);
    }

    // A touch and a release inside one step leave no sign at its ends: depth d below the boundary lasts 2√d.
    [Theory]
    [InlineData(0.5, 1e-2)]
    [InlineData(0.37, 1e-4)]
    [InlineData(0.11, 1e-5)]
    [InlineData(0.83, 1e-6)]
    [InlineData(0.6180339887, 1e-10)]
    public void A_touch_and_release_inside_one_step_is_found(double middle, double depth)
    {
        TestRun run = Once(new Dip(middle, depth), 1);
        var located = new Tolerance(1e-13 + 3e-16 / Math.Sqrt(depth), "the locator's 1e-13 s, or rounding over the speed 2√d of a shallow dip");
        Assert.Equal([false, true], run.Events.Select(e => e.On));
        located.Holds(middle - Math.Sqrt(depth), run.Events[0].Time);
        located.Holds(middle + Math.Sqrt(depth), run.Events[1].Time);
    }

    // The nodes see only the last of three zeros; the first two lie between nodes.
    [Fact]
    public void A_touch_and_release_before_a_later_crossing_in_the_same_step_is_found_first()
    {
        TestRun run = Once(default(ThreeZeros), 1);
        Assert.Equal([false, true, false], run.Events.Select(e => e.On));
        s_located.Holds(0.3, run.Events[0].Time);
        s_located.Holds(0.35, run.Events[1].Time);
        s_located.Holds(0.9, run.Events[2].Time);
    }

    // v = 0 just at the stop: rounding may call it a touch or not, but it must not chatter.
    [Theory]
    [InlineData(0.5)]
    [InlineData(0.37)]
    [InlineData(0.83)]
    public void A_grazing_touch_does_not_chatter(double middle)
    {
        TestRun run = Once(new Dip(middle, 0), 1);
        Assert.InRange(run.Events.Count, 0, 2);
        Assert.Equal(IntegrationEnd.Finished, run.Outcome.End);
    }

    [Theory]
    [InlineData(0.37, 1e-6)]
    [InlineData(0.83, 1e-3)]
    public void A_guard_that_stays_clear_is_not_crossed(double middle, double clearance) => Assert.Empty(Once(new Dip(middle, -clearance), 1).Events);

    [Fact]
    public void A_step_is_cut_at_its_event_and_the_next_begins_there_in_the_new_piece()
    {
        TestRun run = Once(new Line(0.4, -1, double.NaN, 0), 1);
        Assert.Equal(2, run.Log.Count);
        Assert.Equal(run.Log.Steps[0].End, run.Log.Steps[1].Start);
        Assert.Equal((1, 0), (run.Log.Steps[0].Piece, run.Log.Steps[1].Piece));
        s_located.Holds(0.4, run.Log.Steps[0].End);
    }

    private static TestRun Once<TModel>(TModel model, uint on)
        where TModel : struct, ISwitched => TestRun.Switched(model, on, default, 1, TestRun.Uncontrolled(1));

    /// <summary>y' = 1 with a switch that dips below zero around a moment.</summary>
    private readonly record struct Dip(double Middle, double Depth) : ISwitched
    {
        public int Switches => 1;

        public Vector256<double> Derivative(double t, Vector256<double> y, uint on) => Vector256.Create(1.0, 0, 0, 0);

        public double Switch(int index, double t, Vector256<double> y) => (y[0] - Middle) * (y[0] - Middle) - Depth;
    }

    /// <summary>y' = 1 with a switch that is zero at 0.3, 0.35 and 0.9.</summary>
    private readonly record struct ThreeZeros : ISwitched
    {
        public int Switches => 1;

        public Vector256<double> Derivative(double t, Vector256<double> y, uint on) => Vector256.Create(1.0, 0, 0, 0);

        public double Switch(int index, double t, Vector256<double> y) => (0.3 - t) * (0.35 - t) * (0.9 - t);
    }
}
