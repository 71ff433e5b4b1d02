using QuarterCar.Model.Selection;
using QuarterCar.TestKit;

using Xunit;

namespace QuarterCar.Model.Tests.Selection;

/// <summary>Weighing by springs of known rate; every expected number worked out by hand beside it.</summary>
public class WeighTests
{
    private static readonly Tolerance s_rounding = Tolerance.Share(1e-12, "a few operations on doubles");
    private static readonly WeighErrors s_errors = new(3e-3, 0.02);

    private static MeasuredSpring Spring(string position, double rate, double free, params double[] loaded) => new(position, rate, free, [.. loaded]);

    private static MeasuredCorner Corner(params MeasuredSpring[] springs) => new("corner", [.. springs]);

    // Upper 100 mm of 20 N/mm, lower 50 mm of 40 N/mm: 2000 N each.
    private static MeasuredCorner TwoThousand => Corner(Spring("upper", 20e3, 0.3, 0.2), Spring("lower", 40e3, 0.35, 0.3));

    [Fact]
    public void Single_spring_reads_rate_times_compression()
    {
        // F = 40·50 = 2000 N; u² = 2·(40·3)² + (2000·0.02)² = 28 800 + 1600.
        WeighedCorner w = Weigh.Corner(Corner(Spring("lower", 40e3, 0.35, 0.3)), s_errors);
        s_rounding.Holds(2000, w.Loads.SpringLoad);
        s_rounding.Holds(Math.Sqrt(30_400), w.Loads.Uncertainty);
        s_rounding.Holds(0.05, w.Springs[0].Spring.Compression);
        Assert.Equal(1, w.Loads.Widening);
    }

    [Fact]
    public void Springs_that_agree_are_weighted_by_one_over_their_uncertainty_squared()
    {
        // u² = 2·60² + 40² = 8800 and 2·120² + 40² = 30 400; 1/√(1/8800 + 1/30400).
        WeighedCorner w = Weigh.Corner(TwoThousand, s_errors);
        s_rounding.Holds(Math.Sqrt(8800), w.Springs[0].Uncertainty);
        s_rounding.Holds(Math.Sqrt(30_400), w.Springs[1].Uncertainty);
        s_rounding.Holds(2000, w.Loads.SpringLoad);
        s_rounding.Holds(Math.Sqrt(8800.0 * 30_400 / (8800 + 30_400)), w.Loads.Uncertainty);
        Assert.Equal(DisagreementCause.None, w.Cause);
    }

    [Fact]
    public void Two_equal_springs_halve_the_variance()
    {
        WeighedCorner w = Weigh.Corner(Corner(Spring("upper", 30e3, 0.3, 0.25), Spring("lower", 30e3, 0.3, 0.25)), s_errors);
        s_rounding.Holds(w.Springs[0].Uncertainty / Math.Sqrt(2), w.Loads.Uncertainty);
    }

    [Fact]
    public void Low_reading_gains_no_weight()
    {
        // Equal rates: with the mean of both in the rate's share they weigh the same, so the load is the plain mean of 1500 and 2100.
        WeighedCorner w = Weigh.Corner(Corner(Spring("upper", 30e3, 0.3, 0.25), Spring("lower", 30e3, 0.35, 0.28)), s_errors);
        s_rounding.Holds(1800, w.Loads.SpringLoad);
    }

    [Fact]
    public void Disagreement_widens_the_uncertainty_by_the_root_of_chi_square_a_degree_of_freedom()
    {
        // Two equal u, loads 1500 and 2100: χ²/(n − 1) = 2·(300·1.96/u)², so u/√2 · 300·1.96·√2/u = 588 N whatever u is.
        WeighedCorner w = Weigh.Corner(Corner(Spring("upper", 30e3, 0.3, 0.25), Spring("lower", 30e3, 0.35, 0.28)), s_errors);
        s_rounding.Holds(588, w.Loads.Uncertainty);
        s_rounding.Holds(588 * Math.Sqrt(2) / Math.Sqrt(2 * 90 * 90 + 36.0 * 36), w.Loads.Widening); // u with the mean of both, 1800 N
    }

    [Theory]
    [InlineData(-0.1, 0)] // u = √(2·90² + 36²) = 132.3 N, of both 187.2 N
    [InlineData(0.1, 1)]
    public void Springs_disagree_beyond_the_root_sum_of_squares_of_their_half_widths(double beyond, int pairs)
    {
        double allowed = Math.Sqrt(2 * (2 * 90 * 90 + 36.0 * 36)), difference = allowed + beyond, k = 30e3;
        var corner = Corner(Spring("upper", k, 0.3, 0.3 - (1800 - difference / 2) / k), Spring("lower", k, 0.3, 0.3 - (1800 + difference / 2) / k));
        WeighedCorner w = Weigh.Corner(corner, s_errors);
        Assert.Equal(pairs, w.Disagreements.Length);
    }

