using System.Runtime.CompilerServices;

namespace QuarterCar.Model.Terrain;

/// <summary>How a road segment is computed.</summary>
public enum RoadForm
{
    /// <summary>A polynomial of degree two at most: lines, and footprints over lines.</summary>
    Polynomial,

    /// <summary>The tyre's circle about a corner of the ground.</summary>
    Arc,

    /// <summary>A table: haversines.</summary>
    Table,
}

/// <summary>One formula of a road, without its range; equal formulas give equal roads.</summary>
/// <param name="Form">How it is computed.</param>
/// <param name="Origin">Distance from which the formula counts, m: the corner of an arc.</param>
/// <param name="C0">Height added, m: at the origin of a polynomial; of an arc the corner's less the radius.</param>
/// <param name="C1">Polynomial: slope at the origin. Arc: the radius, m.</param>
/// <param name="C2">Polynomial: half the second derivative, 1/m.</param>
/// <param name="Table">The table, else null.</param>
internal readonly record struct RoadFormula(RoadForm Form, double Origin, double C0, double C1 = 0, double C2 = 0, RoadTable? Table = null);

/// <summary>
/// One stretch of road with one smooth formula, used on [Start, End) and carried on smoothly a little past both, so that a step that ends at
/// a break never sees the kink. Height in m, up positive. Only three forms: it is evaluated in the integrator's innermost loop.
/// </summary>
public readonly struct RoadSegment
{
    /// <summary>An arc's slope runs to infinity at the end of the radius; with at least this share of R under the line it stays finite: 1e9 at most.</summary>
    internal const double LeastDepth = 1e-9;

    private readonly double _origin;
    private readonly double _c0;
    private readonly double _c1;
    private readonly double _c2;
    private readonly RoadTable? _table;

    internal RoadSegment(double start, double end, RoadFormula formula)
    {
        (Start, End, Form) = (start, end, formula.Form);
        (_origin, _c0, _c1, _c2, _table) = (formula.Origin, formula.C0, formula.C1, formula.C2, formula.Table);
    }

    /// <summary>Where it starts, m; −∞ for the first.</summary>
    public double Start { get; }

    /// <summary>Where it ends, m; +∞ for the last.</summary>
    public double End { get; }

    /// <summary>How it is computed.</summary>
    public RoadForm Form { get; }

    /// <summary>True where it is level.</summary>
    public bool IsLevel => Form == RoadForm.Polynomial && _c1 == 0 && _c2 == 0;

    /// <summary>Second derivative of a polynomial, 1/m.</summary>
    public double PolynomialBend => 2 * _c2;

    /// <summary>A bound of |h''|, 1/m; not a number where there is none that helps.</summary>
    public double MostBend => Form switch { RoadForm.Polynomial => Math.Abs(PolynomialBend), RoadForm.Table when IsTabulated => _table!.MostBend, _ => double.NaN };

    /// <summary>Between two crests at least, m; +∞ where there is one at most.</summary>
    public double CrestDistance => _table?.Width ?? double.PositiveInfinity;

    /// <summary>Cells of its table; 0 without one.</summary>
    public int TableCells => _table?.Cells ?? 0;

    /// <summary>Whether both segments read the same table.</summary>
    public bool SharesTableWith(in RoadSegment other) => _table is not null && ReferenceEquals(_table, other._table);

    /// <summary>Height at a distance, m.</summary>
    public double HeightAt(double s)
    {
        Evaluate(s, out double h, out _);
        return h;
    }

    /// <summary>Whether it is the tyre's circle about a corner of the ground.</summary>
    /// <param name="origin">Distance of the corner, m.</param>
    /// <param name="radius">The tyre's radius, m.</param>
    public bool TryArc(out double origin, out double radius)
    {
        (origin, radius) = (_origin, _c1);
        return Form == RoadForm.Arc;
    }

    /// <summary>True where <see cref="EvaluateTabulated"/> serves.</summary>
    public bool IsTabulated => _table is null || _table.Cells > 0;

    /// <summary>Height and slope of the road (physics.md section 2).</summary>
    /// <param name="s">Distance, m.</param>
    /// <param name="h">Height, m, up positive.</param>
    /// <param name="slope">dh/ds, positive uphill.</param>
    public void Evaluate(double s, out double h, out double slope)
    {
        if (IsTabulated)
        {
            EvaluateTabulated(s, out h, out slope);
            return;
        }

        _table!.Evaluate(s - _origin, out h, out slope);
        h += _c0;
    }

    /// <summary>The same where no exact curve has to be asked.</summary>
    /// <param name="s">Distance, m.</param>
    /// <param name="h">Height, m, up positive.</param>
    /// <param name="slope">dh/ds, positive uphill.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void EvaluateTabulated(double s, out double h, out double slope)
    {
        double x = s - _origin;
        if (Form == RoadForm.Polynomial)
        {
            h = Math.FusedMultiplyAdd(Math.FusedMultiplyAdd(_c2, x, _c1), x, _c0);
            slope = Math.FusedMultiplyAdd(2 * _c2, x, _c1);
        }
        else if (Form == RoadForm.Arc)
        {
            // (R − x)(R + x) keeps the digits that R² − x² loses near the end of the radius.
            double depth = Math.Sqrt(Math.Max((_c1 - x) * (_c1 + x), 0));
            h = _c0 + depth;
            slope = -x / Math.Max(depth, LeastDepth * _c1);
        }
        else
        {
            _table!.EvaluateCells(x, out h, out slope);
            h += _c0;
        }
    }
}
