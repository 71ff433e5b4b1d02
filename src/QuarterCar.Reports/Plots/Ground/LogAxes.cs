using System.Globalization;

using ScottPlot;
using ScottPlot.TickGenerators;

namespace QuarterCar.Reports.Plots.Ground;

/// <summary>Axes of decades: the panel holds logarithms to base 10, the ticks say the numbers.</summary>
internal static class LogAxes
{
    /// <summary>Labels an axis at 1, 2 and 5 of each decade.</summary>
    public static void Fine(IAxis axis, (double From, double To) range) => Set(axis, range, [1, 2, 5], v => v.ToString("0.####", CultureInfo.InvariantCulture));

    /// <summary>The same grid without numbers: they stand below the panel beneath.</summary>
    public static void Unlabelled(IAxis axis, (double From, double To) range) => Set(axis, range, [1, 2, 5], _ => "");

    /// <summary>Labels an axis at each decade, as a power of ten.</summary>
    public static void Decades(IAxis axis, (double From, double To) range) => Set(axis, range, [1], v => "10" + Raised((int)Math.Round(Math.Log10(v))));

    /// <summary>A range of logarithms around values above 0, widened by a share of a decade.</summary>
    public static (double From, double To) Around(IEnumerable<double> values, double room)
    {
        double[] positive = [.. values.Where(v => v > 0)];
        return positive.Length == 0 ? (-1, 1) : (Math.Log10(positive.Min()) - room, Math.Log10(positive.Max()) + room);
    }

    private static void Set(IAxis axis, (double From, double To) range, double[] marks, Func<double, string> label)
    {
        var ticks = new NumericManual();
        for (int decade = (int)Math.Floor(range.From); decade <= range.To; decade++)
        {
            foreach (double mark in marks)
            {
                double value = mark * Math.Pow(10, decade), at = Math.Log10(value);
                if (at >= range.From && at <= range.To) ticks.AddMajor(at, label(value));
            }
        }

        axis.TickGenerator = ticks;
    }

    private static string Raised(int power) =>
        string.Concat(power.ToString(CultureInfo.InvariantCulture).Select(c => c == '-' ? '⁻' : "⁰¹²³⁴⁵⁶⁷⁸⁹"[c - '0']));
}
