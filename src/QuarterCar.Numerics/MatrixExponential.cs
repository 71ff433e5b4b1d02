using MathNet.Numerics.LinearAlgebra;

namespace QuarterCar.Numerics;

/// <summary>
/// The exponential of a square matrix by scaling and squaring around the Padé approximant of degree 13: backward error
/// below the rounding of doubles.
/// </summary>
/// <remarks>
/// Source: N. J. Higham, The scaling and squaring method for the matrix exponential revisited, SIAM J. Matrix Anal.
/// Appl. 26(4), 2005, 1179–1193: the bound θ13 and the coefficients are those of its table 2.3 and equation (2.3).
/// </remarks>
public static class MatrixExponential
{
    /// <summary>Largest 1-norm for which the approximant alone is as good as doubles are.</summary>
    private const double LargestNorm = 5.371920351148152;

    // (26−k)!·13! / (26!·k!·(13−k)!), scaled to whole numbers.
    private static ReadOnlySpan<double> Pade =>
    [
        64764752532480000, 32382376266240000, 7771770303897600, 1187353796428800, 129060195264000, 10559470521600,
        670442572800, 33522128640, 1323241920, 40840800, 960960, 16380, 182, 1,
    ];

    /// <summary>exp(a).</summary>
    /// <param name="a">A square matrix of finite numbers.</param>
    public static Matrix<double> Of(Matrix<double> a)
    {
        ArgumentNullException.ThrowIfNull(a);
        double norm = a.L1Norm();
        int squarings = norm > LargestNorm ? (int)Math.Ceiling(Math.Log2(norm / LargestNorm)) : 0;
        Matrix<double> result = Approximant(a * Math.ScaleB(1, -squarings));
        for (int i = 0; i < squarings; i++)
            result *= result;
        return result;
    }

    private static Matrix<double> Approximant(Matrix<double> a)
    {
        ReadOnlySpan<double> c = Pade;
        Matrix<double> one = Matrix<double>.Build.DenseIdentity(a.RowCount);
        Matrix<double> a2 = a * a, a4 = a2 * a2, a6 = a4 * a2;
        Matrix<double> odd = a * (a6 * (c[13] * a6 + c[11] * a4 + c[9] * a2) + c[7] * a6 + c[5] * a4 + c[3] * a2 + c[1] * one);
        Matrix<double> even = a6 * (c[12] * a6 + c[10] * a4 + c[8] * a2) + c[6] * a6 + c[4] * a4 + c[2] * a2 + c[0] * one;
        return (even - odd).Solve(even + odd);
    }
}
