namespace QuarterCar.Model.Selection;

/// <summary>
/// The mean of readings weighted by 1/u², its half-width 1/√Σ(1/u²), widened by √(χ²/(n − 1)) where that is more than 1
/// (Birge, Phys. Rev. 40, 1932, 207–227). Half-widths of 95 %: σ = u/1.96.
/// </summary>
/// <param name="Value">Weighted mean.</param>
/// <param name="HalfWidth">Of 95 %, widened.</param>
/// <param name="Widening">The factor, 1 or more.</param>
public readonly record struct WeighMean(double Value, double HalfWidth, double Widening)
{
    /// <summary>Of readings and their half-widths, at least one.</summary>
    public static WeighMean Of(ReadOnlySpan<double> values, ReadOnlySpan<double> halfWidths)
    {
        double least = Least(halfWidths);
        if (least == 0) return OfExact(values);
        double sum = 0, weights = 0;
        for (int i = 0; i < values.Length; i++)
        {
            double w = Weight(least, halfWidths[i]);
            (sum, weights) = (sum + w * values[i], weights + w);
        }

        double mean = sum / weights, width = least / Math.Sqrt(weights), chi = 0;
        for (int i = 0; i < values.Length; i++)
        {
            double off = WeighErrors.Coverage * (values[i] - mean) / halfWidths[i];
            chi += off * off;
        }

        double widening = values.Length > 1 ? Math.Max(1, Math.Sqrt(chi / (values.Length - 1))) : 1;
        return new WeighMean(mean, width * widening, widening);
    }

    /// <summary>Relative to the least half-width, so that no square of a small one overflows.</summary>
    private static double Weight(double least, double halfWidth) => least / halfWidth * (least / halfWidth);

    private static double Least(ReadOnlySpan<double> halfWidths)
    {
        double least = double.PositiveInfinity;
        foreach (double u in halfWidths) least = Math.Min(least, u);
        return least;
    }

    // Errors said to be 0: the limit of equal ones, where scatter alone is left: u/√n · √(χ²/(n − 1)) → 1.96·s/√n.
    private static WeighMean OfExact(ReadOnlySpan<double> values)
    {
        double mean = 0, squares = 0;
        foreach (double v in values) mean += v / values.Length;
        foreach (double v in values) squares += (v - mean) * (v - mean);
        double width = values.Length > 1 ? WeighErrors.Coverage * Math.Sqrt(squares / (values.Length - 1) / values.Length) : 0;
        return new WeighMean(mean, width, 1);
    }
}
