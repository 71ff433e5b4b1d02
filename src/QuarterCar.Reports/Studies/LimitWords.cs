using System.Collections.Immutable;

using QuarterCar.Reports.Units;
using QuarterCar.Studies.Sweeps;

namespace QuarterCar.Reports.Studies;

/// <summary>Limits in the middle of a sentence.</summary>
internal static class LimitWords
{
    /// <summary>"limit on …" or "limits on …, …"; empty without any.</summary>
    /// <param name="figures">Their figures by dotted name.</param>
    /// <param name="read">For the words.</param>
    public static string On(IReadOnlyCollection<string> figures, Readable read) =>
        figures.Count == 0 ? "" : $"{(figures.Count == 1 ? "limit" : "limits")} on {string.Join(", ", figures.Select(f => new FigureScale(f, read).Word))}";

    /// <summary>Which limits hold only because there is nothing to hold them against, as the rest of a sentence; null where every limit is judged.</summary>
    /// <param name="limits">The limits.</param>
    /// <param name="figures">In the order of <see cref="QuarterCar.Studies.FigureTable.Names"/>.</param>
    /// <param name="read">For the words.</param>
    public static string? NotJudged(LimitSet limits, ImmutableArray<double?>? figures, Readable read)
    {
        if (figures is not { } f)
            return null;
        string[] open = [.. limits.Check(f).Where(v => v.Value is null).Select(v => v.Figure)];
        return open.Length == 0 ? null : $"the {On(open, read)} cannot be judged, for {(open.Length == 1 ? "that figure does" : "those figures do")} not apply";
    }
}
