using System.Collections.Immutable;

using QuarterCar.Model.Terrain;
using QuarterCar.Scenarios.Reading;

namespace QuarterCar.Studies.Terrains;

/// <summary>Where a ground is written down.</summary>
internal static class TerrainPlaces
{
    // Two places nearer than this are one, m: corners and places of the grid that differ by rounding.
    private const double Same = 1e-9;

    /// <summary>Distance and height, m, in order of distance: a profile's own points, else every 0.05 m and every corner, on both sides of a step.</summary>
    public static IEnumerable<(double Distance, double Height)> Of(Ground ground, ImmutableArray<TerrainPiece> pieces)
    {
        double last = double.NegativeInfinity;
        int step = 0;
        foreach (double s in Distances(ground, pieces).Prepend(0).Append(ground.Length))
        {
            if (s - last < Same)
                continue;
            for (; step < ground.Steps.Length && ground.Steps[step].Distance < s + Same; step++)
                yield return (s, ground.Steps[step].Before);
            yield return (s, Height(ground, s));
            last = s;
        }
    }

    // A place within rounding before a corner has the height after it.
    private static double Height(Ground ground, double s)
    {
        int i = ground.IndexAt(s + Same);
        return ground.Parts[i].Height(s);
    }

    private static IEnumerable<double> Distances(Ground ground, ImmutableArray<TerrainPiece> pieces)
    {
        double[] corners = ground.Corners.ToArray();
        double start = 0;
        foreach (TerrainPiece piece in pieces)
        {
            double from = start, end = start + TraceRows.Length(piece);
            IEnumerable<double> places = piece is ProfilePiece profile ? profile.Points.Select(p => from + (p.At - profile.Points[0].At)) : Grid(corners, from, end);
            foreach (double s in places)
                yield return s;
            start = end;
        }
    }

    private static IEnumerable<double> Grid(double[] corners, double from, double to)
    {
        int count = (int)Math.Ceiling((to - from) / RandomCourse.Spacing - Same), corner = Array.BinarySearch(corners, from);
        corner = corner >= 0 ? corner + 1 : ~corner;
        for (int i = 0; i <= count; i++)
        {
            double s = i == count ? to : from + i * RandomCourse.Spacing;
            for (; corner < corners.Length && corners[corner] < s; corner++)
                yield return corners[corner];
            yield return s;
        }
    }
}
