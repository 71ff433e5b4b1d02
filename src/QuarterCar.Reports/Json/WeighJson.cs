using System.Text.Json;

using QuarterCar.Model.Selection;
using QuarterCar.Reports.Words;
using QuarterCar.Scenarios;

namespace QuarterCar.Reports.Json;

/// <summary>What `weigh --json` prints: corners and differences, SI, the unit in the key.</summary>
public static class WeighJson
{
    /// <summary>Writes what was weighed.</summary>
    /// <param name="result">The corners.</param>
    /// <param name="units">Of the numbers in warnings' words.</param>
    /// <param name="stream">Where it goes.</param>
    public static void Write(WeighResult result, UnitSystem units, Stream stream)
    {
        using var json = new Utf8JsonWriter(stream, FigureJson.Options);
        json.WriteStartObject();
        json.WriteStartArray("corners");
        foreach (var corner in result.Corners) Corner(json, corner, result.Errors, units);
        json.WriteEndArray();
        json.WriteStartArray("differences");
        foreach (var difference in result.Differences) Difference(json, difference);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Corner(Utf8JsonWriter json, WeighedCorner corner, WeighErrors errors, UnitSystem units)
    {
        json.WriteStartObject();
        json.WriteString("name", corner.Measured.Name);
        json.Number("spring_load_N", corner.Answer.SpringLoad);
        json.Number("uncertainty_N", corner.Answer.Uncertainty);
        json.WriteStartArray("springs");
        foreach (var one in corner.Springs)
        {
            json.WriteStartObject();
            json.WriteString("position", one.Spring.Position);
            json.Number("compression_m", one.Spring.Compression);
            json.Number("load_N", one.Spring.Load);
            json.Number("uncertainty_N", one.Uncertainty);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.Number("friction_N", corner.Friction);
        json.Number("gas_force_N", corner.GasForce);
        json.Number("coilover_load_N", corner.Answer.CoiloverLoad);
        json.Number("sprung_weight_N", corner.Answer.SprungWeight);
        json.Warnings(WeighWarnings.Of(corner, errors, units));
        json.WriteEndObject();
    }

    private static void Difference(Utf8JsonWriter json, SideDifference difference)
    {
        json.WriteStartObject();
        json.WriteString("left", difference.Left.Measured.Name);
        json.WriteString("right", difference.Right.Measured.Name);
        json.Number("difference_N", difference.Difference);
        json.Number("uncertainty_N", difference.Uncertainty);
        json.WriteEndObject();
    }
}
