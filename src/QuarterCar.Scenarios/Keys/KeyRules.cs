using System.Collections.Immutable;

namespace QuarterCar.Scenarios.Keys;

/// <summary>A key that is needed once another is there: the reader's checks and the JSON Schema both come from it.</summary>
/// <param name="Path">Dotted path of the key that is needed.</param>
/// <param name="With">Dotted path of the key that asks for it; it stands in the same map or in one above.</param>
/// <param name="Word">The word behind <paramref name="With"/> that asks for it; null where its presence does.</param>
/// <param name="Wanted">What is wanted, for the message.</param>
public sealed record NeededKey(string Path, string With, string? Word, string Wanted);

/// <summary>Keys of one map of which exactly one group is given, whole.</summary>
/// <param name="Map">Dotted path of the map; empty for the file.</param>
/// <param name="Groups">The groups to choose from.</param>
public sealed record OneGroup(string Map, ImmutableArray<ImmutableArray<string>> Groups);

/// <summary>What must stand together in a scenario file, as data.</summary>
public static class KeyRules
{
    /// <summary>Keys that other keys ask for. Of two rules for one path the first that asks is the one that is told.</summary>
    public static readonly ImmutableArray<NeededKey> Needed =
    [
        new("tyre.radius", "tyre.contact", "rolling_circle", Texts.RadiusNeeded),
        new("tyre.footprint", "tyre.contact", "footprint", Texts.FootprintNeeded),
        new("tyre.rim_rate", "tyre.sidewall", null, Texts.BothRimKeys),
        new("tyre.sidewall", "tyre.rim_rate", null, Texts.BothRimKeys),
        new("coilover.springs.upper", "coilover.springs.tender", null, Texts.UpperNeeded),
        new("coilover.springs.upper", "coilover.stop_nut", null, Texts.UpperNeeded),
    ];

    /// <summary>The load that a corner carries, said in one of two ways.</summary>
    public static readonly OneGroup Load = new("corner", [["sprung_weight"], ["spring_load"]]);

    /// <summary>What moves the corner.</summary>
    public static readonly OneGroup Excitation = new("", [["terrain", "speed"], ["drop"]]);
}
