using System.Collections.Immutable;

using QuarterCar.Reports.Plots;
using QuarterCar.Studies.Sweeps;

using SkiaSharp;

namespace QuarterCar.Reports.Studies;

/// <summary>The goal over two paths as a map: one hue from pale to deep, contours with their values, hatching where a limit breaks, a ring at the best point.</summary>
internal static class SweepHeat
{
    private const int Lines = 7;

    /// <summary>Draws it.</summary>
    public static Sheet Draw(SweepResult result, SweepMap asked)
    {
        SweepMap map = Rising(asked);
        var words = new SweepWords(result);
        var sheet = new Sheet("sweep", words.Verdict(), SweepPlot.Note(words))
        {
            Caption = "Deeper is more of the goal's figure, scaled to the points that hold every limit; hatched cells break one, the ring is the best point that breaks none.",
        };
        var (x, y) = (words.Paths[1], words.Paths[0]);
        Edges across = new(map.Axes[1].At.Select(x.Plotted)), up = new(map.Axes[0].At.Select(y.Plotted));
        Panel panel = sheet.Add(new Panel(new SKRect(76, sheet.Top + 16, Sheet.Width - 130, sheet.Top + 436), across.Range, up.Range));
        panel.Plot.Grid.MajorLineWidth = 0;
        (panel.Plot.Axes.Bottom.Label.Text, panel.Plot.Axes.Left.Label.Text) = (x.Label, y.Label);
        AxisLabels.Style(panel);
        var goal = map.Goal.Select(words.Goal.Plotted).ToArray();
        (double Least, double Most) range = Range(goal, map);
        double Share(double v) => range.Most > range.Least ? (v - range.Least) / (range.Most - range.Least) : 0.5;
        sheet.Under(canvas => Cells(canvas, panel, across, up, goal, map, Share));
        List<double> levels = range.Most > range.Least ? Contours.Levels(range.Least, range.Most, Lines) : [];
        Contour(sheet, panel, across, up, goal, levels, Share);
        Best(sheet, panel, result, words, x, y);
        Key(sheet, panel, words.Goal, range, levels);
        sheet.Height = panel.Data.Bottom + 60;
        return sheet;
    }

    // A list may come in any order; cells lie between neighbours.
    private static SweepMap Rising(SweepMap map)
    {
        int[] up = Order(map.Axes[0]), across = Order(map.Axes[1]);
        int[] from = [.. up.SelectMany(r => across.Select(c => (r * across.Length) + c))];
        return map with
        {
            Axes = [map.Axes[0] with { At = [.. up.Select(i => map.Axes[0].At[i])] }, map.Axes[1] with { At = [.. across.Select(i => map.Axes[1].At[i])] }],
            Goal = [.. from.Select(i => map.Goal[i])],
            Broken = [.. from.Select(i => map.Broken[i])],
            Limited = [.. map.Limited.Select(l => from.Select(i => l[i]).ToImmutableArray())],
        };

        static int[] Order(SweepMapAxis axis) => [.. Enumerable.Range(0, axis.At.Length).OrderBy(i => axis.At[i])];
    }

    // Shades are spent on what can be driven: what breaks a limit may lie beyond the ends and takes the end's shade.
    private static (double Least, double Most) Range(double[] goal, SweepMap map)
    {
        const int few = 4;
        var known = goal.Where(double.IsFinite).ToList();
        var holding = goal.Where((v, i) => double.IsFinite(v) && map.Broken[i] < 0).ToList();
        return holding.Count >= few && holding.Max() > holding.Min() ? (holding.Min(), holding.Max()) : (known.Min(), known.Max());
    }

    private static void Cells(SKCanvas canvas, Panel panel, Edges across, Edges up, double[] goal, SweepMap map, Func<double, double> share)
    {
        using var fill = new SKPaint();
        using var hatch = new SKPath();
        for (int i = 0; i < goal.Length; i++)
        {
            int c = i % across.Count, r = i / across.Count;
            var cell = new SKRect(panel.X(across.Low(c)), panel.Y(up.High(r)), panel.X(across.High(c)), panel.Y(up.Low(r))).Standardized;
            fill.Color = double.IsFinite(goal[i]) ? Shades.At(share(goal[i])) : SKColors.White;
            canvas.DrawRect(cell, fill);
            if (map.Broken[i] >= 0)
                hatch.AddRect(cell);
        }

        Hatch(canvas, panel.Data, hatch);
    }

    // One set of slanted lines through all broken cells: neighbours join into one stretch.
    private static void Hatch(SKCanvas canvas, SKRect area, SKPath cells)
    {
        const float gap = 9;
        canvas.Save();
        canvas.ClipPath(cells);
        for (float offset = area.Left - area.Height; offset < area.Right; offset += gap)
        {
            Marks.Line(canvas, new(offset, area.Bottom), new(offset + area.Height, area.Top), SKColors.White, 2.4f);
            Marks.Line(canvas, new(offset, area.Bottom), new(offset + area.Height, area.Top), Palette.Help, 1f);
        }

        canvas.Restore();
    }

