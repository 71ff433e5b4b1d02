using System.Text.Json;
using System.Text.Json.Nodes;

using Json.Schema;

using QuarterCar.Scenarios.Schema;

using YamlDotNet.Serialization;

namespace QuarterCar.Scenarios.Tests.Schema;

/// <summary>A general JSON Schema validator over the YAML of a general YAML library, as an editor has them: it knows nothing of the reader.</summary>
internal static class Validator
{
    private static readonly JsonSchema _schema = JsonSchema.FromText(ScenarioSchema.Text);
    private static readonly IDeserializer _yaml = new DeserializerBuilder().WithAttemptingUnquotedStringTypeDeserialization().WithDuplicateKeyChecking().Build();

    /// <summary>The mistakes that the schema sees, a line each; none where the file fits.</summary>
    public static string[] Mistakes(string yaml)
    {
        var json = JsonSerializer.SerializeToElement(Json(_yaml.Deserialize<object?>(yaml)));
        var result = _schema.Evaluate(json, new EvaluationOptions { OutputFormat = OutputFormat.List });
        return result.IsValid
            ? []
            : [.. result.Details!.Where(d => d.Errors is not null).SelectMany(d => d.Errors!.Select(e => $"{d.InstanceLocation}: {e.Value}"))];
    }

    private static JsonNode? Json(object? value) => value switch
    {
        null => null,
        string text => JsonValue.Create(text),
        bool flag => JsonValue.Create(flag),
        double number when !double.IsFinite(number) => JsonValue.Create(FormattableString.Invariant($"{number}")),
        float or double or decimal => JsonValue.Create(Convert.ToDouble(value, System.Globalization.CultureInfo.InvariantCulture)),
        IDictionary<object, object?> map => new JsonObject(map.Select(e => KeyValuePair.Create(e.Key.ToString()!, Json(e.Value)))),
        IEnumerable<object?> list => new JsonArray([.. list.Select(Json)]),
        _ => JsonNode.Parse(FormattableString.Invariant($"{value}")),
    };
}
