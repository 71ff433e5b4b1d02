using QuarterCar.Numerics.Signals;
using QuarterCar.TestKit;

using Xunit;

namespace QuarterCar.Numerics.Tests.Signals;

// check-values section 3, VD-1 … VD-4; definitions of ISO 2631-1 and BS 6841 from memory (M), numbers computed (C).
public class WeightedDoseTests
{
    private const double Step = 1e-3;
    private static readonly Tolerance s_closed = Tolerance.Share(1e-9, "the trapezoid rule is exact for whole cycles of a sine and its powers");

    // VD-1.
    [Fact]
    public void Ten_seconds_of_unit_sine_have_the_closed_dose_value() =>
        s_closed.Holds(1.391578841857, WeightedDose.OfWeighted(Sine(1, 1, 10), Step).DoseValue);

    // VD-2.
    [Fact]
    public void Ten_seconds_of_unit_sine_have_the_closed_estimate() =>
        s_closed.Holds(1.760406801556, WeightedDose.OfWeighted(Sine(1, 1, 10), Step).EstimatedDoseValue);

    // VD-3.
    [Theory]
    [InlineData(1, 10)]
    [InlineData(5, 3)]
    [InlineData(8, 100)]
    public void A_sines_dose_value_over_its_rms_is_the_same_number(double hz, int seconds)
    {
        WeightedDose dose = WeightedDose.OfWeighted(Sine(0.7, hz, seconds), Step);
        s_closed.Holds(1.106681919700, dose.DoseValue / (dose.Rms * Math.Pow(seconds, 0.25)));
    }

    // VD-4: 5 Hz, 1 m/s² r.m.s., after 20 s.
    [Fact]
    public void A_5_hertz_sine_is_felt_a_little_stronger_than_it_is()
    {
        var filter = new WkFilter(Step);
        double[] weighted = [.. Sine(Math.Sqrt(2), 5, 30).Select(a => filter.Next(a))];
        WeightedDose dose = WeightedDose.OfWeighted(weighted.AsSpan(20_000), Step);
        Tolerance.Share(1e-3, "straight lines between samples take (πfh)²/3 = 8e-5 off").Holds(1.038825652, dose.Rms);
    }

    [Fact]
    public void Weighting_inside_gives_what_weighting_before_gives()
    {
        double[] raw = Sine(3, 4, 2);
        var filter = new WkFilter(Step);
        Assert.Equal(WeightedDose.OfWeighted([.. raw.Select(a => filter.Next(a))], Step), WeightedDose.Of(raw, Step));
    }

    // A·sin(π(t − t₀)/d) for d seconds from t₀ on, between samples a millisecond apart. The filter as four sections one after the other, by Runge–Kutta at 10 µs. 20 kg on 100 kN/mm bounce off in 1.4 ms.
    [Theory]
    [InlineData(1000, 0.1003, 0.0015, 8.7153746630, 17.135828868)]
    [InlineData(1500, 0.1007, 0.001, 8.7231361653, 17.159453402)]
    [InlineData(200, 0.1003, 0.005, 5.7265615151, 11.156689811)]
    public void A_blow_shorter_than_the_samples_are_apart_counts_whole(double peak, double from, double lasts, double rms, double dose)
    {
        double[] acceleration = new double[501], velocity = new double[501];
        for (int i = 0; i <= 500; i++)
        {
            double share = ((i * Step) - from) / lasts;
            acceleration[i] = share is > 0 and < 1 ? peak * Math.Sin(Math.PI * share) : 0;
            velocity[i] = peak * lasts / Math.PI * (1 - Math.Cos(Math.PI * Math.Clamp(share, 0, 1)));
        }

        WeightedDose found = WeightedDose.Of(acceleration, velocity, Step);
        Tolerance.Share(4e-3, "physics.md wants 5e-3").Holds(rms, found.Rms);
        Tolerance.Share(4e-3, "physics.md wants 5e-3").Holds(dose, found.DoseValue);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void No_time_gives_no_dose(int samples) => Assert.Equal(default, WeightedDose.Of(new double[samples], Step));

    private static double[] Sine(double amplitude, double hz, int seconds) =>
        [.. Enumerable.Range(0, (int)(seconds / Step) + 1).Select(i => amplitude * Math.Sin(2 * Math.PI * hz * i * Step))];

    // Trapezoid rule by hand: squares 1, 4, 9 over two steps of 0.5 s are 4.5 in 1 s; fourth powers 1, 16, 81 are 28.5.
    [Fact]
    public void The_first_and_the_last_sample_count_half()
    {
        var dose = WeightedDose.OfWeighted([1, -2, 3], 0.5);
        Assert.Equal((Math.Sqrt(4.5), Math.Pow(28.5, 0.25), 1.0), (dose.Rms, dose.DoseValue, dose.Duration));
        Assert.Equal(Math.Sqrt(0.5 * (1 + 9)), WeightedDose.OfWeighted([1, 3], 2).Rms, 1e-15);
        Assert.Equal(default, WeightedDose.OfWeighted([3], 2));
    }
}