    private static void Contour(Sheet sheet, Panel panel, Edges across, Edges up, double[] goal, List<double> levels, Func<double, double> share)
    {
        foreach (double level in levels)
        {
            var pieces = Contours.Pieces((c, r) => goal[(r * across.Count) + c], across.Count, up.Count, level)
                .Select(p => (From: Pixel(p.From), To: Pixel(p.To))).ToList();
            if (pieces.Count == 0)
                continue;
            SKColor ink = Shades.InkOn(share(level));
            sheet.Under(canvas => pieces.ForEach(p => Marks.Line(canvas, p.From, p.To, ink, 1.2f)));
            Label(sheet, panel, pieces[pieces.Count / 2].From, Plots.Panel.Number(level));
        }

        SKPoint Pixel((double X, double Y) at) => new(panel.X(across.At(at.X)), panel.Y(up.At(at.Y)));
    }

    // On the line itself, on a ground of its own so that it reads on any shade.
    private static void Label(Sheet sheet, Panel panel, SKPoint at, string text)
    {
        SKSize size = Text.Size(text);
        var place = SKRect.Create(
            Math.Clamp(at.X - (size.Width / 2), panel.Data.Left + 3, panel.Data.Right - size.Width - 3), Math.Clamp(at.Y - (size.Height / 2), panel.Data.Top + 3, panel.Data.Bottom - size.Height - 3), size.Width, size.Height);
        panel.Labels.Avoid(place);
        sheet.Over(canvas =>
        {
            Marks.Band(canvas, SKRect.Inflate(place, 3, 1), SKColors.White);
            Text.Draw(canvas, text, place, Palette.Ink);
        });
    }

    private static void Best(Sheet sheet, Panel panel, SweepResult result, SweepWords words, PathScale x, PathScale y)
    {
        if (result.Best is not { } best || result.Goal.Of(best.Figures) is not { } value)
            return;
        var at = new SKPoint(panel.X(x.Plotted(best.Request.Values[1].Si!.Value)), panel.Y(y.Plotted(best.Request.Values[0].Si!.Value)));
        string text = $"best: {words.Goal.Text(value)}";
        panel.Labels.Avoid(SKRect.Create(at.X - 8, at.Y - 8, 16, 16));
        SKRect? place = panel.Labels.Near(at, Text.Size(text, true));
        sheet.Over(canvas =>
        {
            SweepCurve.Ring(canvas, at);
            if (place is not { } p)
                return;
            Marks.Band(canvas, SKRect.Inflate(p, 3, 1), SKColors.White);
            Text.Draw(canvas, text, p, Palette.Ink, bold: true);
        });
    }

    private static void Key(Sheet sheet, Panel panel, FigureScale goal, (double Least, double Most) range, List<double> levels)
    {
        const int steps = 64;
        float left = panel.Data.Right + 22, width = 18, top = panel.Data.Top + 30, bottom = panel.Data.Bottom;
        float Y(double share) => bottom - (float)(share * (bottom - top));
        sheet.Under(canvas =>
        {
            for (int i = 0; i < steps; i++)
                Marks.Band(canvas, new SKRect(left, Y((i + 1.0) / steps), left + width, Y((double)i / steps) + 0.5f), Shades.At((i + 0.5) / steps));
        });
        sheet.Over(canvas =>
        {
            Text.Draw(canvas, goal.Unit.Length == 0 ? "goal" : goal.Unit, SKRect.Create(left, panel.Data.Top, 90, Text.Small + 2), Palette.Ink);
            foreach (double level in levels)
            {
                float y = Y((level - range.Least) / (range.Most - range.Least));
                Marks.Line(canvas, new(left, y), new(left + width + 4, y), Palette.Ink);
                Text.Draw(canvas, Plots.Panel.Number(level), SKRect.Create(left + width + 8, y - 7, 60, Text.Small + 2), Palette.Ink);
            }
        });
    }

    /// <summary>Cells around points along one axis, rising: borders half-way between neighbours.</summary>
    private sealed class Edges(IEnumerable<double> points)
    {
        private readonly double[] _points = [.. points];

        public int Count => _points.Length;

        public (double From, double To) Range => (Math.Min(Low(0), High(Count - 1)), Math.Max(Low(0), High(Count - 1)));

        public double Low(int i) => i == 0 ? _points[0] - ((_points[1] - _points[0]) / 2) : (_points[i - 1] + _points[i]) / 2;

        public double High(int i) => i == Count - 1 ? _points[^1] + ((_points[^1] - _points[^2]) / 2) : Low(i + 1);

        public double At(double index)
        {
            int i = Math.Min((int)index, Count - 2);
            return _points[i] + ((index - i) * (_points[i + 1] - _points[i]));
        }
    }
}
