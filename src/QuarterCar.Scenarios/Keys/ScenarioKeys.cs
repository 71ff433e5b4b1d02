using System.Collections.Immutable;

using QuarterCar.Model;
using QuarterCar.Scenarios.Quantities;

using static QuarterCar.Scenarios.Keys.KeyParts;

namespace QuarterCar.Scenarios.Keys;

/// <summary>Every key of a scenario file, in the order of the template.</summary>
public static class ScenarioKeys
{
    /// <summary>Smallest integration tolerance: below it rounding rules.</summary>
    public const double LeastTolerance = 1e-12;

    /// <summary>Largest integration tolerance: above it events get lost.</summary>
    public const double MostTolerance = 1e-2;

    /// <summary>Bumps allowed in one piece of whoops.</summary>
    public const ulong MostWhoops = 100_000;

    /// <summary>Load cases allowed: each is held against the whole scenario at every reading.</summary>
    public const int MostCases = 100;

    /// <summary>Longest random course, m: its waves number 2.83 a metre and each is summed at 20 points a metre.</summary>
    public const double LongestRandom = 20_000;

    /// <summary>The whole file.</summary>
    public static readonly MapKind Root = new(
    [
        new("title", new TextKind(), "name of the scenario, in every report")
        {
            Required = true, Example = "Creek ledge, rear corner of a two-seat trail buggy",
        },
        new("corner", new MapKind(Corner()), "what this corner carries") { Required = true },
        new("tyre", new MapKind(Tyre()), "the tyre") { Required = true },
        new("coilover", new MapKind(Coilover()), "springs, shock and stops") { Required = true },
        new("terrain", new ListKind(new("piece", new OneOfKind(TerrainKeys.Pieces), "one piece of ground"), Least: 1), "the ground: pieces one after another, from the wheel forward")
        {
            Condition = "needed unless there is a drop",
        },
        new("speed", Quantity(Dimension.Speed, ValueRange.AboveZero), "driving speed") { Condition = "needed with terrain", Example = "5 mph" },
        new("drop", new MapKind([Need("height", Quantity(Dimension.Length, ValueRange.FromZero), "of the unloaded tyre above the ground", "3 ft")]),
            "instead of terrain and speed: a drop test from full droop") { Condition = "instead of terrain and speed", Aside = true },
        new("run", new MapKind(Run(), DefaultsHold: true), "how the run is computed") { Condition = "optional" },
        new("limits", new OpenMapKind("figures of the summary and their largest allowed values"), "largest allowed figures; a broken one makes run exit with 1")
        {
            Condition = "optional", Example = "{ bottom_out: 0, coil_bind: 0, up_travel_used: 0.95 }",
        },
        new("cases", new ListKind(new("case", new OpenMapKind("a name, and dotted paths with new values or signed changes"), "one load case"), Most: MostCases),
            "load cases: new values, or changes where a sign leads") { Condition = "optional", Aside = true, Example = "[{ name: two up and fuel, corner.sprung_weight: +120 lbf }]" },
        new("tolerances", new OpenMapKind("dotted paths and how far each value may be off"), "for spread: 95 % half-widths, or bounds with shape: uniform")
        {
            Condition = "optional", Aside = true, Example = "{ corner.sprung_weight: 4 %, coilover.springs.upper.rate: { within: 2 %, shape: uniform } }",
        },
    ]);

    private static ImmutableArray<Key> Corner() =>
    [
        new("sprung_weight", Quantity(Dimension.Force, ValueRange.AboveZero), "what this wheel carries through its spring")
        {
            Condition = "this or spring_load", Example = "780 lbf",
        },
        new("spring_load", Quantity(Dimension.Force, ValueRange.AboveZero), "load on the springs at ride height, gas not in it")
        {
            Condition = "this or sprung_weight", Example = "700 lbf", Aside = true,
        },
        Need("unsprung_weight", Quantity(Dimension.Force, ValueRange.AboveZero), "wheel, hub and what moves with them", "150 lbf"),
        new("motion_ratio", new TableKind(new(Dimension.Length, ValueRange.Any), new(Dimension.Number, ValueRange.AboveZero), OrPlainValue: true),
            "shaft travel per wheel travel, or a table over wheel travel: [[0 in, 0.90], [12 in, 0.97]]") { Default = "1", Example = "0.92" },
    ];