    [Fact]
    public void Upper_that_reads_low_names_the_stop_nut_and_offers_the_lower_alone()
    {
        WeighedCorner w = Weigh.Corner(Corner(Spring("upper", 30e3, 0.3, 0.25), Spring("lower", 30e3, 0.35, 0.28)), s_errors);
        Assert.Equal(DisagreementCause.SliderOnStopNut, w.Cause);
        s_rounding.Holds(2100, w.Instead!.SpringLoad);
        s_rounding.Holds(Math.Sqrt(2 * 90 * 90 + 42.0 * 42), w.Instead.Uncertainty);
    }

    [Fact]
    public void The_answer_and_its_friction_are_those_of_the_lower_alone_and_no_side_is_compared_with_it()
    {
        // Upper 1500 N on the nut, settled both ways alike; lower 30 N/mm at 71 and 69 mm: 2130 and 2070 N.
        MeasuredCorner nut = Corner(Spring("upper", 30e3, 0.3, 0.25, 0.25), Spring("lower", 30e3, 0.35, 0.279, 0.281));
        WeighedCorner w = Weigh.Corner(nut, s_errors);
        s_rounding.Holds(2100, w.Answer.SpringLoad);
        Tolerance.Share(1e-10, "differences of lengths lose digits").Holds(30, w.Friction!.Value);
        Assert.Equal(Weigh.Corner(TwoThousand, s_errors).Loads, Weigh.Corner(TwoThousand, s_errors).Answer);
        SideDifference side = Assert.Single(Weigh.Of([nut with { Name = "left" }, TwoThousand with { Name = "right" }], s_errors).Differences);
        Assert.Equal((null, null), (side.Difference, side.Uncertainty));
    }

    [Fact]
    public void The_spring_that_the_answer_goes_by_has_one_uncertainty_and_one_left_out_that_of_its_own_load()
    {
        // 28·75.5 = 2114 N with ±√(2·(28·3)² + 42.28²), 39·74 = 2886 N with ±√(2·(39·3)² + 57.72²); with the mean of both, 2500 N, in the rate's share it were 50 for both.
        WeighedCorner w = Weigh.Corner(Corner(Spring("upper", 28e3, 0.305, 0.231, 0.228), Spring("lower", 39e3, 0.356, 0.282)), s_errors);
        Assert.Equal(DisagreementCause.SliderOnStopNut, w.Cause);
        s_rounding.Holds(Math.Sqrt(2 * 84 * 84 + 42.28 * 42.28), w.Springs[0].Uncertainty);
        s_rounding.Holds(Math.Sqrt(2 * 117 * 117 + 57.72 * 57.72), w.Springs[1].Uncertainty);
        Assert.Equal(w.Answer.Uncertainty, w.Springs[1].Uncertainty, 1e-9);
        // What their errors explain goes by both: that they carry the same is what is asked there.
        s_rounding.Holds(Math.Sqrt(2 * 84 * 84 + 2 * 117 * 117 + 2 * 50.0 * 50), w.Disagreements[0].Allowed);
    }

    [Fact]
    public void Lower_that_reads_low_is_not_the_stop_nut()
    {
        WeighedCorner w = Weigh.Corner(Corner(Spring("upper", 30e3, 0.35, 0.28), Spring("lower", 30e3, 0.3, 0.25)), s_errors);
        Assert.Equal(DisagreementCause.Unknown, w.Cause);
        Assert.Null(w.Instead);
    }

    [Fact]
    public void On_the_stop_nut_the_lower_spring_alone_counts()
    {
        WeighedCorner both = Weigh.Corner(Corner(Spring("upper", 30e3, 0.3, 0.25), Spring("lower", 30e3, 0.35, 0.28)) with { StopNutClear = false }, s_errors);
        WeighedCorner alone = Weigh.Corner(Corner(Spring("lower", 30e3, 0.35, 0.28)), s_errors);
        Assert.Equal(alone.Loads, both.Loads);
        Assert.Equal(SpringUse.PastStopNut, both.Springs[0].Use);
        s_rounding.Holds(Math.Sqrt(2 * 90 * 90 + 30.0 * 30), both.Springs[0].Uncertainty); // its own 1500 N
        Assert.Empty(both.Disagreements);
    }

