using System.Globalization;

using QuarterCar.Reports.Units;

using ScottPlot;

using SkiaSharp;

namespace QuarterCar.Reports.Plots;

/// <summary>The ground, and the road that the tyre feels, below a picture over distance; to scale where that is readable, else the factor is named.</summary>
internal static class GroundPanel
{
    private const float Least = 56, Most = 150;

    /// <summary>Adds it.</summary>
    public static Panel Add(Sheet sheet, RunSamples samples, float top, float left, float right)
    {
        double perSi = samples.Read.Unit(Dimension.Length).PerSi;
        double low = samples.Shown.Min(s => Math.Min(s.Ground, s.Road)), high = samples.Shown.Max(s => Math.Max(s.Ground, s.Road));
        double length = Math.Max(samples.Shown[^1].Distance - samples.Shown[0].Distance, 1e-3);
        double rise = Math.Max(high - low, 1e-3 * length);
        float scaled = (float)((right - left) * 1.3 * rise / length);
        float height = Math.Clamp(scaled, Least + 20, Most);
        double span = scaled < Least + 20 || scaled > Most ? 1.3 * rise : height / (right - left) * length;
        double middle = (low + high) / 2;
        double factor = (height / span) / ((right - left) / length);
        var panel = sheet.Add(new Panel(
            new SKRect(left, top, right, top + height), samples.PlaceRange, ((middle - (span / 2)) * perSi, (middle + (span / 2)) * perSi)));
        panel.Plot.Axes.Left.Label.Text = "height, " + samples.Read.Unit(Dimension.Length).Name;
        panel.Plot.Axes.Bottom.Label.Text = samples.PlaceLabel;
        panel.Plot.Axes.Left.TickGenerator = new ScottPlot.TickGenerators.NumericAutomatic { LabelFormatter = Panel.Number, TickDensity = 0.6 };
        AxisLabels.Style(panel);
        Words(sheet, panel, Lines(panel, samples, perSi), factor);
        return panel;
    }

    /// <summary>True where the tyre's road is a line of its own.</summary>
    private static bool Lines(Panel panel, RunSamples samples, double perSi)
    {
        var ground = Decimate.Series(panel.Pixels(samples.Shown.Select(s => (samples.Place(s), s.Ground * perSi))));
        var road = Decimate.Series(panel.Pixels(samples.Shown.Select(s => (samples.Place(s), s.Road * perSi))));
        var apart = Enumerable.Range(0, samples.Shown.Length).MaxBy(i => Math.Abs(samples.Shown[i].Road - samples.Shown[i].Ground));
        panel.Line(ground, Palette.Ink, 2);
        var at = samples.Shown[apart];
        bool twoLines = Math.Abs(panel.Y(at.Road * perSi) - panel.Y(at.Ground * perSi)) >= 2; // px: apart for the eye
        if (twoLines) panel.Line(road, Palette.Help, 1.5f, LinePattern.Dashed);
        return twoLines;
    }

    private static void Words(Sheet sheet, Panel panel, bool twoLines, double factor)
    {
        string[] scale = Math.Abs(factor - 1) < 0.02 ? ["to scale"]
            : factor > 1 ? ["heights stretched", factor.ToString(factor < 10 ? "0.#" : "0", CultureInfo.InvariantCulture) + " times"]
            : ["heights pressed", "to " + factor.ToString("0.##", CultureInfo.InvariantCulture)];
        string[] lines = twoLines ? ["solid: ground", "dashed: tyre's road", .. scale] : ["ground", .. scale];
        float y = panel.Data.Top + 2;
        foreach (string line in lines)
        {
            var place = SKRect.Create(panel.Data.Right + 18, y, 0, Text.Small + 2);
            sheet.Over(canvas => Text.Draw(canvas, line, place, Palette.Help));
            y += Text.Small + 4;
        }
    }
}
