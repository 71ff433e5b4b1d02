using System.Globalization;

using QuarterCar.Scenarios.Quantities;

namespace QuarterCar.Scenarios.Keys;

/// <summary>Short ways to write a key table. It holds nothing and looks at no table, so every table may be made first.</summary>
internal static class KeyParts
{
    /// <summary>A plain number of 0 or more.</summary>
    public static QuantityKind Factor => new(Dimension.Number, ValueRange.FromZero);

    /// <summary>An SI number as a file would say it.</summary>
    public static string Written(double si, string unit) => Measured.Write(si, unit);

    /// <summary>A number with a unit.</summary>
    public static QuantityKind Quantity(Dimension dimension, ValueRange range) => new(dimension, range);

    /// <summary>A key that the file is wrong without.</summary>
    public static Key Need(string name, KeyKind kind, string help, string? example) => new(name, kind, help) { Required = true, Example = example };

    /// <summary>A temperature as a file would say it.</summary>
    public static string Celsius(double kelvin) => (kelvin - ExactUnits.CelsiusZero).ToString("R", CultureInfo.InvariantCulture) + " degC";
}
