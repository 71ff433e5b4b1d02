using System.Globalization;

using QuarterCar.Scenarios.Quantities;

using UnitsNet;
using UnitsNet.Units;

namespace QuarterCar.Drafts;

/// <summary>Quantities as the scenario file has them, in the unit they were made in, so that 12 in stays 12 in to the last digit.</summary>
internal static class QuantityTexts
{
    private static readonly Dictionary<Enum, string> Names = new()
    {
        [LengthUnit.Inch] = "in",
        [LengthUnit.Foot] = "ft",
        [LengthUnit.Millimeter] = "mm",
        [LengthUnit.Centimeter] = "cm",
        [LengthUnit.Meter] = "m",
        [ForceUnit.PoundForce] = "lbf",
        [ForceUnit.Newton] = "N",
        [ForceUnit.Kilonewton] = "kN",
        [MassUnit.Kilogram] = "kg",
        [MassUnit.Pound] = "lb",
        [ForcePerLengthUnit.PoundForcePerInch] = "lbf/in",
        [ForcePerLengthUnit.NewtonPerMillimeter] = "N/mm",
        [ForcePerLengthUnit.NewtonPerMeter] = "N/m",
        [ForcePerLengthUnit.KilonewtonPerMeter] = "kN/m",
        [SpeedUnit.MilePerHour] = "mph",
        [SpeedUnit.FootPerSecond] = "ft/s",
        [SpeedUnit.InchPerSecond] = "in/s",
        [SpeedUnit.MeterPerSecond] = "m/s",
        [SpeedUnit.KilometerPerHour] = "km/h",
        [PressureUnit.PoundForcePerSquareInch] = "psi",
        [PressureUnit.Bar] = "bar",
        [PressureUnit.Kilopascal] = "kPa",
        [PressureUnit.Megapascal] = "MPa",
        [PressureUnit.Pascal] = "Pa",
        [VolumeUnit.CubicInch] = "in^3",
        [VolumeUnit.CubicCentimeter] = "cm^3",
        [VolumeUnit.CubicMeter] = "m^3",
        [DurationUnit.Second] = "s",
        [DurationUnit.Millisecond] = "ms",
        [TemperatureUnit.DegreeFahrenheit] = "degF",
        [TemperatureUnit.DegreeCelsius] = "degC",
        [TemperatureUnit.Kelvin] = "K",
        [RatioUnit.Percent] = "%",
        [RatioUnit.DecimalFraction] = "",
    };

    /// <summary>The text of a quantity; one of a unit that the file does not know is said in the unit that the dimension has in SI.</summary>
    public static string Of(IQuantity quantity)
    {
        if (Names.TryGetValue(quantity.Unit, out string? name)) return Measured.Write((double)quantity.Value, name);
        (Enum si, string siName) = quantity switch
        {
            Length => (LengthUnit.Meter, "m"),
            Force => (ForceUnit.Newton, "N"),
            Mass => ((Enum)MassUnit.Kilogram, "kg"),
            ForcePerLength => (ForcePerLengthUnit.NewtonPerMeter, "N/m"),
            Speed => (SpeedUnit.MeterPerSecond, "m/s"),
            Pressure => (PressureUnit.Pascal, "Pa"),
            Volume => (VolumeUnit.CubicMeter, "m^3"),
            Duration => (DurationUnit.Second, "s"),
            Temperature => (TemperatureUnit.Kelvin, "K"),
            _ => throw new ArgumentException($"no scenario value is a {quantity.QuantityInfo.Name}", nameof(quantity)),
        };
        return Measured.Write((double)quantity.As(si), siName);
    }

    /// <summary>The text of a value of a draft; null where it is none.</summary>
    public static string? Scalar(object value) => value switch
    {
        IQuantity quantity => Of(quantity),
        DampingRate damping => Measured.Write(damping.NewtonSecondsPerMeter, "N*s/m"),
        Loss loss => Measured.Write(loss.SecondsPerMeter, "s/m"),
        double number => number.ToString("R", CultureInfo.InvariantCulture),
        Enum word => Snake(word.ToString()),
        string text => text,
        _ => null,
    };

    /// <summary>RideHeight → ride_height.</summary>
    public static string Snake(string name) =>
        string.Concat(name.Select((c, i) => char.IsUpper(c) ? (i > 0 ? "_" : "") + char.ToLowerInvariant(c) : c.ToString()));
}
