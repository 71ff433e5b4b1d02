using System.Numerics;

using QuarterCar.Numerics;
using QuarterCar.Numerics.Signals;

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
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static double[] Heights(char roadClass, double length, ulong seed, CancellationToken cancel = default)
    {
        var heights = Untapered(roadClass, length, seed, cancel);
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
    /// <remarks>Cosines at k/L and places at i·0.05 m: a chirp sum, whose cost grows with the length little faster than the length itself.</remarks>
    public static double[] Untapered(char roadClass, double length, ulong seed, CancellationToken cancel = default)
    {
        var count = (int)Math.Ceiling(length / Spacing * (1 - 1e-12)); // a length that is a multiple of the spacing but for rounding has no extra sample
        var stream = new SplitMix64(seed);
        var density = Density(roadClass);
        var (lowest, highest) = Components(length);
        var arrows = new Complex[Math.Max(0, highest) + 1];
        for (var k = lowest; k <= highest; k++)
            arrows[k] = Complex.FromPolarCoordinates(Amplitude(density, k, length), 2 * Math.PI * stream.NextFraction());
        return Array.ConvertAll(ChirpSum.Of(arrows, Spacing / length, count, cancel), sum => sum.Real);
    }
}
