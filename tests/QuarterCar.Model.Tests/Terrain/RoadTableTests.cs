using QuarterCar.Model.Terrain;

using Xunit;

namespace QuarterCar.Model.Tests.Terrain;

/// <summary>Curves in tables, and segments of road, against the curves themselves.</summary>
public class RoadTableTests
{
    // A bound of the bend is what lets the integrator pass over a step without a look for a touch: it may not lie below the bend itself.
    [Theory]
    [InlineData(2, 1.0, 2)]      // x²
    [InlineData(3, 1.0, 6)]      // 6x at 1
    [InlineData(5, 1.0, 20)]     // 20x³ at 1: what a table's cell follows exactly
    [InlineData(5, 0.5, 2.5)]
    [InlineData(4, 2.0, 48)]     // 12x²
    public void The_bound_of_the_bend_is_a_tenth_above_the_bend(int power, double width, double bend)
    {
        RoadTable table = RoadTable.Build(x => new(Math.Pow(x, power), power * Math.Pow(x, power - 1), power * (power - 1) * Math.Pow(x, power - 2)), width, periodic: false);
        Assert.Equal(1.1 * bend, table.MostBend, 1e-7);
        Assert.Equal(width, table.Width);
    }

    [Theory]
    [InlineData(0.1, 4)]
    [InlineData(0.5, 0.7)]
    public void A_wave_of_a_table_repeats_both_ways_and_is_within_a_picometre_of_its_cosine(double height, double length)
    {
        double k = 2 * Math.PI / length;
        RoadTable table = RoadTable.Build(x => new(height * Math.Cos(k * x), -height * k * Math.Sin(k * x), -height * k * k * Math.Cos(k * x)), length, periodic: true);
        Assert.InRange(table.MostBend, height * k * k, 1.11 * height * k * k);
        for (double x = -2.3 * length; x < 3 * length; x += 0.0371 * length)
        {
            table.Evaluate(x, out double h, out double slope);
            Assert.Equal(height * Math.Cos(k * x), h, 1e-12);
            Assert.Equal(-height * k * Math.Sin(k * x), slope, 1e-8);
        }
    }

    // |x − 0.3|^1.5 bends without bound at 0.3: a cell of 1/8192 about it is (1/8192)^1.5 or some 1e-6 off.
    [Fact]
    public void A_curve_that_no_table_follows_is_asked_itself()
    {
        RoadTable table = RoadTable.Build(x => new(Math.Pow(Math.Abs(x - 0.3), 1.5), 1.5 * Math.Sign(x - 0.3) * Math.Sqrt(Math.Abs(x - 0.3)), 0.75 / Math.Sqrt(Math.Abs(x - 0.3))), 1, periodic: true);
        Assert.Equal(0, table.Cells);
        table.Evaluate(2.7, out double h, out double slope);
        Assert.Equal(Math.Pow(0.4, 1.5), h, 1e-12);
        Assert.Equal(1.5 * Math.Sqrt(0.4), slope, 1e-12);

        // And so does the segment of road that has it: from 5 m on, 2 m up.
        var segment = new RoadSegment(5, 9, new RoadFormula(RoadForm.Table, 5, 2, Table: table));
        Assert.False(segment.IsTabulated);
        Assert.Equal((0, 1.0), (segment.TableCells, segment.CrestDistance));
        Assert.True(double.IsNaN(segment.MostBend));
        Assert.Equal(2 + Math.Pow(0.4, 1.5), segment.HeightAt(7.7), 1e-12);
    }

    [Fact]
    public void A_segment_tells_what_it_is()
    {
        RoadTable table = RoadTable.Build(x => new(x * x, 2 * x, 2), 3, periodic: false), other = RoadTable.Build(x => new(x * x, 2 * x, 2), 3, periodic: false);
        RoadSegment waves = Of(RoadForm.Table, 0, 0, table), level = Of(RoadForm.Polynomial, 0, 0), slope = Of(RoadForm.Polynomial, 0.1, 0), parabola = Of(RoadForm.Polynomial, 0, -0.3), arc = Of(RoadForm.Arc, 0.4, 0);
        Assert.Equal([false, true, false, false, false], new[] { waves, level, slope, parabola, arc }.Select(s => s.IsLevel));
        Assert.Equal([3, double.PositiveInfinity, double.PositiveInfinity], new[] { waves, parabola, arc }.Select(s => s.CrestDistance));
        Assert.Equal(table.Cells, waves.TableCells);
        Assert.Equal(0, level.TableCells);
        Assert.Equal((-0.6, 0.6), (parabola.PolynomialBend, parabola.MostBend));
        Assert.Equal(table.MostBend, waves.MostBend);
        Assert.True(double.IsNaN(arc.MostBend));
        Assert.True(waves.SharesTableWith(Of(RoadForm.Table, 1, 0, table)));
        Assert.False(waves.SharesTableWith(Of(RoadForm.Table, 0, 0, other)));
        Assert.False(level.SharesTableWith(slope));
        Assert.True(arc.TryArc(out double origin, out double radius));
        Assert.Equal((1.0, 0.4), (origin, radius));
        Assert.False(parabola.TryArc(out _, out _));

        static RoadSegment Of(RoadForm form, double c1, double c2, RoadTable? table = null) => new(0, 2, new RoadFormula(form, 1, 0.5, c1, c2, table));
    }

    // R = 0.4 m about a corner at 1 m: height 0.5 + √(0.16 − x²), slope −x/√(0.16 − x²); at the radius itself the slope ends at 1e9.
    [Theory]
    [InlineData(1.24, 0.5 + 0.32, -0.75)]
    [InlineData(0.76, 0.5 + 0.32, 0.75)]
    [InlineData(1, 0.9, 0)]
    [InlineData(0.6, 0.5, 1e9)]
    public void An_arc_is_the_circle_about_its_corner(double s, double height, double slope)
    {
        new RoadSegment(0, 2, new RoadFormula(RoadForm.Arc, 1, 0.5, 0.4)).Evaluate(s, out double h, out double found);
        Assert.Equal(height, h, 2e-8);
        Assert.Equal(1, slope == 0 ? 1 + found : found / slope, 1e-6);
    }
}
