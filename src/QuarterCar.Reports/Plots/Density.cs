using SkiaSharp;

namespace QuarterCar.Reports.Plots;

/// <summary>A band that is darker where values are more frequent.</summary>
internal static class Density
{
    private const int Bins = 120;

    /// <summary>Fills a panel's data area; opacity grows with the square root of the share, so that rare values still show.</summary>
    public static void Draw(Sheet sheet, Panel panel, IEnumerable<double> values, SKColor color)
    {
        double[] shares = new double[Bins];
        var (from, to) = panel.XRange;
        foreach (double value in values)
        {
            int bin = (int)((value - from) / (to - from) * Bins);
            if (bin is >= 0 and < Bins) shares[bin]++;
        }

        double most = Math.Max(1, shares.Max());
        float width = panel.Data.Width / Bins;
        sheet.Over(canvas =>
        {
            for (int i = 0; i < Bins; i++)
            {
                if (shares[i] == 0) continue;
                byte alpha = (byte)(30 + (215 * Math.Sqrt(shares[i] / most)));
                float left = MathF.Round(panel.Data.Left + (i * width)), right = MathF.Round(panel.Data.Left + ((i + 1) * width));
                Marks.Band(canvas, new SKRect(left, panel.Data.Top, right, panel.Data.Bottom), color.WithAlpha(alpha));
            }
        });
    }
}
