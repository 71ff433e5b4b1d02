using System.Collections.Immutable;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

using QuarterCar.Scenarios.Keys;
using QuarterCar.Scenarios.Quantities;
using QuarterCar.Scenarios.Reading;

namespace QuarterCar.Scenarios.Schema;

/// <summary>The blocks whose keys are figures and dotted paths: limits, cases, tolerances.</summary>
internal static class OpenMaps
{
    private const string _change = "change_";
    private const string _within = "within_";

    /// <summary>What a change and a half-width look like, a dimension each: paths by the hundred refer to them.</summary>
    public static JsonObject Definitions()
    {
        var definitions = new JsonObject();
        foreach (var dimension in Enum.GetValues<Dimension>().Except([Dimension.Share, Dimension.Angle]))
        {
            var kind = new QuantityKind(dimension, ValueRange.Any);
            definitions[_change + dimension] = Changed(kind);
            definitions[_within + dimension] = Tolerance(kind);
        }

        return definitions;
    }

    /// <summary>Every figure by its full name, and by its last part where that is one figure's alone.</summary>
    public static JsonObject Limits()
    {
        var names = FigureNames.All.Concat(FigureNames.All.Select(f => f[(f.IndexOf('.', StringComparison.Ordinal) + 1)..]))
            .Where(n => FigureNames.TryResolve(n, out _, out _)).Distinct();
        return new JsonObject
        {
            ["type"] = "object",
            ["properties"] = new JsonObject(names.Select(n => KeyValuePair.Create(n, (JsonNode?)Number()))),
            ["additionalProperties"] = false,
        };
    }

    /// <summary>One load case: a name, and paths with new values or changes.</summary>
    public static JsonObject Case()
    {
        var patterns = new JsonObject { ["^" + Regex.Escape(CaseBlock.NameKey) + "$"] = new JsonObject { ["type"] = new JsonArray("string", "number"), ["minLength"] = 1, ["maxLength"] = ValueReader.LongestText, ["pattern"] = QuantityPattern.Line } };
        foreach (var (path, kind) in Paths(ScenarioKeys.Root, "")) patterns[path] = Change(kind);
        return Open(patterns, CaseBlock.NameKey);
    }

    /// <summary>Paths of single numbers, and how far each may be off.</summary>
    public static JsonObject Tolerances()
    {
        var patterns = new JsonObject();
        foreach (var (path, kind) in Paths(ScenarioKeys.Root, ""))
        {
            if (SideBlocks.KindOfNumber(kind, node: null) is { } number) patterns[path] = Reference(_within + number.Dimension);
        }

        return Open(patterns);
    }

    private static JsonObject Open(JsonObject patterns, params string[] required)
    {
        var schema = new JsonObject { ["type"] = "object", ["patternProperties"] = patterns, ["additionalProperties"] = false };
        if (required.Length > 0) schema["required"] = KindSchema.Names(required);
        return schema;
    }

    private static JsonObject Change(KeyKind kind) => kind is QuantityKind quantity
        ? Reference(_change + quantity.Dimension)
        : new JsonObject { ["not"] = new JsonObject { ["type"] = "null" } };

    private static JsonObject Reference(string name) => new() { ["$ref"] = "#/$defs/" + name };

    private static JsonObject Changed(QuantityKind kind) => OrNone(new JsonObject
    {
        ["type"] = kind.Dimension == Dimension.Number ? new JsonArray("number", "string") : "string",
        ["pattern"] = QuantityPattern.Change(kind),
    });

    private static JsonObject OrNone(JsonObject schema) => new() { ["anyOf"] = new JsonArray(schema, new JsonObject { ["const"] = Overrides.None }) };

    private static JsonObject Tolerance(QuantityKind kind) => new()
    {
        ["anyOf"] = new JsonArray(HalfWidth(kind), new JsonObject
        {
            ["type"] = "object",
            ["properties"] = new JsonObject { ["within"] = HalfWidth(kind), ["shape"] = new JsonObject { ["enum"] = new JsonArray("normal", "uniform") } },
            ["required"] = new JsonArray("within"),
            ["additionalProperties"] = false,
        }),
    };

    private static JsonObject HalfWidth(QuantityKind kind) => kind.Dimension == Dimension.Number
        ? new JsonObject { ["type"] = new JsonArray("number", "string"), ["exclusiveMinimum"] = 0, ["pattern"] = QuantityPattern.HalfWidth(kind) }
        : new JsonObject { ["type"] = "string", ["pattern"] = QuantityPattern.HalfWidth(kind) };

    private static JsonObject Number() => new() { ["type"] = new JsonArray("number", "string"), ["pattern"] = QuantityPattern.Of(new QuantityKind(Dimension.Number, ValueRange.Any)) };

    /// <summary>Every dotted path as an anchored expression, lists with any index.</summary>
    private static IEnumerable<(string Path, KeyKind Kind)> Paths(KeyKind kind, string prefix)
    {
        foreach (var (path, below) in Below(kind, prefix))
        {
            yield return ("^" + path + "$", below);
            foreach (var deeper in Paths(below, path)) yield return deeper;
        }
    }

    private static IEnumerable<(string Path, KeyKind Kind)> Below(KeyKind kind, string prefix) => kind switch
    {
        MapKind map => Named(map.Keys, prefix),
        OneOfKind one => Named(one.Keys, prefix),
        ListKind list => [(prefix + @"\[[0-9]+\]", list.Item.Kind)],
        TableKind table => [(prefix + @"\[[0-9]+\]\[0\]", table.At), (prefix + @"\[[0-9]+\]\[1\]", table.Value)],
        OpenMapKind => [(prefix + @"\..+", new TextKind())],
        _ => [],
    };

    private static IEnumerable<(string Path, KeyKind Kind)> Named(ImmutableArray<Key> keys, string prefix) =>
        keys.Select(k => (prefix.Length == 0 ? Regex.Escape(k.Name) : prefix + @"\." + Regex.Escape(k.Name), k.Kind));
}
