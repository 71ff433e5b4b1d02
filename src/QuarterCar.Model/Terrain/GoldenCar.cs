using MathNet.Numerics.LinearAlgebra;

using QuarterCar.Numerics;

namespace QuarterCar.Model.Terrain;

/// <summary>
/// The International Roughness Index: the mean of |ż_s − ż_u| of a quarter car of agreed rates that is drawn over the heights at 80 km/h,
/// per distance. States are slopes (ż_s, z̈_s, ż_u, z̈_u over the speed), so that heights and distances in m give m/m.
/// </summary>
/// <remarks>
/// Source: Sayers, Gillespie and Paterson, Guidelines for Conducting and Calibrating Road Roughness Measurements, World Bank Technical Paper 46,
/// 1986; Sayers, Transportation Research Record 1501, 1995. The start over 11 m (half a second) is from memory. MathNet has no matrix exponential,
/// so the transition from height to height comes from <see cref="MatrixExponential"/>.
/// </remarks>
public static class GoldenCar
{
    /// <summary>Distance between the heights that the index is defined on here, m.</summary>
    public const double Spacing = 0.25;

    /// <summary>Finer heights are first averaged over this length, m.</summary>
    public const double Averaging = 0.25;

    /// <summary>Shortest course that has an index, m.</summary>
    public const double Shortest = 30;

    private const double Speed = 80 / 3.6; // m/s
    private const double TyreRate = 653, SpringRate = 63.3, Damping = 6; // over the sprung mass: 1/s², 1/s², 1/s
    private const double UnsprungShare = 0.15;
    private const double StartLength = 11; // m

    /// <summary>The equation of motion Ż = A·Z + B·slope.</summary>
    internal static (Matrix<double> A, Vector<double> B) Motion() => (
        Matrix<double>.Build.DenseOfRowArrays(
            [0, 1, 0, 0],
            [-SpringRate, -Damping, SpringRate, Damping],
            [0, 0, 0, 1],
            [SpringRate / UnsprungShare, Damping / UnsprungShare, -(TyreRate + SpringRate) / UnsprungShare, -Damping / UnsprungShare]),
        Vector<double>.Build.Dense([0, 0, 0, TyreRate / UnsprungShare]));

    /// <summary>The state after a stretch of one slope, Z' = ST·Z + PR·slope.</summary>
    /// <param name="spacing">Its length, m.</param>
    public static (Matrix<double> Transition, Vector<double> Response) Step(double spacing)
    {
        // exp of (A B; 0 0) holds both; ST and PR from A⁻¹(ST − I)B would cancel.
        var (a, b) = Motion();
        var both = Matrix<double>.Build.Dense(5, 5);
        both.SetSubMatrix(0, 0, a);
        both.SetColumn(4, 0, 4, b);
        Matrix<double> exponential = MatrixExponential.Of(both * (spacing / Speed));
        return (exponential.SubMatrix(0, 4, 0, 4), exponential.Column(4, 0, 4));
    }

    /// <summary>The index of evenly spaced heights, m/km (the same number as mm/m).</summary>
    /// <param name="heights">m; two at least.</param>
    /// <param name="spacing">Between them, m.</param>
    /// <param name="fromRest">True starts the car at rest; false, as defined, on the mean slope of the first 11 m.</param>
    public static double Index(ReadOnlySpan<double> heights, double spacing, bool fromRest = false)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(heights.Length, 2);
        var (transition, response) = Step(spacing);
        double[] st = transition.ToRowMajorArray(), pr = response.ToArray();
        int start = Math.Clamp((int)Math.Round(StartLength / spacing), 1, heights.Length - 1);
        double slope = fromRest ? 0 : (heights[start] - heights[0]) / (start * spacing);
        Span<double> z = [slope, 0, slope, 0], next = stackalloc double[4];
        double sum = 0;
        for (int i = 1; i < heights.Length; i++)
        {
            slope = (heights[i] - heights[i - 1]) / spacing;
            for (int row = 0; row < 4; row++)
                next[row] = st[4 * row] * z[0] + st[4 * row + 1] * z[1] + st[4 * row + 2] * z[2] + st[4 * row + 3] * z[3] + pr[row] * slope;
            next.CopyTo(z);
            sum += Math.Abs(z[0] - z[2]);
        }

        return 1000 * sum / (heights.Length - 1);
    }
}
