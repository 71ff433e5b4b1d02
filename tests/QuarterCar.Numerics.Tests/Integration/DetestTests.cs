using System.Runtime.Intrinsics;

using QuarterCar.TestKit;
using QuarterCar.TestKit.Running;

using Xunit;

namespace QuarterCar.Numerics.Tests.Integration;

// check-values section 7: DETEST (Hull, Enright, Fellen, Sedgwick 1972; Enright and Pryce, TOMS 648, 1987): right sides
// read (R), initial values from memory (M), answers computed (C) in ode_references.csv.
public class DetestTests
{
    private const double Allowed = 1e-11;

    public static TheoryData<string> Names => ["A1", "A2", "A3", "A4", "A5", "B1", "B2", "B3", "B5", "D1", "D2", "D3", "D4", "D5", "E2", "E4", "E5"];

    [Theory]
    [MemberData(nameof(Names))]
    public void The_problem_ends_at_its_known_state(string name)
    {
        var problem = new Detest(name);
        TestRun run = TestRun.Smooth(problem, problem.Start, 20, TestRun.Settings(Allowed, 1e-24));
        string[][] rows = [.. CheckValues.Rows("ode_references.csv").Where(r => r[0] == "ODE-" + name)];
        string[] components = [.. rows.SelectMany(r => r[3].Split(';'))];
        double[] values = [.. rows.SelectMany(r => r[4].Split(';')).Select(CheckValues.Number)];
        Assert.NotEmpty(values);
        int first = name == "B3" ? 1 : 0;

        // Along an orbit an error in speed becomes one in place that grows with time, and it goes into all components.
        double growth = name[0] == 'D' ? 30 * 20 : 10, size = values.Max(Math.Abs);
        for (int i = 0; i < values.Length; i++)
            new Tolerance(growth * Allowed * size, "ten allowed errors; on an orbit multiplied by three times the run time").Holds(values[i], run.Outcome.State[first + i], components[i]);
    }

    // ODE-F1, right side R, initial state M, answers C: the forcing changes sign at whole seconds.
    [Theory]
    [InlineData(1, .213082511466)]
    [InlineData(2, -.448575106289)]
    [InlineData(5, 1.314347731593)]
    [InlineData(10, -3.481340793766)]
    [InlineData(20, -12.944606212135)]
    public void A_forcing_that_jumps_at_break_times_is_followed(double end, double expected)
    {
        TestRun run = TestRun.Switched(default(SquareForced), 1, default, end, TestRun.Tight, TestRun.Grid(1, 21));
        new Tolerance(1e-12 * Math.Max(1, Math.Abs(expected)), "twelve printed digits").Holds(expected, run.Outcome.State[0]);
        new Tolerance(2e-11, "the speed is zero at whole seconds; it swings up to 40 in between").Holds(0, run.Outcome.State[1]);
    }

    // ODE-F2, right side R, initial state M, answers C.
    [Theory]
    [InlineData(1, 53.029545077552)]
    [InlineData(2, 75.445672391758)]
    [InlineData(5, 44.275982144817)]
    [InlineData(10, 70.039124791014)]
    [InlineData(20, 70.037310570086)]
    public void A_rate_that_jumps_at_break_times_is_followed(double end, double expected)
    {
        TestRun run = TestRun.Switched(default(JumpingRate), 1, Vector256.Create(110.0, 0, 0, 0), end, TestRun.Tight, TestRun.Grid(1, 21));
        new Tolerance(1e-11, "twelve decimals are printed").Holds(expected, run.Outcome.State[0]);
    }

    // ODE-ARE (R), Jacobi constant (C).
    [Fact]
    public void The_Arenstorf_orbit_closes()
    {
        var problem = default(Arenstorf);
        TestRun run = TestRun.Smooth(problem, Arenstorf.Start, Arenstorf.Period, TestRun.Settings(1e-13, 1e-13));
        new Tolerance(1e-8, "the page's reference returns within 1.3e-12; errors of the two close passes differ").Holds(0.994, run.Outcome.State[0]);
        new Tolerance(1e-8, "as for x").Holds(0, run.Outcome.State[2]);
        new Tolerance(1e-10, "the constant feels only the local error").Holds(2.85641252020986, Arenstorf.Jacobi(Arenstorf.Start));
        new Tolerance(2e-8, "2·v·δv at the speed 2 of the return").Holds(2.85641252020986, Arenstorf.Jacobi(run.Outcome.State));
    }

    [Fact]
    public void The_Arenstorf_orbit_closes_as_far_as_a_billionth_allows() =>
        new Tolerance(1e-5, "check-values: 1e-5 where 1e-9 is allowed").Holds(
            0.994, TestRun.Smooth(default(Arenstorf), Arenstorf.Start, Arenstorf.Period, TestRun.Settings(1e-9, 1e-9)).Outcome.State[0]);
}
