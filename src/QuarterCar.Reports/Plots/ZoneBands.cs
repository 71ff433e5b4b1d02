using QuarterCar.Reports.Units;

using SkiaSharp;

namespace QuarterCar.Reports.Plots;

/// <summary>Draws the zones of the stroke into a panel whose axis is shaft showing.</summary>
internal static class ZoneBands
{
    private const float LineHeight = 16;

    /// <summary>Shaft showing up: bands, zone names inside, edges named at the right with their shaft showing.</summary>
    public static void Upright(Sheet sheet, Panel panel, StrokeZones zones, Readable read)
    {
        double perSi = read.Unit(Dimension.Length).PerSi;
        var data = panel.Data;
        sheet.Under(canvas =>
        {
            Marks.Band(canvas, data, StrokeZones.MetalShade);
            foreach (var zone in zones.Zones)
                Marks.Band(canvas, new SKRect(data.Left, panel.Y(zone.High * perSi), data.Right, panel.Y(zone.Low * perSi)), zone.Shade);
        });
        foreach (var edge in zones.Edges)
        {
            float y = panel.Y(edge.Showing * perSi);
            if (edge.Name is not ("ride height" or "crossover" or "tender closes")) continue;
            panel.Labels.AvoidHelp(new(data.Left, y), new(data.Right, y));
            sheet.Under(canvas => Marks.Line(canvas, new(data.Left, y), new(data.Right, y), Palette.Help, 1.2f, edge.Name == "ride height" ? [7, 4] : [2, 3]));
        }

        EdgeLabels(sheet, panel, zones, read, perSi);
    }

    /// <summary>Names of the zones inside their bands, where the data leaves room; call after the data lines are known.</summary>
    public static void Names(Sheet sheet, Panel panel, StrokeZones zones, Readable read)
    {
        double perSi = read.Unit(Dimension.Length).PerSi;
        foreach (var zone in zones.Zones)
        {
            float top = panel.Y(zone.High * perSi), bottom = panel.Y(zone.Low * perSi);
            var size = Text.Size(zone.Name);
            if (bottom - top < size.Height + 4) continue;
            if (panel.Labels.Along((top + bottom) / 2, size, panel.Data.Left + 6, panel.Data.Right - 4) is not { } place) continue;
            sheet.Over(canvas => Text.Draw(canvas, zone.Name, place, zone.Ink));
        }
    }

    private static void EdgeLabels(Sheet sheet, Panel panel, StrokeZones zones, Readable read, double perSi)
    {
        float[] wanted = [.. zones.Edges.Select(e => panel.Y(e.Showing * perSi))];
        float[] placed = Spread(wanted, LineHeight, panel.Data.Top - 4, panel.Data.Bottom + 6);
        for (int i = 0; i < wanted.Length; i++)
        {
            string text = $"{read.Text(Dimension.Length, zones.Edges[i].Showing)} {zones.Edges[i].Name}";
            var place = SKRect.Create(panel.Data.Right + 18, placed[i] - (LineHeight / 2), 0, Text.Small + 2);
            float from = wanted[i], to = placed[i];
            sheet.Over(canvas =>
            {
                Marks.Line(canvas, new(panel.Data.Right, from), new(panel.Data.Right + 15, to), Palette.Help, 1);
                Text.Draw(canvas, text, place, Palette.Ink);
            });
        }
    }

    /// <summary>Moves places apart to a least distance, as little as it takes, in order, inside bounds.</summary>
    public static float[] Spread(float[] wanted, float apart, float least, float most)
    {
        float[] placed = [.. wanted];
        for (int round = 0; round < 200; round++)
        {
            bool moved = false;
            for (int i = 1; i < placed.Length; i++)
            {
                float missing = apart - (placed[i] - placed[i - 1]);
                if (missing <= 0.01f) continue;
                placed[i - 1] -= missing / 2;
                placed[i] += missing / 2;
                moved = true;
            }

            for (int i = 0; i < placed.Length; i++) placed[i] = Math.Clamp(placed[i], least + (i * apart), most - ((placed.Length - 1 - i) * apart));
            if (!moved) break;
        }

        return placed;
    }
}