    private static ImmutableArray<Key> Tyre() =>
    [
        Need("rate", Quantity(Dimension.SpringRate, ValueRange.AboveZero), "vertical rate", "1200 lbf/in"),
        new("damping", Quantity(Dimension.Damping, ValueRange.FromZero), "vertical damping") { Default = "0 N*s/m", Example = "2.4 lbf*s/in" },
        new("radius", Quantity(Dimension.Length, ValueRange.AboveZero), "free radius") { Condition = "needed by rolling_circle", Example = "17 in" },
        new("contact", new ChoiceKind(["point", "rolling_circle", "footprint"]), "how the tyre feels the ground: point, rolling_circle or footprint")
        {
            Default = "point", Example = "rolling_circle",
        },
        new("footprint", Quantity(Dimension.Length, ValueRange.AboveZero), "length of the footprint")
        {
            Condition = "needed by contact: footprint", Example = "8 in", Aside = true,
        },
        new("sidewall", Quantity(Dimension.Length, ValueRange.AboveZero), "deflection at which the rim takes part")
        {
            Condition = "with rim_rate", Example = "5 in", Aside = true,
        },
        new("rim_rate", Quantity(Dimension.SpringRate, ValueRange.AboveZero), "rate that the rim adds beyond it")
        {
            Condition = "with sidewall", Example = "9000 lbf/in", Aside = true,
        },
    ];

    private static ImmutableArray<Key> Coilover() =>
    [
        Need("stroke", Quantity(Dimension.Length, ValueRange.AboveZero), "shaft travel from full droop to full bump", "12 in"),
        new("springs", new MapKind(
        [
            new("tender", new MapKind(SpringKeys.Of("55 lbf/in", "4 in", "1.1 in")), "tender spring above the upper one")
            {
                Condition = "optional", Aside = true,
            },
            new("upper", new MapKind(SpringKeys.Of("150 lbf/in", "12 in", "4.5 in")), "spring above the slider")
            {
                Condition = "may be left out only without tender and stop nut",
            },
            new("lower", new MapKind(SpringKeys.Of("225 lbf/in", "14 in", "5.6 in")), "spring below the slider; alone in a single-spring setup")
            {
                Required = true,
            },
        ]), "from the coil nut down") { Required = true },
        new("preload", Quantity(Dimension.Length, ValueRange.Any), "coil-nut travel past first contact; negative where the springs are loose at full droop")
        {
            Default = "0 m", Example = "2 in",
        },
        new("stop_nut", new MapKind(
        [
            Need("gap", Quantity(Dimension.Length, ValueRange.FromZero), "between slider and stop nut", "1.2 in"),
            Need("at", new ChoiceKind(["ride_height", "full_droop"]), "where the gap is measured: ride_height or full_droop", "ride_height"),
        ]), "leave it out for no stop nut") { Condition = "optional" },
        new("damper", new MapKind(ShockKeys.Damper), "force over shaft velocity, both as magnitudes; the last slope is carried on") { Condition = "optional" },
        new("gas", new MapKind(ShockKeys.Gas), "gas behind the rod") { Condition = "optional" },
        new("friction", Quantity(Dimension.Force, ValueRange.FromZero), "friction of shaft and seals") { Default = "0 N", Example = "15 lbf" },
        new("bump_stop", new MapKind(ShockKeys.BumpStop), "the rubber or foam stop") { Condition = "optional" },
        new("bottom_out", new MapKind(ShockKeys.Stop(StopData.DefaultBottomOut, "57000 lbf/in", "0.1 s/m"), DefaultsHold: true), "metal on metal at full bump")
        {
            Condition = "optional", Aside = true,
        },
        new("top_out", new MapKind(ShockKeys.Stop(StopData.DefaultTopOut, "5700 lbf/in", "0.5 s/m"), DefaultsHold: true), "the stop at full droop")
        {
            Condition = "optional", Aside = true,
        },
        new("body", new MapKind(ShockKeys.Body), "lengths of the body, for checks of fit only") { Condition = "optional", Aside = true },
    ];

    private static ImmutableArray<Key> Run() =>
    [
        new("duration", Quantity(Dimension.Time, ValueRange.AboveZero), "left out: until 3 s after the terrain's end, or 6 s for a drop")
        {
            Condition = "optional", Example = "8 s",
        },
        new("sample", Quantity(Dimension.Time, ValueRange.AboveZero), "between rows of the trace")
        {
            Default = Written(new RunSettings().Sample, "s"), Example = "1 ms",
        },
        new("tolerance", Quantity(Dimension.Number, new ValueRange(LeastTolerance, true, MostTolerance)), "relative accuracy of the integration")
        {
            Default = Written(new RunSettings().Tolerance, ""), Example = "1e-6",
        },
    ];
}
