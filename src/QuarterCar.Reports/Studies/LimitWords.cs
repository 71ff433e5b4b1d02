using System.Collections.Immutable;

using QuarterCar.Reports.Units;
using QuarterCar.Studies.Sweeps;

namespace QuarterCar.Reports.Studies;

/// <summary>Limits that hold only because there is nothing to hold them against.</summary>
internal static class LimitWords
{
    /// <summary>As the rest of a sentence; null where every limit is judged.</summary>
    /// <param name="limits">The limits.</param>
    /// <param name="figures">In the order of <see cref="QuarterCar.Studies.FigureTable.Names"/>.</param>
    /// <param name="read">For the words.</param>
    public static string? NotJudged(LimitSet limits, ImmutableArray<double?>? figures, Readable read)
    {
        if (figures is not { } f)
            return null;
        string[] open = [.. limits.Check(f).Where(v => v.Value is null).Select(v => new FigureScale(v.Figure, read).Word)];
        return open.Length == 0 ? null : $"the {(open.Length == 1 ? "limit" : "limits")} on {string.Join(", ", open)} cannot be judged, for {(open.Length == 1 ? "that figure does" : "those figures do")} not apply";
    }
}
