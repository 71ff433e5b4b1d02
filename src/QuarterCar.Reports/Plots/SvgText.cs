using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;

namespace QuarterCar.Reports.Plots;

/// <summary>
/// Makes drawn SVG fit for any page. Text stays text, so that it can be searched, copied and read aloud; it names a list of typefaces and the length
/// that it has in ours, so that it looks the same where ours is not installed. Outlines instead would double the file and be silent to a screen reader.
/// </summary>
internal static partial class SvgText
{
    private const string Faces = "Inter, 'DejaVu Sans', 'Segoe UI', 'Helvetica Neue', Arial, sans-serif";

    /// <summary>Mends one picture.</summary>
    /// <param name="svg">As drawn.</param>
    /// <param name="name">Sets its ids apart from those of other pictures on one page.</param>
    /// <param name="title">Read aloud in its place.</param>
    /// <param name="height">px.</param>
    public static string Mend(string svg, string name, string title, string height)
    {
        string body = svg[(svg.IndexOf('>', svg.IndexOf("<svg", StringComparison.Ordinal)) + 1)..];
        var ids = new Dictionary<string, string>(StringComparer.Ordinal); // drawn ids count on over all pictures of the process; ours begin anew
        body = Ids().Replace(body, m =>
        {
            if (!ids.TryGetValue(m.Groups[2].Value, out string? id)) ids[m.Groups[2].Value] = id = name + "-" + (ids.Count + 1).ToString(CultureInfo.InvariantCulture);
            return m.Groups[1].Value + id;
        });
        body = TextElement().Replace(body, OneText);
        string head = $"<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" viewBox=\"0 0 {Sheet.Width} {height}\" "
            + $"width=\"{Sheet.Width}\" height=\"{height}\" role=\"img\" aria-label=\"{WebUtility.HtmlEncode(title)}\">\n";
        return head + body.TrimStart();
    }

    [GeneratedRegex("(\\bid=\"|url\\(#|href=\"#)([^\")]+)", RegexOptions.CultureInvariant)]
    private static partial Regex Ids();

    [GeneratedRegex("<text([^>]*)>([^<]*)</text>", RegexOptions.CultureInvariant | RegexOptions.Singleline)]
    private static partial Regex TextElement();

    [GeneratedRegex("\\b(x|y)=\"([^\"]*)\"", RegexOptions.CultureInvariant)]
    private static partial Regex Place();

    [GeneratedRegex("font-size=\"([^\"]*)\"", RegexOptions.CultureInvariant)]
    private static partial Regex Size();

    [GeneratedRegex("font-weight=\"[^\"]*\"", RegexOptions.CultureInvariant)]
    private static partial Regex Weight();

    [GeneratedRegex("font-family=\"[^\"]*\"", RegexOptions.CultureInvariant)]
    private static partial Regex Family();

    private static string OneText(Match match)
    {
        string attributes = Family().Replace(match.Groups[1].Value, $"font-family=\"{Faces}\"");
        attributes = Weight().Replace(attributes, "font-weight=\"600\"");
        string content = WebUtility.HtmlDecode(match.Groups[2].Value.Trim('\n', '\r', '\t'));
        attributes = Place().Replace(attributes, m => $"{m.Groups[1].Value}=\"{m.Groups[2].Value.Split(',')[0].Trim()}\"");
        float size = float.Parse(Size().Match(attributes).Groups[1].Value, CultureInfo.InvariantCulture);
        bool bold = attributes.Contains("font-weight", StringComparison.Ordinal);
        using var font = new SkiaSharp.SKFont(bold ? PlotFont.Bold : PlotFont.Regular, size);
        string length = font.MeasureText(content).ToString("0.##", CultureInfo.InvariantCulture);
        string fit = content.Length > 1 ? $" textLength=\"{length}\" lengthAdjust=\"spacingAndGlyphs\"" : "";
        return $"<text{attributes}{fit}>{WebUtility.HtmlEncode(content)}</text>";
    }
}
