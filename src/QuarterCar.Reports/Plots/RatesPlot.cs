using QuarterCar.Model.Springs;
using QuarterCar.Model.Statics;
using QuarterCar.Reports.Units;
using QuarterCar.Reports.Words;
using QuarterCar.Studies;

using ScottPlot;

namespace QuarterCar.Reports.Plots;

/// <summary>How stiff is it, and where? Spring rate at the shaft and wheel rate over shaft showing.</summary>
internal static class RatesPlot
{
    /// <summary>Draws it.</summary>
    public static Sheet Draw(StandingResult standing)
    {
        var read = new Readable(standing.Scenario.Units);
        var rates = StrokeRates.Of(standing, read);
        string title = rates.Crossover is { Before: > 0, After: < SpringStack.SolidRate } c
            ? $"Spring rate steps {Panel.Number(Math.Round(c.After / c.Before, 1))} times, from {rates.Rate(c.Before)} to {rates.Rate(c.After)}"
            : rates.IsOne ? $"Spring rate is {rates.Rate(rates.Only)} throughout"
            : $"Spring rate is {rates.Rate(rates.AtRide)} at ride height: {rates.Chain}";
        var sheet = new Sheet("rates", title, "Spring rate is at the shaft, wheel rate at the wheel with gas, bump stop and motion ratio.")
        {
            Caption = "A step up is the crossover, or a spring that goes solid; where the line leaves the picture the coils are solid or the bump stop takes over.",
        };
        double rate = read.Unit(Dimension.Rate).PerSi;
        double high = 1.9 * rates.Changes.SelectMany(r => new[] { r.Before, r.After }).Append(rates.Only).Where(r => r < SpringStack.SolidRate).DefaultIfEmpty(SpringStack.SolidRate).Max();
        var panel = TravelAxis.Panel(sheet, standing, read, sheet.Top + 40, 300, 76, Sheet.Width - 24, (0, high * rate), null);
        panel.Plot.Axes.Left.Label.Text = "rate, " + read.Unit(Dimension.Rate).Name;
        AxisLabels.Style(panel);
        var zones = StrokeZones.Of(standing);
        TravelAxis.Bands(sheet, panel, zones, read);
        TravelAxis.Names(sheet, panel, zones, read, panel.Data.Bottom - 12);
        Line(sheet, panel, standing, read, r => r.SpringRate, high, "spring rate", LinePattern.Solid);
        Line(sheet, panel, standing, read, r => r.WheelRate, high, "wheel rate (dashed)", LinePattern.Dashed);
        sheet.Height = panel.Data.Bottom + 52;
        return sheet;
    }

    /// <summary>A rate holds from the row before, droop side, up to its own row: a staircase. What is too stiff for the picture leaves it at the top with a word.</summary>
    private static void Line(
        Sheet sheet, Panel panel, StandingResult standing, Readable read, Func<CurveRow, double> value, double high, string name, LinePattern pattern)
    {
        double rate = read.Unit(Dimension.Rate).PerSi;
        var points = new List<(double X, double Y)>();
        for (int i = 1; i < standing.Curve.Length; i++)
        {
            var (a, b) = (standing.Curve[i - 1], standing.Curve[i]);
            double y = Math.Min(value(b), high) * rate;
            points.Add((TravelAxis.X(a.ShaftShowing, read), y));
            points.Add((TravelAxis.X(b.ShaftShowing, read), y));
            if (value(b) > high) break;
        }

        var pixels = Decimate.Path(panel.Pixels(points));
        panel.Line(pixels, Palette.Ink, 2, pattern);
        Marks.Label(sheet, panel, pixels[Math.Min(pixels.Count - 1, pixels.Count / 5)], name);
        var last = pixels[^1];
        if (last.Y > panel.Data.Top + 1) return;
        double stiffest = standing.Curve.Max(value);
        const double bound = 1e6; // N/m: above any spring, below solid coils
        string words = stiffest > bound ? "solid: nothing gives" : "goes on to " + read.Text(Dimension.Rate, stiffest);
        Marks.Label(sheet, panel, new(last.X, last.Y + 4), words);
    }
}
