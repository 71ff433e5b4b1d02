namespace QuarterCar.Web.Answers;

/// <summary>Drops points that no eye can tell apart, and keeps every extreme.</summary>
internal static class Thin
{
    /// <summary>A line over rising x: of each column of a picture the first, least, most and last point.</summary>
    public static List<(double X, double Y)> Columns(IReadOnlyList<(double X, double Y)> points, int columns)
    {
        var kept = new List<(double, double)>();
        if (points.Count == 0) return kept;
        double from = points[0].X, width = Math.Max(points[^1].X - from, 1e-12) / columns;
        for (int i = 0; i < points.Count;)
        {
            int column = (int)((points[i].X - from) / width), low = i, high = i, last = i;
            for (; last + 1 < points.Count && (int)((points[last + 1].X - from) / width) == column; last++)
            {
                if (points[last + 1].Y < points[low].Y) low = last + 1;
                if (points[last + 1].Y > points[high].Y) high = last + 1;
            }

            int before = -1;
            foreach (int k in (ReadOnlySpan<int>)[i, Math.Min(low, high), Math.Max(low, high), last])
            {
                if (k == before) continue;
                kept.Add(points[k]);
                before = k;
            }

            i = last + 1;
        }

        return kept;
    }

    /// <summary>Any path: points nearer to the one before than a share of the picture are dropped.</summary>
    public static List<(double X, double Y)> Path(IReadOnlyList<(double X, double Y)> points, double share)
    {
        var kept = new List<(double X, double Y)>();
        if (points.Count == 0) return kept;
        double across = Math.Max(points.Max(p => p.X) - points.Min(p => p.X), 1e-12), up = Math.Max(points.Max(p => p.Y) - points.Min(p => p.Y), 1e-12);
        foreach ((double X, double Y) point in points)
        {
            if (kept.Count == 0 || Math.Abs(point.X - kept[^1].X) / across + Math.Abs(point.Y - kept[^1].Y) / up >= share) kept.Add(point);
        }

        if (kept[^1] != points[^1]) kept.Add(points[^1]);
        return kept;
    }
}
