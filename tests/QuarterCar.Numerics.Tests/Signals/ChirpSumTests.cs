using System.Numerics;

using QuarterCar.Numerics.Signals;

using Xunit;

namespace QuarterCar.Numerics.Tests.Signals;

/// <summary>The chirp sum against the sum that it stands for, term by term.</summary>
public class ChirpSumTests
{
    // Rounding of a transform: a few last digits of the root of the sum of squares, about 1e-15 of it here.
    [Theory, InlineData(1, 1, 0.3), InlineData(7, 20, 1 / 12.7), InlineData(40, 9, 0.05 / 13.33), InlineData(129, 511, -0.01234)]
    public void Sum_of_turning_arrows_is_the_sum_term_by_term(int terms, int count, double turn)
    {
        var stream = new SplitMix64(3);
        Complex[] c = [.. Enumerable.Range(0, terms).Select(_ => new Complex(stream.NextFraction() - 0.5, stream.NextFraction() - 0.5))];
        Complex[] sums = ChirpSum.Of(c, turn, count);
        Assert.Equal(count, sums.Length);
        for (int j = 0; j < count; j++)
        {
            Complex sum = 0;
            for (int k = 0; k < terms; k++)
                sum += c[k] * Arrow(turn, k * j);
            Assert.InRange((sums[j] - sum).Magnitude, 0, 1e-13 * Math.Sqrt(terms));
        }
    }

    // One arrow of 565 turns a thousand steps: after 400,000 steps some 226,000 turns lie behind it, whose rounding would be 3e-11 of a turn.
    [Fact]
    public void Arrow_far_along_still_points_where_its_turns_say()
    {
        const double turn = 0.565;
        Complex[] sums = ChirpSum.Of([0, 1], turn, 400_001);
        Assert.InRange((sums[400_000] - Arrow(turn, 400_000)).Magnitude, 0, 1e-12);
        Assert.InRange((sums[200] - 1).Magnitude, 0, 1e-12); // 113 whole turns
    }

    [Fact]
    public void Cancelled_sum_stops()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() => ChirpSum.Of([1], 0.1, 10, stop.Token));
    }

    // The fused product keeps what rounding takes off turns·steps, so that the sum compared with is no worse than what it checks.
    private static Complex Arrow(double turn, int steps)
    {
        double turns = turn * steps, rest = Math.FusedMultiplyAdd(turn, steps, -turns);
        return Complex.FromPolarCoordinates(1, 2 * Math.PI * (Math.IEEERemainder(turns, 1) + rest));
    }
}
