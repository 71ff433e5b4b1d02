using QuarterCar.Reports.Units;
using QuarterCar.Studies;

using SkiaSharp;

namespace QuarterCar.Reports.Plots;

/// <summary>Shaft showing lying down: full droop at the left, full bump at the right, as the shaft goes in; zones as upright bands with their edges named on top.</summary>
internal static class TravelAxis
{
    /// <summary>Plotted place of a shaft showing, m: its negative in readable units, so that the axis runs toward full bump.</summary>
    public static double X(double showing, Readable read) => -showing * read.Unit(Dimension.Length).PerSi;

    /// <summary>A panel over shaft showing.</summary>
    public static Panel Panel(
        Sheet sheet, StandingResult standing, Readable read, float top, float height, float left, float right, (double From, double To) y, RunSamples? samples)
    {
        double stroke = standing.Scenario.Corner.Coilover.Stroke;
        double high = Math.Max(stroke, samples?.Shown.Max(s => s.ShaftShowing) ?? stroke), low = Math.Min(0, samples?.Shown.Min(s => s.ShaftShowing) ?? 0);
        var panel = sheet.Add(new Panel(
            new SKRect(left, top, right, top + height), (X(high + (0.02 * stroke), read), X(low - (0.02 * stroke), read)), y));
        Plots.Panel.Ticks(panel.Plot.Axes.Bottom, v => Plots.Panel.Number(-v == 0 ? 0 : -v));
        panel.Plot.Axes.Bottom.Label.Text = "shaft showing, " + read.Unit(Dimension.Length).Name;
        return panel;
    }

    /// <summary>Bands of the zones, edges named above.</summary>
    public static void Bands(Sheet sheet, Panel panel, StrokeZones zones, Readable read)
    {
        Shades(sheet, panel, zones, read);
        EdgeLabels(sheet, panel, zones, read);
    }

    /// <summary>Bands of the zones without a word.</summary>
    public static void Shades(Sheet sheet, Panel panel, StrokeZones zones, Readable read)
    {
        var data = panel.Data;
        sheet.Under(canvas =>
        {
            Marks.Band(canvas, data, StrokeZones.MetalShade);
            foreach (var zone in zones.Zones)
                Marks.Band(canvas, new SKRect(panel.X(X(zone.High, read)), data.Top, panel.X(X(zone.Low, read)), data.Bottom), zone.Shade);
        });
        foreach (var edge in zones.Edges.Where(e => e.Name is "ride height" or "crossover" or "tender closes"))
        {
            float x = panel.X(X(edge.Showing, read));
            panel.Labels.AvoidHelp(new(x, data.Top), new(x, data.Bottom));
            sheet.Under(canvas => Marks.Line(canvas, new(x, data.Top), new(x, data.Bottom), Palette.Help, 1.2f, edge.Name == "ride height" ? [7, 4] : [2, 3]));
        }
    }

    /// <summary>Names of the zones inside their bands, at the first of these heights, px, that is free; those too narrow go without.</summary>
    public static void Names(Sheet sheet, Panel panel, StrokeZones zones, Readable read, params float[] middles)
    {
        foreach (var zone in zones.Zones)
        {
            float from = panel.X(X(zone.High, read)), to = panel.X(X(zone.Low, read));
            var size = Text.Size(zone.Name);
            float room = (to - from - size.Width) / 2;
            if (room < 2) continue;
            foreach (float middle in middles)
            {
                if (panel.Labels.Along(middle, size, from + Math.Max(2, room - 20), to - 2) is not { } place) continue;
                sheet.Over(canvas => Text.Draw(canvas, zone.Name, place, zone.Ink));
                break;
            }
        }
    }

    /// <summary>Names of the zones above the panel, at a height, px.</summary>
    public static void NamesAbove(Sheet sheet, Panel panel, StrokeZones zones, Readable read, float middle)
    {
        foreach (var zone in zones.Zones)
        {
            float from = panel.X(X(zone.High, read)), to = panel.X(X(zone.Low, read));
            var size = Text.Size(zone.Name);
            if (to - from < size.Width + 6) continue;
            var place = SKRect.Create(((from + to) / 2) - (size.Width / 2), middle - (size.Height / 2), size.Width, size.Height);
            sheet.Over(canvas => Text.Draw(canvas, zone.Name, place, zone.Ink));
        }
    }

    private static void EdgeLabels(Sheet sheet, Panel panel, StrokeZones zones, Readable read)
    {
        string unit = " " + read.Unit(Dimension.Length).Name;
        string[] texts = [.. zones.Edges.Select(e => read.Number(Dimension.Length, e.Showing) + unit)];
        float apart = texts.Max(t => Text.Size(t).Width) + 10;
        float[] wanted = [.. zones.Edges.Select(e => panel.X(X(e.Showing, read)))];
        float[] placed = ZoneBands.Spread(wanted, apart, panel.Data.Left - 10, panel.Data.Right - 10);
        for (int i = 0; i < texts.Length; i++)
        {
            var size = Text.Size(texts[i]);
            var place = SKRect.Create(placed[i] - (size.Width / 2), panel.Data.Top - 30, size.Width, size.Height);
            string text = texts[i];
            float from = wanted[i], to = placed[i];
            sheet.Over(canvas =>
            {
                Marks.Line(canvas, new(from, panel.Data.Top), new(to, panel.Data.Top - 14), Palette.Help, 1);
                Text.Draw(canvas, text, place, Palette.Ink);
            });
        }
    }
}
