using System.Runtime.CompilerServices;

namespace QuarterCar.Numerics;

/// <summary>
/// A polynomial of degree 15 that stands for a smooth function on an interval, by interpolation at Chebyshev points.
/// It exists where a power in the innermost loop would cost more than everything around it. Immutable.
/// </summary>
public sealed class FifteenthDegree
{
    private const int Terms = 16;
    private static readonly double[] s_powers = ChebyshevPowers();
    private static readonly double[] s_nodes = [.. Enumerable.Range(0, Terms).Select(j => Math.Cos(Math.PI * (j + 0.5) / Terms))];
    private static readonly double[] s_transform =
    [
        .. Enumerable.Range(0, Terms * Terms).Select(i => Math.Cos(Math.PI * (i / Terms) * (i % Terms + 0.5) / Terms) * (i < Terms ? 1.0 : 2.0) / Terms),
    ];

    private readonly double[] _c;

    private FifteenthDegree(double[] c, double middle, double inverseHalf)
    {
        _c = c;
        Middle = middle;
        InverseHalf = inverseHalf;
    }

    /// <summary>The polynomial for a function, or null where it would miss by more than a share of the function's largest value.</summary>
    /// <param name="f">The function, finite on the interval.</param>
    /// <param name="low">Lower end.</param>
    /// <param name="high">Upper end.</param>
    /// <param name="allowed">Largest error, relative to the largest value met.</param>
    public static FifteenthDegree? TryFit(Func<double, double> f, double low, double high, double allowed)
    {
        Span<double> value = stackalloc double[Terms], chebyshev = stackalloc double[Terms];
        double middle = 0.5 * (low + high), half = 0.5 * (high - low), largest = 0;
        for (int j = 0; j < Terms; j++)
        {
            value[j] = f(middle + half * s_nodes[j]);
            largest = Math.Max(largest, Math.Abs(value[j]));
        }

        double[] c = new double[Terms];
        for (int k = 0; k < Terms; k++)
        {
            for (int j = 0; j < Terms; j++)
                chebyshev[k] += value[j] * s_transform[k * Terms + j];
            for (int i = 0; i <= k; i++)
                c[i] += chebyshev[k] * s_powers[k * Terms + i];
        }

        // The series falls geometrically; what its last two terms still hold is what was cut off, and more.
        if (!(Math.Abs(chebyshev[Terms - 1]) + Math.Abs(chebyshev[Terms - 2]) <= allowed * largest))
            return null;
        return new FifteenthDegree(c, middle, 1 / half);
    }

    /// <summary>Middle of the interval.</summary>
    public double Middle { get; }

    /// <summary>One over half the interval's length.</summary>
    public double InverseHalf { get; }

    /// <summary>Coefficients of the powers of g = (x − Middle)·InverseHalf, from g⁰ to g¹⁵.</summary>
    public ReadOnlySpan<double> Coefficients => _c;

    /// <summary>Value of sixteen coefficients at g, added to a sum, in Estrin's order: four quarters side by side instead of one long chain.</summary>
    /// <param name="c">The first of sixteen coefficients.</param>
    /// <param name="g">−1 to 1 on the interval.</param>
    /// <param name="sum">What it is added to.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double AddValue(ref double c, double g, double sum)
    {
        double g2 = g * g, g4 = g2 * g2;
        double q0 = Quarter(ref c, g, g2), q1 = Quarter(ref Unsafe.Add(ref c, 4), g, g2);
        double q2 = Quarter(ref Unsafe.Add(ref c, 8), g, g2), q3 = Quarter(ref Unsafe.Add(ref c, 12), g, g2);
        return Math.FusedMultiplyAdd(Math.FusedMultiplyAdd(q3, g4, q2), g4 * g4, Math.FusedMultiplyAdd(q1, g4, q0)) + sum;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Quarter(ref double c, double g, double g2) =>
        Math.FusedMultiplyAdd(Math.FusedMultiplyAdd(Unsafe.Add(ref c, 3), g, Unsafe.Add(ref c, 2)), g2, Math.FusedMultiplyAdd(Unsafe.Add(ref c, 1), g, c));

    private static double[] ChebyshevPowers()
    {
        // T[k+1] = 2x·T[k] − T[k−1], as rows of power coefficients.
        double[] p = new double[Terms * Terms];
        p[0] = 1;
        p[Terms + 1] = 1;
        for (int k = 2; k < Terms; k++)
        {
            for (int i = 0; i <= k; i++)
                p[k * Terms + i] = (i > 0 ? 2 * p[(k - 1) * Terms + i - 1] : 0) - p[(k - 2) * Terms + i];
        }

        return p;
    }
}
