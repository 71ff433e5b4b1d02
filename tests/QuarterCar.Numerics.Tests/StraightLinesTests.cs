using CsCheck;

using QuarterCar.TestKit;

using Xunit;

namespace QuarterCar.Numerics.Tests;

public class StraightLinesTests
{
    private static readonly StraightLines s_lines = new([0, 1, 3, 4], [0, 2, 3, -1]);

    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.5, 1)]
    [InlineData(1, 2)]
    [InlineData(2, 2.5)]
    [InlineData(3, 3)]
    [InlineData(3.5, 1)]
    [InlineData(4, -1)]
    public void Between_points_the_value_runs_straight(double x, double value) => Assert.Equal(value, s_lines.At(x));

    [Theory]
    [InlineData(-2, -4)]
    [InlineData(6, -9)]
    public void Past_the_ends_the_outer_slopes_go_on(double x, double value) => Assert.Equal(value, s_lines.At(x));

    [Theory]
    [InlineData(-5, 0)]
    [InlineData(0, 0)]
    [InlineData(1, 1)]
    [InlineData(2.9, 1)]
    [InlineData(3, 2)]
    [InlineData(99, 2)]
    public void A_point_belongs_to_the_later_piece(double x, int piece) => Assert.Equal(piece, s_lines.PieceAt(x));

    // Triangles and trapezia by hand: 1, then 5, then 1; past the end the line goes on from −1 with slope −4.
    [Theory]
    [InlineData(0, 0)]
    [InlineData(1, 1)]
    [InlineData(2, 3.25)]
    [InlineData(3, 6)]
    [InlineData(4, 7)]
    [InlineData(5, 4)]
    public void The_integral_is_the_area_below(double x, double area) => Assert.Equal(area, s_lines.Integral(x), 14);

    [Fact]
    public void A_piece_carried_on_past_its_ends_stays_on_its_line()
    {
        Assert.Equal(6, s_lines.OnPiece(0, 3));
        Assert.Equal(1.5, s_lines.OnPiece(1, 0));
        Assert.Equal((3, 2.0, 0.5, -4.0), (s_lines.Pieces, s_lines.Slope(0), s_lines.Slope(1), s_lines.Slope(2)));
    }

    [Fact]
    public void The_integrals_slope_is_the_value() => Gen.Double[0.01, 4].Sample(x =>
    {
        // The difference quotient over 2d is exact but for the kink that it may straddle: half d times a slope jump below 5.
        const double d = 1e-6;
        double slope = (s_lines.Integral(x + d) - s_lines.Integral(x - d)) / (2 * d);
        new Tolerance(3e-6, "a kink within the difference, or rounding 1e-15 over d").Holds(s_lines.At(x), slope);
    });

    [Fact]
    public void Too_few_or_falling_points_are_refused()
    {
        Assert.Throws<ArgumentException>(() => new StraightLines([1], [1]));
        Assert.Throws<ArgumentException>(() => new StraightLines([1, 2], [1]));
        Assert.Throws<ArgumentException>(() => new StraightLines([1, 1], [1, 2]));
        Assert.Throws<ArgumentException>(() => new StraightLines([1, double.NaN], [1, 2]));
    }
}
