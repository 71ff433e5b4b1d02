using System.Globalization;

using QuarterCar.Reports.Units;
using QuarterCar.Reports.Words;
using QuarterCar.Studies.Terrains;

using ScottPlot;

using SkiaSharp;

namespace QuarterCar.Reports.Plots.Ground;

/// <summary>What does the ground look like? Ground, and the tyre's road where a tyre is known, over distance; to scale where that is readable, else the factor is named.</summary>
internal static class TerrainPlot
{
    private const float Left = 76, Right = Sheet.Width - 24, Least = 110, Most = 300, Stretched = 200;

    /// <summary>Draws it.</summary>
    public static Sheet Draw(TerrainResult result)
    {
        var read = new Readable(result.Units);
        TerrainRow[] rows = [.. result.Rows()];
        double heights = read.Unit(Dimension.Length).PerSi, distances = read.Unit(Dimension.Distance).PerSi;
        double low = rows.Min(r => double.IsNaN(r.Road) ? r.Ground : Math.Min(r.Ground, r.Road)), high = rows.Max(r => double.IsNaN(r.Road) ? r.Ground : Math.Max(r.Ground, r.Road));
        double length = Math.Max(result.Figures.Length, 1e-3), rise = Math.Max(1.3 * (high - low), 1e-3 * length), across = length / (Right - Left);
        float height = (float)Math.Clamp(rise / across, Least, Most);
        if (rise / across < Least) height = Stretched; // a smooth ground to scale would be a line: its heights are stretched
        double factor = height * across / rise;
        string scale = Math.Abs(factor - 1) < 0.02 ? "To scale." : factor > 1
            ? $"Heights are stretched {factor.ToString(factor < 10 ? "0.#" : "0", CultureInfo.InvariantCulture)} times."
            : $"Heights are pressed to {factor.ToString("0.##", CultureInfo.InvariantCulture)}.";
        bool apart = rows.Any(r => Math.Abs(r.Road - r.Ground) > 2 * rise / height); // px: apart for the eye
        string lines = result.Road is null ? "The ground. " : apart ? "Solid: ground. Dashed: the road that the tyre feels. " : "The ground; the road that the tyre feels lies on it here. ";
        var sheet = new Sheet("terrain", TerrainText.Verdict(result, read).TrimEnd('.'), lines + scale)
        {
            Caption = "The ground over distance, as the file or the scenario lays it.",
        };
        double middle = (low + high) / 2;
        var panel = sheet.Add(new Panel(
            new SKRect(Left, sheet.Top + 8, Right, sheet.Top + 8 + height), (0, length * distances), ((middle - (rise / 2)) * heights, (middle + (rise / 2)) * heights)));
        panel.Plot.Axes.Left.Label.Text = "height, " + read.Unit(Dimension.Length).Name;
        panel.Plot.Axes.Bottom.Label.Text = "distance, " + read.Unit(Dimension.Distance).Name;
        AxisLabels.Style(panel);
        Lines(sheet, panel, rows, apart, read);
        sheet.Height = panel.Data.Bottom + 52;
        return sheet;
    }

    private static void Lines(Sheet sheet, Panel panel, TerrainRow[] rows, bool road, Readable read)
    {
        double heights = read.Unit(Dimension.Length).PerSi, distances = read.Unit(Dimension.Distance).PerSi;
        List<SKPoint> Series(Func<TerrainRow, double> height) => Decimate.Series(panel.Pixels(rows.Select(r => (r.Distance * distances, height(r) * heights))));
        panel.Line(Series(r => r.Ground), Palette.Ink, 1.5f);
        if (road) panel.Line(Series(r => r.Road), Palette.Setup, 1.5f, LinePattern.Dashed);
        foreach (var row in new[] { rows.MaxBy(r => r.Ground), rows.MinBy(r => r.Ground) })
        {
            if (row.Ground != 0) Marks.Label(sheet, panel, new(panel.X(row.Distance * distances), panel.Y(row.Ground * heights)), read.Text(Dimension.Length, row.Ground));
        }
    }
}
