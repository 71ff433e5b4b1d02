using System.Text.Json;

using QuarterCar.Reports.Json;
using QuarterCar.Studies.Spreads;

namespace QuarterCar.Reports.Studies;

/// <summary>What spread.json holds behind its setups: figures (p05, p50, p95, mean), contact_share, variance_share; null where something does not apply.</summary>
internal static class SpreadJson
{
    /// <summary>The properties, in order.</summary>
    public static IEnumerable<JsonMore> Of(SpreadResult result) =>
    [
        new("figures", json => Figures(json, result)),
        new("contact_share", json => Numbers(json, result.ContactShare)),
        new("variance_share", json => Shares(json, result)),
    ];

    private static void Figures(Utf8JsonWriter json, SpreadResult result)
    {
        json.WriteStartObject();
        foreach (var (name, spread) in result.Figures)
        {
            json.WriteStartObject(name);
            json.Number("p05", spread?.P05);
            json.Number("p50", spread?.P50);
            json.Number("p95", spread?.P95);
            json.Number("mean", spread?.Mean);
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    private static void Shares(Utf8JsonWriter json, SpreadResult result)
    {
        json.WriteStartObject();
        foreach (VarianceShare traced in result.VarianceShare)
        {
            json.WritePropertyName(traced.Figure);
            Numbers(json, traced.Shares);
        }

        json.WriteEndObject();
    }

    private static void Numbers(Utf8JsonWriter json, IEnumerable<KeyValuePair<string, double?>> numbers)
    {
        json.WriteStartObject();
        foreach (var (name, value) in numbers) json.Number(name, value);
        json.WriteEndObject();
    }
}
