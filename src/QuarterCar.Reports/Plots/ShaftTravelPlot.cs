using QuarterCar.Reports.Units;
using QuarterCar.Reports.Words;

using SkiaSharp;

namespace QuarterCar.Reports.Plots;

/// <summary>How much of the stroke does it use, and where on the ground? Shaft showing over distance, the ground below on the same axis.</summary>
internal static class ShaftTravelPlot
{
    private const float Left = 66, Right = Sheet.Width - 168;

    /// <summary>Draws it.</summary>
    public static Sheet Draw(RunSamples samples)
    {
        var run = samples.Run;
        var zones = StrokeZones.Of(run.Standing);
        string note = "Shaft showing; full bump is at the bottom." + samples.CropNote;
        var sheet = new Sheet("shaft_travel", Verdict.Travel(run), note)
        {
            Caption = "Each darker band is a later part of the coilover at work; the ground below stands at the same distance.",
        };
        double perSi = samples.Read.Unit(Dimension.Length).PerSi, stroke = run.Scenario.Corner.Coilover.Stroke;
        double low = Math.Min(0, samples.Shown.Min(s => s.ShaftShowing)), high = Math.Max(stroke, samples.Shown.Max(s => s.ShaftShowing));
        var panel = sheet.Add(new Panel(
            new SKRect(Left, sheet.Top + 6, Right, sheet.Top + 336),
            samples.PlaceRange,
            ((low - (0.055 * stroke)) * perSi, (high + (0.055 * stroke)) * perSi)));
        panel.Plot.Axes.Left.Label.Text = "shaft showing, " + samples.Read.Unit(Dimension.Length).Name;
        AxisLabels.Style(panel);
        ZoneBands.Upright(sheet, panel, zones, samples.Read);
        panel.Line(Decimate.Series(panel.Pixels(samples.Shown.Select(s => (samples.Place(s), s.ShaftShowing * perSi)))), Palette.Setup, 2);
        Deepest(sheet, panel, samples, perSi);
        Marks.Events(sheet, panel, run.Events.Where(e => !SolidSprings.IsCoilBind(run, e)).Select(e =>
            (e.Event, new SKPoint(panel.X(samples.Place(e.Time, e.Distance)), panel.Y((stroke - e.ShaftTravel) * perSi)))));
        ZoneBands.Names(sheet, panel, zones, samples.Read);
        Below(sheet, panel, samples);
        return sheet;
    }

    private static void Deepest(Sheet sheet, Panel panel, RunSamples samples, double perSi)
    {
        var deepest = samples.Shown.MinBy(s => s.ShaftShowing);
        double showing = samples.Run.Scenario.Corner.Coilover.Stroke - samples.Run.Figures.Travel.MaxShaftTravel;
        var at = new SKPoint(panel.X(samples.Place(deepest)), panel.Y(showing * perSi));
        Marks.Label(sheet, panel, at, showing < 0 ? $"deepest, {samples.Read.Text(Dimension.Length, -showing)} past full bump" : $"deepest, {samples.Read.Text(Dimension.Length, showing)} showing", bold: true);
    }

    private static void Below(Sheet sheet, Panel above, RunSamples samples)
    {
        if (!samples.OverDistance)
        {
            above.Plot.Axes.Bottom.Label.Text = samples.PlaceLabel;
            AxisLabels.Style(above);
            sheet.Height = above.Data.Bottom + 52;
            return;
        }

        Panel.Ticks(above.Plot.Axes.Bottom, _ => "");
        var ground = GroundPanel.Add(sheet, samples, above.Data.Bottom + 22, Left, Right);
        sheet.Height = ground.Data.Bottom + 52;
    }
}
