using System.Collections.Immutable;

using MathNet.Numerics.LinearAlgebra;

namespace QuarterCar.Studies.Spreads;

/// <summary>
/// Which tolerance a figure's variance comes from: the squared standardised regression coefficients of the sample, with the small correlations that every finite
/// sample has shared out (relative weights: Johnson, "A heuristic method for estimating the relative weight of predictor variables in multiple regression",
/// Multivariate Behavioral Research 35(1), 2000, 1–19). Never negative; their sum is the coefficient of determination R² ≤ 1. What is missing to 1 is what
/// no straight line explains: kinks, contacts, tolerances acting together.
/// </summary>
public static class VarianceShares
{
    // Below this an eigenvalue of a correlation matrix is rounding.
    private const double Rounding = 1e-10;

    /// <summary>Shares by column.</summary>
    /// <param name="inputs">A column an input, a row a sample.</param>
    /// <param name="figure">The figure of each sample.</param>
    /// <returns>Null where there are too few samples to tell, or the figure does not vary.</returns>
    public static ImmutableArray<double>? Of(double[][] inputs, double[] figure)
    {
        if (figure.Length < inputs.Length + 2 || Standardised(figure) is not { } y)
            return null;
        int count = inputs.Length;
        double[]?[] x = [.. inputs.Select(Standardised)];
        var correlations = Matrix<double>.Build.Dense(count, count, (i, j) => i == j ? 1 : Dot(x[i], x[j]));
        var withFigure = Vector<double>.Build.Dense(count, i => Dot(x[i], y));
        var eigen = correlations.Evd(Symmetricity.Symmetric);
        var roots = eigen.EigenValues.Map(e => Math.Sqrt(Math.Max(0, e.Real)));
        var turn = eigen.EigenVectors;
        var half = turn * Matrix<double>.Build.DenseOfDiagonalVector(roots) * turn.Transpose();
        var back = turn * Matrix<double>.Build.DenseOfDiagonalVector(roots.Map(r => r * r > Rounding ? 1 / r : 0)) * turn.Transpose();
        var onOrthogonal = back * withFigure;
        return [.. Enumerable.Range(0, count).Select(i => Enumerable.Range(0, count).Sum(k => half[i, k] * half[i, k] * onOrthogonal[k] * onOrthogonal[k]))];
    }

    // Mean 0, sum of squares 1; null where all are the same up to rounding.
    private static double[]? Standardised(double[] values)
    {
        double mean = values.Sum() / values.Length;
        double[] centred = [.. values.Select(v => v - mean)];
        double length = Math.Sqrt(centred.Sum(c => c * c)), size = values.Max(Math.Abs);
        return length <= 1e-12 * size * Math.Sqrt(values.Length) ? null : [.. centred.Select(c => c / length)];
    }

    private static double Dot(double[]? a, double[]? b)
    {
        double sum = 0;
        for (int i = 0; a is not null && b is not null && i < a.Length; i++)
            sum += a[i] * b[i];
        return sum;
    }
}