    [Fact]
    public void Solid_tender_is_left_out_and_one_that_reads_low_is_named()
    {
        var tender = Spring("tender", 10e3, 0.1, 0.03);
        var known = Weigh.Corner(TwoThousand with { Springs = TwoThousand.Springs.Insert(0, tender with { SolidLength = 0.028 }) }, s_errors);
        Assert.Equal(SpringUse.Solid, known.Springs[0].Use);
        Assert.Equal(Weigh.Corner(TwoThousand, s_errors).Loads, known.Loads);

        var unknown = Weigh.Corner(TwoThousand with { Springs = TwoThousand.Springs.Insert(0, tender) }, s_errors);
        Assert.Equal(DisagreementCause.TenderSolid, unknown.Cause);
        Assert.Equal(known.Loads, unknown.Instead);
    }

    [Fact]
    public void Two_readings_give_the_load_as_their_mean_and_friction_as_half_their_difference()
    {
        // 40 N/mm, 51 and 49 mm: 2040 and 1960 N.
        foreach (double[] readings in new double[][] { [0.299, 0.301], [0.301, 0.299] })
        {
            WeighedCorner w = Weigh.Corner(Corner(Spring("lower", 40e3, 0.35, readings)), s_errors);
            s_rounding.Holds(2000, w.Loads.SpringLoad);
            Tolerance.Share(1e-10, "differences of lengths lose digits").Holds(40, w.Friction!.Value);
        }
    }

    [Fact]
    public void Friction_of_the_stack_is_half_the_step_of_its_weighted_load()
    {
        // Half steps 20·2 = 40 N and 40·1 = 40 N on springs of 8800 and 30 400 N²; then 40 N and −40 N.
        double w1 = 1 / 8800.0, w2 = 1 / 30_400.0;
        var close = Tolerance.Share(1e-9, "differences of lengths lose digits");
        close.Holds(40, Weigh.Corner(Corner(Spring("upper", 20e3, 0.3, 0.202, 0.198), Spring("lower", 40e3, 0.35, 0.301, 0.299)), s_errors).Friction!.Value);
        close.Holds(40 * (w1 - w2) / (w1 + w2), Weigh.Corner(Corner(Spring("upper", 20e3, 0.3, 0.202, 0.198), Spring("lower", 40e3, 0.35, 0.299, 0.301)), s_errors).Friction!.Value);
        Assert.Null(Weigh.Corner(TwoThousand, s_errors).Friction);
    }

    [Fact]
    public void Gas_adds_to_the_coilover_load_and_the_motion_ratio_brings_it_to_the_wheel()
    {
        // NL-11 of the gas law: at 0.1 m of travel this charge pushes with 642.159 N.
        var gas = new GasData(1.5e6, Math.Sqrt(3e-4 * 4 / Math.PI), 0.35 * 3e-4);
        WeighedCorner w = Weigh.Corner(TwoThousand with { Gas = gas, Stroke = 0.3, ShaftShowing = 0.2, MotionRatio = 0.9 }, s_errors);
        s_rounding.Holds(642.159, w.GasForce!.Value);
        s_rounding.Holds(2642.159, w.Loads.CoiloverLoad);
        s_rounding.Holds(0.9 * 2642.159, w.Loads.SprungWeight!.Value);
    }

    [Fact]
    public void Without_gas_the_coilover_carries_the_spring_load_and_without_ratio_there_is_no_weight()
    {
        WeighedCorner w = Weigh.Corner(TwoThousand with { Stroke = 0.3, ShaftShowing = 0.2 }, s_errors);
        Assert.Null(w.GasForce);
        Assert.Null(w.Loads.SprungWeight);
        Assert.Equal(w.Loads.SpringLoad, w.Loads.CoiloverLoad);
    }

    [Fact]
    public void Errors_of_zero_leave_the_scatter_alone()
    {
        // 1500, 1800, 2100 N: s = 300 N, 1.96·300/√3.
        var corner = Corner(Spring("tender", 30e3, 0.3, 0.25), Spring("upper", 30e3, 0.3, 0.24), Spring("lower", 30e3, 0.35, 0.28));
        WeighedCorner w = Weigh.Corner(corner, new WeighErrors(0, 0));
        s_rounding.Holds(1800, w.Loads.SpringLoad);
        s_rounding.Holds(1.96 * 300 / Math.Sqrt(3), w.Loads.Uncertainty);
        s_rounding.Holds(Weigh.Corner(corner, new WeighErrors(0, 1e-9)).Loads.Uncertainty, w.Loads.Uncertainty);
    }

