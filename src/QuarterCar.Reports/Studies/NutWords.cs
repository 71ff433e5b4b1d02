using System.Collections.Immutable;

using QuarterCar.Reports.Units;
using QuarterCar.Studies;

namespace QuarterCar.Reports.Studies;

/// <summary>Where the stop nut stands in a setup that an answer names: without it the answer cannot be set up.</summary>
internal static class NutWords
{
    private static readonly int s_gap = FigureTable.Names.IndexOf("static.stop_nut_gap_ride_height_m");

    /// <summary>True where something that is varied moves the stop nut, or its gap while it stays.</summary>
    public static bool Moves(IEnumerable<string> paths) =>
        paths.Any(p => p.StartsWith("coilover", StringComparison.Ordinal) || p.StartsWith("corner", StringComparison.Ordinal));

    /// <summary>As the rest of a sentence; null without a stop nut or without figures.</summary>
    /// <param name="figures">In the order of <see cref="FigureTable.Names"/>.</param>
    /// <param name="read">For the gap.</param>
    public static string? Of(ImmutableArray<double?>? figures, Readable read) => figures?[s_gap] switch
    {
        null => null,
        < 0 and var past => $"the slider is past the stop nut by {read.Text(Dimension.Length, -past)} at ride height",
        var gap => $"the stop nut has a gap of {read.Text(Dimension.Length, gap.Value)} at ride height",
    };

    /// <summary>In a few words for a table; null as above.</summary>
    public static string? Short(ImmutableArray<double?>? figures, Readable read) => figures?[s_gap] switch
    {
        null => null,
        < 0 and var past => $"slider past the stop nut by {read.Text(Dimension.Length, -past)} at ride",
        var gap => $"stop-nut gap {read.Text(Dimension.Length, gap.Value)} at ride",
    };
}
