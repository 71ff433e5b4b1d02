namespace QuarterCar.Numerics;

/// <summary>A function of straight pieces between given points, its first and last slope carried on past the ends. Immutable.</summary>
public sealed class StraightLines
{
    private readonly double[] _x;
    private readonly double[] _f;
    private readonly double[] _slope;

    /// <summary>The function through points.</summary>
    /// <param name="x">At least two arguments, rising.</param>
    /// <param name="f">Values.</param>
    /// <exception cref="ArgumentException">Fewer than two points, or arguments that do not rise.</exception>
    public StraightLines(ReadOnlySpan<double> x, ReadOnlySpan<double> f)
    {
        if (x.Length < 2 || x.Length != f.Length)
            throw new ArgumentException("at least two points, as many values as arguments");
        for (int i = 1; i < x.Length; i++)
        {
            if (!(x[i] > x[i - 1]))
                throw new ArgumentException("the arguments must rise");
        }

        _x = x.ToArray();
        _f = f.ToArray();
        _slope = new double[Pieces];
        for (int i = 0; i < Pieces; i++)
            _slope[i] = (_f[i + 1] - _f[i]) / (_x[i + 1] - _x[i]);
    }

    /// <summary>Number of straight pieces.</summary>
    public int Pieces => _x.Length - 1;

    /// <summary>Arguments of the points.</summary>
    public ReadOnlySpan<double> Points => _x;

    /// <summary>Index of the piece that holds an argument; the later one at a point.</summary>
    public int PieceAt(double x)
    {
        int i = 0;
        while (i < Pieces - 1 && x >= _x[i + 1])
            i++;
        return i;
    }

    /// <summary>Slope of a piece.</summary>
    public double Slope(int piece) => _slope[piece];

    /// <summary>Value of a piece's line, carried on past its ends.</summary>
    public double OnPiece(int piece, double x) => _f[piece] + Slope(piece) * (x - _x[piece]);

    /// <summary>Value.</summary>
    public double At(double x) => OnPiece(PieceAt(x), x);

    /// <summary>Integral from the first point to an argument at or beyond it.</summary>
    public double Integral(double x)
    {
        double sum = 0;
        for (int i = 0; i < Pieces && x > _x[i]; i++)
        {
            double to = i == Pieces - 1 ? x : Math.Min(x, _x[i + 1]), d = to - _x[i];
            sum += d * (_f[i] + 0.5 * Slope(i) * d);
        }

        return sum;
    }
}
