using System.Collections.Immutable;
using System.Globalization;

using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Keys;
using QuarterCar.Scenarios.Quantities;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Web.State;

namespace QuarterCar.Web.Form;

/// <summary>The form of a setup, from the key table and the document: which parts there are, each field with its value as shown.</summary>
/// <param name="root">The document with its changes.</param>
/// <param name="units">Units of the page.</param>
internal sealed class FieldList(DocumentNode root, UnitSystem units)
{
    /// <summary>The groups, as the corner is built.</summary>
    public ImmutableArray<FieldGroup> Groups() =>
    [
        new("load", "Load", [Block("", ["corner"])]),
        new("springs", "Springs and nuts",
        [
            Block("Nuts", ["coilover.preload"]), Part("Stop nut", "coilover.stop_nut"),
            Part("Tender", "coilover.springs.tender"), Part("Upper spring", "coilover.springs.upper"), Block("Lower spring", ["coilover.springs.lower"]),
            Block("Shock", ["coilover.stroke", "coilover.body"]),
        ]),
        new("damper", "Damper", [Part("Damper", "coilover.damper"), .. Zones(), Block("Friction", ["coilover.friction"])]),
        new("bump", "Bump stop", [Part("Bump stop", "coilover.bump_stop"), Block("Metal", ["coilover.bottom_out", "coilover.top_out"])]),
        new("gas", "Gas", [Part("Gas", "coilover.gas")]),
        new("tyre", "Tyre", [Block("", ["tyre"])]),
        new("ground", "Ground and speed", [.. Ground(), Block("Run", ["run"])]),
    ];

    private FieldBlock Block(string title, ImmutableArray<string> paths) => new(title, [.. paths.SelectMany(Fields)], []);

    /// <summary>A part with its buttons.</summary>
    private FieldBlock Part(string title, string path)
    {
        if (Find(path) is not null) return new(title, [.. Fields(path)], [new("Take out", path, "none")]);
        KeyKind kind = Kind(path)!;
        return new(title, [], [new("Put in", path, Example(kind))]);
    }

    private IEnumerable<FieldBlock> Zones()
    {
        if (Find("coilover.damper.zones") is not ListNode zones) yield break;
        for (int i = 0; i < zones.Items.Length; i++)
            yield return new(string.Create(CultureInfo.InvariantCulture, $"Zone {i + 1}"), [.. Fields(string.Create(CultureInfo.InvariantCulture, $"coilover.damper.zones[{i}]"))], []);
    }

    private IEnumerable<FieldBlock> Ground()
    {
        if (Find("terrain") is not ListNode terrain)
        {
            yield return new("Drop test", [.. Fields("drop")], [new("Drive over ground instead", Turn.Excitation, "course")]);
            yield break;
        }

        yield return new("Driven over ground", [.. Fields("speed")], [new("Drop test instead", Turn.Excitation, "drop")]);
        for (int i = 0; i < terrain.Items.Length; i++)
        {
            string path = string.Create(CultureInfo.InvariantCulture, $"terrain[{i}]");
            PartButton[] remove = terrain.Items.Length > 1 ? [new("Take out", path, "none")] : [];
            yield return new(string.Create(CultureInfo.InvariantCulture, $"{i + 1}. {PieceName(terrain.Items[i])}"), [.. Fields(path)], [.. remove]);
        }

        yield return new("Add at the end", [], [.. TerrainKeys.Pieces.Where(p => p.Name != "profile").Select(p => new PartButton(FieldWords.Last(p.Name), "terrain[+]", $"{{{p.Name}: {p.Example ?? Example(p.Kind)}}}"))]);
    }

    private static string PieceName(DocumentNode piece) => piece is MapNode { Entries: [var only] } ? FieldWords.Last(only.Name) : "Piece";

    /// <summary>The fields at and below a path.</summary>
    private IEnumerable<Field> Fields(string path) => Kind(path) switch
    {
        MapKind map => Below(path, map.Keys),
        OneOfKind one => Below(path, [.. one.Keys.Where(k => Find(path + "." + k.Name) is not null)]),
        { } kind when !path.Contains('[', StringComparison.Ordinal) && Key(path) is { } key => [Field(path, key, kind)],
        _ => [],
    };

