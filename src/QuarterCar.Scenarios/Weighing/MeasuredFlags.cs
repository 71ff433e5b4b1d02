using System.Collections.Immutable;

using QuarterCar.Scenarios.Documents;

namespace QuarterCar.Scenarios.Weighing;

/// <summary>One flag of the command line that stands for a key of the measured file.</summary>
/// <param name="Name">With its dashes.</param>
/// <param name="Path">Dotted path below the corner, or below the file's root for an error.</param>
/// <param name="Value">What it takes, for the help page.</param>
/// <param name="Help">One sentence.</param>
public sealed record MeasuredFlag(string Name, string Path, string Value, string Help)
{
    internal bool OfRoot => !Path.Contains('.') && Path.EndsWith("_error", StringComparison.Ordinal);
}

/// <summary>One corner's measurements given by flags: they become the document that a file would hold, so that one reader judges both.</summary>
public static class MeasuredFlags
{
    private const string _corner = "corners[0].";

    /// <summary>Every flag, in the order of the help page.</summary>
    public static readonly ImmutableArray<MeasuredFlag> All =
    [
        .. MeasuredKeys.Positions.SelectMany(Spring),
        new("--length-error", "length_error", "LENGTH", "How far each length may be off, as 95 % half-width. [default: 3 mm]"),
        new("--rate-error", "rate_error", "PERCENT", "How far each rate may be off, as 95 % half-width. [default: 2 %]"),
        new("--motion-ratio", "motion_ratio", "RATIO", "Shaft travel per wheel travel: gives the sprung weight at the wheel."),
        new("--gas-pressure", "gas.pressure", "PRESSURE", "Gauge pressure at full droop; with it --gas-volume, --rod-diameter, --shaft-showing and --stroke give the gas share."),
        new("--gas-volume", "gas.volume", "VOLUME", "Gas volume at full droop."),
        new("--rod-diameter", "gas.rod_diameter", "LENGTH", "Diameter of the shock's rod."),
        new("--shaft-showing", "shaft_showing", "LENGTH", "What is left of the stroke, bump stop and wiper not counted."),
        new("--stroke", "stroke", "LENGTH", "Stroke of the shaft."),
    ];

    /// <summary>The document of flags and their texts, each flag at most once.</summary>
    internal static DocumentNode Document(IReadOnlyDictionary<string, string> given)
    {
        var corner = Map(MeasuredKeys.Positions
            .Where(p => p == "lower" || Any(given, p + "."))
            .Select(p => Entry(p, Map(Below(given, p + "."))))
            .Concat(All.Where(f => !f.OfRoot && !f.Path.Contains('.') && given.ContainsKey(f.Name)).Select(f => Entry(f.Path, Scalar(given[f.Name]))))
            .Concat(Any(given, "gas.") ? [Entry("gas", Map(Below(given, "gas.")))] : []));
        return Map(All.Where(f => f.OfRoot && given.ContainsKey(f.Name)).Select(f => Entry(f.Path, Scalar(given[f.Name])))
            .Append(Entry("corners", new ListNode(default, [corner]))));
    }

    /// <summary>A problem with the flag in place of the key.</summary>
    internal static Problem Named(Problem problem)
    {
        var path = problem.Key.StartsWith(_corner, StringComparison.Ordinal) ? problem.Key[_corner.Length..] : problem.Key;
        var wanted = path.EndsWith(".loaded_length", StringComparison.Ordinal) ? MeasuredTexts.OneOrTwo : problem.Wanted;
        path = path.EndsWith(']') ? path[..path.LastIndexOf('[')] : path;
        return All.FirstOrDefault(f => f.Path == path) is { } flag ? problem with { File = flag.Name, Key = "", Wanted = wanted } : problem;
    }

    private static IEnumerable<MeasuredFlag> Spring(string position) =>
    [
        new($"--{position}-rate", position + ".rate", "RATE", $"Rate of the {position} spring, measured or as marked."),
        new($"--{position}-free", position + ".free_length", "LENGTH", "Its free length."),
        new($"--{position}-loaded", position + ".loaded_length", "LENGTH[,LENGTH]", "Its length with the vehicle standing; two readings: settled from below, from above."),
        new($"--{position}-solid", position + ".solid_length", "LENGTH", "Its solid length, optional."),
    ];

    private static bool Any(IReadOnlyDictionary<string, string> given, string prefix) => All.Any(f => f.Path.StartsWith(prefix, StringComparison.Ordinal) && given.ContainsKey(f.Name));

    private static IEnumerable<MapEntry> Below(IReadOnlyDictionary<string, string> given, string prefix) =>
        All.Where(f => f.Path.StartsWith(prefix, StringComparison.Ordinal) && given.ContainsKey(f.Name))
            .Select(f => Entry(f.Path[prefix.Length..], f.Path.EndsWith("loaded_length", StringComparison.Ordinal) ? Readings(given[f.Name]) : Scalar(given[f.Name])));

    // A comma parts two readings, each with its unit: a decimal comma then lacks one and is found.
    private static ListNode Readings(string text) => new(default, [.. text.Split(',').Select(Scalar)]);

    private static ScalarNode Scalar(string text) => new(default, text, Quoted: true);

    private static MapNode Map(IEnumerable<MapEntry> entries) => new(default, [.. entries]);

    private static MapEntry Entry(string name, DocumentNode value) => new(name, value, default);
}
