using System.Collections.Immutable;

using QuarterCar.Model;
using QuarterCar.Reports.Units;

using ScottPlot;

using SkiaSharp;

namespace QuarterCar.Reports.Plots;

/// <summary>Where did the damper work? Force over shaft velocity with its zones, the run on it, the share of time below.</summary>
internal static class DamperPlot
{
    private const float Left = 76, Right = Sheet.Width - 40;

    private const double Least = 0.05; // m/s drawn to either side, even where nothing moves

    /// <summary>Draws it; null without a damper.</summary>
    public static Sheet? Draw(RunSamples samples)
    {
        if (samples.Run.Scenario.Corner.Coilover.Damper is not { } damper) return null;
        var read = samples.Read;
        double speed = read.Unit(Dimension.Velocity).PerSi, force = read.Unit(Dimension.Force).PerSi;
        var (slow, fast) = Middle(samples);
        string note = "Compression to the right, rebound to the left. The run is thin and blue; the band below is darker where the shaft spends more time, the bar on it spans the nine tenths." + samples.CropNote;
        var sheet = new Sheet("damper", Title(samples), note)
        {
            Caption = "A change of damping is felt most at the speeds where the band is dark.",
        };
        var travel = samples.Run.Figures.Travel;
        double right = 1.1 * Math.Max(travel.PeakCompressionSpeed, Least), left = 1.1 * Math.Max(travel.PeakReboundSpeed, Least);
        double most = 0, least = 0;
        foreach (var (zoneIn, zoneOut) in Factors(damper))
        {
            most = Math.Max(most, zoneIn * Force(damper.Compression, right));
            least = Math.Max(least, zoneOut * Force(damper.Rebound, left));
        }

        var panel = sheet.Add(new Panel(
            new SKRect(Left, sheet.Top + 6, Right, sheet.Top + 326), (-left * speed, right * speed), (-1.06 * least * force, 1.06 * most * force)));
        panel.Plot.Axes.Left.Label.Text = "damper force, " + read.Unit(Dimension.Force).Name;
        AxisLabels.Style(panel);
        Panel.Ticks(panel.Plot.Axes.Bottom, _ => "");
        Zero(sheet, panel);
        Variants(sheet, panel, samples, damper, (left, right));
        Run(panel, samples, speed, force);
        Shares(sheet, samples, panel, (slow, fast));
        return sheet;
    }

    /// <summary>What the picture says.</summary>
    public static string Title(RunSamples samples)
    {
        var (slow, fast) = Middle(samples);
        return $"Nine tenths of the {(samples.Cropped ? "stretch shown" : "time")} the shaft is slower than {samples.Read.Text(Dimension.Velocity, fast)} going in and {samples.Read.Text(Dimension.Velocity, -slow)} coming out";
    }

    private static void Zero(Sheet sheet, Panel panel) => sheet.Under(canvas =>
    {
        Marks.Line(canvas, new(panel.X(0), panel.Data.Top), new(panel.X(0), panel.Data.Bottom), Palette.Help);
        Marks.Line(canvas, new(panel.Data.Left, panel.Y(0)), new(panel.Data.Right, panel.Y(0)), Palette.Help);
    });

    private static void Run(Panel panel, RunSamples samples, double speed, double force)
    {
        var path = Decimate.Path(panel.Pixels(samples.Shown.Select(s => (s.ShaftVelocity * speed, s.DamperForce * force))));
        panel.Line(path, Palette.Setup, 1.5f, obstacle: false);
    }

    private static void Variants(Sheet sheet, Panel panel, RunSamples samples, DamperData damper, (double Left, double Right) ends)
    {
        LinePattern[] patterns = [LinePattern.Solid, LinePattern.Dashed, LinePattern.DenselyDashed, LinePattern.Dotted];
        int i = 0;
        foreach (var (factorIn, factorOut) in Factors(damper))
        {
            string name = i == 0 ? "outside zones" : ZoneName(samples, damper.Zones[i - 1]);
            var pattern = patterns[Math.Min(i, patterns.Length - 1)];
            bool variesIn = damper.Zones.Any(z => z.Compression != 1), variesOut = damper.Zones.Any(z => z.Rebound != 1);
            Half(sheet, panel, samples, damper.Compression, ends.Right, 1, factorIn, i > 0 && factorIn == 1 ? null : variesIn ? name : "", pattern);
            Half(sheet, panel, samples, damper.Rebound, ends.Left, -1, factorOut, i > 0 && factorOut == 1 ? null : variesOut ? name : "", pattern);
            i++;
        }
    }

