using QuarterCar.Numerics;

namespace QuarterCar.Studies.Spreads;

/// <summary>
/// A Latin hypercube sample: each dimension's interval (0, 1) is cut into as many equal strata as there are samples, and every stratum holds one sample
/// (McKay, Beckman and Conover, "A comparison of three methods for selecting values of input variables", Technometrics 21(2), 1979, 239–245).
/// The numbers are a matter of record: the same seed gives the same sample in every version of the runtime.
/// </summary>
/// <remarks>
/// SplitMix64 started at the seed gives one number a dimension, in order; that number starts the dimension's own SplitMix64. From it come first the permutation
/// (Durstenfeld, Algorithm 235, 1964: for i from n − 1 down to 1, swap i with ⌊f·(i + 1)⌋), then one place a sample, in order. f and places are
/// ((number >> 11) + 1/2)·2⁻⁵³, so that neither end of a stratum is ever taken. A dimension's numbers do not hang on those after it.
/// </remarks>
public sealed class LatinHypercube
{
    private readonly double[][] _columns;

    /// <summary>Draws the sample.</summary>
    /// <param name="samples">How many, at least 1.</param>
    /// <param name="dimensions">How many numbers a sample.</param>
    /// <param name="seed">Any.</param>
    public LatinHypercube(int samples, int dimensions, ulong seed)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(samples, 1);
        var seeds = new SplitMix64(seed);
        _columns = new double[dimensions][];
        for (int d = 0; d < dimensions; d++)
            _columns[d] = Column(samples, new SplitMix64(seeds.Next()));
    }

    /// <summary>Number of a sample in a dimension, in (0, 1).</summary>
    public double this[int sample, int dimension] => _columns[dimension][sample];

    private static double[] Column(int samples, SplitMix64 stream)
    {
        int[] strata = [.. Enumerable.Range(0, samples)];
        for (int i = samples - 1; i > 0; i--)
        {
            int j = (int)(Inside(stream) * (i + 1));
            (strata[i], strata[j]) = (strata[j], strata[i]);
        }

        double[] column = new double[samples];
        for (int i = 0; i < samples; i++)
            column[i] = (strata[i] + Inside(stream)) / samples;
        return column;
    }

    private static double Inside(SplitMix64 stream) => ((stream.Next() >> 11) + 0.5) * (1.0 / (1UL << 53));
}
