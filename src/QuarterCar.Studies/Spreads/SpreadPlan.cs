using System.Collections.Immutable;
using System.Globalization;

using MathNet.Numerics.Distributions;

using QuarterCar.Scenarios;
using QuarterCar.Studies.Setups;

namespace QuarterCar.Studies.Spreads;

/// <summary>The setups of a spread study: every tolerance's value drawn from its distribution, by a Latin hypercube.</summary>
public static class SpreadPlan
{
    /// <summary>Half-width of a 95 % interval of the standard normal distribution: its 97.5 % quantile.</summary>
    public const double HalfWidth95 = 1.959963984540054;

    /// <summary>Largest number of samples: their figures have to fit into memory.</summary>
    public const int MostSamples = 4_000_000;

    /// <summary>The plan. A value that is bad input is not clipped: its setup keeps a row with the reason, because a clipped value would hide how unlikely the scenario is.</summary>
    /// <param name="tolerances">At least one.</param>
    /// <param name="samples">From 2 to <see cref="MostSamples"/>.</param>
    /// <param name="seed">Any; the same seed gives the same setups in every version.</param>
    public static SetupPlan Of(ImmutableArray<Tolerance> tolerances, int samples, ulong seed)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(samples, 2);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(samples, MostSamples);
        if (tolerances.IsEmpty) throw new ArgumentException("a spread study needs tolerances", nameof(tolerances));
        var places = new LatinHypercube(samples, tolerances.Length, seed);
        return new SetupPlan([.. tolerances.Select(t => t.Path)], samples, i => new SetupRequest(
            Title(i),
            [.. tolerances.Select((t, d) => SetupValue.OfSi(t.Path, Value(t, places[(int)i, d])))]));
    }

    /// <summary>A sample's title.</summary>
    /// <param name="index">From 0.</param>
    public static string Title(long index) => "sample " + (index + 1).ToString(CultureInfo.InvariantCulture);

    /// <summary>The value of a tolerance below which a share of its distribution lies, SI.</summary>
    /// <param name="tolerance">The tolerance.</param>
    /// <param name="share">In (0, 1).</param>
    public static double Value(Tolerance tolerance, double share)
    {
        double half = tolerance.Relative ? tolerance.Within * Math.Abs(tolerance.Value) : tolerance.Within;
        return tolerance.Value + (half * (tolerance.Uniform ? (2 * share) - 1 : Normal.InvCDF(0, 1, share) / HalfWidth95));
    }
}
