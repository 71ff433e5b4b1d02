using System.Collections.Immutable;

using QuarterCar.Model.Selection;
using QuarterCar.Scenarios.Keys;
using QuarterCar.Scenarios.Quantities;

using static QuarterCar.Scenarios.Keys.KeyParts;

namespace QuarterCar.Scenarios.Weighing;

/// <summary>The keys of a file of measured corners, as data.</summary>
public static class MeasuredKeys
{
    /// <summary>Corners allowed in one file.</summary>
    public const int MostCorners = 1000;

    /// <summary>Positions from the coil nut down.</summary>
    public static readonly ImmutableArray<string> Positions = [MeasuredSpring.Tender, MeasuredSpring.Upper, MeasuredSpring.Lower];

    /// <summary>A file, whose corners have names.</summary>
    public static readonly MapKind File = Root(named: true);

    /// <summary>One corner given by flags, without a name.</summary>
    public static readonly MapKind Flags = Root(named: false);

    private static MapKind Root(bool named) => new(
    [
        new("length_error", Quantity(Dimension.Length, ValueRange.FromZero), "how far a length may be off, 95 % half-width") { Default = Written(new WeighErrors().Length * 1e3, "mm") },
        new("rate_error", Quantity(Dimension.Share, ValueRange.FromZero), "how far a rate may be off, 95 % half-width") { Default = Written(new WeighErrors().Rate * 100, "%") },
        Need("corners", new ListKind(new("corner", new MapKind(Corner(named)), "a corner: name, springs and their loaded lengths"), Least: 1, Most: MostCorners), "the corners", null),
    ]);

    private static ImmutableArray<Key> Corner(bool named) =>
    [
        new("name", new TextKind(), "of the corner; left and right make a pair") { Required = named, Example = "front left" },
        new("stop_nut_clear", new ChoiceKind(["true", "false"]), "false where the slider is on the stop nut: then only the lower spring counts") { Default = "true" },
        new("motion_ratio", Quantity(Dimension.Number, ValueRange.AboveZero), "shaft travel per wheel travel at ride height") { Condition = "optional" },
        new("shaft_showing", Quantity(Dimension.Length, ValueRange.FromZero), "what is left of the stroke") { Condition = "needed with gas" },
        new("stroke", Quantity(Dimension.Length, ValueRange.AboveZero), "of the shaft") { Condition = "needed with gas" },
        new("gas", new MapKind(ShockKeys.Gas), "as in a scenario; gives the gas share") { Condition = "optional" },
        .. Positions.Select(p => new Key(p, new MapKind(Spring), "a spring and its loaded length") { Required = p == MeasuredSpring.Lower }),
    ];

    private static ImmutableArray<Key> Spring =>
    [
        Need("rate", Quantity(Dimension.SpringRate, ValueRange.AboveZero), "measured, or as marked", null),
        Need("free_length", Quantity(Dimension.Length, ValueRange.AboveZero), "without load", null),
        Need("loaded_length", new ListKind(new("reading", Quantity(Dimension.Length, ValueRange.AboveZero), "a length with its unit"), Least: 1, Most: 2),
            "with the vehicle standing: one reading, or settled from below, from above", null),
        new("solid_length", Quantity(Dimension.Length, ValueRange.AboveZero), "with its coils bound") { Condition = "optional" },
    ];
}
