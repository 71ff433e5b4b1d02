using System.Collections.Immutable;

using QuarterCar.Reports.Plots;
using QuarterCar.Reports.Units;
using QuarterCar.Scenarios;
using QuarterCar.Studies.Spreads;

using SkiaSharp;

namespace QuarterCar.Reports.Studies;

/// <summary>The pictures of a spread study. How sure are we? A histogram a figure with a bar from the 5th to the 95th percentile; the share that touches; what contributes.</summary>
internal static class SpreadPlots
{
    private const int Bins = 40;
    private const float Left = 40, Right = 560, Row = 104, Bar = 24, BarLeft = 300, BarRight = 700;
    private static readonly SKColor s_rest = SKColor.Parse("#8A8A8A");

    /// <summary>All of them.</summary>
    public static ImmutableArray<Sheet> Of(UnitSystem units, SpreadResult result)
    {
        if (result.Samples.Ran == 0) return [];
        Sheet?[] sheets = [Spread(new Readable(units), result), Shares(result)];
        return [.. sheets.OfType<Sheet>()];
    }

    private static Sheet Spread(Readable read, SpreadResult result)
    {
        var sheet = new Sheet("spread", SpreadWords.Verdict(result), "Columns count the samples; the bar spans nine of ten, from the 5th to the 95th percentile, its mark is the median.")
        {
            Caption = "A short bar is a figure to trust; a long one asks for a better measurement of what contributes most.",
        };
        float y = sheet.Top + 14;
        foreach (var (words, spread) in SpreadWords.Figures(result).Where(f => f.Spread.Most > f.Spread.Least))
        {
            Figure(sheet, y, words, spread, result.Samples.Figure(spread.Name), read);
            y += Row;
        }

        Heading(sheet, y, "Share of the samples");
        y += Bar;
        foreach (var (words, share, contact) in SpreadWords.Touched(result))
        {
            ShareBar(sheet, y, words, share, contact ? Palette.Contact : Palette.Setup);
            y += Bar;
        }

        sheet.Height = y + 12;
        return sheet;
    }

    private static void Figure(Sheet sheet, float top, string words, FigureSpread spread, double[] values, Readable read)
    {
        var (dimension, toSi) = Readable.OfKey(spread.Name);
        double scale = read.Unit(dimension).PerSi * toSi, least = spread.Least * scale, most = spread.Most * scale;
        double[] counts = new double[Bins];
        foreach (double value in values.Where(double.IsFinite)) counts[Math.Min(Bins - 1, (int)(((value * scale) - least) / (most - least) * Bins))]++;
        double margin = 0.03 * (most - least);
        var panel = sheet.Add(new Panel(SKRect.Create(Left, top + 20, Right - Left, 48), (least - margin, most + margin), (0, counts.Max())));
        AxisLabels.Style(panel);
        panel.Plot.Axes.Left.TickGenerator = new ScottPlot.TickGenerators.NumericManual();
        panel.Plot.Axes.Left.FrameLineStyle.Width = 0;
        panel.Plot.HideGrid();
        string[] cells = SpreadWords.Cells(spread, read);
        sheet.Over(canvas =>
        {
            for (int i = 0; i < Bins; i++)
            {
                if (counts[i] == 0) continue;
                double from = least + (i * (most - least) / Bins), to = least + ((i + 1) * (most - least) / Bins);
                Marks.Band(canvas, new SKRect(panel.X(from), Math.Min(panel.Y(counts[i]), panel.Data.Bottom - 1), panel.X(to) - 0.5f, panel.Data.Bottom), Palette.Setup.WithAlpha(110));
            }

            float y = panel.Data.Bottom - 5;
            Marks.Band(canvas, new SKRect(panel.X(spread.P05 * scale), y - 3, panel.X(spread.P95 * scale), y + 3), Palette.Setup);
            Marks.Line(canvas, new(panel.X(spread.P50 * scale), y - 9), new(panel.X(spread.P50 * scale), y + 5), Palette.Ink, 2.5f);
            Put(canvas, cells[4].Length == 0 ? words : $"{words}, {cells[4]}", Left, top, Palette.Ink, bold: true);
            Put(canvas, "median " + cells[1], Right + 24, panel.Data.MidY - 18, Palette.Ink, bold: true);
            Put(canvas, $"{cells[0]} to {cells[2]}", Right + 24, panel.Data.MidY, Palette.Help);
        });
    }

    private static Sheet? Shares(SpreadResult result)
    {
        var told = result.VarianceShare.Where(v => v.Rest is not null).ToList();
        if (told.Count == 0) return null;
        var most = told[^1].Shares.MaxBy(s => s.Value);
        string title = told[^1].Rest > most.Value
            ? $"{SpreadWords.Traced(told[^1].Figure, result)}: no tolerance alone explains most of its spread"
            : $"{SpreadWords.Traced(told[^1].Figure, result)}: {SpreadWords.Share(most.Value)} of its variance comes from {most.Key}";
        var sheet = new Sheet("spread_shares", title, SpreadWords.SharesHelp)
        {
            Caption = "Measure better, or buy closer, what has the longest bar; the short ones are not worth the trouble.",
        };
        float y = sheet.Top + 14;
        foreach (VarianceShare traced in told)
        {
            Heading(sheet, y, SpreadWords.Traced(traced.Figure, result) + ": share of its variance");
            y += Bar;
            foreach (var (path, share) in traced.Shares.OrderByDescending(s => s.Value))
            {
                ShareBar(sheet, y, path, share!.Value, Palette.Setup);
                y += Bar;
            }

            ShareBar(sheet, y, "the rest", traced.Rest!.Value, s_rest);
            y += Bar + 12;
        }

        sheet.Height = y + 4;
        return sheet;
    }

    private static void Heading(Sheet sheet, float y, string text) => sheet.Over(canvas => Put(canvas, text, Left, y, Palette.Ink, bold: true));

    private static void ShareBar(Sheet sheet, float y, string words, double share, SKColor color) => sheet.Over(canvas =>
    {
        float end = BarLeft + (float)(Math.Clamp(share, 0, 1) * (BarRight - BarLeft));
        Put(canvas, words, Left, y, Palette.Ink);
        Marks.Band(canvas, new SKRect(BarLeft, y + 2, BarRight, y + 14), Palette.Air);
        Marks.Band(canvas, new SKRect(BarLeft, y + 2, end, y + 14), color);
        Put(canvas, SpreadWords.Share(share), BarRight + 10, y, Palette.Ink);
    });

    private static void Put(SKCanvas canvas, string text, float left, float top, SKColor color, bool bold = false) =>
        Plots.Text.Draw(canvas, text, SKRect.Create(left, top, Sheet.Width, Plots.Text.Small + 4), color, bold);
}
