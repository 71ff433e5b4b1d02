using QuarterCar.Reports.Plots;
using QuarterCar.Reports.Plots.Compare;
using QuarterCar.Studies.Sweeps;

using SkiaSharp;

namespace QuarterCar.Reports.Studies;

/// <summary>The goal over one path, one line a setup of a list; below it the figure whose limit is nearest. Stretches that break a limit are grey and named.</summary>
internal static class SweepCurve
{
    private static readonly SKColor Broken = SKColor.Parse("#E4E4E4");

    /// <summary>Draws it.</summary>
    public static Sheet Draw(SweepResult result, SweepMap map)
    {
        var words = new SweepWords(result);
        int across = map.Axes[^1].At.Length, lines = map.Goal.Length / across;
        string left = lines > SetupStyles.Most ? FormattableString.Invariant($" Drawn are the first {SetupStyles.Most} of {lines} lines; sweep.csv has every point.") : "";
        var sheet = new Sheet("sweep", words.Verdict(), SweepPlot.Note(words) + left)
        {
            Caption = "The goal over the setting; what is grey breaks a limit, and the ring is the best point that breaks none.",
        };
        SweepMapAxis axis = map.Axes[^1];
        PathScale path = words.Paths[^1];
        int limited = Limited(result);
        Panel goal = Panel(sheet, sheet.Top + 24, limited < 0 ? 330 : 230, path, axis, map.Goal, words.Goal, null);
        Bands(sheet, goal, result, map, path);
        Lines(sheet, goal, map, path, map.Goal, words.Goal, named: true);
        Best(sheet, goal, result, words, path);
        Panel last = goal;
        if (limited >= 0)
        {
            FigureScale figure = words.Figure(result.Limits.Limits[limited].Figure);
            double limit = result.Limits.Limits[limited].Largest;
            last = Panel(sheet, goal.Data.Bottom + 56, 130, path, axis, map.Limited[limited], figure, limit);
            Lines(sheet, last, map, path, map.Limited[limited], figure, named: false);
            Limit(sheet, last, figure, limit);
        }

        last.Plot.Axes.Bottom.Label.Text = path.Label;
        AxisLabels.Style(last);
        sheet.Height = last.Data.Bottom + 56;
        return sheet;
    }

    // The limit to show below: the nearest of the best point, else the first that is no count; the goal's own needs no second panel.
    private static int Limited(SweepResult result)
    {
        var limits = result.Limits.Limits;
        int nearest = limits.ToList().FindIndex(l => l.Figure == result.Nearest?.Figure);
        int found = nearest >= 0 ? nearest : limits.ToList().FindIndex(l => !IsCount(l.Figure));
        return found >= 0 && !IsCount(limits[found].Figure) ? found : -1;
    }

    private static bool IsCount(string figure) => figure.StartsWith("counts.", StringComparison.Ordinal);

    private static Panel Panel(Sheet sheet, float top, float height, PathScale path, SweepMapAxis axis, IReadOnlyList<double> values, FigureScale figure, double? also)
    {
        var known = values.Where(double.IsFinite).Concat(also is { } limit ? [limit] : Array.Empty<double>()).Select(figure.Plotted).ToList();
        double least = known.Min(), most = known.Max(), room = most > least ? 0.12 * (most - least) : Math.Max(1e-3, 0.1 * Math.Abs(most));
        double from = path.Plotted(axis.At.Min()), to = path.Plotted(axis.At.Max());
        Panel panel = sheet.Add(new Panel(new SKRect(76, top, Sheet.Width - 24, top + height), (from, to), (least - room, most + room)));
        panel.Plot.Axes.Left.Label.Text = figure.Label;
        AxisLabels.Style(panel);
        return panel;
    }

