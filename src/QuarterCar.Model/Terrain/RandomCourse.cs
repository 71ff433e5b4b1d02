using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

using QuarterCar.Numerics;

namespace QuarterCar.Model.Terrain;

/// <summary>Heights of a random ISO 8608 course, m, every <see cref="Spacing"/> and at its end (physics.md section 2).</summary>
public static class RandomCourse
{
    /// <summary>Distance between samples, m.</summary>
    public const double Spacing = 0.05;

    private const double LowestFrequency = 0.011; // cycles/m, ISO 8608's range of octaves
    private const double HighestFrequency = 2.83;
    private const double ReferenceFrequency = 0.1;
    private const double LongestTaper = 5; // m

    // k/L is compared with decimal bounds: for L = 200 m, 566/200 and 2.83 are one number to the reader but need not be to the bit.
    // Neighbouring k are 1/k apart, far more than this.
    private const double BoundRounding = 1e-9;

    /// <summary>Displacement density at 0.1 cycles/m, geometric mean of the class, m³ (ISO 8608: A 16e-6, each class four times the one before).</summary>
    public static double Density(char roadClass) => roadClass is >= 'A' and <= 'H'
        ? 16e-6 * (1 << 2 * (roadClass - 'A'))
        : throw new ArgumentOutOfRangeException(nameof(roadClass), roadClass, "classes are A to H");

    /// <summary>The lowest and highest k with 0.011 ≤ k/L ≤ 2.83 cycles/m.</summary>
    public static (int Lowest, int Highest) Components(double length) =>
        (Math.Max(1, (int)Math.Ceiling(LowestFrequency * length * (1 - BoundRounding))), (int)Math.Floor(HighestFrequency * length * (1 + BoundRounding)));

    /// <summary>Amplitude √(2·Gd(n)·Δn) of component <paramref name="k"/>, m.</summary>
    public static double Amplitude(double density, int k, double length)
    {
        var ratio = k / length / ReferenceFrequency;
        return Math.Sqrt(2 * density / (ratio * ratio) / length);
    }

    /// <summary>Heights at 0, 0.05 m, … and at <paramref name="length"/>, relative to the course's start, m; first and last are 0.</summary>
    public static double[] Heights(char roadClass, double length, ulong seed)
    {
        var heights = Untapered(roadClass, length, seed);
        for (var i = 0; i < heights.Length; i++)
            heights[i] *= Taper(i * Spacing, length);
        return [.. heights, 0];
    }

    private static double Taper(double s, double length)
    {
        var width = Math.Min(LongestTaper, length / 10);
        var near = Math.Min(s, length - s);
        return near >= width ? 1 : (1 - Math.Cos(Math.PI * near / width)) / 2;
    }

    /// <summary>The sum of cosines alone, m, at 0, 0.05 m, … up to the last sample before the end.</summary>
    /// <remarks>
    /// With i = q·block + r the cosine at (q, r) is the real part of a product of two phasors, one of q and one of r,
    /// so the double sum becomes a matrix product without cosines in it. Each phasor is a power of an exact one, at most √count steps long:
    /// the error stays below 1e-13 of the amplitude.
    /// </remarks>
    public static double[] Untapered(char roadClass, double length, ulong seed)
    {
        var count = (int)Math.Ceiling(length / Spacing * (1 - 1e-12)); // a length that is a multiple of the spacing but for rounding has no extra sample
        // A multiple of every vector width in use, so that all machines sum alike.
        var block = (int)Math.Ceiling(Math.Sqrt(count) / 8) * 8;
        var blocks = (count + block - 1) / block;
        var heights = new double[blocks * block];
        var stream = new SplitMix64(seed);
        var density = Density(roadClass);
        var (coarse, fine) = (new Complex[blocks], new Complex[block]);
        var (cosines, sines) = (new double[block], new double[block]);
        var (lowest, highest) = Components(length);
        for (var k = lowest; k <= highest; k++)
        {
            var phase = 2 * Math.PI * stream.NextFraction();
            Powers(coarse, Complex.FromPolarCoordinates(Amplitude(density, k, length), phase), k / length * block * Spacing);
            Powers(fine, Complex.One, k / length * Spacing);
            for (var r = 0; r < block; r++)
                (cosines[r], sines[r]) = (fine[r].Real, fine[r].Imaginary);
            for (var q = 0; q < blocks; q++)
                AddProduct(heights.AsSpan(q * block, block), coarse[q], cosines, sines);
        }
        return heights[..count];
    }

    private static void Powers(Complex[] powers, Complex first, double turns)
    {
        var step = Complex.FromPolarCoordinates(1, 2 * Math.PI * (turns - Math.Floor(turns)));
        powers[0] = first;
        for (var i = 1; i < powers.Length; i++)
            powers[i] = powers[i - 1] * step;
    }

    // Compiled at full speed at once: a course is laid before the runtime would notice that this loop is the one that counts.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void AddProduct(Span<double> sums, Complex factor, ReadOnlySpan<double> cosines, ReadOnlySpan<double> sines)
    {
        var (real, minusImaginary) = (new Vector<double>(factor.Real), new Vector<double>(-factor.Imaginary));
        var sum = MemoryMarshal.Cast<double, Vector<double>>(sums);
        var cosine = MemoryMarshal.Cast<double, Vector<double>>(cosines)[..sum.Length];
        var sine = MemoryMarshal.Cast<double, Vector<double>>(sines)[..sum.Length];
        for (var r = 0; r < sum.Length; r++)
            sum[r] = Vector.FusedMultiplyAdd(minusImaginary, sine[r], Vector.FusedMultiplyAdd(real, cosine[r], sum[r]));
    }
}
