using System.Collections.Immutable;
using System.Text;

namespace QuarterCar.Scenarios.Keys;

/// <summary>The commented scenario to start from, written from the key table: every key with its line of help, optional ones aside behind a comment sign.</summary>
public static class ScenarioTemplate
{
    private const int _commentColumn = 36;

    private static readonly ImmutableArray<string> _opening =
    [
        "# A scenario: one corner of a vehicle, the ground it drives over, and its speed.",
        "# Every value that measures something carries its unit, like 12 in or 305 mm; lines behind a # are not read.",
        "",
    ];

    /// <summary>The pieces of ground that the template drives over.</summary>
    private static readonly ImmutableArray<string> _course = ["flat: 10 ft", "step: -18 in", "flat: 60 ft"];

    /// <summary>The whole file.</summary>
    public static string Text { get; } = Write();

    private static string Write()
    {
        var text = new StringBuilder();
        foreach (var line in _opening)
        {
            text.Append(line).Append('\n');
        }

        foreach (var key in ScenarioKeys.Root.Keys)
        {
            Key(text, key, "", key.Aside);
        }

        return text.ToString();
    }

    private static void Key(StringBuilder text, Key key, string indent, bool aside)
    {
        switch (key.Kind)
        {
            case ListKind { Item.Kind: OneOfKind pieces }:
                Line(text, $"{indent}{key.Name}:", key.Help, aside);
                Course(text, pieces, indent + "  ");
                break;
            case ListKind { Item.Kind: MapKind item }:
                Line(text, $"{indent}{key.Name}: [{Flow(item.Keys)}]", key.Help, aside);
                break;
            case MapKind map when map.Keys.All(k => k.Aside):
                Line(text, $"{indent}{key.Name}: {Flow(map.Keys)}", key.Help, aside);
                break;
            case MapKind map:
                Line(text, $"{indent}{key.Name}:", key.Help, aside);
                foreach (var below in map.Keys)
                {
                    Key(text, below, indent + "  ", aside || below.Aside);
                }

                break;
            case var _ when key.Example is not null:
                Line(text, $"{indent}{key.Name}: {key.Example}", Help(key), aside);
                break;
            default:
                Line(text, $"{indent}{key.Name}:", Help(key), aside: true);
                break;
        }
    }

    private static void Course(StringBuilder text, OneOfKind pieces, string indent)
    {
        foreach (var piece in _course)
        {
            var help = pieces.Find(piece.Split(':')[0])!.Help;
            Line(text, $"{indent}- {piece}", help, aside: false);
        }

        foreach (var piece in pieces.Keys.Where(k => k.Aside))
        {
            Line(text, $"{indent}- {piece.Name}: {Flow(((MapKind)piece.Kind).Keys)}", piece.Help, aside: true);
        }
    }

    private static string Flow(ImmutableArray<Key> keys) => "{ " + string.Join(", ", keys.Select(k => $"{k.Name}: {k.Example}")) + " }";

    private static string Help(Key key) => key switch
    {
        { Default: { } standard } => $"{key.Help} (left out: {standard})",
        { Condition: { } condition and not "optional" } => $"{key.Help} ({condition})",
        _ => key.Help,
    };

    private static void Line(StringBuilder text, string content, string help, bool aside)
    {
        // The comment sign stands where the key would, so that taking it away leaves the right indentation.
        var start = content.Length - content.TrimStart().Length;
        var line = aside ? $"{content[..start]}# {content[start..]}" : content;
        text.Append(line.PadRight(_commentColumn)).Append("  # ").Append(help).Append('\n');
    }
}
