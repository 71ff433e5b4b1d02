namespace QuarterCar.Numerics.Integration;

/// <summary>Finds where a guard first turns negative along a step: by signs at a few nodes, by following dips between them, then by false position.</summary>
internal static class Crossing
{
    // Early in the step a guard that has just been crossed is still close to its boundary, so the first node is early.
    private static ReadOnlySpan<double> Nodes => [0, 1.0 / 16, 1.0 / 4, 1.0 / 2, 3.0 / 4, 1];

    private const int MaxIterations = 80;

    // Two times closer than this are one, s: a ten-millionth of the microsecond that events are promised to.
    private const double TimeResolution = 1e-13;

    /// <summary>The first θ in (0, limit] at which the function is negative.</summary>
    /// <param name="function">The guard along the step.</param>
    /// <param name="limit">Largest θ looked at.</param>
    /// <param name="length">Length of the step, s.</param>
    /// <param name="theta">Where; just past the boundary or on it.</param>
    public static bool TryFind<TFunction>(ref TFunction function, double limit, double length, out double theta)
        where TFunction : struct, IGuardFunction, allows ref struct
    {
        theta = 0;
        Span<double> x = stackalloc double[6], g = stackalloc double[6];
        for (int i = 0; i < Nodes.Length; i++)
        {
            x[i] = limit * Nodes[i];
            g[i] = function.Value(x[i]);
            if (g[i] >= 0 || i == 0)
                continue;
            if (Dips(ref function, length, x[..(i + 1)], g[..(i + 1)], out theta))
                return true;
            theta = g[i - 1] > 0 ? Locate(ref function, length, x[i - 1], g[i - 1], x[i], g[i])
                : i == 1 ? FromBoundary(ref function, length, x[1], g[1]) : x[i - 1];
            return true;
        }

        return Dips(ref function, length, x, g, out theta);
    }

    /// <summary>
    /// A guard that begins on its boundary and is outside at the first node: it has left at once, or has been inside for
    /// a moment. Without the difference two pieces that both see the later node would hand a state to and fro for ever.
    /// </summary>
    private static double FromBoundary<TFunction>(ref TFunction function, double length, double outside, double gOutside)
        where TFunction : struct, IGuardFunction, allows ref struct
    {
        for (double x = outside / 16; x * length > TimeResolution; x /= 16)
        {
            double g = function.Value(x);
            if (g > 0)
                return Locate(ref function, length, x, g, outside, gOutside);
            (outside, gOutside) = (x, g);
        }

        return 0;
    }

    /// <summary>A touch and a release inside the step leave no sign at the nodes: follow the lowest node down its parabola.</summary>
    private static bool Dips<TFunction>(ref TFunction function, double length, scoped Span<double> x, scoped Span<double> g, out double theta)
        where TFunction : struct, IGuardFunction, allows ref struct
    {
        theta = 0;
        for (int i = 1; i + 1 < x.Length; i++)
        {
            if (g[i] > g[i - 1] || g[i] > g[i + 1])
                continue;
            double left = x[i - 1], mid = x[i], right = x[i + 1], gl = g[i - 1], gm = g[i], gr = g[i + 1];
            for (int k = 0; k < 12; k++)
            {
                double a = (gr - gm) / (right - mid), b = (gm - gl) / (mid - left), bend = (a - b) / (right - left);
                double vertex = bend > 0 ? 0.5 * (mid + left) - 0.5 * b / bend : mid;
                if (!(vertex > left && vertex < right) || Math.Abs(vertex - mid) < 1e-9)
                    break;
                if (gm - bend * (vertex - mid) * (vertex - mid) > 0.5 * gm)
                    break;
                double gv = function.Value(vertex);
                if (gv < 0)
                {
                    theta = vertex > mid
                        ? Locate(ref function, length, mid, gm, vertex, gv)
                        : gl > 0 ? Locate(ref function, length, left, gl, vertex, gv) : left;
                    return true;
                }

                if (gv >= gm)
                {
                    if (vertex > mid)
                        (right, gr) = (vertex, gv);
                    else
                        (left, gl) = (vertex, gv);
                }
                else if (vertex > mid)
                {
                    (left, gl, mid, gm) = (mid, gm, vertex, gv);
                }
                else
                {
                    (right, gr, mid, gm) = (mid, gm, vertex, gv);
                }
            }
        }

        return false;
    }

    /// <summary>False position with the Illinois halving (Dowell and Jarratt, BIT 11, 1971, 168–174), a bisection now and then.</summary>
    private static double Locate<TFunction>(ref TFunction function, double length, double low, double gLow, double high, double gHigh)
        where TFunction : struct, IGuardFunction, allows ref struct
    {
        // A secant that lands on an end says that the root is there, not that the other end has come near: it is taken a
        // little inside, so that the far end is drawn in as well.
        double inside = Math.Max(0.5 * TimeResolution / length, 2e-16);
        int side = 0;
        for (int k = 0; k < MaxIterations && high - low > 2 * inside; k++)
        {
            double mid = k % 16 == 15 ? 0.5 * (low + high) : (gLow * high - gHigh * low) / (gLow - gHigh);
            mid = mid > low + inside ? Math.Min(mid, high - inside) : low + inside;
            double g = function.Value(mid);
            if (g == 0)
                return mid;
            if (g > 0)
            {
                (low, gLow) = (mid, g);
                if (side == 1)
                    gHigh *= 0.5;
                side = 1;
            }
            else
            {
                (high, gHigh) = (mid, g);
                if (side == -1)
                    gLow *= 0.5;
                side = -1;
            }
        }

        return high;
    }
}
