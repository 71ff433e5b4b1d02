using System.Collections.Immutable;

using QuarterCar.Model.Selection;
using QuarterCar.Scenarios.Keys;
using QuarterCar.Scenarios.Quantities;

using static QuarterCar.Scenarios.Keys.KeyParts;

namespace QuarterCar.Scenarios.Picking;

/// <summary>One flag of `pick` that takes a quantity.</summary>
/// <param name="Name">With its dashes.</param>
/// <param name="Kind">What it takes.</param>
/// <param name="Value">For the help page.</param>
/// <param name="Help">One sentence.</param>
/// <param name="Required">True where nothing can be picked without it.</param>
public sealed record PickFlag(string Name, QuantityKind Kind, string Value, string Help, bool Required = false);

/// <summary>The flags of `pick` that take quantities, as data.</summary>
public static class PickFlags
{
    internal const string Load = "--load", Stroke = "--stroke", RideHeight = "--ride-height", Preload = "--preload", Gap = "--gap";
    internal const string Pressure = "--gas-pressure", Volume = "--gas-volume", Rod = "--rod-diameter";
    internal const string Seat = "--seat-length", Thread = "--thread", Slider = "--slider", Diameter = "--diameter";

    /// <summary>Every flag, in the order of the help page.</summary>
    public static readonly ImmutableArray<PickFlag> All =
    [
        new(Load, Quantity(Dimension.Force, ValueRange.AboveZero), "FORCE", "Load on the coilover at ride height, gas included: what weigh gives.", true),
        new(Stroke, Quantity(Dimension.Length, ValueRange.AboveZero), "LENGTH", "Stroke of the shaft.", true),
        new(RideHeight, Quantity(Dimension.Length, ValueRange.AboveZero), "LENGTH", "Wanted shaft showing, bump stop and wiper not counted.", true),
        new(Preload, Quantity(Dimension.Length, ValueRange.FromZero), "LENGTH", $"Preload wanted at ride height. [default: {Written(PickData.DefaultPreload * 1e3, "mm")}]"),
        new(Gap, Quantity(Dimension.Length, ValueRange.FromZero), "LENGTH", "Stop-nut gap at ride height; without it the slider is free."),
        new(Pressure, Quantity(Dimension.Pressure, ValueRange.FromZero), "PRESSURE", "Gauge pressure of the gas at full droop, with --gas-volume and --rod-diameter."),
        new(Volume, Quantity(Dimension.Volume, ValueRange.AboveZero), "VOLUME", "Gas volume at full droop."),
        new(Rod, Quantity(Dimension.Length, ValueRange.AboveZero), "LENGTH", "Diameter of the shock's rod."),
        new(Seat, Quantity(Dimension.Length, ValueRange.AboveZero), "LENGTH", "For the fit: lower spring plate to coil nut at the top of its thread, shaft fully extended."),
        new(Thread, Quantity(Dimension.Length, ValueRange.AboveZero), "LENGTH", "For the fit: thread for the coil nut."),
        new(Slider, Quantity(Dimension.Length, ValueRange.FromZero), "LENGTH", "For the fit: height of the slider between the springs."),
        new(Diameter, Quantity(Dimension.Length, ValueRange.AboveZero), "LENGTH", "For the fit: outside of the body."),
    ];
}
