namespace QuarterCar.Reports.Studies;

/// <summary>Lines of equal value over a grid of points (marching squares, straight lines along the edges). Cells with an unknown corner have none.</summary>
internal static class Contours
{
    /// <summary>Round values inside a range, about so many.</summary>
    public static List<double> Levels(double least, double most, int about)
    {
        double raw = (most - least) / about, power = Math.Pow(10, Math.Floor(Math.Log10(raw)));
        double step = new[] { 1, 2, 2.5, 5, 10 }.Select(m => m * power).First(s => s >= raw * 0.999);
        var levels = new List<double>();
        for (double i = Math.Ceiling((least / step) + 1e-9); i * step < most - (1e-9 * step); i++)
            levels.Add(i * step);
        return levels;
    }

    /// <summary>The pieces of one level's line, in units of columns and rows.</summary>
    /// <param name="value">Value at column and row.</param>
    /// <param name="columns">Columns.</param>
    /// <param name="rows">Rows.</param>
    /// <param name="level">The level.</param>
    public static IEnumerable<((double X, double Y) From, (double X, double Y) To)> Pieces(Func<int, int, double> value, int columns, int rows, double level)
    {
        for (int r = 0; r + 1 < rows; r++)
        {
            for (int c = 0; c + 1 < columns; c++)
            {
                var cuts = Cuts(c, r, [value(c, r), value(c + 1, r), value(c + 1, r + 1), value(c, r + 1)], level);
                for (int i = 0; i + 1 < cuts.Count; i += 2)
                    yield return (cuts[i], cuts[i + 1]);
            }
        }
    }

    // Where the level cuts the four edges, in turn around the cell: two cuts, or four at a saddle, joined in pairs.
    private static List<(double X, double Y)> Cuts(int c, int r, double[] corner, double level)
    {
        (double X, double Y)[] place = [(c, r), (c + 1, r), (c + 1, r + 1), (c, r + 1)];
        var cuts = new List<(double X, double Y)>(4);
        for (int i = 0; i < 4; i++)
        {
            double a = corner[i], b = corner[(i + 1) % 4];
            if (!double.IsFinite(a) || !double.IsFinite(b))
                return [];
            if (a < level == b < level)
                continue;
            double t = (level - a) / (b - a);
            cuts.Add((place[i].X + (t * (place[(i + 1) % 4].X - place[i].X)), place[i].Y + (t * (place[(i + 1) % 4].Y - place[i].Y))));
        }

        return cuts;
    }
}
