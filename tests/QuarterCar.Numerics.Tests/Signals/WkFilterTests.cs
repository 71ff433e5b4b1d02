using MathNet.Numerics.LinearAlgebra;

using QuarterCar.Numerics.Signals;
using QuarterCar.TestKit;

using Xunit;

namespace QuarterCar.Numerics.Tests.Signals;

public class WkFilterTests
{
    private const double Step = 1e-3;

    [Theory]
    [InlineData(0.5)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(5)]
    [InlineData(8)]
    [InlineData(16)]
    [InlineData(31.5)]
    [InlineData(80)]
    public void A_steady_sine_is_weighted_by_the_gain(double hz)
    {
        double straight = Math.Pow(Math.PI * hz * Step, 2) / 3;
        new Tolerance(WkFilter.Gain(hz) * straight * 1.1 + 1e-9,
            "a sine drawn straight from sample to sample is smaller by sinc², to first order (πfh)²/3").Holds(WkFilter.Gain(hz), SteadyAmplitude(hz));
    }

    [Theory]
    [InlineData(2)]
    [InlineData(20)]
    [InlineData(80)]
    public void A_sine_drawn_in_straight_lines_is_weighted_exactly(double hz)
    {
        double x = Math.PI * hz * Step, sinc = Math.Sin(x) / x;

        // The straight lines hold sinc² of the sine and, at k/h ± f, what folds back onto f at the samples: (fh/(k ± fh))²
        // of it, weighted by the gain there, which falls with the cube of k.
        double alias = 2 * Math.Pow(hz * Step / (1 - hz * Step), 2) * WkFilter.Gain(1 / Step - hz);
        new Tolerance(alias + 1e-9, "what the straight lines hold beyond the sine itself").Holds(WkFilter.Gain(hz) * sinc * sinc, SteadyAmplitude(hz));
    }

    [Fact]
    public void A_steady_acceleration_is_not_felt()
    {
        var filter = new WkFilter(Step);
        double last = 1;
        for (int i = 0; i < 40_000; i++)
            last = filter.Next(9.80665);
        new Tolerance(1e-11, "rounding of 40 000 sums of terms near 1; the start has decayed by exp(−70)").Holds(0, last);
    }

    // The response of Hh·Hl·Ht·Hs to a unit step, from rest, starts with t³/3! times its leading coefficient.
    [Fact]
    public void From_rest_the_first_response_to_a_step_is_cubic()
    {
        const double h = 1e-6;
        double W(double hz) => 2 * Math.PI * hz;
        double leading = W(100) * W(100) * W(12.5);
        var filter = new WkFilter(h);
        Assert.Equal(0, filter.Next(1));
        double y = 0;
        for (int i = 0; i < 4; i++)
            y = filter.Next(1);
        Tolerance.Share(2e-3, "the next term is smaller by t/4 times the sum of poles less zeros, 900/s times 1e-6 s").Holds(
            leading * Math.Pow(4 * h, 3) / 6, y);
    }

    [Fact]
    public void Half_the_step_gives_the_same_output_for_the_same_straight_lines()
    {
        var random = new SplitMix64(5);
        var whole = new WkFilter(2 * Step);
        var half = new WkFilter(Step);
        double before = random.NextFraction();
        whole.Next(before);
        half.Next(before);
        for (int i = 0; i < 2000; i++)
        {
            double now = random.NextFraction();
            half.Next(0.5 * (before + now));
            new Tolerance(1e-12, "both are exact; rounding of residues up to 400 in size").Holds(whole.Next(now), half.Next(now));
            before = now;
        }
    }

    // The whole filter as one chain of four second-order blocks, carried from sample to sample by the exponential of its
    // matrix widened by the input and its slope.
    [Theory]
    [InlineData(1e-3)]
    [InlineData(0.02)]
    public void The_filter_is_the_matrix_exponential_of_its_state_space(double step)
    {
        Matrix<double> carry = MatrixExponential.Of(WkChain.Widened(step));
        var random = new SplitMix64(11);
        var filter = new WkFilter(step);
        Vector<double> state = Vector<double>.Build.Dense(10);
        state[8] = random.NextFraction();
        filter.Next(state[8]);
        for (int i = 0; i < 1000; i++)
        {
            double now = random.NextFraction();
            state[9] = now - state[8];
            state = carry * state;
            new Tolerance(1e-11, "chains of blocks up to 4e5 (100 Hz squared) apart in size, to sixteen digits").Holds(WkChain.Output(state), filter.Next(now), $"sample {i}");
        }
    }

    [Fact]
    public void Filtering_allocates_nothing()
    {
        var filter = new WkFilter(Step);
        double sum = filter.Next(1);
        Assert.Equal(0, Heap.Taken(() =>
        {
            for (int i = 0; i < 1000; i++)
                sum += filter.Next(i);
        }));
        Assert.True(double.IsFinite(sum));
    }

    // Amplitude over the last whole second, by the sine and cosine sums; every frequency here has whole half-cycles in 2 s.
    private static double SteadyAmplitude(double hz)
    {
        var filter = new WkFilter(Step);
        const int settle = 40_000, count = 2_000;
        double sine = 0, cosine = 0;
        for (int i = 0; i < settle + count; i++)
        {
            double angle = 2 * Math.PI * hz * i * Step, y = filter.Next(Math.Sin(angle));
            if (i < settle)
                continue;
            sine += y * Math.Sin(angle);
            cosine += y * Math.Cos(angle);
        }

        return 2 * Math.Sqrt(sine * sine + cosine * cosine) / count;
    }
}
