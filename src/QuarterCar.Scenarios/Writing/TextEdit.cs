using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Keys;
using QuarterCar.Scenarios.Reading;

namespace QuarterCar.Scenarios.Writing;

/// <summary>Writes overrides into the text of a scenario where they belong, so that comments and order stay. Gives up rather than guess.</summary>
public static class TextEdit
{
    /// <summary>The text with overrides (PATH=VALUE) in it; null where one of them has no plain place in the text.</summary>
    public static string? Apply(string text, IEnumerable<string> sets)
    {
        foreach (string set in sets)
        {
            if (One(text, set) is not { } edited) return null;
            text = edited;
        }

        return text;
    }

    private static string? One(string text, string set)
    {
        var problems = new ProblemList();
        string path = Overrides.PathOf(set), value = set[(set.IndexOf('=', StringComparison.Ordinal) + 1)..].Trim();
        if (YamlReader.Read("", text, problems) is not { } root || problems.Count > 0 || KeyPaths.Resolve(ScenarioKeys.Root, path, out _) is not { } known) return null;
        if (value == Overrides.None) return root.Find(known.Steps.AsSpan()) is null ? text : null;
        if (YamlReader.Read("", value, problems, hasLines: false) is not { } node || problems.Count > 0) return null;
        string written = FlowText.Of(node);
        var lines = new TextLines(text);
        if (root.Find(known.Steps.AsSpan()) is { } old) return Replaced(lines, old, written);
        PathStep last = known.Steps[^1];
        return last.Name is { } name && root.Find(known.Steps.AsSpan(0, known.Steps.Length - 1)) is MapNode { Entries.IsEmpty: false } parent ? Added(lines, parent, $"{name}: {written}") : null;
    }

    private static string? Replaced(TextLines lines, DocumentNode old, string written)
    {
        int from = lines.At(old.Place);
        if (from < 0) return null;
        string text = lines.Text;
        if (old is ScalarNode { Quoted: false, Text.Length: > 0 } scalar) return string.CompareOrdinal(text, from, scalar.Text, 0, scalar.Text.Length) == 0 ? Spliced(text, from, from + scalar.Text.Length, written) : null;
        return old is MapNode or ListNode && text[from] is '{' or '[' && Close(text, from) is { } to ? Spliced(text, from, to, written) : null;
    }

    private static string? Added(TextLines lines, MapNode parent, string written)
    {
        int from = lines.At(parent.Place);
        if (from < 0) return null;
        string text = lines.Text;
        if (text[from] == '{') return Spliced(text, from + 1, from + 1, " " + written + ",");
        int first = lines.At(parent.Entries[0].Place), start = first < 0 ? -1 : text.LastIndexOf('\n', Math.Max(first - 1, 0)) + 1;
        return start >= 0 && text[start..first].All(c => c == ' ') ? Spliced(text, start, start, text[start..first] + written + "\n") : null;
    }

    /// <summary>Behind the bracket that closes the one at a place; null where quotes or comments make that uncertain.</summary>
    private static int? Close(string text, int from)
    {
        int depth = 0;
        for (int i = from; i < text.Length; i++)
        {
            if (text[i] is '"' or '\'' or '#') return null;
            if (text[i] is '{' or '[') depth++;
            if (text[i] is '}' or ']' && --depth == 0) return i + 1;
        }

        return null;
    }

    private static string Spliced(string text, int from, int to, string written) => string.Concat(text.AsSpan(0, from), written, text.AsSpan(to));

    /// <summary>Places as the reader counts them, from line and column 1, in a text.</summary>
    private sealed class TextLines(string text)
    {
        private readonly int[] _starts = [0, .. Enumerable.Range(0, text.Length).Where(i => text[i] == '\n').Select(i => i + 1)];

        public string Text => text;

        /// <summary>−1 where the text has no such place.</summary>
        public int At(Place place)
        {
            if (place.Line < 1 || place.Line > _starts.Length || place.Column < 1) return -1;
            int at = _starts[place.Line - 1] + place.Column - 1;
            return at < text.Length ? at : -1;
        }
    }
}
