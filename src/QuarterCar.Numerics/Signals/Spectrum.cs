using System.Collections.Immutable;
using System.Numerics;

using MathNet.Numerics;
using MathNet.Numerics.IntegralTransforms;

namespace QuarterCar.Numerics.Signals;

/// <summary>
/// One-sided power spectral density of evenly spaced values: value² per frequency, at k·<see cref="Step"/> from k = 1 on,
/// so that density times step, summed, is the mean square about the mean. Immutable.
/// </summary>
/// <remarks>The transform and the window are MathNet's; it has no estimate of a density, so end matching and Welch's averaging are our own.</remarks>
public sealed class Spectrum
{
    private Spectrum(double step, ImmutableArray<double> densities) => (Step, Densities) = (step, densities);

    /// <summary>Distance between frequencies, in one over the unit of the values' spacing.</summary>
    public double Step { get; }

    /// <summary>The density at (i + 1)·<see cref="Step"/>; frequency 0 and the highest that the spacing can tell are left out.</summary>
    public ImmutableArray<double> Densities { get; }

    /// <summary>Frequency of a density.</summary>
    public double Frequency(int index) => (index + 1) * Step;

    /// <summary>
    /// Of values whose density falls as frequency⁻², as ground does: the line through the first and last value is taken off, so that the values
    /// repeat without a jump, and no window is used. A random walk less that line is a Brownian bridge, whose periodogram is unbiased at every
    /// frequency (its Fourier coefficients are independent, of variance 1/(2πk)²); a window would take its share of the few longest waves.
    /// </summary>
    /// <param name="values">Two at least; the last closes the period and is no sample of its own.</param>
    /// <param name="spacing">Between values.</param>
    public static Spectrum EndMatched(ReadOnlySpan<double> values, double spacing)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(values.Length, 2);
        int count = values.Length - 1;
        var samples = new Complex[count];
        double rise = (values[^1] - values[0]) / count;
        for (int i = 0; i < count; i++)
            samples[i] = values[i] - values[0] - rise * i;
        double[] squares = Squares(samples);
        return new(1 / (count * spacing), [.. squares.Select(s => 2 * spacing / count * s)]);
    }

    /// <summary>Of a vibration: the mean over half-overlapping stretches, each less its mean and under a Hann window.</summary>
    /// <param name="values">At least one stretch.</param>
    /// <param name="spacing">Between values.</param>
    /// <param name="stretch">Values in a stretch, even.</param>
    /// <remarks>Source: P. D. Welch, The use of fast Fourier transform for the estimation of power spectra, IEEE Trans. Audio Electroacoustics AU-15, 1967, 70–73.</remarks>
    public static Spectrum Welch(ReadOnlySpan<double> values, double spacing, int stretch)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(stretch, 4);
        ArgumentOutOfRangeException.ThrowIfLessThan(values.Length, stretch);
        double[] window = Window.HannPeriodic(stretch), sums = [];
        double power = window.Sum(w => w * w);
        var samples = new Complex[stretch];
        int stretches = 0;
        for (int start = 0; start + stretch <= values.Length; start += stretch / 2, stretches++)
        {
            ReadOnlySpan<double> part = values.Slice(start, stretch);
            double mean = Mean(part);
            for (int i = 0; i < stretch; i++)
                samples[i] = window[i] * (part[i] - mean);
            double[] squares = Squares(samples);
            sums = stretches == 0 ? squares : [.. sums.Zip(squares, (a, b) => a + b)];
        }

        double scale = 2 * spacing / (power * stretches);
        return new(1 / (stretch * spacing), [.. sums.Select(s => scale * s)]);
    }

    // |X_k|² for 0 < k < n/2; the samples are overwritten.
    private static double[] Squares(Complex[] samples)
    {
        Fourier.Forward(samples, FourierOptions.NoScaling);
        double[] squares = new double[(samples.Length - 1) / 2];
        for (int k = 0; k < squares.Length; k++)
            squares[k] = samples[k + 1].Real * samples[k + 1].Real + samples[k + 1].Imaginary * samples[k + 1].Imaginary;
        return squares;
    }

    private static double Mean(ReadOnlySpan<double> values)
    {
        double sum = 0;
        foreach (double v in values)
            sum += v;
        return sum / values.Length;
    }
}
