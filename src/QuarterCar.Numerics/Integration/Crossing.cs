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
        var (left, mid) = (default(Place), new Place(0, function.Value(0)));
        int looks = LooksPerStretch * stretches;
        for (int i = 0; i <= looks + 1; i++)
        {
            double x = limit * (i == 0 ? FirstLook / stretches : i < looks ? (double)i / looks : i == looks ? 1 - Beside / stretches : 1);
            var right = new Place(x, function.Value(x));
            if (i == 0 && DipsAtOnce(ref function, limit * Beside / stretches, length, mid, right, out theta))
                return true;
            if (i > 0 && mid.Value <= left.Value && mid.Value <= right.Value && Dips(ref function, length, left, mid, right, out theta))
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
    private static bool DipsAtOnce<TFunction>(ref TFunction function, double beside, double length, Place start, Place first, out double theta)
        where TFunction : struct, IGuardFunction, allows ref struct
    {
        theta = 0;
        if (!(start.Value > LeastStart * first.Value && first.Value >= start.Value && beside * length > LeastTime))
            return false;
        var mid = new Place(beside, function.Value(beside));
        return mid.Value <= start.Value && Dips(ref function, length, start, mid, first, out theta);
    }

    /// <summary>
    /// A touch and a release inside the step leave no sign at the looks: the lowest of three is followed down their parabola. A dip is convex, so that it
    /// lies above the chords carried on past the lowest: where these stay inside, it does.
    /// </summary>
    private static bool Dips<TFunction>(ref TFunction function, double length, Place left, Place mid, Place right, out double theta)
        where TFunction : struct, IGuardFunction, allows ref struct
    {
        theta = 0;
        for (int k = 0; k < MostPlaces; k++)
        {
            double before = mid.At - left.At, behind = right.At - mid.At;
            double rise = (right.Value - mid.Value) / behind, fall = (left.Value - mid.Value) / before;
            if ((mid.Value > rise * before && mid.Value > fall * behind) || !(rise + fall > 0) || Math.Max(before, behind) < NarrowestDip)
                return false;
            Place low = Lower(ref function, mid.At, before, behind, rise, fall);
            bool later = low.At > mid.At;
            if (low.Value < 0)
            {
                Place inside = later ? mid : left;
                theta = inside.Value > 0 ? Locate(ref function, length, inside.At, inside.Value, low.At, low.Value) : inside.At;
                return true;
            }

            if (low.Value >= mid.Value)
                (left, right) = later ? (left, low) : (low, right);
            else
                (left, mid, right) = later ? (mid, low, right) : (left, low, mid);
        }

        return false;
    }

    // The parabola's foot, never more than half way to either neighbour. Where that is all but the middle, a place a little beyond it on the wider side, so that both sides close in.
    private static Place Lower<TFunction>(ref TFunction function, double mid, double before, double behind, double rise, double fall)
        where TFunction : struct, IGuardFunction, allows ref struct
    {
        double foot = 0.5 * ((fall * behind) - (rise * before)) / (rise + fall);
        double wider = Math.Max(before, behind);
        if (Math.Abs(foot) < 0.05 * wider)
            foot = Math.Max(3 * Math.Abs(foot), 0.0025 * wider) * (behind > before ? 1 : -1);
        return new Place(mid + foot, function.Value(mid + foot));
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

    /// <summary>The function's value at one θ.</summary>
    private readonly record struct Place(double At, double Value);
}
