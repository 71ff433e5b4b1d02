namespace QuarterCar.Numerics.Integration;

/// <summary>Finds where a guard first turns negative along a step: by signs at a few places, by following dips between and beside them, then by false position.</summary>
internal static class Crossing
{
    private const int MaxIterations = 80;

    // A dip followed down to a millionth of its width takes a dozen places; the narrowest, as a share of the step, is below the last digits of its values.
    private const int MostPlaces = 40;
    private const double NarrowestDip = 3e-9;

    // Two times closer than this are one, s: a ten-millionth of the microsecond that events are promised to.
    internal const double TimeResolution = 1e-13;

    // Early in the step a guard that has just been crossed is still close to its boundary, so the first look is early.
    private const double FirstLook = 1.0 / 16;

    private const int LooksPerStretch = 4;

    // How far from the ends of the step a look shows which way the guard goes there, as a share of a stretch.
    private const double Beside = 1.0 / 1024;

    // A start this much below the first look, or a look this close to it, s, may seem to fall by rounding alone.
    private const double LeastStart = 1e-6, LeastTime = 1e-7;

    /// <summary>The first θ in (0, limit] at which the function is negative.</summary>
    /// <param name="function">The guard along the step.</param>
    /// <param name="limit">Largest θ looked at.</param>
    /// <param name="length">Length of the step, s.</param>
    /// <param name="stretches">Equal parts on each of which the function has one dip or rise at most; four looks each.</param>
    /// <param name="theta">Where; just past the boundary or on it.</param>
    public static bool TryFind<TFunction>(ref TFunction function, double limit, double length, int stretches, out double theta)
        where TFunction : struct, IGuardFunction, allows ref struct
    {
        var (left, mid) = (default(FunctionPoint), new FunctionPoint(0, function.Value(0)));
        int looks = LooksPerStretch * stretches;
        for (int i = 0; i <= looks + 1; i++)
        {
            // In order: the early one, one a quarter of a stretch, one beside the end and the end itself.
            double share = i == 0 ? FirstLook / stretches : i < looks ? (double)i / looks : i == looks ? 1 - Beside / stretches : 1, x = limit * share;
            var right = new FunctionPoint(x, function.Value(x));
            if (i == 0 && DipsAtOnce(ref function, limit * Beside / stretches, length, mid, right, out theta))
                return true;
            if (i > 0 && mid.Value <= left.Value && mid.Value <= right.Value && Dips(ref function, length, new Bracket(left, mid, right), out theta))
                return true;
            if (right.Value < 0)
            {
                theta = mid.Value > 0 ? Locate(ref function, length, mid.At, mid.Value, right.At, right.Value)
                    : i == 0 ? FromBoundary(ref function, length, right.At, right.Value) : mid.At;
                return true;
            }

            (left, mid) = (mid, right);
        }

        theta = 0;
        return false;
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

    /// <summary>A guard that falls to begin with and is above its start again at the first look.</summary>
    private static bool DipsAtOnce<TFunction>(ref TFunction function, double beside, double length, FunctionPoint start, FunctionPoint first, out double theta)
        where TFunction : struct, IGuardFunction, allows ref struct
    {
        theta = 0;
        if (!(start.Value > LeastStart * first.Value && first.Value >= start.Value && beside * length > LeastTime))
            return false;
        var mid = new FunctionPoint(beside, function.Value(beside));
        return mid.Value <= start.Value && Dips(ref function, length, new Bracket(start, mid, first), out theta);
    }

    /// <summary>A touch and a release inside the step leave no sign at the looks: the lowest of three is followed down, until it is outside or cannot be.</summary>
    private static bool Dips<TFunction>(ref TFunction function, double length, Bracket dip, out double theta)
        where TFunction : struct, IGuardFunction, allows ref struct
    {
        theta = 0;
        for (int k = 0; k < MostPlaces && !(dip.Floor > 0 || dip.IsFlat || dip.Wider < NarrowestDip); k++)
        {
            double at = dip.Next();
            var low = new FunctionPoint(at, function.Value(at));
            if (low.Value < 0)
            {
                FunctionPoint inside = low.At > dip.Mid.At ? dip.Mid : dip.Left;
                theta = inside.Value > 0 ? Locate(ref function, length, inside.At, inside.Value, low.At, low.Value) : inside.At;
                return true;
            }

            dip = dip.With(low);
        }

        return false;
    }

    /// <summary>False position with the Illinois halving (Dowell and Jarratt, BIT 11, 1971, 168–174), a bisection now and then.</summary>
    internal static double Locate<TFunction>(ref TFunction function, double length, double low, double gLow, double high, double gHigh)
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
