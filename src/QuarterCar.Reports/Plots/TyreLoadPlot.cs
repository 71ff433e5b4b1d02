using QuarterCar.Reports.Units;
using QuarterCar.Studies;

using SkiaSharp;

namespace QuarterCar.Reports.Plots;

/// <summary>Does it hold the ground? Tyre load over distance, the static load, stretches in the air shaded.</summary>
internal static class TyreLoadPlot
{
    /// <summary>Draws it.</summary>
    public static Sheet Draw(RunSamples samples)
    {
        var run = samples.Run;
        var read = samples.Read;
        double force = read.Unit(Dimension.Force).PerSi;
        double standing = StaticLoad(run);
        var sheet = new Sheet("tyre_load", Title(run, read), "Load between tyre and ground." + samples.CropNote)
        {
            Caption = "Where the load is small the tyre can neither brake nor steer; in the shaded stretches it is off the ground.",
        };
        double high = Math.Max(samples.Shown.Max(s => s.TyreForce), run.Figures.Tyre.Peak);
        var panel = sheet.Add(new Panel(
            new SKRect(76, sheet.Top + 6, Sheet.Width - 24, sheet.Top + 306), samples.PlaceRange, (-0.03 * high * force, 1.07 * high * force)));
        panel.Plot.Axes.Left.Label.Text = "tyre load, " + read.Unit(Dimension.Force).Name;
        panel.Plot.Axes.Bottom.Label.Text = samples.PlaceLabel;
        AxisLabels.Style(panel);
        panel.Line(Decimate.Series(panel.Pixels(samples.Shown.Select(s => (samples.Place(s), s.TyreForce * force)))), Palette.Setup, 2);
        float y = panel.Y(standing * force);
        panel.Line([new(panel.Data.Left, y), new(panel.Data.Right, y)], Palette.Help, 1.2f, ScottPlot.LinePattern.Dashed);
        Air(sheet, panel, samples);
        Marks.Label(sheet, panel, new(panel.Data.Right - 100, y), "static, " + read.Text(Dimension.Force, standing));
        sheet.Height = panel.Data.Bottom + 52;
        return sheet;
    }

    /// <summary>What the picture says.</summary>
    public static string Title(RunResult run, Readable read)
    {
        string peak = $"peaks at {read.Text(Dimension.Force, run.Figures.Tyre.Peak)}";
        return run.Figures.Tyre.Airborne > 0
            ? $"The tyre is in the air for {read.Text(Dimension.Time, run.Figures.Tyre.Airborne)} and {peak}"
            : $"The tyre stays on the ground, is never below {read.Text(Dimension.Force, run.Figures.Tyre.Least)} and {peak}";
    }

    /// <summary>What the tyre carries standing, N.</summary>
    public static double StaticLoad(RunResult run)
    {
        var corner = run.Scenario.Corner;
        if (corner.SprungWeight is { } sprung) return sprung + corner.UnsprungWeight;
        double ratio = run.Standing.Curve.MinBy(r => Math.Abs(r.ShaftShowing - run.Standing.Figures.RideHeight)).MotionRatio;
        return (ratio * (run.Standing.Figures.SpringForce + run.Standing.Figures.GasForce)) + corner.UnsprungWeight;
    }

    private static void Air(Sheet sheet, Panel panel, RunSamples samples)
    {
        bool named = false;
        foreach (var (from, to) in Stretches(samples))
        {
            float left = Math.Max(panel.X(from), panel.Data.Left), right = Math.Min(panel.X(to), panel.Data.Right);
            if (right <= left) continue;
            sheet.Under(canvas => Marks.Band(canvas, new SKRect(left, panel.Data.Top, Math.Max(right, left + 1), panel.Data.Bottom), Palette.Air));
            const string words = "in the air";
            if (right - left < Text.Size(words).Width + 6 && named) continue;
            named = Marks.Label(sheet, panel, new((left + right) / 2, panel.Data.Top + 28), words) || named;
        }
    }

    /// <summary>Stretches in the air, places on the horizontal axis.</summary>
    public static List<(double From, double To)> Stretches(RunSamples samples)
    {
        var stretches = new List<(double, double)>();
        double? since = samples.Shown[0].TyreDeflection <= 0 ? samples.Place(samples.Shown[0]) : null;
        foreach (var e in samples.Run.Events.Where(e => e.Event is "liftoff" or "touchdown"))
        {
            double at = samples.Place(e.Time, e.Distance);
            if (e.Event == "touchdown" && since is { } from) stretches.Add((from, at));
            since = e.Event == "liftoff" ? at : null;
        }

        if (since is { } last) stretches.Add((last, samples.Place(samples.Shown[^1])));
        return stretches;
    }
}