    [Fact]
    public void Left_and_right_are_paired_by_name_alone()
    {
        MeasuredCorner Named(string name, double loaded) => Corner(Spring("lower", 40e3, 0.35, loaded)) with { Name = name };
        WeighResult result = Weigh.Of([Named("Front Left", 0.3), Named("front right", 0.305), Named("rear left", 0.3), Named("rear right, wet", 0.3), Named("spare", 0.3)], s_errors);
        SideDifference d = Assert.Single(result.Differences);
        Assert.Equal(("Front Left", "front right"), (d.Left.Measured.Name, d.Right.Measured.Name));
        s_rounding.Holds(200, d.Difference!.Value);
        s_rounding.Holds(Math.Sqrt(2 * 28_800 + 40.0 * 40 + 36.0 * 36), d.Uncertainty!.Value);
    }

    [Fact]
    public void Every_pair_that_disagrees_is_named_with_what_lies_between_and_what_was_allowed()
    {
        // 700, 1000 and 1600 N, plain mean 1100: u² = 2·30² + 22² = 2284 for the tender and 2·90² + 22² = 16 684 for the others.
        var corner = Corner(Spring("tender", 10e3, 0.1, 0.03), Spring("upper", 30e3, 0.3, 0.3 - 1.0 / 30), Spring("lower", 30e3, 0.3, 0.3 - 1.6 / 30));
        WeighedCorner w = Weigh.Corner(corner, s_errors);
        Assert.Equal([("tender", "upper"), ("tender", "lower"), ("upper", "lower")], w.Disagreements.Select(d => (d.Low, d.High)));
        Assert.Equal([300, 900, 600], w.Disagreements.Select(d => Math.Round(d.Difference, 9)));
        s_rounding.Holds(Math.Sqrt(2284 + 16_684), w.Disagreements[0].Allowed);
        s_rounding.Holds(Math.Sqrt(2 * 16_684), w.Disagreements[2].Allowed);
        // The upper less than the lower: the nut, whatever the tender says.
        Assert.Equal(DisagreementCause.SliderOnStopNut, w.Cause);
        s_rounding.Holds(1600, w.Instead!.SpringLoad);
    }

    [Fact]
    public void Springs_that_read_the_same_agree_even_where_nothing_may_be_off()
    {
        // 16 384 N/m by 250 mm and 32 768 by 125: 4096 N to the last bit.
        WeighedCorner w = Weigh.Corner(Corner(Spring("upper", 16384, 0.5, 0.25), Spring("lower", 32768, 0.5, 0.375)), new WeighErrors(0, 0));
        Assert.Empty(w.Disagreements);
        Assert.Equal((4096, 0), (w.Loads.SpringLoad, w.Loads.Uncertainty));
    }

    [Theory]
    [InlineData(500, 1600, 1000)] // the tender below both, but the lower below the upper too
    [InlineData(1600, 1000, 1000)] // the tender above both
    public void Where_no_one_spring_explains_it_the_cause_is_unknown(double tender, double upper, double lower)
    {
        var corner = Corner(Spring("tender", 10e3, 0.3, 0.3 - tender / 10e3), Spring("upper", 30e3, 0.3, 0.3 - upper / 30e3), Spring("lower", 30e3, 0.3, 0.3 - lower / 30e3));
        WeighedCorner w = Weigh.Corner(corner, s_errors);
        Assert.Equal(DisagreementCause.Unknown, w.Cause);
        Assert.Null(w.Instead);
    }

    [Theory]
    [InlineData("tender", 0.0258, SpringUse.Solid, 0.034, 0.030)] // 4.2 mm of gap where √2·3 = 4.24 may be error
    [InlineData("tender", 0.0257, SpringUse.Counts, 0.034, 0.030)]
    [InlineData("tender", 0.0258, SpringUse.Solid, 0.030)]
    [InlineData("tender", 0.031, SpringUse.Solid, 0.030)] // shorter than solid
    [InlineData("upper", 0.030, SpringUse.Counts, 0.030)] // not made to be solid
    public void A_tender_within_the_error_of_its_solid_length_is_left_out(string position, double solid, SpringUse use, params double[] loaded)
    {
        var corner = Corner(Spring(position, 10e3, 0.1, loaded) with { SolidLength = solid }, Spring("lower", 40e3, 0.35, 0.3));
        Assert.Equal(use, Weigh.Corner(corner, s_errors).Springs[0].Use);
    }

    [Fact]
    public void On_the_stop_nut_a_tender_is_left_out_for_the_nut_even_where_it_is_solid()
    {
        var corner = Corner(Spring("tender", 10e3, 0.1, 0.03) with { SolidLength = 0.03 }, Spring("upper", 20e3, 0.3, 0.2), Spring("lower", 40e3, 0.35, 0.3)) with { StopNutClear = false };
        Assert.Equal([SpringUse.PastStopNut, SpringUse.PastStopNut, SpringUse.Counts], Weigh.Corner(corner, s_errors).Springs.Select(s => s.Use));
    }

