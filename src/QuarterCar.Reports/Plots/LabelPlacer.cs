using SkiaSharp;

namespace QuarterCar.Reports.Plots;

/// <summary>Finds free places for labels inside an area: off the data, off each other. What finds no place is left out and counted by the caller.</summary>
internal sealed class LabelPlacer(SKRect area)
{
    private const float Gap = 3;

    private static readonly float[] Distances = [9, 20, 34, 50, 70];

    private static readonly (float X, float Y)[] Directions =
        [(1, -1), (-1, -1), (1, 1), (-1, 1), (0, -1), (0, 1), (1, 0), (-1, 0)];

    private readonly List<SKRect> _taken = [];
    private readonly List<SKPoint> _points = [];
    private readonly List<SKRect> _helpLines = [];

    /// <summary>Keeps labels off a rectangle.</summary>
    public void Avoid(SKRect rect) => _taken.Add(rect);

    /// <summary>Keeps labels off a help line, upright or level, where there is another place.</summary>
    public void AvoidHelp(SKPoint from, SKPoint to) =>
        _helpLines.Add(new(Math.Min(from.X, to.X), Math.Min(from.Y, to.Y), Math.Max(from.X, to.X) + 0.1f, Math.Max(from.Y, to.Y) + 0.1f));

    /// <summary>Keeps labels off a line through these pixels.</summary>
    public void AvoidLine(IReadOnlyList<SKPoint> line)
    {
        const float step = 3;
        for (int i = 1; i < line.Count; i++)
        {
            var (a, b) = (line[i - 1], line[i]);
            int pieces = Math.Clamp((int)(SKPoint.Distance(a, b) / step), 1, 400);
            for (int k = 0; k <= pieces; k++) _points.Add(new(a.X + ((b.X - a.X) * k / pieces), a.Y + ((b.Y - a.Y) * k / pieces)));
        }
    }

    /// <summary>A free place for a text near an anchor, nearest first; null where there is none.</summary>
    public SKRect? Near(SKPoint anchor, SKSize size) => Near(anchor, size, _helpLines) ?? Near(anchor, size, []);

    /// <summary>A free place on one height, searched along the width from the left; null where there is none.</summary>
    public SKRect? Along(float middle, SKSize size, float from, float to)
    {
        for (float x = from; x + size.Width <= to; x += 8)
        {
            var rect = SKRect.Create(x, middle - (size.Height / 2), size.Width, size.Height);
            if (IsFree(rect, [])) return Take(rect);
        }

        return null;
    }

    private SKRect? Near(SKPoint anchor, SKSize size, List<SKRect> helpLines)
    {
        foreach (float distance in Distances)
        {
            foreach (var (dx, dy) in Directions)
            {
                float x = anchor.X + (dx * distance) - (dx < 0 ? size.Width : dx == 0 ? size.Width / 2 : 0);
                float y = anchor.Y + (dy * distance) - (dy < 0 ? size.Height : dy == 0 ? size.Height / 2 : 0);
                var rect = SKRect.Create(x, y, size.Width, size.Height);
                if (IsFree(rect, helpLines)) return Take(rect);
            }
        }

        return null;
    }

    private SKRect Take(SKRect rect)
    {
        _taken.Add(rect);
        return rect;
    }

    private bool IsFree(SKRect rect, List<SKRect> helpLines)
    {
        var wide = SKRect.Inflate(rect, Gap, Gap);
        if (rect.Left < area.Left + 2 || rect.Right > area.Right - 2 || rect.Top < area.Top + 1 || rect.Bottom > area.Bottom - 1) return false;
        foreach (var taken in _taken)
        {
            if (taken.IntersectsWith(wide)) return false;
        }

        foreach (var line in helpLines)
        {
            if (line.IntersectsWith(rect)) return false;
        }

        foreach (var point in _points)
        {
            if (wide.Contains(point)) return false;
        }

        return true;
    }
}
