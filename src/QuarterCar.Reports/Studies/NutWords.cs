using System.Collections.Immutable;

using QuarterCar.Reports.Units;
using QuarterCar.Studies;

namespace QuarterCar.Reports.Studies;

/// <summary>What became of the stop nut in a setup that an answer names: without it the answer cannot be set up.</summary>
internal static class NutWords
{
    private static readonly int s_gap = FigureTable.Names.IndexOf("static.stop_nut_gap_ride_height_m");

    /// <summary>True where something that is varied moves the stop nut, or its gap while it stays.</summary>
    public static bool Moves(IEnumerable<string> paths) =>
        paths.Any(p => p.StartsWith("coilover", StringComparison.Ordinal) || p.StartsWith("corner", StringComparison.Ordinal));

    /// <summary>As the rest of a sentence; null without a stop nut or without figures.</summary>
    /// <param name="word">stays or reset.</param>
    /// <param name="figures">In the order of <see cref="FigureTable.Names"/>.</param>
    /// <param name="read">For the gap.</param>
    public static string? Of(string word, ImmutableArray<double?>? figures, Readable read) =>
        Gap(word, figures, read) is { } gap ? $"the stop nut {(word == "reset" ? "is set anew" : "stays where it is on the body")}: {gap} at ride height" : null;

    /// <summary>In a few words for a table; null as above.</summary>
    public static string? Short(string word, ImmutableArray<double?>? figures, Readable read) =>
        Gap(word, figures, read) is { } gap ? $"stop nut {(word == "reset" ? "set anew" : "stays")}, {gap} at ride" : null;

    private static string? Gap(string word, ImmutableArray<double?>? figures, Readable read) =>
        word.Length == 0 || figures is not { } f || f[s_gap] is not { } gap ? null
        : gap < 0 ? $"slider past it by {read.Text(Dimension.Length, -gap)}"
        : $"gap {read.Text(Dimension.Length, gap)}";
}
