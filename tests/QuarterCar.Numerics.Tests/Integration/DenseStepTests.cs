using System.Runtime.Intrinsics;

using QuarterCar.Numerics.Integration;
using QuarterCar.TestKit;
using QuarterCar.TestKit.Running;

using Xunit;

namespace QuarterCar.Numerics.Tests.Integration;

/// <summary>The interpolant has seven degrees, so that t⁷ and its derivative come out to the last bits, and its bulge is known.</summary>
public class DenseStepTests
{
    private static readonly DenseStep s_step = TestRun.Smooth(default(Powers), Vector256<double>.Zero, 1, TestRun.Uncontrolled(1)).Log.Steps[0];

    [Fact]
    public void Four_derivatives_at_once_are_those_of_the_powers()
    {
        var theta = Vector256.Create(0.1, 0.35, 0.8, 1);
        (Vector256<double> value, Vector256<double> seventh) = s_step.AtThetas(theta, 0);
        Vector256<double> third = s_step.AtThetas(theta, 2).Derivative;
        for (int i = 0; i < 4; i++)
        {
            new Tolerance(1e-12, "rounding").Holds(7 * Math.Pow(theta[i], 6), seventh[i]);
            new Tolerance(1e-12, "rounding").Holds(3 * theta[i] * theta[i], third[i]);
            Assert.Equal(s_step.AtTheta(theta[i])[0], value[i]);
            Assert.Equal((s_step.DerivativeAtTheta(theta[i])[0], s_step.DerivativeAtTheta(theta[i])[2]), (seventh[i], third[i]));
        }
    }

    // t⁷ hangs below its chord the most at t = 7^(−1/6), by 6/7 of that; the bulge is a bound of it.
    [Fact]
    public void No_power_leaves_its_chord_by_more_than_the_bulge()
    {
        double bulge = DenseStep.Bulge(
            s_step.C2.GetLower(), s_step.C3.GetLower(), s_step.C4.GetLower(), s_step.C5.GetLower(), s_step.C6.GetLower(), s_step.C7.GetLower()).ToScalar();
        double sag = 6.0 / 7 * Math.Pow(7, -1.0 / 6);
        Assert.InRange(bulge, sag, 4 * sag);
    }

    // Each factor of the nested form at its own largest value, by the extremes of θ^m·(1 − θ)^n: 1/4 at 1/2, 4/27 at 2/3,
    // 1/16 at 1/2, 108/3125 at 3/5, 1/64 at 1/2, 6912/823543 at 4/7.
    [Theory]
    [InlineData(0, 1.0 / 4)]
    [InlineData(1, 4.0 / 27)]
    [InlineData(2, 1.0 / 16)]
    [InlineData(3, 108.0 / 3125)]
    [InlineData(4, 1.0 / 64)]
    [InlineData(5, 6912.0 / 823543)]
    public void Each_term_counts_with_its_largest_value_whatever_its_sign(int term, double largest)
    {
        Vector128<double>[] c = new Vector128<double>[6];
        c[term] = Vector128.Create(-1.0, 3);
        Vector128<double> bulge = DenseStep.Bulge(c[0], c[1], c[2], c[3], c[4], c[5]);
        Assert.Equal((largest, 3 * largest), (bulge[0], bulge[1]));
    }

    /// <summary>y = (t⁷, t², t³, t).</summary>
    private readonly struct Powers : IRightHandSide
    {
        public Vector256<double> Derivative(double t, Vector256<double> y) => Vector256.Create(7 * Math.Pow(t, 6), 2 * t, 3 * t * t, 1);
    }
}
