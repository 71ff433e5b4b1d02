using System.Collections.Immutable;

namespace QuarterCar.Model;

/// <summary>Shaft travel over wheel travel, r(w) = dX/dw: straight lines between table points, held past the ends, integrated exactly from w = 0 (physics.md section 1). Immutable.</summary>
public sealed class MotionRatio
{
    private readonly RatioPiece[] _pieces;

    private MotionRatio(RatioPiece[] pieces) => _pieces = pieces;

    /// <summary>The ratio of a table; one point is a constant.</summary>
    /// <param name="table">Wheel travel m, ratio above 0; rising in travel.</param>
    public static MotionRatio Of(ImmutableArray<TablePoint> table)
    {
        var pieces = new RatioPiece[table.Length + 1];
        pieces[0] = new RatioPiece(double.NegativeInfinity, table[0].At, 0, table[0].Value, 0);
        for (int i = 0; i < table.Length; i++)
        {
            bool last = i == table.Length - 1;
            double slope = last ? 0 : (table[i + 1].Value - table[i].Value) / (table[i + 1].At - table[i].At);
            double x = pieces[i].Travel(table[i].At);
            pieces[i + 1] = new RatioPiece(table[i].At, table[i].At, x, table[i].Value, slope);
        }

        // So far X counts from the first point; physics.md counts it from w = 0.
        double shift = pieces.Last(p => p.From <= 0).Travel(0);
        return new MotionRatio([.. pieces.Select(p => p with { Shaft = p.Shaft - shift })]);
    }

    /// <summary>The pieces, from full droop on; each holds from its From to the next one's.</summary>
    public ReadOnlySpan<RatioPiece> Pieces => _pieces;

    /// <summary>True where the ratio is one number.</summary>
    public bool IsConstant => _pieces.All(p => p.Slope == 0);

    /// <summary>The piece at a wheel travel.</summary>
    public ref readonly RatioPiece PieceAt(double w)
    {
        int i = _pieces.Length - 1;
        while (i > 0 && w < _pieces[i].From)
            i--;
        return ref _pieces[i];
    }

    /// <summary>Shaft travel X(w), m.</summary>
    public double Travel(double w) => PieceAt(w).Travel(w);

    /// <summary>Ratio r(w).</summary>
    public double Ratio(double w) => PieceAt(w).Ratio(w);

    /// <summary>Wheel travel at a shaft travel, m: the inverse of <see cref="Travel"/>.</summary>
    public double WheelTravel(double x)
    {
        int i = _pieces.Length - 1;
        while (i > 0 && x < _pieces[i].Travel(_pieces[i].From))
            i--;
        return _pieces[i].WheelTravel(x);
    }
}

/// <summary>One straight piece of the motion ratio.</summary>
/// <param name="From">Wheel travel from which it holds, m.</param>
/// <param name="Wheel">Wheel travel that the formula counts from, m.</param>
/// <param name="Shaft">Shaft travel there, m.</param>
/// <param name="RatioThere">Ratio there.</param>
/// <param name="Slope">dr/dw, 1/m.</param>
public readonly record struct RatioPiece(double From, double Wheel, double Shaft, double RatioThere, double Slope)
{
    /// <summary>X(w), m, carried on past the piece's ends.</summary>
    public double Travel(double w) => Shaft + (w - Wheel) * (RatioThere + 0.5 * Slope * (w - Wheel));

    /// <summary>r(w).</summary>
    public double Ratio(double w) => RatioThere + Slope * (w - Wheel);

    /// <summary>The inverse of <see cref="Travel"/>, m; the root that grows with x.</summary>
    public double WheelTravel(double x)
    {
        double rise = x - Shaft;

        // 2·rise/(r + √(r² + 2·slope·rise)): no difference of near equals where the slope is small or zero.
        return Wheel + 2 * rise / (RatioThere + Math.Sqrt(RatioThere * RatioThere + 2 * Slope * rise));
    }
}
