using System.Runtime.Intrinsics;

using MathNet.Numerics.LinearAlgebra;

using QuarterCar.Numerics.Integration;
using QuarterCar.TestKit;

using Xunit;

namespace QuarterCar.Numerics.Tests.Integration;

/// <summary>Polynomials written by their roots: the first at which one falls is found, to the resolution of time, up to the limit and not past it.</summary>
public class PolynomialCrossingTests
{
    private static readonly Tolerance s_located = new(1e-9, "coefficients rounded at 1e-16 over a slope of 1e-6, of seven roots 0.04 apart");

    // Π(rᵢ − x) is above 0 up to its first root, whichever follow.
    [Theory]
    [InlineData(new[] { 0.5 })]
    [InlineData(new[] { 0.03 })]
    [InlineData(new[] { 0.98 })]
    [InlineData(new[] { 0.2, 0.4 })]
    [InlineData(new[] { 0.5, 1.2 })]
    [InlineData(new[] { 0.4, 0.43, 0.9 })]
    [InlineData(new[] { 0.05, 0.1, 0.9, 0.95 })]
    [InlineData(new[] { 0.31, 0.35, 0.5, 0.8, 0.85 })]
    [InlineData(new[] { 0.7, 0.74, 0.78, 0.82, 0.9, 0.97 })]
    [InlineData(new[] { 0.11, 0.24, 0.37, 0.5, 0.63, 0.76, 0.89 })]
    [InlineData(new[] { 0.31, 1.1, 1.2, 1.3, 1.4, 1.5, 1.6 })]
    public void A_polynomial_is_left_at_its_first_root(double[] roots)
    {
        foreach (double limit in new[] { 1, roots[0] + 1e-4, 0.5 * (roots[0] + 1) })
        {
            Assert.True(Find(x => Product(roots, x), out double theta, limit), $"up to {limit}");
            s_located.Holds(roots[0], theta, $"up to {limit}");
        }

        Assert.False(Find(x => Product(roots, x), out _, roots[0] - 1e-4));
        Assert.False(Find(x => Product(roots, x), out _, 0.5 * roots[0]));
    }

    // Turned round it begins below, on the root at 0 itself: it moves inside there, and is left at the next root.
    [Theory]
    [InlineData(new[] { 0, 0.6 }, 0.6)]
    [InlineData(new[] { 0, 0.2, 0.6 }, 0.2)]
    [InlineData(new[] { 0, 0.02, 0.3, 0.9 }, 0.02)]
    [InlineData(new[] { 0, 0.5, 0.54, 0.9, 0.95, 1.3, 1.4 }, 0.5)]
    public void A_start_on_the_boundary_that_moves_inside_is_left_at_the_next_root(double[] roots, double expected)
    {
        Assert.True(Find(x => -Product(roots, x), out double theta));
        s_located.Holds(expected, theta);
        Assert.False(Find(x => -Product(roots, x), out _, 0.9 * expected));
    }

    [Theory]
    [InlineData(new[] { 0.0 })]
    [InlineData(new[] { 0, 0.3 })]
    [InlineData(new[] { 0, 0.3, 0.4, 0.5 })]
    public void A_start_on_the_boundary_that_moves_outside_has_left_at_once(double[] roots)
    {
        Assert.True(Find(x => Product(roots, x), out double theta));
        Assert.Equal(0, theta);
    }

    [Theory]
    [InlineData(new[] { -0.3, -0.2 })]
    [InlineData(new[] { 1.0001 })]
    [InlineData(new[] { -0.1, -0.05, 1.02, 1.04 })]
    [InlineData(new[] { 1.01, 1.02, 1.03, 1.04, 1.05, 1.06, 1.07 })]
    public void Roots_outside_the_step_are_no_crossings(double[] roots) => Assert.False(Find(x => Product(roots, x), out _));

