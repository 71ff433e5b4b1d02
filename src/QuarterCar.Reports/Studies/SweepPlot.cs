using QuarterCar.Reports.Plots;
using QuarterCar.Studies.Sweeps;

namespace QuarterCar.Reports.Studies;

/// <summary>What does this setting buy? The picture of a sweep: a curve over one path, a map over two, none over more.</summary>
internal static class SweepPlot
{
    /// <summary>Draws it; null where a picture says less than the table.</summary>
    public static Sheet? Draw(SweepResult result)
    {
        if (result.Map is not { } map || map.Goal.All(double.IsNaN))
            return null;
        return map.Axes switch
        {
            [{ Numeric: true }] or [{ Numeric: false }, { Numeric: true }] => SweepCurve.Draw(result, map),
            [{ Numeric: true }, { Numeric: true }] => SweepHeat.Draw(result, map),
            _ => null,
        };
    }

    /// <summary>The help line: what the nearest limit is, and what the answer is not.</summary>
    public static string Note(SweepWords words) => string.Join(" ", new[] { words.Nearest(), SweepWords.Caution }.Where(t => t.Length > 0));
}
