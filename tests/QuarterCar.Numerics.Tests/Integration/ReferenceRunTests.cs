using System.Runtime.Intrinsics;

using QuarterCar.Numerics.Integration;
using QuarterCar.TestKit;
using QuarterCar.TestKit.KnownAnswers;
using QuarterCar.TestKit.Running;

using Xunit;

namespace QuarterCar.Numerics.Tests.Integration;

// check-values section 6, REF-1 to REF-3 (C).
public class ReferenceRunTests
{
    public static TheoryData<ReferenceRoad, string> Tables => new()
    {
        { ReferenceRoad.Drop, "ref1_drop_events.csv" },
        { ReferenceRoad.Step, "ref2_step100mm_events.csv" },
        { ReferenceRoad.Ramp, "ref3_ramp150mm_events.csv" },
    };

    // REF-1, REF-2, REF-3.
    [Theory]
    [MemberData(nameof(Tables))]
    public void Every_event_of_the_reference_run_is_met_in_order(ReferenceRoad road, string table)
    {
        TestRun run = Run(road, TestRun.Settings(1e-12, 1e-12));
        IReadOnlyList<string[]> rows = CheckValues.Rows(table);
        Assert.Equal(rows.Select(r => (r[1], r[2])), run.Events.Select(e => (ReferenceCorner.Names[e.Index], e.On ? "up" : "down")));
        var printed = new Tolerance(2e-9, "ten printed digits of a run at 1e-12; a shallow crossing multiplies the error by up to 100");
        for (int i = 0; i < rows.Count; i++)
        {
            printed.Holds(CheckValues.Number(rows[i][0]), run.Events[i].Time, $"time of row {i + 1}");
            for (int c = 0; c < 4; c++)
                printed.Holds(CheckValues.Number(rows[i][3 + c]), run.Events[i].State[c], $"row {i + 1}, component {c}");
        }
    }

    // States between the events: zs, vs, zu where given.
    [Theory]
    [InlineData(ReferenceRoad.Drop, .1, -.227048436, -1.61245510, -.036149939)]
    [InlineData(ReferenceRoad.Drop, .2, -.269497030, .97743984, -.057605837)]
    [InlineData(ReferenceRoad.Drop, .5, -.068999747, -.41171483, double.NaN)]
    [InlineData(ReferenceRoad.Step, .1, -.057971392, double.NaN, double.NaN)]
    [InlineData(ReferenceRoad.Step, .5, -.049723430, double.NaN, double.NaN)]
    [InlineData(ReferenceRoad.Step, 1, -.034399200, double.NaN, double.NaN)]
    [InlineData(ReferenceRoad.Ramp, .5, .021761170, double.NaN, double.NaN)]
    [InlineData(ReferenceRoad.Ramp, 1, .020289371, double.NaN, double.NaN)]
    public void The_states_between_are_the_known_ones(ReferenceRoad road, double t, double zs, double vs, double zu)
    {
        Vector256<double> y = Run(road, TestRun.Settings(1e-12, 1e-12)).At(t);
        double[] expected = [zs, vs, zu];
        for (int i = 0; i < 3; i++)
        {
            if (!double.IsNaN(expected[i]))
                new Tolerance(6e-9, "eight or nine printed digits").Holds(expected[i], y[i], $"component {i}");
        }
    }

    [Theory]
    [InlineData(ReferenceRoad.Drop, .216280834)]
    [InlineData(ReferenceRoad.Step, .222946996)]
    [InlineData(ReferenceRoad.Ramp, .203683870)]
    public void The_deepest_strut_travel_is_the_known_one(ReferenceRoad road, double deepest)
    {
        TestRun run = Run(road, TestRun.Settings(1e-12, 1e-12));
        new Tolerance(1e-8, "nine printed digits, taken from samples: up to 1e-8 below the true maximum").Holds(deepest, run.Events.Where(e => e.Index == 2).Max(e => e.State[2] - e.State[0]));
    }

    // Static values, C.
    [Fact]
    public void The_corner_stands_where_it_is_known_to()
    {
        new Tolerance(1e-12, "closed form").Holds(.122583125, ReferenceCorner.Static[2] - ReferenceCorner.Static[0]);
        new Tolerance(6e-9, "eight printed digits").Holds(-.01765197, ReferenceCorner.Static[2]);
    }

    // The program's promise, with the allowed error that it runs with.
    [Theory]
    [MemberData(nameof(Tables))]
    public void A_billionth_allowed_keeps_events_within_a_microsecond(ReferenceRoad road, string table)
    {
        TestRun run = Run(road, TestRun.Settings(1e-9, 1e-10));
        IReadOnlyList<string[]> rows = CheckValues.Rows(table);
        for (int i = 0; i < rows.Count; i++)
            new Tolerance(1e-6, "check-values: 1e-6 where 1e-9 or less is allowed").Holds(CheckValues.Number(rows[i][0]), run.Events[i].Time, $"row {i + 1}");
    }

    // The negative test: the same steps of 20 ms, once cut at the events and once run across them.
    [Fact]
    public void Without_event_location_the_same_steps_miss_by_a_thousand_times_more()
    {
        const double h = 0.02, end = 0.5;
        var model = new ReferenceCorner(ReferenceRoad.Drop);
        double[] grid = TestRun.Grid(h, end);
        TestRun with = TestRun.Switched(model, ReferenceCorner.OnAtStart, model.Start, end, TestRun.Uncontrolled(h), grid);
        TestRun without = TestRun.Smooth(new ByValue<ReferenceCorner>(model), model.Start, end, TestRun.Uncontrolled(h), grid);
        double good = Miss(with.Outcome.State), bad = Miss(without.Outcome.State);
        Assert.InRange(bad, 1e-4, 1e-1);
        Assert.InRange(good, 0, 1e-3 * bad);
    }

    // REF-1 at 0.5 s: zs and vs.
    private static double Miss(Vector256<double> y) => Math.Max(Math.Abs(y[0] + .068999747), Math.Abs(y[1] + .41171483));

    private static TestRun Run(ReferenceRoad road, IntegrationSettings settings)
    {
        var model = new ReferenceCorner(road);
        return TestRun.Switched(model, ReferenceCorner.OnAtStart, model.Start, 1.9, settings, road == ReferenceRoad.Ramp ? [ReferenceCorner.RampEnd] : []);
    }
}
