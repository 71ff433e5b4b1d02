using System.Collections.Frozen;
using System.Globalization;

using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Quantities;
using QuarterCar.Scenarios.Writing;

namespace QuarterCar.Web.Form;

/// <summary>Shows values in the unit system that the page is switched to. What was typed stays as it was typed: only what is shown is converted.</summary>
internal static class ShownUnits
{
    private const int Digits = 5;

    private static readonly FrozenDictionary<string, string> s_toSi = new Dictionary<string, string>
    {
        ["in"] = "mm",
        ["ft"] = "m",
        ["lbf"] = "N",
        ["lb"] = "N",
        ["lbs"] = "N",
        ["lbf/in"] = "N/mm",
        ["lb/in"] = "N/mm",
        ["lbf*s/in"] = "N*s/m",
        ["lb*s/in"] = "N*s/m",
        ["mph"] = "km/h",
        ["ft/s"] = "m/s",
        ["in/s"] = "m/s",
        ["psi"] = "bar",
        ["in^3"] = "cm^3",
        ["degF"] = "degC",
        ["s/in"] = "s/m",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    private static readonly FrozenDictionary<string, string> s_toUs = new Dictionary<string, string>
    {
        ["mm"] = "in",
        ["cm"] = "in",
        ["m"] = "ft",
        ["N"] = "lbf",
        ["kN"] = "lbf",
        ["kg"] = "lbf",
        ["N/mm"] = "lbf/in",
        ["N/m"] = "lbf/in",
        ["kN/m"] = "lbf/in",
        ["N*s/m"] = "lbf*s/in",
        ["km/h"] = "mph",
        ["m/s"] = "in/s",
        ["bar"] = "psi",
        ["kPa"] = "psi",
        ["MPa"] = "psi",
        ["Pa"] = "psi",
        ["cm^3"] = "in^3",
        ["m^3"] = "in^3",
        ["degC"] = "degF",
        ["K"] = "degF",
        ["s/m"] = "s/in",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The unit that a unit is shown in.</summary>
    public static string Of(string unit, UnitSystem system) => (system == UnitSystem.Us ? s_toUs : s_toSi).GetValueOrDefault(unit, unit);

    /// <summary>The unit that a value of a dimension is shown in where nothing was typed yet.</summary>
    public static string Of(Dimension dimension, UnitSystem system) => dimension switch
    {
        Dimension.Length => Of(system == UnitSystem.Us ? "in" : "mm", system),
        _ => Of(UnitTable.SiName(dimension), system) is var us && system == UnitSystem.Us ? us : Of(Of(UnitTable.SiName(dimension), UnitSystem.Us), UnitSystem.Si),
    };

    /// <summary>One value as it is shown; a text that is no value is shown as it stands.</summary>
    public static string Shown(string text, UnitSystem system)
    {
        if (!Measured.TryParse(text, out Measured m) || m.Unit is null || !double.IsFinite(m.Si)) return text;
        string unit = Of(m.Unit.Name, system);
        return unit == m.Unit.Name ? text : In(m.Si, unit);
    }

    /// <summary>A node as it is shown, on one line.</summary>
    public static string Shown(DocumentNode node, UnitSystem system) => node is ScalarNode s ? Shown(s.Text, system) : FlowText.Of(Converted(node, system));

    /// <summary>An SI value in a unit, with the digits that a person reads.</summary>
    public static string In(double si, string unit) => Measured.Write(Rounded(UnitTable.Find(unit) is { } u ? u.FromSi(si) : si), unit);

    /// <summary>A number to the digits that a person reads.</summary>
    public static double Rounded(double value)
    {
        if (value == 0 || !double.IsFinite(value)) return value;
        int decimals = Digits - 1 - (int)Math.Floor(Math.Log10(Math.Abs(value)));
        return decimals is >= 0 and <= 12 ? Math.Round(value, decimals, MidpointRounding.AwayFromZero) : double.Parse(value.ToString("G5", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }

    private static DocumentNode Converted(DocumentNode node, UnitSystem system) => node switch
    {
        ScalarNode { Quoted: false } s => s with { Text = Shown(s.Text, system) },
        ListNode l => l with { Items = [.. l.Items.Select(i => Converted(i, system))] },
        MapNode m => m with { Entries = [.. m.Entries.Select(e => e with { Value = Converted(e.Value, system) })] },
        _ => node,
    };
}
