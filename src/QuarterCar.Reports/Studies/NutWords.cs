using System.Collections.Immutable;

using QuarterCar.Reports.Units;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Studies;

namespace QuarterCar.Reports.Studies;

/// <summary>Where the stop nut stands in a setup that an answer names: without it the answer cannot be set up.</summary>
internal static class NutWords
{
    private static readonly int s_gap = FigureTable.Names.IndexOf("static.stop_nut_gap_ride_height_m");

    /// <summary>True where something that is varied moves the stop nut, or its gap while it stays.</summary>
    public static bool Moves(IEnumerable<string> paths) => Changes.Corner([.. paths]);

    /// <summary>As the rest of a sentence; null without a stop nut or without figures.</summary>
    /// <param name="figures">In the order of <see cref="FigureTable.Names"/>.</param>
    /// <param name="read">For the gap.</param>
    public static string? Of(ImmutableArray<double?>? figures, Readable read) =>
        Gap(figures, read) is not var (past, length) ? null
        : past ? $"the slider is past the stop nut by {length} at ride height"
        : $"the stop nut has a gap of {length} at ride height";

    /// <summary>In a few words for a table; null as above.</summary>
    public static string? Short(ImmutableArray<double?>? figures, Readable read) =>
        Gap(figures, read) is not var (past, length) ? null : past ? $"slider past the stop nut by {length} at ride" : $"stop-nut gap {length} at ride";

    private static (bool Past, string Length)? Gap(ImmutableArray<double?>? figures, Readable read) =>
        figures?[s_gap] is { } gap ? (gap < 0, read.Text(Dimension.Length, Math.Abs(gap))) : null;
}
