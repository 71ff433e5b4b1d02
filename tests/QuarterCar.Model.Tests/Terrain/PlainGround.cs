using System.Collections.Immutable;

using MathNet.Numerics.Integration;

using QuarterCar.Model.Terrain;

namespace QuarterCar.Model.Tests.Terrain;

/// <summary>
/// Ground straight from the words of physics.md section 2, and roads over it by search and quadrature: slow, and sharing nothing with
/// what it is compared with. Flat, step, ramp and haversine pieces only.
/// </summary>
public sealed class PlainGround
{
    private readonly List<(double Start, double End, Func<double, double> Height)> _stretches = [(double.NegativeInfinity, 0, _ => 0)];

    public PlainGround(ImmutableArray<TerrainPiece> pieces)
    {
        var (s, y) = (0.0, 0.0);
        foreach (var piece in pieces)
        {
            var (s0, y0) = (s, y);
            switch (piece)
            {
                case FlatPiece flat: Lay(flat.Length, _ => y0); break;
                case StepPiece step: y += step.Height; break;
                case RampPiece ramp: Lay(ramp.Length, at => y0 + ramp.Rise * (at - s0) / ramp.Length); y += ramp.Rise; break;
                case HaversinePiece wave:
                    for (var i = 0; i < wave.Count; i++)
                    {
                        var from = s;
                        Lay(wave.Spacing, at => y0 + wave.Height / 2 * (1 - Math.Cos(2 * Math.PI * (at - from) / wave.Spacing)));
                    }
                    break;
                default: throw new ArgumentException("not laid here", nameof(pieces));
            }
        }
        Length = s;
        var last = y;
        Lay(double.PositiveInfinity, _ => last);

        void Lay(double length, Func<double, double> height)
        {
            _stretches.Add((s, s + length, height));
            s += length;
        }
    }

    public double Length { get; }

    public double Height(double s) => _stretches.Last(stretch => stretch.Start <= s).Height(s);

    /// <summary>The rolling circle by search: a fine grid over each stretch, its ends, and golden sections about each local maximum.</summary>
    public double Circle(double s, double radius)
    {
        const int grid = 400;
        var best = double.NegativeInfinity;
        foreach (var (start, end, height) in _stretches)
        {
            var (from, to) = (Math.Max(start, s - radius), Math.Min(end, s + radius));
            if (from >= to)
                continue;
            double Top(double u) => height(u) + Math.Sqrt(Math.Max(0, radius * radius - (u - s) * (u - s))) - radius;
            var values = new double[grid + 1];
            for (var i = 0; i <= grid; i++)
                values[i] = Top(from + (to - from) * i / grid);
            best = Math.Max(best, values.Max());
            for (var i = 0; i <= grid; i++)
            {
                var (left, right) = (Math.Max(i - 1, 0), Math.Min(i + 1, grid));
                if (values[i] >= values[left] && values[i] >= values[right])
                    best = Math.Max(best, Golden(Top, from + (to - from) * left / grid, from + (to - from) * right / grid));
            }
        }
        return best;
    }

    /// <summary>The footprint's mean by Gauss and Legendre's rule, 16 points on each quarter of each stretch within.</summary>
    public double Mean(double s, double length)
    {
        var (rear, front) = (s - length / 2, s + length / 2);
        var area = 0.0;
        foreach (var (start, end, height) in _stretches)
        {
            var (from, to) = (Math.Max(start, rear), Math.Min(end, front));
            for (var quarter = 0; quarter < 4 && from < to; quarter++)
                area += GaussLegendreRule.Integrate(height, from + (to - from) * quarter / 4, from + (to - from) * (quarter + 1) / 4, 16);
        }
        return area / length;
    }

    private static double Golden(Func<double, double> f, double a, double b)
    {
        var share = (Math.Sqrt(5) - 1) / 2;
        for (var i = 0; i < 60; i++)
        {
            var (c, d) = (b - share * (b - a), a + share * (b - a));
            (a, b) = f(c) > f(d) ? (a, d) : (c, b);
        }
        return f((a + b) / 2);
    }
}
