using System.Text.Json;

using QuarterCar.Model;
using QuarterCar.Model.Selection;
using QuarterCar.Reports.Words;
using QuarterCar.Scenarios;

namespace QuarterCar.Reports.Json;

/// <summary>What `pick --json` prints: sets of springs, best first, SI, the unit in the key.</summary>
public static class PickJson
{
    /// <summary>Writes them.</summary>
    /// <param name="result">The ranked sets.</param>
    /// <param name="units">Of the messages.</param>
    /// <param name="stream">Where it goes.</param>
    public static void Write(PickResult result, UnitSystem units, Stream stream)
    {
        using var json = new Utf8JsonWriter(stream, FigureJson.Options);
        json.WriteStartObject();
        json.Number("required_primary_rate_N_m", result.RequiredPrimaryRate);
        json.WriteStartArray("sets");
        foreach (var set in result.Sets)
        {
            json.WriteStartObject();
            Springs(json, set.Springs);
            json.Number("primary_rate_N_m", set.PrimaryRate);
            json.Number("secondary_rate_N_m", set.SecondaryRate);
            json.Number("rate_step", set.RateStep);
            json.Number("settle_m", set.Settle);
            json.Number("preload_m", set.Preload);
            json.Number("ride_height_lowest_m", set.Range?.Lowest);
            json.Number("ride_height_highest_m", set.Range?.Highest);
            json.Number("bind_clearance_full_bump_m", set.BindClearance);
            json.Warnings(PickWarnings.Of(set, result.Data, units));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Springs(Utf8JsonWriter json, SpringSetData springs)
    {
        (string Name, SpringData? Spring)[] all = [("tender", springs.Tender), ("upper", springs.Upper), ("lower", springs.Lower)];
        foreach (var (name, spring) in all) json.Number(name + "_rate_N_m", spring?.Rate);
        foreach (var (name, spring) in all.Skip(1).Append(all[0]))
        {
            json.Number(name + "_free_length_m", spring?.FreeLength);
            json.Number(name + "_solid_length_m", spring?.SolidLength);
        }
    }
}
