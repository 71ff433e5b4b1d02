using CsCheck;


using QuarterCar.Studies.Spreads;

using Xunit;

namespace QuarterCar.Studies.Tests.Spreads;

public sealed class SpreadNumbersTests
{
    private static readonly TestKit.Tolerance s_rounding = TestKit.Tolerance.Share(1e-14, "a few roundings");

    /// <summary>By hand: five values have four gaps; the 5th percentile is 0.2 of a gap up, the 95th 0.8 of the last.</summary>
    [Theory]
    [InlineData(0, 1)]
    [InlineData(0.05, 1.2)]
    [InlineData(0.5, 3)]
    [InlineData(0.95, 8.8)]
    [InlineData(1, 10)]
    public void Percentiles_lie_on_straight_lines_between_the_sorted_values(double share, double expected) =>
        s_rounding.Holds(expected, Percentiles.At([1, 2, 3, 4, 10], share));

    [Fact]
    public void The_only_value_is_every_percentile() => Assert.Equal(7, Percentiles.At([7], 0.95));

    /// <summary>Φ⁻¹(0.975) = 1.959964 (tables of the normal distribution): the half-width is reached there.</summary>
    [Theory]
    [InlineData(0.5, 200)]
    [InlineData(0.975, 208)]
    [InlineData(0.025, 192)]
    public void A_normal_half_width_holds_95_percent(double share, double expected) =>
        new TestKit.Tolerance(1e-9, "the inverse of the normal distribution is good to 1e-10 or so").Holds(expected, SpreadPlan.Value(new Scenarios.Tolerance("a", 200, 0.04, true, false), share));

    [Theory]
    [InlineData(0.5, -2)]
    [InlineData(0.25, -2.25)]
    [InlineData(0.999999999, -1.500000001)]
    public void Uniform_bounds_are_filled_evenly_and_never_passed(double share, double expected) =>
        s_rounding.Holds(expected, SpreadPlan.Value(new Scenarios.Tolerance("a", -2, 0.5, false, true), share));

    /// <summary>y = 3a + 4b + 12ab on the corners of a square: variances 9, 16 and 144; the last belongs to neither alone.</summary>
    [Fact]
    public void Shares_of_a_plane_are_its_squared_slopes_and_the_rest_is_left()
    {
        double[] a = [1, 1, -1, -1, 1, 1, -1, -1], b = [1, -1, 1, -1, 1, -1, 1, -1];
        double[] y = [.. a.Zip(b, (p, q) => (3 * p) + (4 * q) + (12 * p * q))];
        var shares = VarianceShares.Of([a, b], y)!.Value;
        s_rounding.Holds(9.0 / 169, shares[0]);
        s_rounding.Holds(16.0 / 169, shares[1]);
    }

    [Fact]
    public void Shares_are_never_negative_and_never_more_than_all() =>
        Gen.Double[-1, 1].Array[8, 40].Array[4].Where(c => c.All(v => v.Length >= 8)).Sample(columns =>
        {
            int n = columns.Min(c => c.Length);
            double[][] cut = [.. columns.Select(c => c[..n])];
            if (VarianceShares.Of(cut[..3], cut[3]) is not { } shares) return;
            Assert.All(shares, s => Assert.True(s >= 0));
            Assert.True(shares.Sum() <= 1 + 1e-9, "R² is at most 1; the rest is rounding of a small matrix");
        });

    [Fact]
    public void Two_inputs_that_go_together_share_what_they_explain()
    {
        double[] a = [1, 2, 3, 4, 5, 7];
        var shares = VarianceShares.Of([a, a], a)!.Value;
        new TestKit.Tolerance(1e-9, "square roots of an eigenvalue that is 0 but for rounding").Holds(0.5, shares[0]);
        new TestKit.Tolerance(1e-9, "likewise").Holds(0.5, shares[1]);
    }

    [Fact]
    public void A_figure_that_does_not_vary_has_no_shares() => Assert.Null(VarianceShares.Of([[1, 2, 3, 4]], [5.1, 5.1, 5.1, 5.1]));

    [Fact]
    public void Too_few_samples_tell_nothing() => Assert.Null(VarianceShares.Of([[1, 2, 3], [3, 1, 2]], [1, 2, 4]));
}