    // A pair of roots as close as one likes is a dip that is found; a pair that just misses the axis is none.
    [Theory]
    [InlineData(0.03, 1e-4)]
    [InlineData(0.25, 1e-5)]
    [InlineData(0.5, 1e-5)]
    [InlineData(0.77, 1e-5)]
    [InlineData(0.97, 1e-4)]
    public void A_dip_of_any_width_is_found(double middle, double half)
    {
        double[] beyond = [1.5, 1.7];
        Assert.True(Find(x => (((x - middle) * (x - middle)) - (half * half)) * Product(beyond, x), out double theta));
        new Tolerance(1e-10, "coefficients rounded at 1e-16 over a slope of 1e-5").Holds(middle - half, theta);
        Assert.False(Find(x => (((x - middle) * (x - middle)) + (half * half)) * Product(beyond, x), out _));
    }

    // Two pairs: the second is searched once the first is known to stay above.
    [Fact]
    public void A_dip_behind_one_that_stays_above_is_found()
    {
        Assert.True(Find(x => (((x - 0.21) * (x - 0.21)) + 1e-9) * (((x - 0.6) * (x - 0.6)) - 1e-8), out double theta));
        new Tolerance(1e-10, "coefficients rounded at 1e-16 over a slope of 3e-5").Holds(0.5999, theta);
        Assert.False(Find(x => (((x - 0.21) * (x - 0.21)) + 1e-9) * (((x - 0.6) * (x - 0.6)) + 1e-8), out _));
    }

    // Where it is located it is outside or on the boundary; 2e-16 before it may still be inside.
    [Theory]
    [InlineData(new[] { 0.2, 0.4 })]
    [InlineData(new[] { 0.61, 0.67, 0.9 })]
    public void The_place_is_not_inside(double[] roots)
    {
        LinearGuardFunction guard = Guard(x => Product(roots, x));
        Assert.True(PolynomialCrossing.TryFind(ref guard, 1, 1, out double theta));
        Assert.True(guard.Value(theta) <= 0);
    }

    // Zero but for rounding: any answer serves that comes soon and lies in the step.
    [Fact]
    public void A_guard_of_nothing_but_rounding_ends()
    {
        for (int seed = 1; seed <= 200; seed++)
        {
            var random = new Random(seed);
            var step = new DenseStep { Length = 1 };
            foreach (ref Vector256<double> c in Coefficients(ref step))
                c = Vector256.CreateScalar(1e-17 * (random.NextDouble() - 0.5));
            var guard = new LinearGuardFunction(new LinearGuard(Vector256.CreateScalar(1.0), 0, 0), step);
            if (PolynomialCrossing.TryFind(ref guard, 0.8, 1, out double theta))
                Assert.InRange(theta, 0, 0.8);
        }
    }

    private static bool Find(Func<double, double> polynomial, out double theta, double limit = 1)
    {
        LinearGuardFunction guard = Guard(polynomial);
        return PolynomialCrossing.TryFind(ref guard, limit, 1, out theta);
    }

    private static double Product(double[] roots, double x) => roots.Aggregate(1.0, (p, r) => p * (r - x));

    /// <summary>The nested form's coefficients, by MathNet's solution for the polynomial's values at eight places.</summary>
    private static LinearGuardFunction Guard(Func<double, double> polynomial)
    {
        double[] places = [.. Enumerable.Range(0, 8).Select(i => 0.5 - (0.5 * Math.Cos(Math.PI * i / 7)))];
        var values = Matrix<double>.Build.Dense(8, 8, (i, k) => Math.Pow(places[i], (k + 1) / 2) * Math.Pow(1 - places[i], k / 2));
        Vector<double> c = values.Solve(Vector<double>.Build.Dense(8, i => polynomial(places[i])));
        var step = new DenseStep { Length = 1 };
        int next = 0;
        foreach (ref Vector256<double> coefficient in Coefficients(ref step))
            coefficient = Vector256.CreateScalar(c[next++]);
        return new LinearGuardFunction(new LinearGuard(Vector256.CreateScalar(1.0), 0, 0), step);
    }

    // C0 to C7 lie one behind the other.
    private static Span<Vector256<double>> Coefficients(ref DenseStep step) => System.Runtime.InteropServices.MemoryMarshal.CreateSpan(ref step.C0, 8);
}
