using SkiaSharp;

namespace QuarterCar.Reports.Plots;

/// <summary>Drops points that no eye can tell apart, and keeps every extreme.</summary>
internal static class Decimate
{
    /// <summary>A line over rising x: of each pixel column the first, least, most and last point.</summary>
    public static List<SKPoint> Series(IReadOnlyList<SKPoint> points)
    {
        var kept = new List<SKPoint>();
        for (int i = 0; i < points.Count;)
        {
            int column = (int)points[i].X, low = i, high = i, last = i;
            for (; last + 1 < points.Count && (int)points[last + 1].X == column; last++)
            {
                if (points[last + 1].Y < points[low].Y) low = last + 1;
                if (points[last + 1].Y > points[high].Y) high = last + 1;
            }

            foreach (int k in new[] { i, Math.Min(low, high), Math.Max(low, high), last }.Distinct()) kept.Add(points[k]);
            i = last + 1;
        }

        return kept;
    }

    /// <summary>Any path: points nearer than 0.7 px to the one before are dropped.</summary>
    public static List<SKPoint> Path(IReadOnlyList<SKPoint> points)
    {
        var kept = new List<SKPoint>();
        foreach (var point in points)
        {
            if (kept.Count == 0 || SKPoint.Distance(kept[^1], point) >= 0.7f) kept.Add(point);
        }

        if (points.Count > 0 && kept[^1] != points[^1]) kept.Add(points[^1]);
        return kept;
    }
}
