using System.Collections.Immutable;

using UnitsNet;
using UnitsNet.Units;

namespace QuarterCar.Scenarios.Quantities;

/// <summary>One unit as people write it.</summary>
/// <param name="Name">Spelling, case matters.</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="Size">SI of one.</param>
/// <param name="Zero">SI at a reading of 0: not 0 for temperatures alone.</param>
/// <param name="System">The system that it speaks for, where it decides output units.</param>
public sealed record Unit(string Name, Dimension Dimension, double Size, double Zero = 0, UnitSystem? System = null)
{
    /// <summary>SI value of a reading.</summary>
    public double ToSi(double reading) => (reading * Size) + Zero;

    /// <summary>Reading of an SI value.</summary>
    public double FromSi(double si) => (si - Zero) / Size;
}

/// <summary>Every unit that is read. Sizes come from the units library where it is exact, else from <see cref="ExactUnits"/>.</summary>
public static class UnitTable
{
    /// <summary>In the order in which messages list them.</summary>
    public static readonly ImmutableArray<Unit> All =
    [
        new("in", Dimension.Length, new Length(1, LengthUnit.Inch).Meters, System: UnitSystem.Us),
        new("ft", Dimension.Length, new Length(1, LengthUnit.Foot).Meters, System: UnitSystem.Us),
        new("mm", Dimension.Length, new Length(1, LengthUnit.Millimeter).Meters, System: UnitSystem.Si),
        new("cm", Dimension.Length, new Length(1, LengthUnit.Centimeter).Meters, System: UnitSystem.Si),
        new("m", Dimension.Length, 1, System: UnitSystem.Si),
        new("lbf", Dimension.Force, new Force(1, ForceUnit.PoundForce).Newtons, System: UnitSystem.Us),
        new("lb", Dimension.Force, new Mass(1, MassUnit.Pound).Kilograms * ExactUnits.StandardGravity, System: UnitSystem.Us),
        new("lbs", Dimension.Force, new Mass(1, MassUnit.Pound).Kilograms * ExactUnits.StandardGravity, System: UnitSystem.Us),
        new("N", Dimension.Force, 1, System: UnitSystem.Si),
        new("kN", Dimension.Force, new Force(1, ForceUnit.Kilonewton).Newtons, System: UnitSystem.Si),
        new("kg", Dimension.Force, ExactUnits.StandardGravity, System: UnitSystem.Si),
        new("lbf/in", Dimension.SpringRate, ExactUnits.PoundForcePerInch, System: UnitSystem.Us),
        new("lb/in", Dimension.SpringRate, ExactUnits.PoundForcePerInch, System: UnitSystem.Us),
        new("N/mm", Dimension.SpringRate, 1e3, System: UnitSystem.Si),
        new("N/m", Dimension.SpringRate, 1, System: UnitSystem.Si),
        new("kN/m", Dimension.SpringRate, 1e3, System: UnitSystem.Si),
        new("lbf*s/in", Dimension.Damping, ExactUnits.PoundForceSecondPerInch),
        new("lb*s/in", Dimension.Damping, ExactUnits.PoundForceSecondPerInch),
        new("N*s/m", Dimension.Damping, 1),
        new("mph", Dimension.Speed, new Speed(1, SpeedUnit.MilePerHour).MetersPerSecond),
        new("ft/s", Dimension.Speed, new Speed(1, SpeedUnit.FootPerSecond).MetersPerSecond),
        new("in/s", Dimension.Speed, new Speed(1, SpeedUnit.InchPerSecond).MetersPerSecond),
        new("m/s", Dimension.Speed, 1),
        new("km/h", Dimension.Speed, new Speed(1, SpeedUnit.KilometerPerHour).MetersPerSecond),
        new("psi", Dimension.Pressure, ExactUnits.PoundForcePerSquareInch),
        new("bar", Dimension.Pressure, new Pressure(1, PressureUnit.Bar).Pascals),
        new("kPa", Dimension.Pressure, new Pressure(1, PressureUnit.Kilopascal).Pascals),
        new("MPa", Dimension.Pressure, new Pressure(1, PressureUnit.Megapascal).Pascals),
        new("Pa", Dimension.Pressure, 1),
        new("in^3", Dimension.Volume, ExactUnits.CubicInch),
        new("cm^3", Dimension.Volume, new Volume(1, VolumeUnit.CubicCentimeter).CubicMeters),
        new("m^3", Dimension.Volume, 1),
        new("s", Dimension.Time, 1),
        new("ms", Dimension.Time, new Duration(1, DurationUnit.Millisecond).Seconds),
        new("deg", Dimension.Angle, new Angle(1, AngleUnit.Degree).Radians),
        new("rad", Dimension.Angle, 1),
        new("degF", Dimension.Temperature, ExactUnits.FahrenheitDegree, ExactUnits.FahrenheitZero),
        new("degC", Dimension.Temperature, 1, ExactUnits.CelsiusZero),
        new("K", Dimension.Temperature, 1),
        new("s/m", Dimension.Loss, 1),
        new("s/in", Dimension.Loss, ExactUnits.SecondPerInch),
        new("%", Dimension.Share, 0.01),
    ];

    private static readonly Dictionary<string, Unit> _byName = All.ToDictionary(u => u.Name, StringComparer.Ordinal);

    /// <summary>The unit of a spelling; typographic spellings (·, ³, °) stand for the plain ones. Null where unknown.</summary>
    public static Unit? Find(string name) => _byName.GetValueOrDefault(Plain(name));

    /// <summary>"in, ft, mm, cm, m".</summary>
    public static string Names(Dimension dimension) => string.Join(", ", All.Where(u => u.Dimension == dimension).Select(u => u.Name));

    /// <summary>The SI unit that a value of this dimension is kept in, as it is read; empty for a plain number. A share's is the number itself.</summary>
    public static string SiName(Dimension dimension) => dimension switch
    {
        Dimension.Length => "m",
        Dimension.Force => "N",
        Dimension.SpringRate => "N/m",
        Dimension.Damping => "N*s/m",
        Dimension.Speed => "m/s",
        Dimension.Time => "s",
        Dimension.Loss => "s/m",
        Dimension.Pressure => "Pa",
        Dimension.Volume => "m^3",
        Dimension.Angle => "rad",
        Dimension.Temperature => "K",
        _ => "",
    };

    private static string Plain(string name) => name
        .Replace("\u00b7", "*", StringComparison.Ordinal)
        .Replace("\u00b3", "^3", StringComparison.Ordinal)
        .Replace("\u00b0", "deg", StringComparison.Ordinal)
        .Replace(" ", "", StringComparison.Ordinal);
}