    private IEnumerable<Field> Below(string path, ImmutableArray<Key> keys)
    {
        foreach (Key key in keys)
        {
            string at = path + "." + key.Name;
            switch (key.Kind)
            {
                case MapKind map:
                    foreach (Field field in Below(at, map.Keys)) yield return field with { Label = Pieces(path) ? field.Label : FieldWords.Last(at) + ", " + field.Label.ToLowerInvariant() };
                    break;
                case ListKind or OpenMapKind or OneOfKind:
                    break;
                default:
                    if (at == "corner.spring_load" && Find(at) is null) break;
                    if (at == "corner.sprung_weight" && Find(at) is null && Find("corner.spring_load") is not null) break;
                    yield return Field(at, key, key.Kind);
                    break;
            }
        }
    }

    private static bool Pieces(string path) => path.StartsWith("terrain", StringComparison.Ordinal);

    private Field Field(string path, Key key, KeyKind kind)
    {
        DocumentNode? node = Find(path);
        string shown = node is null or ScalarNode { IsNothing: true } ? "" : ShownUnits.Shown(node, units);
        string label = path.StartsWith("terrain", StringComparison.Ordinal) && key.Kind is QuantityKind && path.Count(c => c == '.') == 1 && path.EndsWith("step", StringComparison.Ordinal) ? "Height" : FieldWords.Of(path);
        if (path.StartsWith("terrain", StringComparison.Ordinal) && path.EndsWith(".flat", StringComparison.Ordinal)) label = "Length";
        string ghost = key.Default is { } standard ? ShownUnits.Shown(standard, units) : "";
        return new(path, label, Help(key) + StepWords(path, kind, node), kind, shown, ghost, node is null && !key.Required && path is not ("coilover.preload" or "coilover.friction"));
    }

    // What an arrow key does, in the words of a hand.
    private string StepWords(string path, KeyKind kind, DocumentNode? node)
    {
        if (path.StartsWith("coilover.springs.", StringComparison.Ordinal) && path.EndsWith(".rate", StringComparison.Ordinal)) return "; \u2191 \u2193 the next spring of the invented list";
        if (kind is TableKind { OrPlainValue: false }) return "; \u2191 \u2193 5 % more or less";
        if (SideBlocks.KindOfNumber(kind, node) is not { } number) return "";
        double step = StepSizes.Of(path, number.Dimension, units, StepSizes.Pitch(root));
        string size = number.Dimension is Dimension.Number or Dimension.Share ? ShownUnits.In(step, "") : Difference(step, number.Dimension, path);
        return path == "coilover.preload" ? $"; \u2191 \u2193 one turn, {size}" : $"; \u2191 \u2193 {size}";
    }

    private string Difference(double step, Dimension dimension, string path)
    {
        string unit = dimension == Dimension.Length && step >= ExactUnits.Foot - 1e-9 ? (units == UnitSystem.Us ? "ft" : "m") : dimension == Dimension.Speed ? (units == UnitSystem.Us ? "mph" : "km/h") : ShownUnits.Of(dimension, units);
        return Measured.Write(ShownUnits.Rounded(step / (UnitTable.Find(unit)?.Size ?? 1)), unit) + (path == "coilover.preload" && StepSizes.PitchGiven(root) is null ? " (a usual pitch)" : "");
    }

    private static string Help(Key key) => key.Default is null && key.Condition is { } condition and not "optional" ? $"{key.Help} ({condition})" : key.Help;

    private DocumentNode? Find(string path) => DocumentPath.TryParse(path, out DocumentPath p) ? root.Find(p.Steps.AsSpan()) : null;

    private static KeyKind? Kind(string path) => KeyPaths.Resolve(ScenarioKeys.Root, path, out _)?.Kind;

    private static Key? Key(string path)
    {
        MapKind? map = ScenarioKeys.Root;
        string[] names = path.Split('.');
        for (int i = 0; i < names.Length - 1; i++) map = map?.Find(names[i])?.Kind as MapKind;
        return map?.Find(names[^1]);
    }

    /// <summary>What a part is put in with: its required keys, as the template has them.</summary>
    private static string Example(KeyKind kind) => kind switch
    {
        MapKind map => "{" + string.Join(", ", map.Keys.Where(k => k.Required || (k.Example is not null && !k.Aside)).Select(k => $"{k.Name}: {k.Example ?? Example(k.Kind)}")) + "}",
        _ => "",
    };
}
