using System.Globalization;

namespace QuarterCar.Reports.Tests.Reference;

/// <summary>Reads "12 in" to SI: the units that the reference scenarios use, from their definitions.</summary>
internal static class Quantity
{
    private const double Inch = 0.0254, Pound = 0.45359237 * 9.80665;

    private static readonly Dictionary<string, double> Units = new(StringComparer.Ordinal)
    {
        [""] = 1,
        ["in"] = Inch,
        ["ft"] = 12 * Inch,
        ["mm"] = 1e-3,
        ["cm"] = 1e-2,
        ["m"] = 1,
        ["lbf"] = Pound,
        ["N"] = 1,
        ["kN"] = 1e3,
        ["kg"] = 9.80665,
        ["lbf/in"] = Pound / Inch,
        ["N/mm"] = 1e3,
        ["N*s/m"] = 1,
        ["lbf*s/in"] = Pound / Inch,
        ["mph"] = 5280 * 12 * Inch / 3600,
        ["km/h"] = 1 / 3.6,
        ["in/s"] = Inch,
        ["m/s"] = 1,
        ["psi"] = Pound / (Inch * Inch),
        ["bar"] = 1e5,
        ["in^3"] = Inch * Inch * Inch,
        ["cm^3"] = 1e-6,
        ["s"] = 1,
        ["ms"] = 1e-3,
        ["s/m"] = 1,
    };

    public static double Read(string text)
    {
        string[] parts = text.Trim().Split(' ', 2);
        return double.Parse(parts[0], CultureInfo.InvariantCulture) * Units[parts.Length > 1 ? parts[1].Trim() : ""];
    }
}
