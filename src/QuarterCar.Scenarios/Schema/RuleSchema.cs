using System.Text.Json.Nodes;

using QuarterCar.Scenarios.Keys;

namespace QuarterCar.Scenarios.Schema;

/// <summary>What must stand together, as JSON Schema from the root down.</summary>
internal static class RuleSchema
{
    /// <summary>Every rule, for the root's allOf.</summary>
    public static JsonArray All() =>
    [
        .. KeyRules.Needed.Select(Needed),
        One(KeyRules.Load),
        One(KeyRules.Excitation),
    ];

    private static JsonObject Needed(NeededKey rule)
    {
        var word = rule.Word is { } text ? new JsonObject { ["const"] = text } : [];
        return new JsonObject
        {
            ["if"] = Down(rule.With.Split('.'), word, required: true),
            ["then"] = Down(rule.Path.Split('.'), [], required: true, requiredFrom: Shared(rule)),
        };
    }

    /// <summary>How many maps the needed key shares with the one that asks: only what is below may be demanded, the rest is there.</summary>
    private static int Shared(NeededKey rule)
    {
        var (path, with) = (rule.Path.Split('.'), rule.With.Split('.'));
        return path.Zip(with).TakeWhile(p => p.First == p.Second).Count();
    }

    /// <summary>A schema at the end of a path: <c>{ properties: { a: { required: [b], properties: { b: end } } } }</c>.</summary>
    private static JsonObject Down(ReadOnlySpan<string> path, JsonObject end, bool required, int requiredFrom = 0)
    {
        var schema = end;
        for (var i = path.Length - 1; i >= 0; i--)
        {
            var above = new JsonObject { ["properties"] = new JsonObject { [path[i]] = schema } };
            if (required && i >= requiredFrom) above["required"] = KindSchema.Names([path[i]]);
            schema = above;
        }

        return schema;
    }

    /// <summary>Exactly one group, whole, and no key of another.</summary>
    private static JsonObject One(OneGroup rule)
    {
        var all = rule.Groups.SelectMany(g => g).ToArray();
        var ways = new JsonArray([.. rule.Groups.Select(group => Way(group, all.Except(group)))]);
        var schema = new JsonObject { ["oneOf"] = ways };
        return rule.Map.Length == 0 ? schema : Down(rule.Map.Split('.'), schema, required: false);
    }

    private static JsonObject Way(IEnumerable<string> group, IEnumerable<string> others) => new()
    {
        ["required"] = KindSchema.Names(group),
        ["properties"] = new JsonObject(others.Select(name => KeyValuePair.Create(name, (JsonNode?)false))),
    };
}
