using System.Collections.Immutable;

using QuarterCar.Reports.Units;
using QuarterCar.Reports.Words;
using QuarterCar.Studies;

using SkiaSharp;

namespace QuarterCar.Reports.Plots.Compare;

/// <summary>Where does each setup change its rate, and how far did it go? Standing force of every setup over shaft showing.</summary>
internal static class CompareForcePlot
{
    private const float Left = 76, Right = Sheet.Width - 24;

    /// <summary>Draws it.</summary>
    public static Sheet Draw(ImmutableArray<DrawnSetup> setups, Readable read)
    {
        var sheet = new Sheet("force_travel", Title(setups, read), "Standing force on the shaft: springs, gas and bump stop. The shaft goes in to the right. Rings: crossover; dots: the farthest that the run went.")
        {
            Caption = "Between kinks the slope is the rate: the steeper, the stiffer.",
        };
        double stroke = setups.Max(s => s.Samples.Run.Scenario.Corner.Coilover.Stroke), force = read.Unit(Dimension.Force).PerSi;
        double high = setups.Max(s => ForceTravelPlot.Highest(s.Samples.Run.Standing));
        float top = SetupStyles.Key(sheet, setups, Left, sheet.Top + 6);
        var panel = sheet.Add(new Panel(
            new SKRect(Left, top, Right, top + 340), (TravelAxis.X(1.02 * stroke, read), TravelAxis.X(-0.02 * stroke, read)), (-0.04 * high * force, 1.08 * high * force)));
        Panel.Ticks(panel.Plot.Axes.Bottom, v => Panel.Number(-v == 0 ? 0 : -v));
        panel.Plot.Axes.Bottom.Label.Text = "shaft showing, " + read.Unit(Dimension.Length).Name;
        panel.Plot.Axes.Left.Label.Text = "force on the shaft, " + read.Unit(Dimension.Force).Name;
        AxisLabels.Style(panel);
        foreach (DrawnSetup setup in setups.Reverse())
            panel.Line(Decimate.Path(panel.Pixels(setup.Samples.Run.Standing.Curve.Select(r => (TravelAxis.X(r.ShaftShowing, read), r.ShaftForce * force)))), setup.Color, 2, setup.Pattern);
        foreach (DrawnSetup setup in setups) Places(sheet, panel, setup, read);
        sheet.Height = panel.Data.Bottom + 52;
        return sheet;
    }

    private static string Title(ImmutableArray<DrawnSetup> setups, Readable read) => string.Join("; ", setups.Select(s =>
    {
        var rates = StrokeRates.Of(s.Samples.Run.Standing, read);
        return rates.Crossover is { } c ? $"{s.Mark} {read.Number(Dimension.Rate, c.Before)} to {rates.Rate(c.After)} at {read.Text(Dimension.Length, c.Showing)}"
            : rates.IsOne ? $"{s.Mark} {rates.Rate(rates.Only)} throughout"
            : $"{s.Mark} {rates.Rate(rates.AtRide)} at ride height, {string.Join(", ", rates.Changes.Select(rates.Place))}";
    }));

    private static void Places(Sheet sheet, Panel panel, DrawnSetup setup, Readable read)
    {
        RunResult run = setup.Samples.Run;
        double showing = run.Scenario.Corner.Coilover.Stroke - run.Figures.Travel.MaxShaftTravel;
        if (StrokeRates.Of(run.Standing, read).Crossover is { } crossover)
        {
            SKPoint ring = At(panel, run, crossover.Showing, read);
            sheet.Over(canvas => Marks.Event(canvas, ring));
        }

        SKPoint at = At(panel, run, showing, read);
        sheet.Over(canvas =>
        {
            using var fill = new SKPaint { Color = setup.Color, IsAntialias = true };
            canvas.DrawCircle(at, 5, fill);
        });
        Marks.Label(sheet, panel, at, showing < 0 ? $"{setup.Mark} into metal" : $"{setup.Mark} to {read.Text(Dimension.Length, showing)}", bold: true);
    }

    private static SKPoint At(Panel panel, RunResult run, double showing, Readable read)
    {
        var row = run.Standing.Curve.MinBy(r => Math.Abs(r.ShaftShowing - showing));
        float y = panel.Y(row.ShaftForce * read.Unit(Dimension.Force).PerSi);
        return new(Math.Min(panel.X(TravelAxis.X(showing, read)), panel.Data.Right), Math.Max(y, panel.Data.Top));
    }
}
