using System.Collections.Immutable;

using QuarterCar.Scenarios.Quantities;

using static QuarterCar.Scenarios.Keys.KeyParts;

namespace QuarterCar.Scenarios.Keys;

/// <summary>Keys of the pieces of ground.</summary>
public static class TerrainKeys
{
    private static readonly QuantityKind _length = Quantity(Dimension.Length, ValueRange.AboveZero);

    private static readonly QuantityKind _height = Quantity(Dimension.Length, ValueRange.Any);

    /// <summary>One of these a piece.</summary>
    public static readonly ImmutableArray<Key> Pieces =
    [
        new("flat", _length, "level ground") { Example = "10 ft" },
        new("step", _height, "a vertical step, down negative") { Example = "-18 in" },
        new("ramp", new MapKind([Need("rise", _height, "down negative", "18 in"), Need("length", _length, "along the level", "6 ft")]), "a straight slope")
        {
            Aside = true,
        },
        new("bump", new MapKind([Need("height", _height, "a dip negative", "6 in"), Need("length", _length, "along the level", "3 ft")]), "one haversine")
        {
            Aside = true,
        },
        new("whoops", new MapKind(
        [
            Need("height", _height, "trough to crest", "20 in"),
            Need("spacing", _length, "crest to crest", "18 ft"),
            Need("count", new WholeKind(1, ScenarioKeys.MostWhoops), "how many", "6"),
        ]), "haversines end to end") { Aside = true },
        new("random", new MapKind(
        [
            Need("iso8608", new ChoiceKind(["A", "B", "C", "D", "E", "F", "G", "H"]), "class, A smooth to H rough", "D"),
            Need("length", Quantity(Dimension.Length, new ValueRange(0, false, ScenarioKeys.LongestRandom)), "along the level", "200 m"),
            Need("seed", new WholeKind(0, ulong.MaxValue), "the same seed gives the same road", "7"),
        ]), "a random road of an ISO 8608 class") { Aside = true },
        new("profile", new MapKind([Need("file", new TextKind(), "CSV beside this file, columns distance_<unit> and height_<unit>", "course.csv")]), "a measured profile")
        {
            Aside = true,
        },
    ];
}
