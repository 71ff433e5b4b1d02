using QuarterCar.Reports.Plots;
using QuarterCar.Studies.Setups;
using QuarterCar.Studies.Sweeps;

using SkiaSharp;

using LinePattern = ScottPlot.LinePattern;

namespace QuarterCar.Reports.Studies;

/// <summary>How far does each setup go? The largest value over a second path, one line a setup ("highest ledge over speed, per split"); a bar a setup where nothing else varies.</summary>
internal static class ReachPlot
{
    private const int MostLines = 6;
    private const float BarHeight = 26;

    private static readonly (string Color, LinePattern Pattern)[] Styles =
    [
        ("#0072B2", LinePattern.Solid), ("#D55E00", LinePattern.Dashed), ("#009E73", LinePattern.DenselyDashed),
        ("#CC79A7", LinePattern.Dotted), ("#E69F00", LinePattern.Solid), ("#56B4E9", LinePattern.Dashed),
    ];

    /// <summary>The answer over all setups in one sentence.</summary>
    public static string Title(ReachResult result)
    {
        var words = new ReachWords(result);
        bool up = result.Axis.ToSi > result.Axis.FromSi;
        var whole = result.Setups.Where(s => s.FirstBroken is null).ToList();
        if (whole.Count > 0)
            return $"{Who(whole, result)} all the way to {words.Path.Name} {words.To}";
        if (result.Setups.Where(s => s.Largest is not null).MaxBy(s => up ? s.Largest : -s.Largest) is not { } best)
            return $"No setup holds at {words.From} of {words.Path.Name}";
        string far = words.Largest(best);
        int alike = result.Setups.Count(s => words.Largest(s) == far);
        string who = alike == 1 ? "Farthest goes " + best.Request.Title : FormattableString.Invariant($"Farthest go {alike} of the {result.Setups.Length} setups, all alike");
        return $"{who}: {words.Path.Name} {words.Path.WithUnit(far)}";
    }

    private static string Who(List<ReachSetup> whole, ReachResult result) => whole.Count == 1 ? $"{whole[0].Request.Title} alone holds"
        : whole.Count < result.Setups.Length ? FormattableString.Invariant($"{whole.Count} of the {result.Setups.Length} setups hold")
        : whole.Count == 2 ? "Both setups hold"
        : FormattableString.Invariant($"All {whole.Count} setups hold");

    /// <summary>Draws it; null for a single setup, whose answer is a sentence.</summary>
    public static Sheet? Draw(ReachResult result)
    {
        if (result.Setups.Length < 2)
            return null;
        var path = new PathScale(result.Axis.Path, result.Scenario.Units);
        var sheet = new Sheet("reach", Title(result), SweepWords.Caution) { Caption = "The largest value at which every limit holds." };
        var last = result.Setups[0].Request.Values[^1];
        var over = result.Setups.GroupBy(s => SetupRequest.Of([.. s.Request.Values.SkipLast(1)]).Title).ToList();
        bool curves = result.Setups.All(s => s.Request.Values.Length > 0 && s.Request.Values[^1] is { Si: not null } v && v.Path == last.Path) && over.All(g => g.Count() >= 3) && over.Count <= MostLines;
        if (curves)
            Curves(sheet, result, path, new PathScale(last.Path, result.Scenario.Units), over);
        else
            Bars(sheet, result, path, new ReachWords(result));
        return sheet;
    }

    private static void Curves(Sheet sheet, ReachResult result, PathScale path, PathScale over, List<IGrouping<string, ReachSetup>> groups)
    {
        var at = result.Setups.Select(s => over.Plotted(s.Request.Values[^1].Si!.Value)).ToList();
        var reached = result.Setups.Where(s => s.Largest is not null).Select(s => path.Plotted(s.Largest!.Value)).DefaultIfEmpty(path.Plotted(result.Axis.FromSi)).ToList();
        double room = Math.Max(0.15 * (reached.Max() - reached.Min()), 0.05 * Math.Abs(path.Plotted(result.Axis.ToSi) - path.Plotted(result.Axis.FromSi)));
        Panel panel = sheet.Add(new Panel(new SKRect(76, sheet.Top + 24, Sheet.Width - 24, sheet.Top + 380), (at.Min(), at.Max()), (reached.Min() - room, reached.Max() + room)));
        (panel.Plot.Axes.Bottom.Label.Text, panel.Plot.Axes.Left.Label.Text) = (over.Label, "largest " + path.Label);
        AxisLabels.Style(panel);
        for (int k = 0; k < groups.Count; k++)
        {
            var points = groups[k].Where(s => s.Largest is not null).Select(s => (over.Plotted(s.Request.Values[^1].Si!.Value), path.Plotted(s.Largest!.Value))).OrderBy(p => p.Item1).ToList();
            List<SKPoint> pixels = panel.Pixels(points);
            if (pixels.Count == 0)
                continue;
            panel.Line(pixels, SKColor.Parse(Styles[k].Color), 2, Styles[k].Pattern);
            foreach (SKPoint pixel in pixels)
                sheet.Over(canvas => Marks.Event(canvas, pixel));
            if (groups.Count > 1)
                Marks.Label(sheet, panel, pixels[pixels.Count / 2], groups[k].Key);
        }

        sheet.Height = panel.Data.Bottom + 56;
    }

    private static void Bars(Sheet sheet, ReachResult result, PathScale path, ReachWords words)
    {
        const int most = 24;
        var setups = result.Setups.Take(most).ToList();
        float left = 24 + setups.Max(s => Math.Min(320, Text.Size(s.Request.Title).Width)) + 12, top = sheet.Top + 8;
        double a = path.Plotted(result.Axis.FromSi), b = path.Plotted(result.Axis.ToSi);
        Panel panel = sheet.Add(new Panel(new SKRect(left, top, Sheet.Width - 90, top + (setups.Count * BarHeight)), (a, b), (setups.Count, 0)));
        panel.Plot.Axes.Left.TickLabelStyle.IsVisible = false;
        panel.Plot.Axes.Left.MajorTickStyle.Length = 0;
        panel.Plot.Axes.Left.MinorTickStyle.Length = 0;
        panel.Plot.Axes.Bottom.Label.Text = "largest " + path.Label;
        AxisLabels.Style(panel);
        for (int i = 0; i < setups.Count; i++)
        {
            var (setup, y) = (setups[i], top + (i * BarHeight));
            float end = setup.Largest is { } largest ? panel.X(path.Plotted(largest)) : panel.Data.Left;
            sheet.Over(canvas =>
            {
                Text.Draw(canvas, setup.Request.Title, SKRect.Create(24, y + 5, left, Text.Small + 2), Palette.Ink);
                Marks.Band(canvas, new SKRect(panel.Data.Left, y + 5, end, y + BarHeight - 5), Palette.Setup);
                Text.Draw(canvas, setup.Largest is null ? "breaks at once" : words.Path.WithUnit(words.Largest(setup)), SKRect.Create(end + 6, y + 5, 90, Text.Small + 2), Palette.Ink);
            });
        }

        sheet.Height = panel.Data.Bottom + 56;
    }
}
