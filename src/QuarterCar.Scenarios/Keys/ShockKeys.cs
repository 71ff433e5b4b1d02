using System.Collections.Immutable;

using QuarterCar.Model;
using QuarterCar.Scenarios.Quantities;

using static QuarterCar.Scenarios.Keys.KeyParts;

namespace QuarterCar.Scenarios.Keys;

/// <summary>Keys of one spring.</summary>
public static class SpringKeys
{
    /// <summary>The keys with examples of their own.</summary>
    public static ImmutableArray<Key> Of(string rate, string free, string solid) =>
    [
        Need("rate", Quantity(Dimension.SpringRate, ValueRange.AboveZero), "spring rate", rate),
        Need("free_length", Quantity(Dimension.Length, ValueRange.AboveZero), "without load", free),
        Need("solid_length", Quantity(Dimension.Length, ValueRange.AboveZero), "with its coils bound", solid),
        new("wire_diameter", Quantity(Dimension.Length, ValueRange.AboveZero), "for checks of surge")
        {
            Condition = "optional", Example = "0.48 in", Aside = true,
        },
        new("mean_diameter", Quantity(Dimension.Length, ValueRange.AboveZero), "of the coils, for checks of buckling and surge")
        {
            Condition = "optional", Example = "3.48 in", Aside = true,
        },
        new("inner_diameter", Quantity(Dimension.Length, ValueRange.AboveZero), "of the coils, for checks of fit")
        {
            Condition = "optional", Example = "3 in", Aside = true,
        },
    ];
}

/// <summary>Keys of damper, gas, stops and body.</summary>
public static class ShockKeys
{
    private static readonly TableKind _forceOverSpeed =
        new(Quantity(Dimension.Speed, ValueRange.AboveZero), Quantity(Dimension.Force, ValueRange.FromZero), FromOrigin: true);

    private static readonly TableKind _forceOverLength =
        new(Quantity(Dimension.Length, ValueRange.AboveZero), Quantity(Dimension.Force, ValueRange.FromZero), ValueNeverFalls: true, FromOrigin: true);

    private static readonly QuantityKind _aboveAbsoluteZero = Quantity(Dimension.Temperature, ValueRange.AboveZero);

    /// <summary>coilover.damper.</summary>
    public static readonly ImmutableArray<Key> Damper =
    [
        Need("compression", _forceOverSpeed, "[shaft velocity, force], shaft going in", "[[4 in/s, 85 lbf], [18 in/s, 180 lbf], [75 in/s, 500 lbf]]"),
        Need("rebound", _forceOverSpeed, "[shaft velocity, force], shaft coming out", "[[4 in/s, 135 lbf], [18 in/s, 300 lbf], [75 in/s, 810 lbf]]"),
        new("zones", new ListKind(new("zone", new MapKind(
        [
            Need("from", Quantity(Dimension.Length, ValueRange.FromZero), "shaft travel where it begins", "9.5 in"),
            Need("to", Quantity(Dimension.Length, ValueRange.AboveZero), "shaft travel where it ends", "12 in"),
            Need("compression", Factor, "factor going in", "1.5"),
            Need("rebound", Factor, "factor coming out", "1.0"),
        ]), "a stretch of shaft travel in which the forces are multiplied")), "stretches of shaft travel in which the forces are multiplied") { Condition = "optional" },
    ];

    /// <summary>coilover.gas.</summary>
    public static readonly ImmutableArray<Key> Gas =
    [
        Need("pressure", Quantity(Dimension.Pressure, ValueRange.FromZero), "gauge pressure at full droop", "170 psi"),
        Need("rod_diameter", Quantity(Dimension.Length, ValueRange.AboveZero), "of the shock's rod", "0.875 in"),
        Need("volume", Quantity(Dimension.Volume, ValueRange.AboveZero), "of the gas at full droop", "28 in^3"),
        new("exponent", Quantity(Dimension.Number, new ValueRange(1, true, double.PositiveInfinity)), "1 isothermal, 1.4 fast")
        {
            Default = Written(new GasData(0, 0, 0).Exponent, ""), Example = "1.4",
        },
        new("charge_temperature", _aboveAbsoluteZero, "when the pressure was set")
        {
            Default = Celsius(GasData.RoomTemperature), Example = "20 degC", Aside = true,
        },
        new("temperature", _aboveAbsoluteZero, "now") { Default = Celsius(GasData.RoomTemperature), Example = "20 degC", Aside = true },
    ];

    /// <summary>coilover.bump_stop.</summary>
    public static readonly ImmutableArray<Key> BumpStop =
    [
        Need("on", new ChoiceKind(["shaft", "axle"]), "where it sits: shaft or axle", "shaft"),
        Need("length", Quantity(Dimension.Length, ValueRange.AboveZero), "it touches this far before full bump", "2.2 in"),
        Need("force", _forceOverLength, "[compression, force], the last slope carried on", "[[0.5 in, 140 lbf], [1.4 in, 850 lbf], [2.0 in, 3400 lbf]]"),
        new("loss", Quantity(Dimension.Loss, ValueRange.FromZero), "share of the force that closing speed adds, per speed")
        {
            Default = Written(BumpStopData.DefaultLoss, "s/m"), Example = "0.2 s/m",
        },
    ];

    /// <summary>coilover.body.</summary>
    public static readonly ImmutableArray<Key> Body =
    [
        Fit("seat_length", ValueRange.AboveZero, "lower spring plate to coil nut at the top of its thread, shaft fully extended", "27.5 in"),
        Fit("thread", ValueRange.AboveZero, "length of thread for the coil nut", "6 in"),
        Fit("thread_pitch", ValueRange.AboveZero, "a turn", "2 mm"),
        Fit("slider", ValueRange.FromZero, "height of the slider between the springs", "1.2 in"),
        Fit("diameter", ValueRange.AboveZero, "outside of the body", "2.5 in"),
    ];

    /// <summary>coilover.bottom_out and top_out.</summary>
    public static ImmutableArray<Key> Stop(StopData standard, string rate, string loss) =>
    [
        new("rate", Quantity(Dimension.SpringRate, ValueRange.AboveZero), "stiffness of the contact")
        {
            Default = Written(standard.Rate, "N/m"), Example = rate, Aside = true,
        },
        new("loss", Quantity(Dimension.Loss, ValueRange.FromZero), "share of the force that closing speed adds, per speed")
        {
            Default = Written(standard.Loss, "s/m"), Example = loss, Aside = true,
        },
    ];

    private static Key Fit(string name, ValueRange range, string help, string example) =>
        new(name, Quantity(Dimension.Length, range), help) { Condition = "optional", Example = example, Aside = true };
}