    private static void Lines(Sheet sheet, Panel panel, SweepMap map, PathScale path, IReadOnlyList<double> values, FigureScale figure, bool named)
    {
        int across = map.Axes[^1].At.Length, lines = Math.Min(SetupStyles.Most, values.Count / across);
        for (int k = 0; k < lines; k++)
        {
            var points = Enumerable.Range(0, across).Select(i => (At: map.Axes[^1].At[i], Value: values[(k * across) + i]))
                .Where(p => double.IsFinite(p.Value)).OrderBy(p => p.At).Select(p => (path.Plotted(p.At), figure.Plotted(p.Value)));
            List<SKPoint> pixels = Decimate.Path(panel.Pixels(points));
            if (pixels.Count == 0)
                continue;
            var (color, pattern) = SetupStyles.Line(k);
            panel.Line(pixels, color, 2, pattern);
            if (map.Axes.Length > 1 && named)
                Marks.Label(sheet, panel, pixels[^1], map.Axes[0].Titles[k]);
        }
    }

    // Grey where the one line breaks a limit, half-way to the neighbours; with several lines each breaks elsewhere, and the table tells.
    private static void Bands(Sheet sheet, Panel panel, SweepResult result, SweepMap map, PathScale path)
    {
        if (map.Axes.Length > 1)
            return;
        int[] order = [.. Enumerable.Range(0, map.Goal.Length).OrderBy(i => map.Axes[0].At[i])];
        float X(int k) => panel.X(path.Plotted(map.Axes[0].At[order[k]]));
        for (int k = 0; k < order.Length;)
        {
            int limit = map.Broken[order[k]], end = k;
            while (end + 1 < order.Length && map.Broken[order[end + 1]] == limit)
                end++;
            if (limit >= 0)
            {
                float left = k == 0 ? X(k) : (X(k - 1) + X(k)) / 2, right = end + 1 == order.Length ? X(end) : (X(end) + X(end + 1)) / 2;
                var band = new SKRect(left, panel.Data.Top, Math.Max(right, left + 1), panel.Data.Bottom);
                sheet.Under(canvas => Marks.Band(canvas, band, Broken));
                string what = "breaks " + new SweepWords(result).Figure(result.Limits.Limits[limit].Figure).Word;
                if (Text.Size(what).Width + 8 < band.Width)
                    Marks.Label(sheet, panel, new SKPoint(band.MidX, panel.Data.Bottom - 14), what);
            }

            k = end + 1;
        }
    }

    private static void Best(Sheet sheet, Panel panel, SweepResult result, SweepWords words, PathScale path)
    {
        if (result.Best is not { } best || best.Request.Values[^1].Si is not { } at || result.Goal.Of(best.Figures) is not { } value)
            return;
        var pixel = new SKPoint(panel.X(path.Plotted(at)), panel.Y(words.Goal.Plotted(value)));
        sheet.Over(canvas => Ring(canvas, pixel));
        panel.Labels.Avoid(SKRect.Create(pixel.X - 8, pixel.Y - 8, 16, 16));
        Marks.Label(sheet, panel, pixel, $"best: {words.Goal.Text(value)} at {path.Text(at)}", bold: true);
    }

    /// <summary>The mark of the best point.</summary>
    public static void Ring(SKCanvas canvas, SKPoint at)
    {
        using var fill = new SKPaint { Color = SKColors.White, IsAntialias = true };
        using var edge = new SKPaint { Color = Palette.Ink, IsAntialias = true, Style = SKPaintStyle.Stroke, StrokeWidth = 2 };
        canvas.DrawCircle(at, 6, fill);
        canvas.DrawCircle(at, 6, edge);
    }

    // In ink with the grey of broken limits above it: colours and dashes are the setups'.
    private static void Limit(Sheet sheet, Panel panel, FigureScale figure, double limit)
    {
        float y = panel.Y(figure.Plotted(limit));
        var (from, to) = (new SKPoint(panel.Data.Left, y), new SKPoint(panel.Data.Right, y));
        sheet.Under(canvas => Marks.Band(canvas, new SKRect(panel.Data.Left, panel.Data.Top, panel.Data.Right, y), Broken));
        sheet.Over(canvas => Marks.Line(canvas, from, to, Palette.Ink, 1.2f));
        panel.Labels.AvoidHelp(from, to);
        Marks.Label(sheet, panel, new SKPoint(panel.Data.Left + 70, y), $"limit {figure.Text(limit)}");
    }
}
