using System.Globalization;

namespace QuarterCar.Scenarios;

/// <summary>Where a word of the input stands: what it was read from, line and column from 1 (line 0: the input has no lines, like an override on the command line).</summary>
/// <param name="File">File name as given, or the override's own text.</param>
/// <param name="Line">From 1; 0 where there are no lines.</param>
/// <param name="Column">From 1; 0 where unknown.</param>
public readonly record struct Place(string File, int Line, int Column);

/// <summary>One mistake in the input: where it is, what was found, what is wanted instead.</summary>
/// <param name="File">File name as given, or the override's own text.</param>
/// <param name="Line">From 1; 0 where there are no lines.</param>
/// <param name="Key">Dotted path of the key; empty where the whole file is meant.</param>
/// <param name="Found">What stands there.</param>
/// <param name="Wanted">What would be right.</param>
public sealed record Problem(string File, int Line, string Key, string Found, string Wanted)
{
    /// <summary>Characters of a key that the line repeats.</summary>
    public const int LongestKey = 120;

    /// <summary>One line for standard error.</summary>
    public override string ToString()
    {
        var line = Line > 0 ? Line.ToString(CultureInfo.InvariantCulture) + ":" : "";
        var key = Key.Length > 0 ? $" {(Key.Length <= LongestKey ? Key : Key[..LongestKey] + "…")}:" : "";
        return PlainText.Line($"{File}:{line}{key} found {Found}; wanted {Wanted}");
    }
}
