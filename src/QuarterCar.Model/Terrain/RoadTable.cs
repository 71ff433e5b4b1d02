using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace QuarterCar.Model.Terrain;

/// <summary>Height (m), slope and second derivative (1/m) of a smooth curve at one abscissa.</summary>
internal readonly record struct CurvePoint(double Height, double Slope, double Bend);

/// <summary>
/// A smooth stretch of road without a closed form, as quintic polynomials over cells of equal width that share height, slope and second
/// derivative at their ends. It replaces a root search or a dozen sines in the innermost loop by a dozen multiplications. Heights in m.
/// Where no table of bearable size follows the curve (a trough within a percent or so of the tyre's own curvature, over which the contact runs
/// away from the wheel like a cube root) it keeps the exact curve and asks that: slower, never wrong.
/// </summary>
internal sealed class RoadTable
{
    private const int FirstCells = 16;

    // The integrator's tolerances are far above this; doubling stops here because rounding of the heights themselves is near.
    private const double WantedError = 1e-13; // m, and of heights above 1 m this share

    private const int MostCells = 8192;
    private const int Order = 6;

    private readonly double[] _coefficients;
    private readonly double _cellsPerMetre;
    private readonly int _lastCell;
    private readonly double _period;
    private readonly double _periodsPerMetre;
    private readonly Func<double, CurvePoint>? _exact;

    private RoadTable(double[] coefficients, double width, bool periodic, Func<double, CurvePoint>? exact = null)
    {
        _exact = exact;
        _coefficients = coefficients;
        _lastCell = coefficients.Length / Order - 1;
        _cellsPerMetre = (_lastCell + 1) / width;
        Width = width;
        (_period, _periodsPerMetre) = periodic ? (width, 1 / width) : (0, 0);
        MostBend = Bend();
    }

    /// <summary>What the table covers, from 0, m; one period if periodic.</summary>
    public double Width { get; }

    /// <summary>Largest |second derivative|, 1/m: between the ends and the middle of a cell it changes little, and a tenth is added.</summary>
    public double MostBend { get; }

    /// <summary>Number of cells; 0 where the exact curve is asked.</summary>
    public int Cells => _exact is null ? _lastCell + 1 : 0;

    /// <summary>Doubles the cells until the middles of all of them are within 1e-13 m of the exact curve; past 8192 the curve itself is kept.</summary>
    /// <param name="exact">The curve over [0, width].</param>
    /// <param name="width">m.</param>
    /// <param name="periodic">Whether it repeats beyond.</param>
    public static RoadTable Build(Func<double, CurvePoint> exact, double width, bool periodic)
    {
        var nodes = new CurvePoint[FirstCells + 1];
        for (var i = 0; i <= FirstCells; i++)
            nodes[i] = exact(width * i / FirstCells);
        while (true)
        {
            var table = new RoadTable(Coefficients(nodes, width), width, periodic);
            var finer = new CurvePoint[2 * table.Cells + 1];
            var (error, size) = (0.0, 1.0);
            for (var i = 0; i < finer.Length; i++)
            {
                if (i % 2 == 0)
                {
                    finer[i] = nodes[i / 2];
                    continue;
                }
                var x = width * i / (2 * table.Cells);
                finer[i] = exact(x);
                table.Evaluate(x, out var height, out _);
                error = Math.Max(error, Math.Abs(height - finer[i].Height));
                size = Math.Max(size, Math.Abs(height));
            }
            if (error < WantedError * size)
                return table;
            if (table.Cells >= MostCells)
                return new RoadTable(Coefficients(nodes, width), width, periodic, exact);
            nodes = finer;
        }
    }

    /// <summary>Height and slope; a little past the ends the last cell's polynomial is carried on.</summary>
    public void Evaluate(double x, out double height, out double slope)
    {
        if (_exact is null)
            EvaluateCells(x, out height, out slope);
        else
            (height, slope, _) = _exact(x - _period * Math.Floor(x * _periodsPerMetre));
    }

    /// <summary>As <see cref="Evaluate"/> where <see cref="Cells"/> is not 0: without a call, which would cost the innermost loop its registers.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void EvaluateCells(double x, out double height, out double slope)
    {
        x = Math.FusedMultiplyAdd(-_period, Math.Floor(x * _periodsPerMetre), x); // both 0 where the table does not repeat
        double t = x * _cellsPerMetre;
        int cell = Math.Min(Math.Max(double.ConvertToIntegerNative<int>(t), 0), _lastCell);
        t -= cell;
        ref double c = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(_coefficients), (nint)cell * Order);
        double c1 = Unsafe.Add(ref c, 1), c2 = Unsafe.Add(ref c, 2), c3 = Unsafe.Add(ref c, 3), c4 = Unsafe.Add(ref c, 4), c5 = Unsafe.Add(ref c, 5), t2 = t * t;
        height = Math.FusedMultiplyAdd(
            Math.FusedMultiplyAdd(Math.FusedMultiplyAdd(c5, t, c4), t2, Math.FusedMultiplyAdd(c3, t, c2)), t2, Math.FusedMultiplyAdd(c1, t, c));
        double d23 = Math.FusedMultiplyAdd(4 * c4, t, 3 * c3), d01 = Math.FusedMultiplyAdd(2 * c2, t, c1);
        slope = Math.FusedMultiplyAdd(Math.FusedMultiplyAdd(5 * c5, t2, d23), t2, d01) * _cellsPerMetre;
    }

    private double Bend()
    {
        double most = 0;
        for (int k = 0; k < _coefficients.Length; k += Order)
        {
            for (double t = 0; t <= 1; t += 0.5)
                most = Math.Max(most, Math.Abs(2 * _coefficients[k + 2] + t * (6 * _coefficients[k + 3] + t * (12 * _coefficients[k + 4] + t * 20 * _coefficients[k + 5]))));
        }

        return 1.1 * most * _cellsPerMetre * _cellsPerMetre;
    }

    private static double[] Coefficients(CurvePoint[] nodes, double width)
    {
        var cells = nodes.Length - 1;
        var h = width / cells;
        var c = new double[cells * Order];
        for (var i = 0; i < cells; i++)
        {
            var (f0, d0, s0) = (nodes[i].Height, nodes[i].Slope * h, nodes[i].Bend * h * h);
            var (f1, d1, s1) = (nodes[i + 1].Height, nodes[i + 1].Slope * h, nodes[i + 1].Bend * h * h);
            var rise = f1 - f0;
            var k = i * Order;
            c[k] = f0;
            c[k + 1] = d0;
            c[k + 2] = s0 / 2;
            c[k + 3] = 10 * rise - 6 * d0 - 4 * d1 - 1.5 * s0 + 0.5 * s1;
            c[k + 4] = -15 * rise + 8 * d0 + 7 * d1 + 1.5 * s0 - s1;
            c[k + 5] = 6 * rise - 3 * d0 - 3 * d1 - 0.5 * s0 + 0.5 * s1;
        }
        return c;
    }
}
