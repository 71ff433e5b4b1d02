namespace QuarterCar.Reports.Plots;

/// <summary>One style for the words along the axes.</summary>
internal static class AxisLabels
{
    /// <summary>Applies it.</summary>
    public static void Style(Panel panel)
    {
        foreach (var axis in panel.Plot.Axes.GetAxes())
        {
            axis.Label.FontName = PlotFont.Family;
            axis.Label.FontSize = Text.Small;
            axis.Label.Bold = false;
            axis.Label.ForeColor = Palette.Ink.ToPlot();
        }
    }
}
