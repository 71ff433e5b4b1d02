using QuarterCar.Model.Selection;
using QuarterCar.TestKit;

using Xunit;

namespace QuarterCar.Model.Tests.Selection;

/// <summary>The weighted mean of readings and its half-width by Birge's ratio, by hand.</summary>
public class WeighMeanTests
{
    private static readonly Tolerance s_rounding = Tolerance.Share(1e-14, "a few operations on doubles");

    [Fact]
    public void One_reading_is_its_own_mean_and_keeps_its_half_width()
    {
        var mean = WeighMean.Of([1500], [40]);
        Assert.Equal((1500, 40, 1), (mean.Value, mean.HalfWidth, mean.Widening));
    }

    [Theory]
    [InlineData(1, 2)] // weights 1 and 1/4
    [InlineData(2, 1)]
    [InlineData(1e-200, 2e-200)] // whose squares are too small for a double
    public void Weights_are_one_over_the_half_widths_squared(double first, double second)
    {
        // (4·1000 + 1·1000.25)/5 = 1000.05 where the first is the sharper, else 1000.2.
        double more = first < second ? 0.05 : 0.2;
        s_rounding.Holds(1000 + more, WeighMean.Of([1000, 1000.25], [first, second]).Value);
    }

    [Fact]
    public void Readings_that_agree_are_surer_together_and_are_not_widened()
    {
        // 1/√(1/9 + 1/16) = 12/5; the two lie 1 apart, off by 1·9/25 and 1·16/25: χ² = 1.96²·(0.36²/9 + 0.64²/16) = 0.154.
        var mean = WeighMean.Of([10, 11], [3, 4]);
        s_rounding.Holds(10.36, mean.Value);
        s_rounding.Holds(2.4, mean.HalfWidth);
        Assert.Equal(1, mean.Widening);
    }

    [Fact]
    public void Readings_that_disagree_widen_by_the_root_of_chi_square_over_what_is_free()
    {
        // 0, 0 and 9 with half-widths of 1: mean 3, squares 9 + 9 + 36 = 54, χ² = 1.96²·54 over 2: 1.96·√27. The half-width is that over √3: 5.88.
        var mean = WeighMean.Of([0, 0, 9], [1, 1, 1]);
        s_rounding.Holds(3, mean.Value);
        s_rounding.Holds(1.96 * Math.Sqrt(27), mean.Widening);
        s_rounding.Holds(5.88, mean.HalfWidth);
    }

    [Fact]
    public void Unequal_half_widths_weigh_in_chi_square_too()
    {
        // 10 and 20 with 3 and 4: mean 13.6, χ² = 1.96²·(3.6²/9 + 6.4²/16) = 1.96²·4, one free: 3.92; 2.4·3.92.
        var mean = WeighMean.Of([10, 20], [3, 4]);
        s_rounding.Holds(13.6, mean.Value);
        s_rounding.Holds(3.92, mean.Widening);
        s_rounding.Holds(9.408, mean.HalfWidth);
    }

    [Fact]
    public void Readings_without_error_leave_their_scatter()
    {
        // 1, 2 and 6: mean 3, squares 4 + 1 + 9 = 14, over 2 and 3: 1.96·√(14/6).
        var mean = WeighMean.Of([1, 2, 6], [0, 0, 0]);
        s_rounding.Holds(3, mean.Value);
        s_rounding.Holds(1.96 * Math.Sqrt(14.0 / 6), mean.HalfWidth);
        Assert.Equal(1, mean.Widening);
        Assert.Equal(new WeighMean(7, 0, 1), WeighMean.Of([7], [0]));
    }
}
