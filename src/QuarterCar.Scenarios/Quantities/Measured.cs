using System.Globalization;
using System.Text.RegularExpressions;

namespace QuarterCar.Scenarios.Quantities;

/// <summary>A number with the unit written behind it, taken apart: "1.4 in", "12in", "1e-6", "4 %".</summary>
/// <param name="Number">As written; not finite where it was written so or overflows.</param>
/// <param name="UnitName">As written; empty for a bare number.</param>
/// <param name="Unit">Null for a bare number or an unknown unit.</param>
public readonly partial record struct Measured(double Number, string UnitName, Unit? Unit)
{
    /// <summary>What it measures; null where the unit is unknown.</summary>
    public Dimension? Dimension => UnitName.Length == 0 ? Quantities.Dimension.Number : Unit?.Dimension;

    /// <summary>SI value.</summary>
    public double Si => Unit?.ToSi(Number) ?? Number;

    /// <summary>Takes a text apart, the same in every culture; false where it does not start with a number.</summary>
    public static bool TryParse(string text, out Measured measured)
    {
        var plain = text.Trim().Replace('\u2212', '-').Replace('\u00a0', ' ');
        var match = Finite().Match(plain);
        if (match.Success)
        {
            var number = double.Parse(match.Groups[1].ValueSpan, NumberStyles.Float, CultureInfo.InvariantCulture);
            return Made(number, match.Groups[2].Value, out measured);
        }

        match = NotFinite().Match(plain);
        return match.Success ? Made(double.NaN, match.Groups[1].Value, out measured) : Failed(out measured);
    }

    /// <summary>The shortest text that reads back as the same reading.</summary>
    public override string ToString() => Write(Number, UnitName);

    /// <summary>A reading and its unit as the reader takes it.</summary>
    public static string Write(double number, string unit)
    {
        var text = number.ToString("R", CultureInfo.InvariantCulture).Replace('E', 'e');
        return unit.Length == 0 ? text : text + " " + unit;
    }

    private static bool Made(double number, string unit, out Measured measured)
    {
        measured = new Measured(number, unit, unit.Length == 0 ? null : UnitTable.Find(unit));
        return true;
    }

    private static bool Failed(out Measured measured)
    {
        measured = new Measured(double.NaN, "", null);
        return false;
    }

    [GeneratedRegex(@"^([+-]?(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][+-]?[0-9]+)?)\s*(.*)$", RegexOptions.CultureInvariant | RegexOptions.Singleline)]
    private static partial Regex Finite();

    [GeneratedRegex(@"^[+-]?\.?(?:nan|inf|infinity)(?:\s+(.*))?$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase | RegexOptions.Singleline)]
    private static partial Regex NotFinite();
}
