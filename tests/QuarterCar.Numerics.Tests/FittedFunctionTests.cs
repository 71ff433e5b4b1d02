using QuarterCar.TestKit;

using Xunit;

namespace QuarterCar.Numerics.Tests;

/// <summary>The table of the hyperbolic tangent and the polynomial of degree fifteen.</summary>
public class FittedFunctionTests
{
    [Fact]
    public void The_tabled_tangent_is_the_libraries_within_3e_14()
    {
        // The eighth Taylor coefficient is largest around 0.25, where it takes 2.76e-14 at half a cell's width (30 digits).
        var promise = new Tolerance(3e-14, "the promise of TanhTable: the Taylor remainder at 1/32 from a node");
        for (int i = -400_000; i <= 400_000; i++)
        {
            double u = i * 5.1e-5;
            promise.Holds(Math.Tanh(u), TanhTable.Tanh(u), $"tanh {u}");
        }
    }

    [Theory]
    [InlineData(19.1)]
    [InlineData(25)]
    [InlineData(double.PositiveInfinity)]
    public void Far_out_the_tangent_is_one(double u)
    {
        Assert.Equal(1, TanhTable.Tanh(u));
        Assert.Equal(-1, TanhTable.Tanh(-u));
    }

    [Fact]
    public void The_tangent_of_no_number_is_no_number() => Assert.True(double.IsNaN(TanhTable.Tanh(double.NaN)));

    [Theory]
    [InlineData(1e-300)]
    [InlineData(1e-9)]
    [InlineData(0.01)]
    public void Close_to_zero_the_tangent_keeps_its_relative_digits(double u) =>
        Tolerance.Share(1e-15, "the first cell's series begins with u itself").Holds(Math.Tanh(u), TanhTable.Tanh(u));

    // (1 − x)^−1.4 is the gas law's power.
    [Fact]
    public void A_fitted_power_is_met_within_what_was_allowed()
    {
        static double F(double x) => Math.Pow(1 - x, -1.4);
        FifteenthDegree fit = Assert.IsType<FifteenthDegree>(FifteenthDegree.TryFit(F, 0, 0.4, 1e-11));
        double largest = F(0.4);
        for (double x = 0; x <= 0.4; x += 1e-3)
            new Tolerance(1e-11 * largest, "the allowed share of the largest value").Holds(F(x), Value(fit, x), $"at {x}");
    }

    [Fact]
    public void A_polynomial_of_degree_fifteen_is_met_to_rounding()
    {
        static double F(double x) => Math.Pow(x, 15) - 3 * Math.Pow(x, 8) + x;

        // Its last Chebyshev terms are part of it, so that the fit must allow for 2⁻¹⁴ of them.
        FifteenthDegree fit = Assert.IsType<FifteenthDegree>(FifteenthDegree.TryFit(F, -1, 1, 1e-3));
        for (double x = -1; x <= 1; x += 0.01)
            new Tolerance(1e-12, "powers from Chebyshev terms with coefficients up to 2¹⁴").Holds(F(x), Value(fit, x), $"at {x}");
    }

    [Fact]
    public void A_kink_is_refused() => Assert.Null(FifteenthDegree.TryFit(Math.Abs, -1, 1, 1e-6));

    [Fact]
    public void A_function_that_is_no_number_somewhere_is_refused() => Assert.Null(FifteenthDegree.TryFit(Math.Sqrt, -1, 1, 1e-6));

    [Fact]
    public void A_value_is_added_to_its_sum()
    {
        FifteenthDegree fit = Assert.IsType<FifteenthDegree>(FifteenthDegree.TryFit(x => x, 2, 4, 1e-12));
        double[] c = fit.Coefficients.ToArray();
        new Tolerance(1e-14, "rounding of numbers near 10").Holds(3.5 + 7, FifteenthDegree.AddValue(ref c[0], (3.5 - fit.Middle) * fit.InverseHalf, 7));
    }

    private static double Value(FifteenthDegree fit, double x)
    {
        double[] c = fit.Coefficients.ToArray();
        return FifteenthDegree.AddValue(ref c[0], (x - fit.Middle) * fit.InverseHalf, 0);
    }
}
