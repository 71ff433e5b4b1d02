using QuarterCar.Reports.Words;

namespace QuarterCar.Reports.Plots;

/// <summary>How was the stroke spent? One bar: zones, extent from least to most, time as density, a mark at ride height.</summary>
internal static class TravelUsePlot
{
    private const float Left = 40, Right = Sheet.Width - 40;

    /// <summary>Draws it.</summary>
    public static Sheet Draw(RunSamples samples)
    {
        var run = samples.Run;
        var read = samples.Read;
        string title = run.Figures.Travel.UpTravelUsed is { } up
            ? $"Uses {Verdict.Percent(up)} of the up-travel and {Verdict.Percent(run.Figures.Travel.DroopUsed)} of the droop"
            : $"Uses {Verdict.Percent(run.Figures.Travel.TravelUse)} of the stroke";
        var sheet = new Sheet("travel_use", title, "Bluer where the shaft spends more time; the bracket spans from the least to the most shaft travel." + samples.CropNote)
        {
            Caption = "Short of the dark bands stroke is left; a bar that ends in them leans on the bump stop or on metal.",
        };
        var panel = TravelAxis.Panel(sheet, run.Standing, read, sheet.Top + 62, 46, Left, Right, (0, 1), samples);
        AxisLabels.Style(panel);
        panel.Plot.Axes.Left.TickGenerator = new ScottPlot.TickGenerators.NumericManual();
        panel.Plot.HideGrid();
        var zones = StrokeZones.Of(run.Standing);
        TravelAxis.Bands(sheet, panel, zones, read);
        TravelAxis.NamesAbove(sheet, panel, zones, read, panel.Data.Top - 42);
        Density.Draw(sheet, panel, samples.Shown.Select(s => TravelAxis.X(s.ShaftShowing, read)), Palette.Setup);
        Extent(sheet, panel, samples);
        sheet.Height = panel.Data.Bottom + 52;
        return sheet;
    }

    private static void Extent(Sheet sheet, Panel panel, RunSamples samples)
    {
        double stroke = samples.Run.Scenario.Corner.Coilover.Stroke;
        var travel = samples.Run.Figures.Travel;
        float from = panel.X(TravelAxis.X(stroke - travel.MinShaftTravel, samples.Read)), to = panel.X(TravelAxis.X(stroke - travel.MaxShaftTravel, samples.Read));
        float ride = panel.X(TravelAxis.X(samples.Run.Standing.Figures.RideHeight, samples.Read));
        float y = panel.Data.MidY;
        sheet.Over(canvas =>
        {
            Marks.Line(canvas, new(from, y), new(to, y), Palette.Ink, 2);
            foreach (float x in new[] { from, to }) Marks.Line(canvas, new(x, y - 12), new(x, y + 12), Palette.Ink, 2);
            Marks.Line(canvas, new(ride, panel.Data.Top - 3), new(ride, panel.Data.Bottom + 3), Palette.Ink, 2, [5, 3]);
        });
    }
}
