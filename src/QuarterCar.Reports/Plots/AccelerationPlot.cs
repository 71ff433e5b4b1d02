using QuarterCar.Reports.Units;
using QuarterCar.Studies;

using SkiaSharp;

namespace QuarterCar.Reports.Plots;

/// <summary>How hard is the ride? Acceleration of the sprung mass, and below of the unsprung, each on its own scale.</summary>
internal static class AccelerationPlot
{
    private const float Left = 76, Right = Sheet.Width - 24;

    /// <summary>Draws it.</summary>
    public static Sheet Draw(RunSamples samples)
    {
        var figures = samples.Run.Figures.Acceleration;
        var sheet = new Sheet("acceleration", Title(samples.Run, samples.Read), "Upward positive, gravity not in it: 0 at rest. The two scales differ." + samples.CropNote)
        {
            Caption = "The sprung mass is what people feel; the wheel takes the hits first.",
        };
        var sprung = Part(sheet, samples, s => s.SprungAcceleration, figures.PeakG * UnitTable.Gravity, sheet.Top + 8, 190, "sprung mass, g");
        Panel.Ticks(sprung.Plot.Axes.Bottom, _ => "");
        var unsprung = Part(sheet, samples, s => s.UnsprungAcceleration, null, sprung.Data.Bottom + 20, 150, "wheel, g");
        unsprung.Plot.Axes.Bottom.Label.Text = samples.PlaceLabel;
        AxisLabels.Style(unsprung);
        sheet.Height = unsprung.Data.Bottom + 52;
        return sheet;
    }

    /// <summary>What the picture says.</summary>
    public static string Title(RunResult run, Readable read) =>
        $"The sprung mass peaks at {read.Text(Dimension.Acceleration, run.Figures.Acceleration.PeakG * UnitTable.Gravity)}, "
        + $"{read.Text(Dimension.Acceleration, run.Figures.Acceleration.RmsG * UnitTable.Gravity)} r.m.s. over the run";

    private static Panel Part(Sheet sheet, RunSamples samples, Func<Sample, double> value, double? exactPeak, float top, float height, string label)
    {
        double g = samples.Read.Unit(Dimension.Acceleration).PerSi;
        double low = Math.Min(0, samples.Shown.Min(value)), high = Math.Max(0, samples.Shown.Max(value)), room = Math.Max(0.08 * (high - low), 0.1);
        var panel = sheet.Add(new Panel(new SKRect(Left, top, Right, top + height), samples.PlaceRange, ((low - room) * g, (high + room) * g)));
        panel.Plot.Axes.Left.Label.Text = label;
        AxisLabels.Style(panel);
        sheet.Under(canvas => Marks.Line(canvas, new(Left, panel.Y(0)), new(Right, panel.Y(0)), Palette.Help));
        panel.Line(Decimate.Series(panel.Pixels(samples.Shown.Select(s => (samples.Place(s), value(s) * g)))), Palette.Setup, 2);
        var peak = samples.Shown.MaxBy(s => Math.Abs(value(s)));
        double most = exactPeak is { } exact ? Math.CopySign(exact, value(peak)) : value(peak);
        Marks.Label(sheet, panel, new(panel.X(samples.Place(peak)), panel.Y(value(peak) * g)), samples.Read.Text(Dimension.Acceleration, most));
        return panel;
    }
}
