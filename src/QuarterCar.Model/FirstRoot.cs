namespace QuarterCar.Model;

/// <summary>The root of a rising function between two places, to a value that is as good as 0 or to neighbouring doubles: false position with Illinois halving, a bisection now and then.</summary>
internal static class FirstRoot
{
    private const int MaxIterations = 200;

    /// <summary>Where the function reaches 0; an end where it does not change sign.</summary>
    /// <param name="f">The function.</param>
    /// <param name="low">Where it is below 0.</param>
    /// <param name="high">Where it is above 0.</param>
    /// <param name="enough">Values no further from 0 than this are 0.</param>
    public static double Rising(Func<double, double> f, double low, double high, double enough)
    {
        double fLow = f(low), fHigh = f(high);
        if (fLow >= 0)
            return low;
        if (fHigh <= 0)
            return high;
        int side = 0;
        for (int k = 0; k < MaxIterations; k++)
        {
            double mid = k % 8 == 7 ? 0.5 * (low + high) : (fLow * high - fHigh * low) / (fLow - fHigh);
            if (!(mid > low && mid < high))
                mid = 0.5 * (low + high);
            if (!(mid > low && mid < high))
                break;
            double at = f(mid);
            if (Math.Abs(at) <= enough)
                return mid;
            if (at < 0)
            {
                (low, fLow) = (mid, at);
                fHigh *= side == -1 ? 0.5 : 1;
                side = -1;
            }
            else
            {
                (high, fHigh) = (mid, at);
                fLow *= side == 1 ? 0.5 : 1;
                side = 1;
            }
        }

        return high;
    }
}
