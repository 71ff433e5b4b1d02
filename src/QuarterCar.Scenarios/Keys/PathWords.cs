using System.Collections.Immutable;
using System.Globalization;

namespace QuarterCar.Scenarios.Keys;

/// <summary>Paths into the scenario in words, for titles, legends and axes: "stop nut gap", "step height", "zone 1 compression".</summary>
public static class PathWords
{
    private static readonly ImmutableArray<string> _needTheirOwner =
    [
        "rate", "gap", "length", "free_length", "solid_length", "pressure", "volume", "damping", "loss", "radius", "height", "compression", "rebound", "temperature", "spacing", "rise", "count", "seed", "file",
    ];

    /// <summary>One path: its last key, with its owner where it alone says too little.</summary>
    public static string Of(string path)
    {
        string[] keys = path.Split('.');
        var (last, piece) = Item(keys[^1]);
        string? owner = keys.Length > 1 ? keys[^2] : null;
        return (owner is null ? "" : Item(owner).Name, last) switch
        {
            ("terrain", "step") => "step height",
            ("terrain", "flat") => "flat length",
            (_, "iso8608") => "roughness class",
            ("zones", _) when Item(owner!).At is { } zone => $"zone {zone} {Spaced(last)}",
            ("", "terrain") when piece is { } number => $"piece {number} of the ground",
            _ when owner is not null && _needTheirOwner.Contains(last) => $"{Spaced(owner)} {Spaced(keys[^1])}",
            _ => Spaced(keys[^1]),
        };
    }

    /// <summary>Paths that are shown beside each other: those that would read the same also say which piece of the ground they mean, or are left as paths.</summary>
    public static ImmutableArray<string> Of(IReadOnlyList<string> paths)
    {
        var twice = paths.GroupBy(Of, StringComparer.Ordinal).Where(g => g.Distinct().Count() > 1).SelectMany(g => g).ToHashSet(StringComparer.Ordinal);
        return [.. paths.Select(p => !twice.Contains(p) ? Of(p) : Item(p.Split('.')[0]) is ("terrain", { } piece) ? $"{Of(p)} of piece {piece}" : p)];
    }

    /// <summary>Name of a list and the place in it as people count, from 1.</summary>
    private static (string Name, string? At) Item(string key)
    {
        int bracket = key.IndexOf('[', StringComparison.Ordinal);
        return bracket > 0 && int.TryParse(key.AsSpan(bracket + 1, key.Length - bracket - 2), NumberStyles.None, CultureInfo.InvariantCulture, out int at)
            ? (key[..bracket], (at + 1).ToString(CultureInfo.InvariantCulture))
            : (key, null);
    }

    private static string Spaced(string key) => key.Replace('_', ' ');
}
