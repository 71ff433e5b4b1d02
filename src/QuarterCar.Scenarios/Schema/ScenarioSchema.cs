using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

using QuarterCar.Scenarios.Keys;

namespace QuarterCar.Scenarios.Schema;

/// <summary>
/// JSON Schema (draft 2020-12) of the scenario file, made from the key table that the reader uses. What holds between two values (a solid length below
/// the free length, rows that rise, gas that fits) and sizes across units are the reader's alone.
/// </summary>
public static class ScenarioSchema
{
    private static readonly JsonSerializerOptions _written = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, NewLine = "\n" };

    /// <summary>The whole schema, ended by a line end.</summary>
    public static string Text { get; } = Write();

    private static string Write()
    {
        var schema = KindSchema.Of(new Key("", ScenarioKeys.Root, "One corner of a vehicle, the ground it drives over, and its speed"));
        var properties = schema["properties"]!.AsObject();
        Fill(properties["limits"]!, OpenMaps.Limits());
        Fill(properties["cases"]!["items"]!, OpenMaps.Case());
        Fill(properties["tolerances"]!, OpenMaps.Tolerances());
        schema["allOf"] = RuleSchema.All();
        schema["$defs"] = OpenMaps.Definitions();
        var whole = new JsonObject { ["$schema"] = "https://json-schema.org/draft/2020-12/schema", ["title"] = "QuarterCar scenario" };
        Fill(whole, schema);
        return whole.ToJsonString(_written) + "\n";
    }

    private static void Fill(JsonNode target, JsonObject source)
    {
        foreach (var (name, value) in source.ToArray()) target.AsObject()[name] = value?.DeepClone();
    }
}
