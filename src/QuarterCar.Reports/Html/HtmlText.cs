using System.Net;
using System.Text;

using QuarterCar.Reports.Words;

namespace QuarterCar.Reports.Html;

/// <summary>Writes HTML piece by piece; every text goes through <see cref="Encode"/>.</summary>
internal sealed class HtmlText
{
    private readonly StringBuilder _text = new();

    /// <summary>Text from a scenario, made safe.</summary>
    public static string Encode(string text) => WebUtility.HtmlEncode(text);

    /// <summary>Markup as it stands.</summary>
    public HtmlText Raw(string markup)
    {
        _text.Append(markup).Append('\n');
        return this;
    }

    /// <summary>An element with text in it.</summary>
    public HtmlText Element(string name, string text, string? css = null)
    {
        string attributes = css is null ? "" : $" class=\"{css}\"";
        return Raw($"<{name}{attributes}>{Encode(text)}</{name}>");
    }

    /// <summary>A list.</summary>
    public HtmlText List(IEnumerable<string> items)
    {
        Raw("<ul>");
        foreach (string item in items) Element("li", item);
        return Raw("</ul>");
    }

    /// <summary>A list of terms and what they are; what is empty is left out.</summary>
    public HtmlText Facts(IEnumerable<(string Term, string Fact)> facts)
    {
        Raw("<dl>");
        foreach (var (term, fact) in facts.Where(f => f.Fact.Length > 0)) Raw($"<dt>{Encode(term)}</dt><dd>{Encode(fact)}</dd>");
        return Raw("</dl>");
    }

    /// <summary>A table with a heading row; cells of columns marked as numbers are aligned at their decimal point.</summary>
    public HtmlText Table(string caption, IReadOnlyList<(string Head, bool Number)> columns, IReadOnlyList<string[]> rows)
    {
        var cells = rows.Select(r => (string[])r.Clone()).ToList();
        for (int c = 0; c < columns.Count; c++)
        {
            if (!columns[c].Number) continue;
            string[] aligned = Align.AtPoint([.. rows.Select(r => r[c])], '\u2007', '\u2008');
            for (int r = 0; r < aligned.Length; r++) cells[r][c] = aligned[r];
        }

        Raw($"<div class=\"wide\"><table><caption>{Encode(caption)}</caption><thead><tr>");
        foreach (var (head, number) in columns) Raw($"<th scope=\"col\"{(number ? " class=\"n\"" : "")}>{Encode(head)}</th>");
        Raw("</tr></thead><tbody>");
        foreach (string[] row in cells)
        {
            var line = new StringBuilder("<tr>");
            for (int c = 0; c < columns.Count; c++)
            {
                string cell = Encode(row[c]);
                line.Append(c == 0 ? $"<th scope=\"row\">{cell}</th>" : columns[c].Number ? $"<td class=\"n\">{cell}</td>" : $"<td>{cell}</td>");
            }

            Raw(line.Append("</tr>").ToString());
        }

        return Raw("</tbody></table></div>");
    }

    /// <summary>The whole.</summary>
    public override string ToString() => _text.ToString();
}
