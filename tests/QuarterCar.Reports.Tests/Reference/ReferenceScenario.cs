using System.Collections.Immutable;
using System.Globalization;

using QuarterCar.Model;
using QuarterCar.Model.Terrain;
using QuarterCar.Scenarios;

using YamlDotNet.Serialization;

namespace QuarterCar.Reports.Tests.Reference;

/// <summary>A reference scenario as the writers see it. Not the program's reader: only what these files contain.</summary>
internal static class ReferenceScenario
{
    public static Scenario Read(string name)
    {
        string text = File.ReadAllText(ReferenceData.File(name + ".yaml"));
        var root = new Node(new DeserializerBuilder().Build().Deserialize<object>(text));
        var run = root.Find("run");
        var limits = root.Find("limits")?.Pairs().Select(p => new Limit(FullName(p.Key), p.Value.Si())).ToImmutableArray() ?? [];
        return new(
            root["title"].Text(),
            name + ".yaml",
            Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(text))),
            text.Contains("lbf", StringComparison.Ordinal) ? UnitSystem.Us : UnitSystem.Si,
            Corner(root),
            root.Find("drop") is { } drop ? new Drop(drop["height"].Si()) : new Course(Terrain(root["terrain"]), root["speed"].Si()),
            new RunSettings(run?.Find("duration")?.Si(), run?.Find("sample")?.Si() ?? 1e-3),
            limits,
            [],
            [],
            []);
    }

    private static string FullName(string name) => name == "up_travel_used" ? "travel.up_travel_used" : "counts." + name;

    private static CornerData Corner(Node root)
    {
        var corner = root["corner"];
        var tyre = root["tyre"];
        var ratio = corner["motion_ratio"];
        return new(
            corner["sprung_weight"].Si(),
            null,
            corner["unsprung_weight"].Si(),
            ratio.IsList ? ratio.Table() : [new TablePoint(0, ratio.Si())],
            new TyreData(tyre["rate"].Si(), tyre.Find("damping")?.Si() ?? 0, tyre.Find("radius")?.Si(), Footprint: tyre.Find("footprint")?.Si()),
            Coilover(root["coilover"]));
    }

    private static CoiloverData Coilover(Node c)
    {
        var springs = c["springs"];
        return new(
            c["stroke"].Si(),
            new SpringSetData(Spring(springs.Find("tender")), Spring(springs.Find("upper")), Spring(springs["lower"])!),
            c.Find("preload")?.Si() ?? 0,
            c.Find("stop_nut") is { } nut
                ? new StopNutData(nut["gap"].Si(), nut["at"].Text() == "ride_height" ? StopNutReference.RideHeight : StopNutReference.FullDroop) : null,
            c.Find("damper") is { } d ? new DamperData(d["compression"].Table(), d["rebound"].Table(), Zones(d.Find("zones"))) : null,
            c.Find("gas") is { } g
                ? new GasData(g["pressure"].Si(), g["rod_diameter"].Si(), g["volume"].Si(), g.Find("exponent")?.Si() ?? 1.4) : null,
            c.Find("friction")?.Si() ?? 0,
            c.Find("bump_stop") is { } b
                ? new BumpStopData(b["on"].Text() == "axle", b["length"].Si(), b["force"].Table(), b.Find("loss")?.Si() ?? BumpStopData.DefaultLoss) : null,
            StopData.DefaultBottomOut,
            StopData.DefaultTopOut,
            null);
    }

    private static SpringData? Spring(Node? s) =>
        s is null ? null : new SpringData(s["rate"].Si(), s["free_length"].Si(), s["solid_length"].Si());

    private static ImmutableArray<DamperZone> Zones(Node? zones) =>
        zones is null ? [] : [.. zones.Items().Select(z => new DamperZone(z["from"].Si(), z["to"].Si(), z["compression"].Si(), z["rebound"].Si()))];

    private static ImmutableArray<TerrainPiece> Terrain(Node list) => [.. list.Items().Select(Piece)];

    private static TerrainPiece Piece(Node piece)
    {
        var (kind, value) = piece.Pairs().Single();
        return kind switch
        {
            "flat" => new FlatPiece(value.Si()),
            "step" => new StepPiece(value.Si()),
            "ramp" => new RampPiece(value["rise"].Si(), value["length"].Si()),
            "bump" => new HaversinePiece(value["height"].Si(), value["length"].Si(), 1),
            "whoops" => new HaversinePiece(value["height"].Si(), value["spacing"].Si(), (int)value["count"].Si()),
            "random" => new RandomPiece(value["iso8608"].Text()[0], value["length"].Si(), (ulong)value["seed"].Si()),
            _ => throw new NotSupportedException(kind),
        };
    }

    /// <summary>One node of the file.</summary>
    private sealed class Node(object value)
    {
        public bool IsList => value is List<object>;

        public Node this[string key] => Find(key) ?? throw new KeyNotFoundException(key);

        public Node? Find(string key) => value is Dictionary<object, object> map && map.TryGetValue(key, out object? found) ? new Node(found) : null;

        public string Text() => Convert.ToString(value, CultureInfo.InvariantCulture)!;

        public double Si() => Quantity.Read(Text());

        public IEnumerable<Node> Items() => ((List<object>)value).Select(v => new Node(v));

        public IEnumerable<KeyValuePair<string, Node>> Pairs() =>
            ((Dictionary<object, object>)value).Select(p => KeyValuePair.Create((string)p.Key, new Node(p.Value)));

        public ImmutableArray<TablePoint> Table() =>
            [.. Items().Select(row => row.Items().ToList()).Select(row => new TablePoint(row[0].Si(), row[1].Si()))];
    }
}
