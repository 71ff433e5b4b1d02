namespace QuarterCar.Studies.Spreads;

/// <summary>Percentiles of a sample by the definition 7 of Hyndman and Fan ("Sample quantiles in statistical packages", The American Statistician 50(4), 1996): straight lines between the sorted values, the first at 0, the last at 1.</summary>
public static class Percentiles
{
    /// <summary>The value below which a share of the sample lies.</summary>
    /// <param name="sorted">Values, rising; at least one.</param>
    /// <param name="share">From 0 to 1.</param>
    public static double At(ReadOnlySpan<double> sorted, double share)
    {
        ArgumentOutOfRangeException.ThrowIfZero(sorted.Length, nameof(sorted));
        double place = share * (sorted.Length - 1);
        int below = Math.Min((int)place, sorted.Length - 1), above = Math.Min(below + 1, sorted.Length - 1);
        return sorted[below] + ((place - below) * (sorted[above] - sorted[below]));
    }
}
