using System.Globalization;
using System.Text;

using QuarterCar.Reports.Html;

namespace QuarterCar.Reports.SetupSheet;

/// <summary>Draws plain SVG in millimetres on paper, x to the right and y down. Classes, not colours: the sheet's style says how they look.</summary>
internal sealed class Pen
{
    private readonly StringBuilder _svg = new();

    /// <summary>A line.</summary>
    public void Line(double x1, double y1, double x2, double y2, string css) =>
        _svg.Append(CultureInfo.InvariantCulture, $"<line class=\"{css}\" x1=\"{N(x1)}\" y1=\"{N(y1)}\" x2=\"{N(x2)}\" y2=\"{N(y2)}\"/>\n");

    /// <summary>A rectangle between two heights, centred on x.</summary>
    public void Box(double centre, double width, double top, double bottom, string css) =>
        _svg.Append(CultureInfo.InvariantCulture, $"<rect class=\"{css}\" x=\"{N(centre - width / 2)}\" y=\"{N(top)}\" width=\"{N(width)}\" height=\"{N(Math.Max(0, bottom - top))}\"/>\n");

    /// <summary>A circle.</summary>
    public void Circle(double x, double y, double radius, string css) =>
        _svg.Append(CultureInfo.InvariantCulture, $"<circle class=\"{css}\" cx=\"{N(x)}\" cy=\"{N(y)}\" r=\"{N(radius)}\"/>\n");

    /// <summary>An arrow head with its tip at a point.</summary>
    /// <param name="x">Tip.</param>
    /// <param name="y">Tip.</param>
    /// <param name="down">True where it points down the page.</param>
    public void Head(double x, double y, bool down)
    {
        double back = down ? y - 1.9 : y + 1.9;
        _svg.Append(CultureInfo.InvariantCulture, $"<path class=\"head\" d=\"M{N(x)} {N(y)}L{N(x - 0.65)} {N(back)}L{N(x + 0.65)} {N(back)}Z\"/>\n");
    }

    /// <summary>Text on a baseline.</summary>
    /// <param name="x">Where it is anchored.</param>
    /// <param name="y">Baseline.</param>
    /// <param name="anchor">start, middle or end.</param>
    /// <param name="text">The words.</param>
    /// <param name="css">Class.</param>
    public void Text(double x, double y, string anchor, string text, string css = "") =>
        _svg.Append(CultureInfo.InvariantCulture, $"<text class=\"{css}\" x=\"{N(x)}\" y=\"{N(y)}\" text-anchor=\"{anchor}\">{HtmlText.Encode(text)}</text>\n");

    /// <summary>The drawing.</summary>
    /// <param name="width">mm.</param>
    /// <param name="height">mm.</param>
    /// <param name="title">Read aloud in its place.</param>
    public string Svg(double width, double height, string title) =>
        $"<svg role=\"img\" aria-label=\"{HtmlText.Encode(title)}\" viewBox=\"0 0 {N(width)} {N(height)}\" style=\"width:{N(width)}mm;height:{N(height)}mm\">\n{_svg}</svg>";

    private static string N(double value) => (Math.Round(value, 2) + 0.0).ToString("0.##", CultureInfo.InvariantCulture);
}
