using QuarterCar.Model.Terrain;
using QuarterCar.Reports.Words;
using QuarterCar.Studies.Terrains;

using ScottPlot;

using SkiaSharp;

namespace QuarterCar.Reports.Plots.Ground;

/// <summary>How rough is the ground, wave by wave? Its spectrum between the class limits of ISO 8608, and the fitted line.</summary>
internal static class SpectrumPlot
{
    private const float Left = 76, Right = Sheet.Width - 24, Height = 330;

    private static readonly (double From, double To) Frequencies = (Math.Log10(0.008), Math.Log10(4));

    /// <summary>Draws it; the ground has a class.</summary>
    public static Sheet Draw(TerrainResult result)
    {
        var fit = result.Figures.Fit!.Value;
        var spectrum = result.Spectrum!;
        (double Frequency, double Density)[] bands = [.. RoughnessFit.Bands(spectrum).Where(b => b.Density > 0)];
        var sheet = new Sheet(
            "spectrum",
            $"The ground is as rough as ISO 8608 class {fit.RoadClass}: {TerrainText.Density(fit.Density)}·10⁻⁶ m³ at 0.1 cycles/m",
            "0.1 cycles/m is a wave of 10 m. Thin: as it is; thick: averaged over bands; dotted: limits of the classes.")
        {
            Caption = "Where the thick line leaves its class, the ground is rougher or smoother than its class at that length of wave: a hump is washboard.",
        };
        var heights = LogAxes.Around(bands.Select(b => b.Density), 0.4);
        var panel = sheet.Add(new Panel(new SKRect(Left, sheet.Top + 8, Right, sheet.Top + 8 + Height), Frequencies, heights));
        LogAxes.Fine(panel.Plot.Axes.Bottom, Frequencies);
        LogAxes.Decades(panel.Plot.Axes.Left, heights);
        panel.Plot.Axes.Left.Label.Text = "displacement density, m³";
        panel.Plot.Axes.Bottom.Label.Text = "waves per metre, cycles/m";
        AxisLabels.Style(panel);
        Classes(sheet, panel);
        var raw = Enumerable.Range(0, spectrum.Densities.Length).Select(i => (Frequency: spectrum.Frequency(i), Density: spectrum.Densities[i])).Where(p => p.Density > 0);
        panel.Line(Decimate.Series(Logs(panel, raw)), Palette.Help, 0.8f, opacity: 0.35, obstacle: false);
        panel.Line(Logs(panel, bands), Palette.Ink, 2.2f);
        panel.Line(Slope(panel, fit.Density, RoughnessFit.Lowest, RoughnessFit.Highest), Palette.Setup, 2, LinePattern.Dashed);
        Fitted(sheet, panel, fit);
        sheet.Height = panel.Data.Bottom + 52;
        return sheet;
    }

    // Dotted limits run everywhere: the label stands on a white ground.
    private static void Fitted(Sheet sheet, Panel panel, RoughnessFit fit)
    {
        const double at = 0.03;
        string words = $"fitted, slope −2: class {fit.RoadClass}";
        if (panel.Labels.Near(Slope(panel, fit.Density, at, at)[0], Plots.Text.Size(words, bold: true)) is not { } place) return;
        sheet.Over(canvas =>
        {
            Marks.Band(canvas, SKRect.Inflate(place, 3, 1), SKColors.White);
            Plots.Text.Draw(canvas, words, place, Palette.Setup, bold: true);
        });
    }

    private static void Classes(Sheet sheet, Panel panel)
    {
        double from = Math.Pow(10, Frequencies.From), to = Math.Pow(10, Frequencies.To);
        for (char c = 'A'; c <= 'H'; c++)
        {
            double mean = RandomCourse.Density(c);
            if (c < 'H') panel.Line(Slope(panel, 2 * mean, from, to), Palette.Help, 0.8f, LinePattern.Dotted, obstacle: false);
            foreach (double at in new[] { 0.0095, 3.3 })
            {
                var middle = Slope(panel, mean, at, at)[0];
                var place = SKRect.Create(middle.X - (Plots.Text.Size(c.ToString()).Width / 2), middle.Y - 7, Plots.Text.Size(c.ToString()).Width, Plots.Text.Small + 2);
                if (place.Top < panel.Data.Top || place.Bottom > panel.Data.Bottom) continue;
                panel.Labels.Avoid(place);
                string letter = c.ToString();
                sheet.Over(canvas => Plots.Text.Draw(canvas, letter, place, Palette.Help, bold: true));
            }
        }
    }

    private static List<SKPoint> Slope(Panel panel, double density, double from, double to) =>
        Logs(panel, [(from, density * Math.Pow(RoughnessFit.Reference / from, 2)), (to, density * Math.Pow(RoughnessFit.Reference / to, 2))]);

    private static List<SKPoint> Logs(Panel panel, IEnumerable<(double Frequency, double Density)> points) =>
        panel.Pixels(points.Select(p => (Math.Log10(p.Frequency), Math.Log10(p.Density))));
}
