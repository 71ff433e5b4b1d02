namespace QuarterCar.Scenarios.Quantities;

/// <summary>
/// Sizes of units in SI, each from the three exact constants that define the inch-pound units: multiply to read, divide to write.
/// Compound units are built here because the units library rounds some of them (pound-force per inch to nine figures).
/// </summary>
public static class ExactUnits
{
    /// <summary>m. International inch, 1959 yard-and-pound agreement (25.4 mm).</summary>
    public const double Inch = 0.0254;

    /// <summary>kg. International avoirdupois pound, same agreement.</summary>
    public const double Pound = 0.45359237;

    /// <summary>m/s². Standard gravity, 3rd CGPM, 1901.</summary>
    public const double StandardGravity = 9.80665;

    /// <summary>m.</summary>
    public const double Foot = 12 * Inch;

    /// <summary>m.</summary>
    public const double Mile = 5280 * Foot;

    /// <summary>N.</summary>
    public const double PoundForce = Pound * StandardGravity;

    /// <summary>N/m.</summary>
    public const double PoundForcePerInch = PoundForce / Inch;

    /// <summary>N·s/m.</summary>
    public const double PoundForceSecondPerInch = PoundForce / Inch;

    /// <summary>Pa.</summary>
    public const double PoundForcePerSquareInch = PoundForce / (Inch * Inch);

    /// <summary>J.</summary>
    public const double FootPoundForce = Foot * PoundForce;

    /// <summary>m/s.</summary>
    public const double InchPerSecond = Inch;

    /// <summary>m/s.</summary>
    public const double FootPerSecond = Foot;

    /// <summary>m/s.</summary>
    public const double MilePerHour = Mile / 3600;

    /// <summary>m/s.</summary>
    public const double KilometrePerHour = 1000.0 / 3600;

    /// <summary>m³.</summary>
    public const double CubicInch = Inch * Inch * Inch;

    /// <summary>s/m: a loss of one second per inch.</summary>
    public const double SecondPerInch = 1 / Inch;

    /// <summary>K of the Celsius scale's zero.</summary>
    public const double CelsiusZero = 273.15;

    /// <summary>K of one degree Fahrenheit.</summary>
    public const double FahrenheitDegree = 5.0 / 9;

    /// <summary>K of the Fahrenheit scale's zero.</summary>
    public const double FahrenheitZero = CelsiusZero - (32 * FahrenheitDegree);
}
