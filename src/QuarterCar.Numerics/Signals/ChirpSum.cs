using System.Numerics;

using MathNet.Numerics.IntegralTransforms;

namespace QuarterCar.Numerics.Signals;

/// <summary>
/// Sums of turning arrows, <c>Σ_k c_k·exp(2πi·k·j·turn)</c> for j = 0, 1, …, with any turn: the chirp z-transform. It makes three transforms of
/// MathNet do for sums whose length and frequencies do not fit a grid, which MathNet itself does not offer.
/// </summary>
/// <remarks>Source: L. I. Bluestein, A linear filtering approach to the computation of the discrete Fourier transform, IEEE Trans. Audio Electroacoustics AU-18, 1970, 451–455.</remarks>
public static class ChirpSum
{
    /// <summary>The sums.</summary>
    /// <param name="coefficients">c_k from k = 0 on.</param>
    /// <param name="turn">Turns of the first arrow from one j to the next.</param>
    /// <param name="count">Number of sums; below 2²⁶, so that squares of j are whole numbers to the bit.</param>
    /// <param name="cancel">Asked between transforms.</param>
    public static Complex[] Of(ReadOnlySpan<Complex> coefficients, double turn, int count, CancellationToken cancel = default)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, 1 << 26);
        int terms = coefficients.Length, size = (int)BitOperations.RoundUpToPowerOf2((uint)(terms + count - 1));

        // k·j = (k² + j² − (j − k)²)/2 turns the sum into a convolution with a chirp.
        Complex[] chirp = Chirp(Math.Max(terms, count), turn / 2), product = new Complex[size], filter = new Complex[size];
        for (int k = 0; k < terms; k++)
            product[k] = coefficients[k] * chirp[k];
        for (int j = 0; j < count; j++)
            filter[j] = Complex.Conjugate(chirp[j]);
        for (int k = 1; k < terms; k++)
            filter[size - k] = Complex.Conjugate(chirp[k]);
        cancel.ThrowIfCancellationRequested();
        Fourier.Forward(product, FourierOptions.NoScaling);
        cancel.ThrowIfCancellationRequested();
        Fourier.Forward(filter, FourierOptions.NoScaling);
        cancel.ThrowIfCancellationRequested();
        for (int i = 0; i < size; i++)
            product[i] *= filter[i];
        Fourier.Inverse(product, FourierOptions.NoScaling);
        var sums = new Complex[count];
        for (int j = 0; j < count; j++)
            sums[j] = product[j] * chirp[j] / size;
        return sums;
    }

    // exp(2πi·m²·half): a fused product keeps the digits of m²·half that are left once whole turns are taken off.
    private static Complex[] Chirp(int count, double half)
    {
        var chirp = new Complex[count];
        for (int m = 0; m < count; m++)
        {
            double square = (double)m * m, turns = square * half, rest = Math.FusedMultiplyAdd(square, half, -turns);
            chirp[m] = Complex.FromPolarCoordinates(1, 2 * Math.PI * (turns - Math.Floor(turns) + rest));
        }

        return chirp;
    }
}
