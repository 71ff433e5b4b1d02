using QuarterCar.TestKit;
using QuarterCar.TestKit.KnownAnswers;
using QuarterCar.TestKit.Running;

using Xunit;

namespace QuarterCar.Numerics.Tests.Integration;

// check-values section 6, all computed (C), formulas from memory (M).
public class NonlinearSpringTests
{
    private static readonly Tolerance s_tight = Tolerance.Share(1e-11, "an allowed error of 1e-13 a step, some tens of steps; twelve printed digits");
    private const int Moving = 2;

    // NL-1.
    [Theory]
    [InlineData(1, 100, 400, 0.471238898038469, 0.5)]
    [InlineData(300, 20e3, 60e3, 0.606909095956478, 0.577350269190)]
    public void Two_rates_give_half_a_period_each_and_amplitudes_as_the_roots_of_the_rates(double mass, double left, double right, double period, double ratio)
    {
        var problem = new TwoRateSpring(mass, left, right);
        s_tight.Holds(period, problem.Period);
        TestRun run = TestRun.Switched(problem, 2, problem.Start, 3.2 * period, TestRun.Tight);
        s_tight.Holds(3 * period, run.Turn(1, true, 2).Time);
        s_tight.Holds(ratio, run.Turn(1, false).State[0]);
    }

    // NL-2.
    [Fact]
    public void A_gap_adds_its_flight_to_the_period()
    {
        var problem = new MassInGap(10, 4000, 0.02, 0.5);
        TestRun run = TestRun.Switched(problem, 4, problem.Start, 2, TestRun.Tight);
        s_tight.Holds(0.474159265358979, run.Turn(0, true, 1).Time - run.Turn(0, true).Time);
        s_tight.Holds(0.045, run.Turn(Moving, false).State[0]);
        s_tight.Holds(-0.045, run.Turn(Moving, true).State[0]);
    }

    // NL-3.
    [Theory]
    [InlineData(100, 20e3, 0.5, 0.27583163977727, .3193299567811, .1264812167343)]
    [InlineData(400, 40e3, 0.3, .3597092687177, double.NaN, .1954988869757)]
    public void A_drop_on_a_spring_goes_as_deep_as_the_energy_says(double mass, double rate, double height, double deepest, double fall, double squeeze)
    {
        var problem = new DropOnSprings(mass, rate, double.PositiveInfinity, 0, height);
        TestRun run = TestRun.Switched(problem, 4, problem.Start, 0.9, TestRun.Tight);
        SwitchEvent touch = run.Turn(0, true), bottom = run.Turn(Moving, false);
        s_tight.Holds(double.IsNaN(fall) ? Math.Sqrt(2 * height / 9.80665) : fall, touch.Time);
        s_tight.Holds(Math.Sqrt(2 * 9.80665 * height), touch.State[1]);
        s_tight.Holds(deepest, bottom.State[0]);
        s_tight.Holds(squeeze, bottom.Time - touch.Time);
    }

    // NL-3: h 0.5 gives the force and the net acceleration; h 0 the factor two.
    [Fact]
    public void A_drop_of_half_a_metre_presses_with_five_and_a_half_times_the_weight()
    {
        var problem = new DropOnSprings(100, 20e3, double.PositiveInfinity, 0, 0.5);
        TestRun run = TestRun.Switched(problem, 4, problem.Start, 0.9, TestRun.Tight);
        double force = problem.Force(run.Turn(Moving, false).State[0], false);
        s_tight.Holds(5516.6327955454, force);
        s_tight.Holds(4.6253999027, force / (100 * 9.80665) - 1);
    }

    // NL-3.
    [Fact]
    public void A_load_put_on_from_no_height_goes_twice_as_deep_as_it_stands()
    {
        var problem = new DropOnSprings(100, 20e3, double.PositiveInfinity, 0, 0);
        TestRun run = TestRun.Switched(problem, 0b101, problem.Start, 0.4, TestRun.Tight);
        s_tight.Holds(0.0980665, run.Turn(Moving, false).State[0]);
    }

    // NL-4; the third line has the rates of SP-10.
    [Theory]
    [InlineData(300, 24e3, 3200 / 24e3, 60e3, .3, 0.3171897352427, 14231.3841145635, 2.660239546440, .051501752006209, .109455927815432)]
    [InlineData(300, 24e3, 3200 / 24e3, 60e3, .05, .2333703859531, double.NaN, 1.474296253961, .100773150308023, .108157023616402)]
    [InlineData(250, 25539.330140, 0.1016 * 250 / 145.8333333333333333, 61294.3923361, .5, .3473950753975, 15065.859785736, double.NaN, .053808951200031, .090167065003370)]
    public void A_drop_on_a_series_pair_meets_its_crossover_and_its_depth(
        double mass, double pair, double crossover, double lower, double height, double deepest, double force, double speed, double first, double second)
    {
        var problem = new DropOnSprings(mass, pair, crossover, lower, height);
        TestRun run = TestRun.Switched(problem, 4, problem.Start, 0.7, TestRun.Tight);
        SwitchEvent touch = run.Turn(0, true), cross = run.Turn(1, true), bottom = run.Turn(Moving, false);
        s_tight.Holds(first, cross.Time - touch.Time);
        s_tight.Holds(second, bottom.Time - cross.Time);
        s_tight.Holds(deepest, bottom.State[0]);
        if (!double.IsNaN(force))
            s_tight.Holds(force, problem.Force(bottom.State[0], true));
        if (!double.IsNaN(speed))
            s_tight.Holds(speed, cross.State[1]);
    }

    // NL-4b: about its equilibrium, the crossover 0.04 m on one side.
    [Theory]
    [InlineData(.03, .702481473104073, 0.03)]
    [InlineData(.05, .681657944932286, .048819347292)]
    [InlineData(.08, .640952695058952, .070647615158762)]
    [InlineData(.12, .618263728421072, .097321211119293)]
    public void A_series_pair_swings_faster_the_further_it_swings(double release, double period, double reach)
    {
        // The travel is measured from touch: equilibrium at x_c − 0.04 m, which is where the weight must be carried.
        double weight = 300 * 9.80665, stand = weight / 24e3, crossover = stand + 0.04;
        var problem = new DropOnSprings(300, 24e3, crossover, 60e3, release - stand);
        TestRun run = TestRun.Switched(problem, 0b101, problem.Start, 1, TestRun.Tight);
        s_tight.Holds(period, run.Turn(Moving, true).Time);
        new Tolerance(1e-12, "twelve printed digits").Holds(reach, run.Turn(Moving, false).State[0] - stand);
    }
}
