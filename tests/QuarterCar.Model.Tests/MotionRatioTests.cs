using Xunit;

namespace QuarterCar.Model.Tests;

/// <summary>Shaft travel over wheel travel against areas under the ratio's lines, by hand (physics.md section 1).</summary>
public class MotionRatioTests
{
    private const double Rounding = 1e-15;

    private static readonly MotionRatio s_ratio = MotionRatio.Of([new(0, 0.8), new(0.1, 0.9), new(0.3, 0.7)]);

    [Theory]
    [InlineData(-0.1, -0.08, 0.8)]    // held below the first point
    [InlineData(0, 0, 0.8)]
    [InlineData(0.05, 0.04125, 0.85)] // 0.05 · (0.8 + 0.85)/2
    [InlineData(0.1, 0.085, 0.9)]
    [InlineData(0.2, 0.17, 0.8)]      // 0.085 + 0.1 · (0.9 + 0.8)/2
    [InlineData(0.3, 0.245, 0.7)]
    [InlineData(0.4, 0.315, 0.7)]     // held above the last
    public void Travel_is_the_area_under_the_ratio_and_goes_back_again(double wheel, double shaft, double ratio)
    {
        Assert.Equal(shaft, s_ratio.Travel(wheel), Rounding);
        Assert.Equal(ratio, s_ratio.Ratio(wheel), Rounding);
        Assert.Equal(wheel, s_ratio.WheelTravel(shaft), Rounding);
    }

    [Fact]
    public void Travel_counts_from_the_wheel_at_full_droop_wherever_the_table_begins()
    {
        MotionRatio ratio = MotionRatio.Of([new(-0.1, 0.7), new(0.1, 0.9)]);
        Assert.Equal(0, ratio.Travel(0), Rounding);
        Assert.Equal(0.085, ratio.Travel(0.1), Rounding);   // 0.1 · (0.8 + 0.9)/2
        Assert.Equal(-0.075, ratio.Travel(-0.1), Rounding); // 0.1 · (0.7 + 0.8)/2
        Assert.Equal(-0.145, ratio.Travel(-0.2), Rounding);

        MotionRatio late = MotionRatio.Of([new(0.1, 0.7), new(0.2, 0.9)]);
        Assert.Equal(0.07 + 0.08, late.Travel(0.2), Rounding);
    }

    [Fact]
    public void One_number_is_a_constant_ratio_and_a_level_table_too()
    {
        Assert.True(MotionRatio.Of([new(0, 0.8)]).IsConstant);
        Assert.True(MotionRatio.Of([new(0, 0.8), new(0.2, 0.8)]).IsConstant);
        Assert.False(s_ratio.IsConstant);
        Assert.Equal(0.16, MotionRatio.Of([new(0, 0.8)]).Travel(0.2), Rounding);
    }
}
