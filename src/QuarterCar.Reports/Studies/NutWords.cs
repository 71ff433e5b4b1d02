using System.Collections.Immutable;

using QuarterCar.Reports.Units;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Studies;

namespace QuarterCar.Reports.Studies;

/// <summary>Where the stop nut stands in a setup that an answer names: without it the answer cannot be set up.</summary>
internal static class NutWords
{
    private static readonly int s_gap = FigureTable.Names.IndexOf("static.stop_nut_gap_ride_height_m"), s_droop = FigureTable.Names.IndexOf("static.stop_nut_gap_full_droop_m");

    /// <summary>True where something that is varied moves the stop nut, or its gap while it stays.</summary>
    public static bool Moves(IEnumerable<string> paths) => Changes.Corner([.. paths]);

    /// <summary>As the rest of a sentence; null without a stop nut or without figures.</summary>
    /// <param name="figures">In the order of <see cref="FigureTable.Names"/>.</param>
    /// <param name="read">For the gap.</param>
    public static string? Of(ImmutableArray<double?>? figures, Readable read) =>
        Gap(figures, s_gap, read) is not { } gap ? null
        : OnNut(figures) ? $"the slider rests on the stop nut at ride height; its gap at full droop is {Gap(figures, s_droop, read)}"
        : $"the stop nut has a gap of {gap} at ride height";

    /// <summary>What --hold set and where the stop nut stands, as a sentence; empty where nothing is held and nothing moves the nut.</summary>
    /// <param name="at">Its beginning: the place.</param>
    /// <param name="held">What --hold set; empty without one.</param>
    /// <param name="paths">What is varied.</param>
    /// <param name="figures">As above.</param>
    /// <param name="read">As above.</param>
    public static string Sentence(string at, string held, IEnumerable<string> paths, ImmutableArray<double?>? figures, Readable read)
    {
        string[] parts = [.. new[] { held.Length > 0 ? "what is held takes " + held : null, Moves(paths) ? Of(figures, read) : null }.OfType<string>()];
        return parts.Length == 0 ? "" : $"{at} {string.Join("; ", parts)}.";
    }

    /// <summary>In a few words for a table; null as above.</summary>
    public static string? Short(ImmutableArray<double?>? figures, Readable read) =>
        Gap(figures, s_gap, read) is not { } gap ? null : OnNut(figures) ? $"on the stop nut, gap {Gap(figures, s_droop, read)} at full droop" : $"stop-nut gap {gap} at ride";

    // The gap at ride height ends at 0 where the slider is pressed on the nut: how far the nut then is, only the gap at full droop says.
    private static bool OnNut(ImmutableArray<double?>? figures) => figures?[s_gap] <= 0;

    private static string? Gap(ImmutableArray<double?>? figures, int place, Readable read) => figures?[place] is { } gap ? read.Text(Dimension.Length, gap) : null;
}
