using System.Text.Encodings.Web;
using System.Text.Json;

using QuarterCar.Model.Statics;
using QuarterCar.Scenarios;
using QuarterCar.Studies;

namespace QuarterCar.Reports.Json;

/// <summary>Pieces that the JSON files share: blocks of figures, warnings, numbers that may not apply.</summary>
internal static class FigureJson
{
    /// <summary>Indented; text stays readable, and what could end a script block is escaped.</summary>
    public static readonly JsonWriterOptions Options = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.Create(System.Text.Unicode.UnicodeRanges.All),
    };

    /// <summary>A number, or null where it does not apply or is not finite.</summary>
    public static void Number(this Utf8JsonWriter json, string key, double? value)
    {
        if (value is { } v && double.IsFinite(v)) json.WriteNumber(key, v + 0.0);
        else json.WriteNull(key);
    }

    /// <summary>One block of the figure table as an object.</summary>
    public static void Block<T>(this Utf8JsonWriter json, string block, IEnumerable<Figure<T>> figures, T source)
    {
        json.WriteStartObject(block);
        foreach (var figure in figures.Where(f => f.Block == block)) json.Number(figure.Key, figure.Value(source));
        json.WriteEndObject();
    }

    /// <summary>The block "static".</summary>
    public static void Static(this Utf8JsonWriter json, StandingFigures figures) => json.Block("static", FigureTable.Standing, figures);

    /// <summary>The list of warnings.</summary>
    public static void Warnings(this Utf8JsonWriter json, IEnumerable<Warning> warnings)
    {
        json.WriteStartArray("warnings");
        foreach (var warning in warnings)
        {
            json.WriteStartObject();
            json.WriteString("code", warning.Code);
            json.WriteString("message", warning.Message);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
