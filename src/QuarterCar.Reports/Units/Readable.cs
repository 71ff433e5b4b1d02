using System.Globalization;

using QuarterCar.Scenarios;

namespace QuarterCar.Reports.Units;

/// <summary>Unit of a dimension for people, rounded to what a wrench can set.</summary>
/// <param name="Name">As written after the number; empty for a pure number.</param>
/// <param name="PerSi">Value in this unit per value in SI.</param>
/// <param name="Decimals">Digits after the point.</param>
public readonly record struct ReadableUnit(string Name, double PerSi, int Decimals);

/// <summary>Numbers as people read them: 0.01 in, 0.1 mm, 1 lbf, 1 N.</summary>
public sealed class Readable(UnitSystem system)
{
    /// <summary>Stands where a figure does not apply.</summary>
    public const string None = "–";

    /// <summary>The system that it writes.</summary>
    public UnitSystem System { get; } = system;

    /// <summary>The minus sign, as wide as a digit.</summary>
    public const string Minus = "\u2212";

    /// <summary>The unit of a dimension for people.</summary>
    public ReadableUnit Unit(Dimension dimension) => (dimension, System == UnitSystem.Us) switch
    {
        (Dimension.Length, false) => new("mm", 1e3, 1),
        (Dimension.Length, true) => new("in", 1 / UnitTable.Inch, 2),
        (Dimension.Distance, false) => new("m", 1, 2),
        (Dimension.Distance, true) => new("ft", 1 / UnitTable.Foot, 1),
        (Dimension.Velocity, false) => new("m/s", 1, 2),
        (Dimension.Velocity, true) => new("in/s", 1 / UnitTable.Inch, 1),
        (Dimension.Force, false) => new("N", 1, 0),
        (Dimension.Force, true) => new("lbf", 1 / UnitTable.PoundForce, 0),
        (Dimension.Rate, false) => new("N/mm", 1e-3, 1),
        (Dimension.Rate, true) => new("lbf/in", UnitTable.Inch / UnitTable.PoundForce, 0),
        (Dimension.Energy, false) => new("J", 1, 0),
        (Dimension.Energy, true) => new("ft·lbf", 1 / (UnitTable.Foot * UnitTable.PoundForce), 0),
        (Dimension.Acceleration, _) => new("g", 1 / UnitTable.Gravity, 2),
        (Dimension.Time, _) => new("s", 1, 3),
        (Dimension.Frequency, _) => new("Hz", 1, 2),
        (Dimension.Share, _) => new("%", 100, 0),
        _ => new("", 1, 3),
    };

    /// <summary>The number alone, rounded; a dash where it does not apply.</summary>
    public string Number(Dimension dimension, double? si) => Number(Unit(dimension), si);

    /// <summary>The number with its unit.</summary>
    public string Text(Dimension dimension, double? si)
    {
        var unit = Unit(dimension);
        string number = Number(unit, si);
        return unit.Name.Length == 0 || si is null ? number : number + "\u00a0" + unit.Name;
    }

    /// <summary>A number in a unit, rounded; never "-0".</summary>
    public static string Number(ReadableUnit unit, double? si)
    {
        if (si is not { } value || !double.IsFinite(value)) return None;
        double rounded = Math.Round(value * unit.PerSi, unit.Decimals, MidpointRounding.AwayFromZero);
        string digits = Math.Abs(rounded).ToString("F" + unit.Decimals, CultureInfo.InvariantCulture);
        return rounded < 0 ? Minus + digits : digits;
    }

    /// <summary>The dimension that a key's ending stands for, and the factor from the key's unit to SI.</summary>
    public static (Dimension Dimension, double ToSi) OfKey(string key) =>
        key.EndsWith("_N_m", StringComparison.Ordinal) ? (Dimension.Rate, 1)
        : key.EndsWith("_m_s", StringComparison.Ordinal) ? (Dimension.Velocity, 1)
        : key.EndsWith("_m", StringComparison.Ordinal) ? (Dimension.Length, 1)
        : key.EndsWith("_N", StringComparison.Ordinal) ? (Dimension.Force, 1)
        : key.EndsWith("_J", StringComparison.Ordinal) ? (Dimension.Energy, 1)
        : key.EndsWith("_hz", StringComparison.Ordinal) ? (Dimension.Frequency, 1)
        : key.EndsWith("_g", StringComparison.Ordinal) ? (Dimension.Acceleration, UnitTable.Gravity)
        : key.EndsWith("_s", StringComparison.Ordinal) ? (Dimension.Time, 1)
        : key.EndsWith("_use", StringComparison.Ordinal) || key.EndsWith("_used", StringComparison.Ordinal) ? (Dimension.Share, 1)
        : (Dimension.Number, 1);
}
