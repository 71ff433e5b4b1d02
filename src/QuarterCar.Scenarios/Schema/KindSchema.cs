using System.Collections.Immutable;
using System.Text.Json.Nodes;

using QuarterCar.Scenarios.Keys;
using QuarterCar.Scenarios.Quantities;
using QuarterCar.Scenarios.Reading;

namespace QuarterCar.Scenarios.Schema;

/// <summary>What may stand behind a key, as JSON Schema. YAML without quotes makes numbers and words of what the reader takes as text, so both are let in.</summary>
internal static class KindSchema
{
    /// <summary>A key: what its kind wants, with its help, default and example.</summary>
    public static JsonObject Of(Key key)
    {
        var schema = Of(key.Kind);
        schema["description"] = Description(key);
        if (key.Default is { } standard) schema["default"] = Plain(key.Kind, standard);
        if (key.Example is { } example && key.Kind is not (TableKind or OpenMapKind or ListKind)) schema["examples"] = new JsonArray(Plain(key.Kind, example));
        return schema;
    }

    private static JsonObject Of(KeyKind kind) => kind switch
    {
        MapKind map => Map(map),
        OneOfKind one => OneOf(one),
        OpenMapKind => new JsonObject { ["type"] = "object" },
        ListKind list => List(list),
        QuantityKind quantity => Quantity(quantity),
        WholeKind whole => Whole(whole),
        TextKind => new JsonObject { ["type"] = Names(["string", "number", "boolean"]), ["minLength"] = 1, ["maxLength"] = ValueReader.LongestText, ["pattern"] = QuantityPattern.Line },
        ChoiceKind choice => new JsonObject { ["enum"] = Names(choice.Words) },
        TableKind table => Table(table),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "a kind without a schema"),
    };

    /// <summary>Names as a JSON list.</summary>
    public static JsonArray Names(IEnumerable<string> names) => [.. names.Select(n => (JsonNode)n)];

    private static JsonObject Map(MapKind map)
    {
        var schema = Closed(map.Keys);
        var required = map.Keys.Where(k => k.Required).Select(k => k.Name).ToImmutableArray();
        if (required.Length > 0) schema["required"] = Names(required);
        return schema;
    }

    private static JsonObject OneOf(OneOfKind one)
    {
        var schema = Closed(one.Keys);
        schema["minProperties"] = 1;
        schema["maxProperties"] = 1;
        return schema;
    }

    private static JsonObject Closed(ImmutableArray<Key> keys) => new()
    {
        ["type"] = "object",
        ["properties"] = new JsonObject(keys.Select(k => KeyValuePair.Create(k.Name, (JsonNode?)Of(k)))),
        ["additionalProperties"] = false,
    };

    private static JsonObject List(ListKind list)
    {
        var schema = new JsonObject { ["type"] = "array", ["items"] = Of(list.Item) };
        if (list.Least > 0) schema["minItems"] = list.Least;
        if (list.Most < int.MaxValue) schema["maxItems"] = list.Most;
        return schema;
    }

    /// <summary>A number with its unit is a text; a plain one is a number, or the same in quotes.</summary>
    private static JsonObject Quantity(QuantityKind kind)
    {
        if (kind.Dimension != Dimension.Number) return new JsonObject { ["type"] = "string", ["pattern"] = QuantityPattern.Of(kind) };
        var schema = new JsonObject { ["type"] = Names(["number", "string"]), ["pattern"] = QuantityPattern.Of(kind) };
        var (least, counts, most) = kind.Range;
        if (double.IsFinite(least)) schema[counts ? "minimum" : "exclusiveMinimum"] = least;
        if (double.IsFinite(most)) schema["maximum"] = most;
        return schema;
    }

    private static JsonObject Whole(WholeKind kind) => new()
    {
        ["type"] = Names(["integer", "string"]),
        ["pattern"] = "^[0-9]+$",
        ["minimum"] = kind.Least,
        ["maximum"] = kind.Most,
    };

    private static JsonObject Table(TableKind table)
    {
        var row = Row(Quantity(table.At), Quantity(table.Value));
        var rows = new JsonObject { ["type"] = "array", ["minItems"] = 1, ["items"] = row };
        if (table.FromOrigin)
        {
            var any = Row(Quantity(table.At with { Range = ValueRange.FromZero }), Quantity(table.Value with { Range = ValueRange.FromZero }));
            rows["prefixItems"] = new JsonArray(any);
        }

        return table.OrPlainValue ? new JsonObject { ["anyOf"] = new JsonArray(Quantity(table.Value), rows) } : rows;
    }

    private static JsonObject Row(JsonObject at, JsonObject value) => new()
    {
        ["type"] = "array",
        ["prefixItems"] = new JsonArray(at, value),
        ["items"] = false,
        ["minItems"] = 2,
    };

    private static string Description(Key key)
    {
        var units = key.Kind is QuantityKind { Dimension: not Dimension.Number } quantity ? $" Units: {UnitTable.Names(quantity.Dimension)}." : "";
        var condition = key.Condition is { } when and not "optional" ? $" ({when})" : "";
        return key.Help + condition + "." + units;
    }

    private static JsonNode Plain(KeyKind kind, string text) =>
        kind is WholeKind or QuantityKind { Dimension: Dimension.Number } or TableKind { OrPlainValue: true, Value.Dimension: Dimension.Number }
            ? JsonNode.Parse(text)!
            : text;
}
