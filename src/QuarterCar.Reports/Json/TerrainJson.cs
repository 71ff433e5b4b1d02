using System.Text.Json;

using QuarterCar.Studies.Terrains;

namespace QuarterCar.Reports.Json;

/// <summary>What `terrain --json` prints: SI, the unit in the key.</summary>
public static class TerrainJson
{
    /// <summary>Writes it.</summary>
    public static void Write(TerrainResult result, Stream stream)
    {
        var figures = result.Figures;
        using var json = new Utf8JsonWriter(stream, FigureJson.Options);
        json.WriteStartObject();
        json.WriteString("title", result.Title);
        json.Number("length_m", figures.Length);
        if (figures.Fit is { } fit) json.WriteString("iso8608_class", fit.RoadClass.ToString());
        else json.WriteNull("iso8608_class");
        json.Number("gd_n0_m3", figures.Fit?.Density);
        json.Number("iri_m_km", figures.RoughnessIndex);
        json.Number("largest_slope", figures.LargestSlope);
        json.Warnings(result.Warnings);
        json.WriteEndObject();
    }
}