    private static void Half(
        Sheet sheet, Panel panel, RunSamples samples, ImmutableArray<TablePoint> points, double end, int sign, double factor, string? name, LinePattern pattern)
    {
        if (name is null) return;
        double speed = samples.Read.Unit(Dimension.Velocity).PerSi, force = samples.Read.Unit(Dimension.Force).PerSi;
        var at = points.Select(p => p.At).Where(v => v < end).Prepend(0).Append(end);
        var line = panel.Pixels(at.Select(v => (sign * v * speed, sign * factor * Force(points, v) * force)));
        panel.Line(line, Palette.Ink, 1.8f, pattern);
        if (name.Length > 0) Marks.Label(sheet, panel, new(line[^1].X - (sign * 30), line[^1].Y + (sign * 10)), factor == 1 ? name : $"×{Panel.Number(factor)} {name}");
    }

    /// <summary>A zone in words, by shaft showing.</summary>
    public static string ZoneName(RunSamples samples, DamperZone zone)
    {
        double stroke = samples.Run.Scenario.Corner.Coilover.Stroke;
        return $"from {samples.Read.Number(Dimension.Length, stroke - zone.From)} to {samples.Read.Text(Dimension.Length, stroke - zone.To)} showing";
    }

    /// <summary>Factors going in and coming out: outside the zones first, then each zone.</summary>
    public static IEnumerable<(double In, double Out)> Factors(DamperData damper) =>
        damper.Zones.Select(z => (z.Compression, z.Rebound)).Prepend((1, 1));

    /// <summary>The asked-for table of force over speed, magnitudes; straight lines from the origin, last slope carried on.</summary>
    public static double Force(ImmutableArray<TablePoint> points, double speed)
    {
        var from = new TablePoint(0, 0);
        foreach (var to in points)
        {
            if (speed <= to.At || to == points[^1]) return from.Value + ((to.Value - from.Value) / (to.At - from.At) * (speed - from.At));
            from = to;
        }

        return 0;
    }

    /// <summary>The speeds between which the shaft is for nine tenths of the stretch shown, m/s: resting ends would make every damper look slow.</summary>
    private static (double Slow, double Fast) Middle(RunSamples samples)
    {
        double[] sorted = [.. samples.Shown.Select(s => s.ShaftVelocity).Order()];
        return (sorted[(int)(0.05 * (sorted.Length - 1))], sorted[(int)(0.95 * (sorted.Length - 1))]);
    }

    private static void Shares(Sheet sheet, RunSamples samples, Panel above, (double Slow, double Fast) middle)
    {
        double speed = samples.Read.Unit(Dimension.Velocity).PerSi;
        var panel = sheet.Add(new Panel(new SKRect(Left, above.Data.Bottom + 14, Right, above.Data.Bottom + 44), above.XRange, (0, 1)));
        panel.Plot.Axes.Bottom.Label.Text = "shaft velocity, " + samples.Read.Unit(Dimension.Velocity).Name;
        AxisLabels.Style(panel);
        panel.Plot.Axes.Left.TickGenerator = new ScottPlot.TickGenerators.NumericManual();
        panel.Plot.HideGrid();
        Density.Draw(sheet, panel, samples.Shown.Select(s => s.ShaftVelocity * speed), Palette.Ink);
        sheet.Over(canvas =>
        {
            float from = panel.X(middle.Slow * speed), to = panel.X(middle.Fast * speed);
            Marks.Line(canvas, new(from, panel.Data.Top - 5), new(to, panel.Data.Top - 5), Palette.Ink, 2);
            Text.Draw(canvas, "time", SKRect.Create(Left - 36, panel.Data.Top + 8, 30, Text.Small + 2), Palette.Ink);
        });
        sheet.Height = panel.Data.Bottom + 52;
    }
}
