using QuarterCar.Model.Terrain;

using Xunit;

namespace QuarterCar.Model.Tests.Terrain;

/// <summary>
/// The wheel centre's way over a haversine is its parallel curve at R: the same slope at the contact, and the curvature κ/(1 − R·κ)
/// (do Carmo, Differential Geometry of Curves and Surfaces, section 1-7, exercise on parallel curves, from memory).
/// </summary>
public class WaveContactTests
{
    private const double Radius = 0.4;

    // 0.3 m high, 3 m long: tightest at the trough, 2π²·0.3/9 = 0.658 of 1/m, less than 1/R = 2.5.
    private static readonly WaveContact s_open = new(new Wave(0, 0, 0.3, 3), Radius);

    // 0.5 m high, 1 m long: 9.87 of 1/m at the trough.
    private static readonly WaveContact s_tight = new(new Wave(0, 0, 0.5, 1), Radius);

    [Theory]
    [InlineData(0)]
    [InlineData(0.2)]
    [InlineData(-0.6)]
    [InlineData(1.1)]
    [InlineData(1.5)]
    public void The_centre_s_way_is_the_parallel_curve(double u)
    {
        double phase = 2 * Math.PI * u / 3, slope = -0.1 * Math.PI * Math.Sin(phase), bend = -0.2 * Math.PI * Math.PI / 3 * Math.Cos(phase);
        double stretch = Math.Sqrt(1 + (slope * slope)), curvature = bend / Math.Pow(stretch, 3);
        CurvePoint found = s_open.At(u);
        Assert.Equal((-0.15 * (1 - Math.Cos(phase))) + (Radius / stretch) - Radius, found.Height, 1e-15);
        Assert.Equal(slope, found.Slope, 1e-15);
        Assert.Equal(curvature / (1 - (Radius * curvature)) * Math.Pow(stretch, 3), found.Bend, 1e-13);
        Assert.Equal(u - (Radius * slope / stretch), s_open.CentreAt(u), 1e-15);
        Assert.Equal(u, s_open.ContactAt(s_open.CentreAt(u), -1.5, 1.5), 1e-14);
    }

    [Fact]
    public void A_trough_is_tight_where_it_bends_as_much_as_the_circle()
    {
        Assert.False(s_open.IsTight);
        Assert.True(s_tight.IsTight);
        Assert.True((s_open with { Radius = 1 / s_open.Wave.TroughBend }).IsTight);
        Assert.False((s_open with { Radius = 0.999 / s_open.Wave.TroughBend }).IsTight);
    }

    [Fact]
    public void What_no_circle_touches_ends_where_the_ground_bends_as_the_circle()
    {
        double half = s_tight.UntouchedHalfWidth(), phase = 2 * Math.PI * half;
        double slope = 0.5 * Math.PI * Math.Sin(phase), bend = Math.PI * Math.PI * Math.Cos(phase);
        Assert.InRange(half, 0.01, 0.25);
        Assert.Equal(1 / Radius, bend / Math.Pow(1 + (slope * slope), 1.5), 1e-10);
    }
}
