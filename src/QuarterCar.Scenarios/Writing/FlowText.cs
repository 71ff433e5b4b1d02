using System.Buffers;
using System.Text;

using QuarterCar.Scenarios.Documents;

namespace QuarterCar.Scenarios.Writing;

/// <summary>A node of a document as text that reads back as the same node: flow style on one line, or a whole file in block style.</summary>
public static class FlowText
{
    private static readonly SearchValues<char> s_special = SearchValues.Create(",[]{}#&!|>'\"%@`:");

    /// <summary>On one line.</summary>
    public static string Of(DocumentNode node) => node switch
    {
        ScalarNode s => Scalar(s),
        ListNode l => "[" + string.Join(", ", l.Items.Select(Of)) + "]",
        MapNode { Entries.IsEmpty: true } => "{}",
        MapNode m => "{ " + string.Join(", ", m.Entries.Select(e => $"{Word(e.Name)}: {Of(e.Value)}")) + " }",
        _ => "",
    };

    /// <summary>A whole file: maps in block style as deep as they hold maps, the rest on one line each.</summary>
    public static string File(DocumentNode root)
    {
        var text = new StringBuilder();
        if (root is MapNode map) Block(text, map, "");
        return text.ToString();
    }

    private static void Block(StringBuilder text, MapNode map, string indent)
    {
        foreach (MapEntry entry in map.Entries)
        {
            text.Append(indent).Append(Word(entry.Name)).Append(':');
            switch (entry.Value)
            {
                case MapNode { Entries.IsEmpty: false } below when indent.Length == 0 || below.Entries.Any(e => e.Value is not ScalarNode):
                    text.Append('\n');
                    Block(text, below, indent + "  ");
                    break;
                case ListNode list when list.Items.Any(i => i is MapNode):
                    text.Append('\n');
                    foreach (DocumentNode item in list.Items) text.Append(indent).Append("  - ").Append(item is MapNode { Entries: [var only] } ? $"{Word(only.Name)}: {Of(only.Value)}" : Of(item)).Append('\n');
                    break;
                default:
                    text.Append(' ').Append(Of(entry.Value)).Append('\n');
                    break;
            }
        }
    }

    private static string Scalar(ScalarNode scalar) => scalar.Quoted ? Quoted(scalar.Text) : Word(scalar.Text);

    // A star is special at the beginning alone: units have it, and a change in quotes, "+0.5 lbf*s/in", would no longer be one.
    private static string Word(string text) => text.Length > 0 && text.Trim().Length == text.Length && text.AsSpan().IndexOfAny(s_special) < 0 && !text.Any(char.IsControl) && text[0] is not ('-' or '?' or '*') || IsNumber(text)
        ? text
        : Quoted(text);

    // A minus leads a number as well as a list's item; only the latter would be misread.
    private static bool IsNumber(string text) => text.Length > 1 && text[0] == '-' && (char.IsAsciiDigit(text[1]) || text[1] == '.') && text.AsSpan().IndexOfAny(s_special) < 0 && text.TrimEnd().Length == text.Length && !text.Any(char.IsControl);

    private static string Quoted(string text) =>
        "\"" + string.Concat(text.Select(c => c switch { '"' => "\\\"", '\\' => "\\\\", _ when char.IsControl(c) => FormattableString.Invariant($"\\u{(int)c:x4}"), _ => c.ToString() })) + "\"";
}
