using System.Globalization;
using System.Text.Json;

namespace QuarterCar.Web.Answers;

/// <summary>Writes numbers short: pictures need six figures, not seventeen.</summary>
internal static class JsonParts
{
    /// <summary>A number to six figures; null where it does not apply or is not finite.</summary>
    public static void Short(this Utf8JsonWriter json, double? value)
    {
        if (value is not { } v || !double.IsFinite(v))
        {
            json.WriteNullValue();
            return;
        }

        Span<byte> digits = stackalloc byte[32];
        (v + 0.0).TryFormat(digits, out int length, "G6", CultureInfo.InvariantCulture);
        json.WriteRawValue(digits[..length], skipInputValidation: true);
    }

    /// <summary>A named number.</summary>
    public static void Short(this Utf8JsonWriter json, string name, double? value)
    {
        json.WritePropertyName(name);
        json.Short(value);
    }

    /// <summary>A named list of numbers.</summary>
    public static void Numbers(this Utf8JsonWriter json, string name, IEnumerable<double> values)
    {
        json.WriteStartArray(name);
        foreach (double value in values) json.Short(value);
        json.WriteEndArray();
    }

    /// <summary>A named line: [[x, y], …].</summary>
    public static void Line(this Utf8JsonWriter json, string name, IEnumerable<(double X, double Y)> points)
    {
        json.WriteStartArray(name);
        foreach ((double x, double y) in points)
        {
            json.WriteStartArray();
            json.Short(x);
            json.Short(y);
            json.WriteEndArray();
        }

        json.WriteEndArray();
    }

    /// <summary>A named list of objects.</summary>
    public static void List<T>(this Utf8JsonWriter json, string name, IEnumerable<T> items, Action<T> write)
    {
        json.WriteStartArray(name);
        foreach (T item in items)
        {
            json.WriteStartObject();
            write(item);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
