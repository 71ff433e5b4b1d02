using QuarterCar.Numerics.Signals;

using Xunit;

namespace QuarterCar.Numerics.Tests.Signals;

/// <summary>Densities of signals whose density is known.</summary>
public class SpectrumTests
{
    // Half the square of the amplitude, all of it at the sine's own frequency.
    [Fact]
    public void Whole_waves_have_half_their_amplitude_squared_at_their_frequency()
    {
        double[] sine = [.. Enumerable.Range(0, 401).Select(i => 3 * Math.Sin(2 * Math.PI * 7 * i / 400.0))];
        var spectrum = Spectrum.EndMatched(sine, 0.25);
        Assert.Equal(0.01, spectrum.Step, 1e-15);
        Assert.Equal(0.07, spectrum.Frequency(6), 1e-15);
        Assert.Equal(4.5, spectrum.Densities[6] * spectrum.Step, 1e-12);
        Assert.Equal(4.5, spectrum.Densities.Sum() * spectrum.Step, 1e-12);
        Assert.Equal(199, spectrum.Densities.Length);
    }

    [Fact]
    public void Straight_rise_has_no_density() =>
        Assert.All(Spectrum.EndMatched([.. Enumerable.Range(0, 101).Select(i => 5 + 0.3 * i)], 0.1).Densities, d => Assert.InRange(d, 0, 1e-25));

    // A random walk of steps of variance σ² has the one-sided density 2σ²·dx/(2 sin(πn·dx))², from σ²/|1 − e^(−iω)|². The mean of 400 walks over 50
    // frequencies has a relative error of 1/√20000, 0.7 %: four of that.
    [Theory, InlineData(0), InlineData(50)]
    public void Mean_density_of_random_walks_is_that_of_the_walk_at_long_and_short_waves(int from)
    {
        const int walks = 400, steps = 512;
        const double spacing = 0.1;
        var stream = new SplitMix64(1);
        double sum = 0;
        for (int w = 0; w < walks; w++)
        {
            double[] walk = new double[steps + 1];
            for (int i = 1; i <= steps; i++)
                walk[i] = walk[i - 1] + (stream.NextFraction() < 0.5 ? -1 : 1);
            var spectrum = Spectrum.EndMatched(walk, spacing);
            for (int i = from; i < from + 50; i++)
            {
                double half = Math.Sin(Math.PI * spectrum.Frequency(i) * spacing);
                sum += spectrum.Densities[i] / (2 * spacing / (4 * half * half));
            }
        }

        Assert.InRange(sum / (50 * walks), 0.97, 1.03);
    }

    // White noise of variance 1/12 a sample has the density 2·dt/12; 255 frequencies of 780 stretches, which overlap by half: 0.3 %, four of that.
    [Fact]
    public void Welch_of_white_noise_has_its_density()
    {
        var stream = new SplitMix64(9);
        double[] noise = [.. Enumerable.Range(0, 200_000).Select(_ => stream.NextFraction())];
        var spectrum = Spectrum.Welch(noise, 0.01, 512);
        Assert.Equal(255, spectrum.Densities.Length);
        Assert.InRange(spectrum.Densities.Skip(2).Average() / (0.02 / 12), 0.988, 1.012);
    }

    // A Hann window spreads a sine over three frequencies and keeps its mean square.
    [Fact]
    public void Welch_keeps_the_mean_square_of_a_sine_and_its_place()
    {
        double[] sine = [.. Enumerable.Range(0, 4096).Select(i => 100 + 2 * Math.Cos(2 * Math.PI * 16 * i / 256.0))];
        var spectrum = Spectrum.Welch(sine, 0.5, 256);
        Assert.Equal(1 / 128.0, spectrum.Step);
        Assert.Equal(2, spectrum.Densities.Sum() * spectrum.Step, 1e-9);
        Assert.Equal(15, spectrum.Densities.IndexOf(spectrum.Densities.Max()));
        Assert.Equal(2, Spectrum.Welch(sine.AsSpan(0, 256), 0.5, 256).Densities.Sum() / 128, 1e-9);
    }

    // Three stretches of 256 values, each half over the next: before the sine, half on it, on it. The mean is theirs.
    [Fact]
    public void Welch_takes_every_whole_stretch_to_the_last_value()
    {
        double[] values = new double[512];
        for (int i = 256; i < 512; i++)
            values[i] = 2 * Math.Cos(2 * Math.PI * 16 * i / 256.0);
        double whole = Spectrum.Welch(values.AsSpan(256), 1, 256).Densities.Sum(), half = Spectrum.Welch(values.AsSpan(128, 256), 1, 256).Densities.Sum();
        Assert.Equal((0 + half + whole) / 3, Spectrum.Welch(values, 1, 256).Densities.Sum(), 1e-9);
    }
}