    [Fact]
    public void The_loads_offered_instead_have_gas_and_ratio_too()
    {
        // The lower's 2100 N and 642.159 of gas (NL-11) at a ratio of 0.9.
        var gas = new GasData(1.5e6, Math.Sqrt(3e-4 * 4 / Math.PI), 0.35 * 3e-4);
        WeighedCorner w = Weigh.Corner(
            Corner(Spring("upper", 30e3, 0.3, 0.25), Spring("lower", 30e3, 0.35, 0.28)) with { Gas = gas, Stroke = 0.3, ShaftShowing = 0.2, MotionRatio = 0.9 }, s_errors);
        s_rounding.Holds(2742.159, w.Instead!.CoiloverLoad);
        s_rounding.Holds(0.9 * 2742.159, w.Instead.SprungWeight!.Value);
    }

    [Fact]
    public void Gas_needs_shaft_and_stroke_to_be_known()
    {
        var gas = new GasData(1.5e6, 0.02, 1e-4);
        Assert.Null(Weigh.Gas(TwoThousand with { Gas = gas, Stroke = 0.3 }));
        Assert.Null(Weigh.Gas(TwoThousand with { Gas = gas, ShaftShowing = 0.2 }));
    }

    [Fact]
    public void Friction_is_read_off_the_springs_that_were_read_twice()
    {
        // The upper once, the lower at 51 and 49 mm: 2040 and 1960 N.
        WeighedCorner w = Weigh.Corner(Corner(Spring("upper", 20e3, 0.3, 0.2), Spring("lower", 40e3, 0.35, 0.299, 0.301)), s_errors);
        Tolerance.Share(1e-10, "differences of lengths lose digits").Holds(40, w.Friction!.Value);
    }

    [Fact]
    public void Sides_go_in_the_order_of_the_left_corners_and_need_both_names()
    {
        MeasuredCorner Named(string? name, double loaded) => Corner(Spring("lower", 40e3, 0.35, loaded)) with { Name = name };
        WeighResult result = Weigh.Of(
            [Named("rear right", 0.3), Named(null, 0.3), Named("LEFT rear", 0.3), Named("rear left", 0.31), Named("front left", 0.3), Named("Right Front", 0.3), Named("front RIGHT", 0.29)], s_errors);
        Assert.Equal([("rear left", "rear right"), ("front left", "front RIGHT")], result.Differences.Select(d => (d.Left.Measured.Name, d.Right.Measured.Name)));
        Assert.Equal([-400, -400], result.Differences.Select(d => Math.Round(d.Difference!.Value, 9))); // 40 N/mm times 10 mm
        Assert.Equal(s_errors, result.Errors);
        Assert.Equal(7, result.Corners.Length);
    }

    // First-order propagation (JCGM 100:2008, 5.1.2, clause from memory) against the propagation of distributions (JCGM 101: Monte Carlo).
    [Fact]
    public void Half_widths_hold_what_a_Monte_Carlo_of_lengths_and_rates_finds()
    {
        var random = new Random(20_240_917);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        double length = s_errors.Length / 1.96, share = s_errors.Rate / 1.96;
        const int samples = 200_000;
        double sum = 0, squares = 0, first = 0, firstSquares = 0;
        double w1 = 1 / 8800.0, w2 = 1 / 30_400.0;
        for (int i = 0; i < samples; i++)
        {
            double upper = 20e3 * (1 + share * Normal()) * (0.1 + length * (Normal() - Normal()));
            double lower = 40e3 * (1 + share * Normal()) * (0.05 + length * (Normal() - Normal()));
            double mean = (w1 * upper + w2 * lower) / (w1 + w2);
            (sum, squares, first, firstSquares) = (sum + mean, squares + mean * mean, first + upper, firstSquares + upper * upper);
        }

        double Deviation(double s, double q) => Math.Sqrt(q / samples - s / samples * (s / samples));
        WeighedCorner w = Weigh.Corner(TwoThousand, s_errors);
        var close = Tolerance.Share(0.01, "standard deviation of 200 000 samples: 1/√(2·200 000) = 0.16 %, six times that; second-order terms are 0.01 %");
        close.Holds(w.Loads.Uncertainty, 1.96 * Deviation(sum, squares));
        close.Holds(w.Springs[0].Uncertainty, 1.96 * Deviation(first, firstSquares));
    }
}
