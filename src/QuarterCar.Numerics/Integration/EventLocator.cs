namespace QuarterCar.Numerics.Integration;

/// <summary>
/// Finds the first guard that a step crosses, on the step's interpolant. A crossing belongs to (start, end]: a guard
/// that begins on its boundary and moves inside is not crossed. Knows nothing of what a crossing means.
/// </summary>
internal static class EventLocator
{
    // Early in the step a guard that has just been crossed is still close to its boundary, so the first node is early.
    private static ReadOnlySpan<double> Nodes => [0, 1.0 / 16, 1.0 / 4, 1.0 / 2, 3.0 / 4, 1];

    private const int MaxIterations = 80;

    // Two times closer than this are one, s: a ten-millionth of the microsecond that events are promised to.
    private const double TimeResolution = 1e-13;

    /// <summary>The earliest crossing.</summary>
    /// <param name="system">The equations with their guards.</param>
    /// <param name="step">The step.</param>
    /// <param name="suspects">Bit mask of guards to look at.</param>
    /// <param name="theta">Where, 0 to 1; on the far side of the boundary or on it.</param>
    /// <returns>The guard, or −1 where none is crossed.</returns>
    public static int First<TSystem>(ref TSystem system, in DenseStep step, uint suspects, out double theta)
        where TSystem : struct, IPiecewiseSystem
    {
        int first = -1;
        theta = 1;
        for (int guard = 0; suspects != 0; guard++, suspects >>= 1)
        {
            if ((suspects & 1) != 0 && Crosses(ref system, step, guard, theta, out double at) && (first < 0 || at < theta))
            {
                first = guard;
                theta = at;
            }
        }

        return first;
    }

    private static bool Crosses<TSystem>(ref TSystem system, in DenseStep step, int guard, double limit, out double theta)
        where TSystem : struct, IPiecewiseSystem
    {
        Span<double> x = stackalloc double[6], g = stackalloc double[6];
        theta = 0;
        for (int i = 0; i < Nodes.Length; i++)
        {
            x[i] = limit * Nodes[i];
            g[i] = Value(ref system, step, guard, x[i]);
            if (g[i] >= 0 || i == 0)
                continue;
            if (Dips(ref system, step, guard, x[..(i + 1)], g[..(i + 1)], out theta))
                return true;
            theta = g[i - 1] > 0 ? Locate(ref system, step, guard, x[i - 1], g[i - 1], x[i], g[i])
                : i == 1 ? FromBoundary(ref system, step, guard, x[1], g[1]) : x[i - 1];
            return true;
        }

        return Dips(ref system, step, guard, x, g, out theta);
    }

    /// <summary>
    /// A guard that begins on its boundary and is outside at the first node: it has left at once, or has been inside for
    /// a moment. Without the difference two pieces that both see the later node would hand a state to and fro for ever.
    /// </summary>
    private static double FromBoundary<TSystem>(ref TSystem system, in DenseStep step, int guard, double outside, double gOutside)
        where TSystem : struct, IPiecewiseSystem
    {
        for (double x = outside / 16; x * step.Length > TimeResolution; x /= 16)
        {
            double g = Value(ref system, step, guard, x);
            if (g > 0)
                return Locate(ref system, step, guard, x, g, outside, gOutside);
            (outside, gOutside) = (x, g);
        }

        return 0;
    }

    /// <summary>A touch and a release inside the step leave no sign at the nodes: follow the lowest node down its parabola.</summary>
    private static bool Dips<TSystem>(ref TSystem system, in DenseStep step, int guard, Span<double> x, Span<double> g, out double theta)
        where TSystem : struct, IPiecewiseSystem
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
                double gv = Value(ref system, step, guard, vertex);
                if (gv < 0)
                {
                    theta = vertex > mid
                        ? Locate(ref system, step, guard, mid, gm, vertex, gv)
                        : gl > 0 ? Locate(ref system, step, guard, left, gl, vertex, gv) : left;
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
    private static double Locate<TSystem>(ref TSystem system, in DenseStep step, int guard, double low, double gLow, double high, double gHigh)
        where TSystem : struct, IPiecewiseSystem
    {
        // A secant that lands on an end says that the root is there, not that the other end has come near: it is taken a
        // little inside, so that the far end is drawn in as well.
        double inside = Math.Max(0.5 * TimeResolution / step.Length, 2e-16);
        int side = 0;
        for (int k = 0; k < MaxIterations && high - low > 2 * inside; k++)
        {
            double mid = k % 16 == 15 ? 0.5 * (low + high) : (gLow * high - gHigh * low) / (gLow - gHigh);
            mid = mid > low + inside ? Math.Min(mid, high - inside) : low + inside;
            double g = Value(ref system, step, guard, mid);
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

    private static double Value<TSystem>(ref TSystem system, in DenseStep step, int guard, double theta)
        where TSystem : struct, IPiecewiseSystem =>
        system.Guard(guard, step.Start + theta * step.Length, step.AtTheta(theta));
}
