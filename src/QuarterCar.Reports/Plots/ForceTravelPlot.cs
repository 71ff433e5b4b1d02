using QuarterCar.Model.Statics;
using QuarterCar.Reports.Units;
using QuarterCar.Reports.Words;
using QuarterCar.Studies;

using ScottPlot;

using SkiaSharp;

namespace QuarterCar.Reports.Plots;

/// <summary>Where does the rate change, and how far did we go? Stack, gas and total over shaft showing, the run's own path thin.</summary>
internal static class ForceTravelPlot
{
    private const float Left = 76, Right = Sheet.Width - 24;

    private const double HighestDrawn = 1.5; // of the standing curve: metal would press everything else flat

    /// <summary>Draws it; without a run the standing curves alone.</summary>
    public static Sheet Draw(StandingResult standing, RunSamples? samples)
    {
        var read = new Readable(standing.Scenario.Units);
        double top = Highest(standing);
        string note = samples is null ? "Standing force on the shaft: springs, gas and bump stop. The shaft goes in to the right."
            : "Standing force on the shaft and, thin, the run's own path: what lies above the curve is damping on the way in, below on the way out."
                + (samples.Shown.Max(s => s.ShaftForce) > HighestDrawn * top ? $" It goes on above the picture, to {read.Text(Dimension.Force, samples.Shown.Max(s => s.ShaftForce))}." : "");
        var sheet = new Sheet("force_travel", Title(standing, samples, read), note)
        {
            Caption = "Between kinks the slope is the rate: the steeper, the stiffer.",
        };
        double force = read.Unit(Dimension.Force).PerSi;
        double low = samples is null ? 0 : Math.Min(0, Math.Max(samples.Shown.Min(s => s.ShaftForce), -0.45 * top));
        double high = samples is null ? top : Math.Clamp(samples.Shown.Max(s => s.ShaftForce), top, HighestDrawn * top);
        var panel = TravelAxis.Panel(sheet, standing, read, sheet.Top + 40, 340, Left, Right, ((low - (0.05 * high)) * force, 1.08 * high * force), samples);
        panel.Plot.Axes.Left.Label.Text = "force on the shaft, " + read.Unit(Dimension.Force).Name;
        AxisLabels.Style(panel);
        TravelAxis.Bands(sheet, panel, StrokeZones.Of(standing), read);
        if (samples is not null) Path(panel, samples, read);
        Curves(sheet, panel, standing, read);
        Kinks(sheet, panel, standing, read);
        if (samples is not null) PathWords(sheet, panel, samples, read);
        TravelAxis.Names(sheet, panel, StrokeZones.Of(standing), read, panel.Data.Top + 12, panel.Data.Bottom - 12);
        sheet.Height = panel.Data.Bottom + 52;
        return sheet;
    }

    /// <summary>The highest standing force that is to be seen, N: bound coils would press everything else flat, unless they are all there is.</summary>
    public static double Highest(StandingResult standing) =>
        standing.Curve.Where(r => !IsSolid(r)).Select(r => r.ShaftForce).DefaultIfEmpty(standing.Curve[^1].ShaftForce).Max();

    /// <summary>True where nothing but the bound coils gives way.</summary>
    public static bool IsSolid(CurveRow row) => row.SpringRate > 4e6;

    /// <summary>What the picture says.</summary>
    public static string Title(StandingResult standing, RunSamples? samples, Readable read)
    {
        var stroke = StrokeRates.Of(standing, read);
        string rates = stroke.Crossover is { } c ? $"{stroke.Rate(c.Before)} becomes {stroke.Rate(c.After)} at {read.Text(Dimension.Length, c.Showing)} showing"
            : stroke.IsOne ? $"One rate of {stroke.Rate(stroke.Only)} over the whole stroke"
            : $"{stroke.Rate(stroke.AtRide)} at ride height: {stroke.Chain}";
        if (samples is null) return rates;
        double deepest = standing.Scenario.Corner.Coilover.Stroke - samples.Run.Figures.Travel.MaxShaftTravel;
        return rates + (deepest >= 0 ? $"; the run goes to {read.Text(Dimension.Length, deepest)} showing" : "; the run goes to full bump and into metal");
    }

    private static void Path(Panel panel, RunSamples samples, Readable read)
    {
        double force = read.Unit(Dimension.Force).PerSi;
        var pixels = panel.Pixels(samples.Shown.Select(s => (TravelAxis.X(s.ShaftShowing, read), s.ShaftForce * force)));
        panel.Line(Decimate.Path(pixels), Palette.Setup, 1.2f, opacity: 0.75);
    }

    private static void PathWords(Sheet sheet, Panel panel, RunSamples samples, Readable read)
    {
        var peak = samples.Shown.MaxBy(s => s.ShaftForce);
        float y = panel.Y(peak.ShaftForce * read.Unit(Dimension.Force).PerSi);
        Marks.Label(sheet, panel, new(panel.X(TravelAxis.X(peak.ShaftShowing, read)), Math.Max(y, panel.Data.Top + 4)), "the run (blue)");
    }

    private static void Curves(Sheet sheet, Panel panel, StandingResult standing, Readable read)
    {
        double force = read.Unit(Dimension.Force).PerSi;
        List<SKPoint> Of(Func<CurveRow, double> value) =>
            Decimate.Path(panel.Pixels(standing.Curve.Select(r => (TravelAxis.X(r.ShaftShowing, read), value(r) * force))));
        bool gas = standing.Curve.Any(r => r.GasForce > 0);
        var total = Of(r => r.ShaftForce);
        var stack = Of(r => r.SpringForce);
        bool apart = standing.Curve.Any(r => r.ShaftForce - r.SpringForce > 1);
        panel.Line(total, Palette.Ink, 2);
        if (apart) panel.Line(stack, Palette.Ink, 1.5f, LinePattern.Dashed);
        if (gas) panel.Line(Of(r => r.GasForce), Palette.Ink, 1.5f, LinePattern.Dotted);
        Marks.Label(sheet, panel, total[total.Count / 6], apart ? "total" : "springs", bold: true);
        int[] anchors = gas ? [stack.Count / 6, stack.Count - 1] : [stack.Count - 1, stack.Count / 6]; // without gas the two part only at the bump stop
        if (apart) _ = anchors.Any(i => Marks.Label(sheet, panel, stack[i], "springs (dashed)"));
        if (gas) Marks.Label(sheet, panel, Of(r => r.GasForce)[stack.Count / 8], "gas (dotted)");
    }

    private static void Kinks(Sheet sheet, Panel panel, StandingResult standing, Readable read)
    {
        double force = read.Unit(Dimension.Force).PerSi;
        foreach (var edge in StrokeZones.Of(standing).Edges.Where(e => e.Name is not "full droop" and not "full bump"))
        {
            var row = standing.Curve.MinBy(r => Math.Abs(r.ShaftShowing - edge.Showing));
            var at = new SKPoint(panel.X(TravelAxis.X(edge.Showing, read)), panel.Y(row.ShaftForce * force));
            panel.Labels.Avoid(SKRect.Create(at.X - 5, at.Y - 5, 10, 10));
            Marks.Label(sheet, panel, at, $"{edge.Name}, {read.Text(Dimension.Force, row.ShaftForce)}");
            sheet.Over(canvas => Marks.Event(canvas, at));
        }
    }
}
