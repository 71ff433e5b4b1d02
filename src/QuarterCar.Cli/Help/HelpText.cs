using System.Collections.Immutable;

namespace QuarterCar.Cli.Help;

/// <summary>Text of a help page: 80 columns, headings at the margin, the rest set in.</summary>
internal sealed class HelpText(TextWriter writer)
{
    /// <summary>Columns of a line; only command lines, which are there to be copied whole, may be longer.</summary>
    public const int Width = 80;

    private const int Indent = 2;

    private bool _begun;

    /// <summary>A heading, an empty line above it.</summary>
    public HelpText Heading(string words)
    {
        Gap();
        writer.WriteLine(words + ":");
        return this;
    }

    /// <summary>An empty line, except at the start of the page.</summary>
    public HelpText Gap()
    {
        if (_begun) writer.WriteLine();
        _begun = true;
        return this;
    }

    /// <summary>A paragraph.</summary>
    public HelpText Paragraph(string words, int indent = Indent)
    {
        _begun = true;
        foreach (string line in Wrapped(words, Width - indent)) writer.WriteLine(new string(' ', indent) + line);
        return this;
    }

    /// <summary>Paragraphs, an empty line between them.</summary>
    public HelpText Paragraphs(ImmutableArray<string> words)
    {
        for (int i = 0; i < words.Length; i++) (i == 0 ? this : Gap()).Paragraph(words[i]);
        return this;
    }

    /// <summary>A line as it is.</summary>
    public HelpText Line(string words)
    {
        writer.WriteLine(new string(' ', Indent) + words);
        return this;
    }

    /// <summary>A list with the names on lines of their own and the words below them.</summary>
    public HelpText Below(IEnumerable<HelpEntry> entries)
    {
        foreach (HelpEntry entry in entries) Line(entry.Name).Paragraph(entry.Words, 3 * Indent);
        return this;
    }

    /// <summary>A list with the words beside the names.</summary>
    public HelpText Beside(ImmutableArray<HelpEntry> entries)
    {
        int column = entries.Max(e => e.Name.Length) + 2;
        foreach (HelpEntry entry in entries)
        {
            string name = entry.Name;
            foreach (string line in Wrapped(entry.Words, Width - Indent - column))
            {
                Line(name.PadRight(column) + line);
                name = "";
            }
        }

        return this;
    }

    private static IEnumerable<string> Wrapped(string words, int width)
    {
        string line = "";
        foreach (string word in Words(words))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > width)
            {
                yield return line;
                line = "";
            }

            line = line.Length == 0 ? word : line + " " + word;
        }

        if (line.Length > 0) yield return line;
    }

    // A quoted value with a unit, PATH='1.6 in', stays on one line.
    private static IEnumerable<string> Words(string text)
    {
        string held = "";
        foreach (string part in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            held = held.Length == 0 ? part : held + " " + part;
            int quote = held.IndexOf("='", StringComparison.Ordinal);
            if (quote >= 0 && held.IndexOf('\'', quote + 2) < 0) continue;
            yield return held;
            held = "";
        }

        if (held.Length > 0) yield return held;
    }
}
