using System.Numerics;
using System.Runtime.Intrinsics;

namespace QuarterCar.Numerics.Integration;

/// <summary>
/// Finds where a guard that is a polynomial along the step first turns negative, and misses none: a stretch is left only when no Bernstein
/// coefficient is negative, and searched only where they change sign once; else it is halved.
/// </summary>
internal static class PolynomialCrossing
{
    private const int Coefficients = 8;

    // Seven roots, each followed down to the resolution of time, take fewer; more are asked for only by a guard that is zero but for rounding.
    private const int MostHalvings = 400;

    /// <summary>The first θ in (0, limit] at which the guard is negative.</summary>
    /// <param name="guard">The guard along the step.</param>
    /// <param name="limit">Largest θ looked at.</param>
    /// <param name="length">Length of the step, s.</param>
    /// <param name="theta">Where; just past the boundary or on it.</param>
    public static bool TryFind(ref LinearGuardFunction guard, double limit, double length, out double theta)
    {
        theta = 0;
        (Vector256<double> first, Vector256<double> last) = guard.Bernstein();
        uint outside = (Vector256.LessThan(first, Vector256<double>.Zero).ExtractMostSignificantBits() & ~1u) | (Vector256.LessThan(last, Vector256<double>.Zero).ExtractMostSignificantBits() << 4);
        if (outside == 0)
            return false;
        Span<double> b = stackalloc double[Coefficients];
        first.CopyTo(b);
        last.CopyTo(b[4..]);
        if (b[0] > 0 && BitOperations.PopCount((outside ^ (outside << 1)) & 0xff) == 1)
            return TryOnly(ref guard, b, BitOperations.TrailingZeroCount(outside), limit, length, out theta);
        if (limit < 1)
        {
            Span<double> rest = stackalloc double[Coefficients];
            Split(b, limit, rest);
        }

        return Search(ref guard, b, limit, length, out theta);
    }

    // One crossing in the whole step, near where the coefficients' own polygon crosses.
    private static bool TryOnly(ref LinearGuardFunction guard, ReadOnlySpan<double> b, int outside, double limit, double length, out double theta)
    {
        double low = 0, inside = b[0], high = 1, beyond = b[^1];
        theta = (outside - 1 + b[outside - 1] / (b[outside - 1] - b[outside])) / (Coefficients - 1);
        double near = guard.Value(theta);
        if (near > 0)
            (low, inside) = (theta, near);
        else if (near < 0)
            (high, beyond) = (theta, near);
        if (near != 0)
            theta = Crossing.Locate(ref guard, length, low, inside, high, beyond);
        return theta <= limit;
    }

    private static bool Search(ref LinearGuardFunction guard, Span<double> b, double limit, double length, out double theta)
    {
        // The halves to the right of the present stretch wait here; each halving keeps one, and none is halved below the resolution of time.
        const int Most = 64;
        Span<double> waiting = stackalloc double[Most * Coefficients], ends = stackalloc double[Most];
        int depth = 0, halvings = 0;
        double low = 0, high = limit;
        while (true)
        {
            int changes = SignChanges(b);
            if (changes == 1 && b[0] > 0)
            {
                theta = Crossing.Locate(ref guard, length, low, b[0], high, b[^1]);
                return true;
            }

            if (b[0] <= 0 && LeavesAtOnce(b))
            {
                theta = low;
                return true;
            }

            if (changes > 0 && depth < Most && (high - low) * length > Crossing.TimeResolution)
            {
                if (++halvings > MostHalvings)
                    return Crossing.TryFind(ref guard, limit, length, 1, out theta);
                Split(b, 0.5, waiting.Slice(depth * Coefficients, Coefficients));
                ends[depth++] = high;
                high = low + 0.5 * (high - low);
                continue;
            }

            if (b[^1] < 0)
            {
                theta = high;
                return true;
            }

            if (depth == 0)
            {
                theta = 0;
                return false;
            }

            (low, high) = (high, ends[--depth]);
            waiting.Slice(depth * Coefficients, Coefficients).CopyTo(b);
        }
    }

    // How often the guard changes its sign at most. A crossing is one that has been inside, so the start counts as inside, also where rounding says otherwise.
    private static int SignChanges(ReadOnlySpan<double> b)
    {
        int changes = 0;
        for (int i = 1; i < b.Length; i++)
        {
            if ((changes & 1) == 0 ? b[i] < 0 : b[i] > 0)
                changes++;
        }

        return changes;
    }

    private static bool LeavesAtOnce(ReadOnlySpan<double> b)
    {
        foreach (double next in b[1..])
        {
            if (next != 0)
                return next < 0;
        }

        return false;
    }

    /// <summary>De Casteljau's construction: the coefficients left of a place take the place of the whole's.</summary>
    private static void Split(Span<double> b, double at, Span<double> right)
    {
        for (int k = b.Length - 1; k >= 0; k--)
        {
            right[k] = b[^1];
            double before = b[b.Length - 1 - k];
            for (int i = b.Length - k; i < b.Length; i++)
                (before, b[i]) = (b[i], before + at * (b[i] - before));
        }
    }
}
