using System.Collections.Immutable;

using QuarterCar.Reports.Units;
using QuarterCar.Reports.Words;

using SkiaSharp;

namespace QuarterCar.Reports.Plots.Compare;

/// <summary>How did each setup spend the stroke? A bar a setup over its own zones: extent, time as density, a mark at ride height.</summary>
internal static class CompareTravelUsePlot
{
    private const float Left = 40, Right = Sheet.Width - 40, Bar = 34, Step = 66;

    /// <summary>Draws it.</summary>
    public static Sheet Draw(ImmutableArray<DrawnSetup> setups, Readable read)
    {
        var sheet = new Sheet("travel_use", Title(setups), "Darker colour where the shaft spends more time; the bracket spans from the least to the most shaft travel; dashed: ride height." + setups[0].Samples.CropNote)
        {
            Caption = "Grey bands are each setup's own zones, from droop at the left to metal at the right. A bar that ends in the dark bands leans on the bump stop or on metal.",
        };
        double stroke = setups.Max(s => s.Samples.Run.Scenario.Corner.Coilover.Stroke);
        (double From, double To) range = (TravelAxis.X(1.02 * stroke, read), TravelAxis.X(-0.02 * stroke, read));
        float top = sheet.Top + 28;
        foreach (DrawnSetup setup in setups)
        {
            One(sheet, setup, read, range, top, setup == setups[^1]);
            top += Step;
        }

        sheet.Height = top - Step + Bar + 52;
        return sheet;
    }

    private static string Title(ImmutableArray<DrawnSetup> setups) =>
        "Up-travel used: " + string.Join(", ", setups.Select(s => $"{s.Mark} {Verdict.Percent(s.Samples.Run.Figures.Travel.UpTravelUsed)}"));

    private static void One(Sheet sheet, DrawnSetup setup, Readable read, (double From, double To) range, float top, bool last)
    {
        var panel = sheet.Add(new Panel(new SKRect(Left, top, Right, top + Bar), range, (0, 1)));
        Panel.Ticks(panel.Plot.Axes.Bottom, v => last ? Panel.Number(-v == 0 ? 0 : -v) : "");
        if (last) panel.Plot.Axes.Bottom.Label.Text = "shaft showing, " + read.Unit(Dimension.Length).Name;
        AxisLabels.Style(panel);
        panel.Plot.Axes.Left.TickGenerator = new ScottPlot.TickGenerators.NumericManual();
        panel.Plot.HideGrid();
        TravelAxis.Shades(sheet, panel, StrokeZones.Of(setup.Samples.Run.Standing), read);
        Density.Draw(sheet, panel, setup.Samples.Shown.Select(s => TravelAxis.X(s.ShaftShowing, read)), setup.Color);
        Extent(sheet, panel, setup, read);
        string words = SetupStyles.Shorten($"{setup.Mark}  {setup.Title}: {Verdict.Travel(setup.Samples.Run).Replace("Uses", "uses", StringComparison.Ordinal)}", Right - Left);
        sheet.Over(canvas => Text.Draw(canvas, words, SKRect.Create(Left, top - 18, 0, Text.Small + 2), Palette.Ink));
    }

    private static void Extent(Sheet sheet, Panel panel, DrawnSetup setup, Readable read)
    {
        var run = setup.Samples.Run;
        double stroke = run.Scenario.Corner.Coilover.Stroke;
        float At(double showing) => Math.Clamp(panel.X(TravelAxis.X(showing, read)), panel.Data.Left, panel.Data.Right);
        float from = At(stroke - run.Figures.Travel.MinShaftTravel), to = At(stroke - run.Figures.Travel.MaxShaftTravel), ride = At(run.Standing.Figures.RideHeight);
        float y = panel.Data.MidY;
        sheet.Over(canvas =>
        {
            Marks.Line(canvas, new(from, y), new(to, y), Palette.Ink, 2);
            foreach (float x in new[] { from, to }) Marks.Line(canvas, new(x, y - 10), new(x, y + 10), Palette.Ink, 2);
            Marks.Line(canvas, new(ride, panel.Data.Top - 3), new(ride, panel.Data.Bottom + 3), Palette.Ink, 2, [5, 3]);
        });
    }
}
