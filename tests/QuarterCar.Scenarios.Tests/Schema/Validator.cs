using System.Text.Json;
using System.Text.Json.Nodes;

using Json.Schema;

using QuarterCar.Scenarios.Schema;

using YamlDotNet.Serialization;

namespace QuarterCar.Scenarios.Tests.Schema;

/// <summary>A general JSON Schema validator over the YAML of a general YAML library, as an editor has them: it knows nothing of the reader.</summary>
internal static class Validator
{
    private const int MostNodes = 100_000;

    private static readonly JsonSchema _schema = JsonSchema.FromText(ScenarioSchema.Text);
    private static readonly IDeserializer _yaml = new DeserializerBuilder().WithAttemptingUnquotedStringTypeDeserialization().WithDuplicateKeyChecking().Build();

    /// <summary>The mistakes that the schema sees, a line each; none where the file fits.</summary>
    public static string[] Mistakes(string yaml)
    {
        var left = MostNodes;
        var json = JsonSerializer.SerializeToElement(Json(_yaml.Deserialize<object?>(yaml), ref left));
        var result = _schema.Evaluate(json, new EvaluationOptions { OutputFormat = OutputFormat.List });
        return result.IsValid
            ? []
            : [.. result.Details!.Where(d => d.Errors is not null).SelectMany(d => d.Errors!.Select(e => $"{d.InstanceLocation}: {e.Value}"))];
    }

    private static JsonNode? Json(object? value, ref int left)
    {
        // Aliases of aliases grow without bound once they are written out; a careful editor stops as well.
        if (--left < 0)
        {
            throw new YamlDotNet.Core.YamlException("more nodes than a scenario has");
        }

        switch (value)
        {
            case null:
                return null;
            case string text:
                return JsonValue.Create(text);
            case bool flag:
                return JsonValue.Create(flag);
            case double number when !double.IsFinite(number):
                return JsonValue.Create(FormattableString.Invariant($"{number}"));
            case float or double or decimal:
                return JsonValue.Create(Convert.ToDouble(value, System.Globalization.CultureInfo.InvariantCulture));
            case IDictionary<object, object?> map:
                var members = new JsonObject();
                foreach (var (key, member) in map)
                {
                    members[key.ToString()!] = Json(member, ref left);
                }

                return members;
            case IEnumerable<object?> list:
                var items = new JsonArray();
                foreach (var item in list)
                {
                    items.Add(Json(item, ref left));
                }

                return items;
            default:
                return JsonNode.Parse(FormattableString.Invariant($"{value}"));
        }
    }
}
