using System.Collections.Immutable;

using QuarterCar.Numerics.Signals;

namespace QuarterCar.Model.Terrain;

/// <summary>
/// The straight line of slope −2 through the spectrum of a ground, <c>Gd(n) = Gd(n0)·(n/n0)⁻²</c> with n0 = 0.1 cycles/m, by least squares of the
/// logarithms from 0.011 to 2.83 cycles/m.
/// </summary>
/// <param name="Density">Gd(n0), m³.</param>
/// <param name="RoadClass">A to H by Gd(n0): A below 32e-6 m³, each class four times as wide as the one before, H from 131072e-6 m³ on.</param>
/// <remarks>
/// Source: ISO 8608, from memory: the spectrum is first averaged over octaves up to 0.044 cycles/m, thirds of octaves up to 0.28 and twelfths
/// above, so that the many short waves do not outvote the few long ones. The class limits are half and twice the geometric means.
/// </remarks>
public readonly record struct RoughnessFit(double Density, char RoadClass)
{
    /// <summary>n0, cycles/m.</summary>
    public const double Reference = 0.1;

    /// <summary>Least frequency of the fit, cycles/m.</summary>
    public const double Lowest = 0.011;

    /// <summary>Highest frequency of the fit, cycles/m.</summary>
    public const double Highest = 2.83;

    /// <summary>The fit; null where the ground is level or too short to have a wave in the range.</summary>
    public static RoughnessFit? Of(Spectrum spectrum)
    {
        ArgumentNullException.ThrowIfNull(spectrum);
        (double sum, int bands) = (0, 0);
        foreach (double mean in Bands(spectrum).Select(b => b.Density * b.Frequency * b.Frequency / (Reference * Reference)))
        {
            if (!(mean > 0))
                continue;
            sum += Math.Log(mean);
            bands++;
        }

        if (bands == 0)
            return null;
        double density = Math.Exp(sum / bands);
        return new(density, ClassOf(density));
    }

    /// <summary>The spectrum averaged over the bands, as ISO 8608 shows it: centre (cycles/m) and density (m³); bands without a frequency are left out.</summary>
    /// <param name="spectrum">Of a ground, frequencies in cycles/m.</param>
    public static IEnumerable<(double Frequency, double Density)> Bands(Spectrum spectrum)
    {
        ArgumentNullException.ThrowIfNull(spectrum);
        ImmutableArray<double> edges = Edges();
        int i = Math.Max(0, (int)Math.Ceiling(edges[0] / spectrum.Step * (1 - 1e-9)) - 1);
        for (int band = 0; band + 1 < edges.Length; band++)
        {
            // The slope is taken off inside the band: its mean then stands for the centre, wherever its frequencies lie.
            double centre = Math.Sqrt(edges[band] * edges[band + 1]), sum = 0;
            int count = 0;
            for (; i < spectrum.Densities.Length && spectrum.Frequency(i) < edges[band + 1]; i++, count++)
                sum += spectrum.Densities[i] * Math.Pow(spectrum.Frequency(i) / centre, 2);
            if (count > 0)
                yield return (centre, sum / count);
        }
    }

    /// <summary>The class of a density at n0.</summary>
    public static char ClassOf(double density)
    {
        double doublings = Math.Log2(density / RandomCourse.Density('A')) / 2;
        return (char)('A' + (int)Math.Clamp(Math.Floor(doublings + 0.5), 0, 7));
    }

    // Eight octaves: two whole, eight thirds, forty twelfths.
    private static ImmutableArray<double> Edges()
    {
        var edges = ImmutableArray.CreateBuilder<double>();
        edges.Add(Lowest);
        edges.Add(double.Exp2(-5.5));
        for (int third = 0; third <= 8; third++)
            edges.Add(double.Exp2(-4.5 + third / 3.0));
        for (int twelfth = 1; twelfth < 40; twelfth++)
            edges.Add(double.Exp2(-4.5 + 8 / 3.0 + twelfth / 12.0));
        edges.Add(Math.BitIncrement(Highest * (1 + 1e-9)));
        return edges.ToImmutable();
    }
}
