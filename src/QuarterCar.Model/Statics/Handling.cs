using QuarterCar.Model.Shaft;

namespace QuarterCar.Model.Statics;

/// <summary>What whoever handles the coilover must know, SI: what the springs hold with the shaft fully extended, and the gas pressures.</summary>
/// <param name="PreloadForce">Force that the coil nut carries with the shaft fully extended, N.</param>
/// <param name="PreloadEnergy">Energy in the springs there, J.</param>
/// <param name="Gas">Null without gas.</param>
public sealed record HandlingFigures(double PreloadForce, double PreloadEnergy, GasPressures? Gas)
{
    /// <summary>The figures of a corner.</summary>
    public static HandlingFigures Of(Corner corner) => new(
        corner.Stack.Force(corner.Preload),
        corner.Stack.Energy(corner.Preload),
        corner.Data.Coilover.Gas is { } gas ? GasPressures.Of(gas, corner.StandingShaftTravel, corner.Stroke) : null);
}

/// <summary>Gauge pressures of the gas, Pa (physics.md section 4).</summary>
/// <param name="Charge">As set: fully extended, at charge temperature.</param>
/// <param name="RideHeight">At rest at ride height, at the scenario's temperature (isothermal).</param>
/// <param name="FullBump">At full bump in a fast stroke from rest at ride height: polytropic with the scenario's exponent.</param>
/// <param name="FullBumpHot">The same, from the same shaft travel, with the gas at <paramref name="HotAt"/> before the stroke.</param>
/// <param name="HotAt">K: <see cref="HotTemperature"/>, or the scenario's temperature where that is higher.</param>
public sealed record GasPressures(double Charge, double RideHeight, double FullBump, double FullBumpHot, double HotAt)
{
    /// <summary>A shock worked hard, K: 90 °C.</summary>
    public const double HotTemperature = 363.15;

    /// <summary>The pressures of a charge.</summary>
    /// <param name="gas">The charge.</param>
    /// <param name="rideTravel">Shaft travel at ride height, m.</param>
    /// <param name="stroke">m.</param>
    public static GasPressures Of(GasData gas, double rideTravel, double stroke)
    {
        double hotAt = Math.Max(HotTemperature, gas.Temperature);
        GasLaw now = GasLaw.Of(gas), hot = GasLaw.Of(gas with { Temperature = hotAt });
        return new(gas.Pressure, now.Standing(rideTravel) / now.Area, now.Moving(stroke, rideTravel) / now.Area, hot.Moving(stroke, rideTravel) / hot.Area, hotAt);
    }
}
