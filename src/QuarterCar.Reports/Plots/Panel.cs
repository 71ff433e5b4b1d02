using System.Globalization;

using ScottPlot;

using SkiaSharp;

namespace QuarterCar.Reports.Plots;

/// <summary>One coordinate system on a sheet. Its data area is fixed beforehand, so that labels can be placed before anything is drawn.</summary>
internal sealed class Panel
{
    private bool _settled;

    /// <summary>Places a panel.</summary>
    /// <param name="data">The data area, px on the sheet.</param>
    /// <param name="x">Limits, left to right, in plotted units.</param>
    /// <param name="y">Limits, bottom to top.</param>
    public Panel(SKRect data, (double From, double To) x, (double From, double To) y)
    {
        PlotFont.Use();
        (Data, XRange, YRange) = (data, x, y);
        Labels = new LabelPlacer(data);
        Plot.Axes.SetLimits(x.From, x.To, y.From, y.To);
        Plot.Layout.Fixed(new PixelPadding(Padding, Padding, Padding, Padding));
        Plot.RenderManager.ClearCanvasBeforeEachRender = false; // the bands below stay
        Plot.FigureBackground.Color = Colors.Transparent;
        Plot.DataBackground.Color = Colors.Transparent;
        Plot.Grid.MajorLineColor = Palette.Grid.ToPlot();
        Plot.Axes.Right.FrameLineStyle.Width = 0;
        Plot.Axes.Top.FrameLineStyle.Width = 0;
        foreach (var axis in Plot.Axes.GetAxes())
        {
            axis.TickLabelStyle.FontSize = Text.Small;
            axis.TickLabelStyle.ForeColor = Palette.Ink.ToPlot();
            axis.TickLabelStyle.FontName = PlotFont.Family;
            axis.FrameLineStyle.Color = Palette.Help.ToPlot();
        }

        Ticks(Plot.Axes.Bottom, v => Number(v));
        Ticks(Plot.Axes.Left, v => Number(v));
    }

    /// <summary>Room for ticks around the data area, px.</summary>
    public const float Padding = 64;

    /// <summary>What is drawn in it.</summary>
    public Plot Plot { get; } = new();

    /// <summary>Data area on the sheet, px.</summary>
    public SKRect Data { get; }

    /// <summary>Limits in plotted units.</summary>
    public (double From, double To) XRange { get; }

    /// <summary>Limits in plotted units.</summary>
    public (double From, double To) YRange { get; }

    /// <summary>Keeps labels off each other and off the data.</summary>
    public LabelPlacer Labels { get; }

    /// <summary>Pixel of a plotted x.</summary>
    public float X(double x) => Data.Left + (float)((x - XRange.From) / (XRange.To - XRange.From) * Data.Width);

    /// <summary>Pixel of a plotted y.</summary>
    public float Y(double y) => Data.Bottom - (float)((y - YRange.From) / (YRange.To - YRange.From) * Data.Height);

    /// <summary>Labels of an axis's ticks.</summary>
    public static void Ticks(IAxis axis, Func<double, string> label) =>
        axis.TickGenerator = new ScottPlot.TickGenerators.NumericAutomatic { LabelFormatter = label, TickDensity = 0.7 };

    /// <summary>A tick's number: as many digits as it needs.</summary>
    public static string Number(double value) => Math.Round(value, 6).ToString("0.######", CultureInfo.InvariantCulture).Replace('-', '\u2212');

    /// <summary>A data line; labels keep off it.</summary>
    public void Line(IReadOnlyList<SKPoint> pixels, SKColor color, float width, LinePattern? pattern = null, double opacity = 1, bool obstacle = true)
    {
        if (pixels.Count == 0) return;
        double[] xs = [.. pixels.Select(p => Back(p.X, Data.Left, Data.Width, XRange))];
        double[] ys = [.. pixels.Select(p => Back(Data.Bottom - p.Y, 0, Data.Height, YRange))];
        var line = Plot.Add.ScatterLine(xs, ys, color.ToPlot(opacity));
        line.LineWidth = width;
        line.LinePattern = pattern ?? LinePattern.Solid;
        if (obstacle) Labels.AvoidLine(pixels);
    }

    /// <summary>Pixels of points in plotted units.</summary>
    public List<SKPoint> Pixels(IEnumerable<(double X, double Y)> points) => [.. points.Select(p => new SKPoint(X(p.X), Y(p.Y)))];

    /// <summary>Draws what the plotting library draws: axes, grid, lines.</summary>
    public void Draw(SKCanvas canvas)
    {
        var place = new PixelRect(Data.Left - Padding, Data.Right + Padding, Data.Bottom + Padding, Data.Top - Padding);
        if (!_settled)
        {
            // The library draws a plot twice where its layout is new; on our canvas, which it must not clear, all of it would lie there twice.
            using var nowhere = new SKNoDrawCanvas(Sheet.Width, (int)place.Bottom);
            Plot.Render(nowhere, place);
            _settled = true;
        }

        Plot.Render(canvas, place);
    }

    private static double Back(float pixel, float from, float length, (double From, double To) range) =>
        range.From + ((pixel - from) / length * (range.To - range.From));
}
