using QuarterCar.Scenarios;

namespace QuarterCar.Reports.Units;

/// <summary>Unit of a dimension in the result files: the end of the column's name, and how many of it make one SI unit.</summary>
/// <param name="Suffix">With its underscore; empty for a pure number.</param>
/// <param name="PerSi">Value in this unit per value in SI.</param>
public readonly record struct FileUnit(string Suffix, double PerSi);

/// <summary>Units of the result files. Compound factors come from exact constants, because some published factors are rounded.</summary>
public static class UnitTable
{
    /// <summary>International inch, m (exact, 1959).</summary>
    public const double Inch = 0.0254;

    /// <summary>Foot, m.</summary>
    public const double Foot = 12 * Inch;

    /// <summary>Standard gravity, m/s² (exact, CGPM 1901).</summary>
    public const double Gravity = 9.80665;

    /// <summary>Pound-force, N: the international pound of 0.45359237 kg (exact, 1959) under standard gravity.</summary>
    public const double PoundForce = 0.45359237 * Gravity;

    /// <summary>The unit of a dimension in the result files.</summary>
    public static FileUnit Of(Dimension dimension, UnitSystem system) => (dimension, system == UnitSystem.Us) switch
    {
        (Dimension.Length or Dimension.Distance, false) => new("_m", 1),
        (Dimension.Length or Dimension.Distance, true) => new("_in", 1 / Inch),
        (Dimension.Velocity, false) => new("_m_s", 1),
        (Dimension.Velocity, true) => new("_in_s", 1 / Inch),
        (Dimension.Force, false) => new("_N", 1),
        (Dimension.Force, true) => new("_lbf", 1 / PoundForce),
        (Dimension.Rate, false) => new("_N_m", 1),
        (Dimension.Rate, true) => new("_lbf_in", Inch / PoundForce),
        (Dimension.Energy, false) => new("_J", 1),
        (Dimension.Energy, true) => new("_ft_lbf", 1 / (Foot * PoundForce)),
        (Dimension.Acceleration, _) => new("_g", 1 / Gravity),
        (Dimension.Time, _) => new("_s", 1),
        (Dimension.Frequency, _) => new("_hz", 1),
        _ => new("", 1),
    };
}
