using System.Globalization;

using QuarterCar.Model.Terrain;

using Xunit;

namespace QuarterCar.Model.Tests.Terrain;

/// <summary>Random ISO 8608 courses against check-values section 2 (computed independently: double arithmetic, exact summation).</summary>
public class RandomCourseTests
{
    private static readonly string[] Known = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "data", "random_road.csv"));

    private static double Rms(double[] values) => Math.Sqrt(values.Sum(z => z * z) / values.Length);

    // RD-4: 3.967470931 mm for any phases, as printed to ten digits; the sum over whole periods is exact for dx < 1/(2·2.828).
    [Theory, InlineData(1), InlineData(2), InlineData(12345)]
    public void Class_A_over_250_m_has_the_r_m_s_of_its_amplitudes_for_any_seed(ulong seed) =>
        Assert.InRange(Rms(RandomCourse.Untapered('A', 250, seed)) / 3.967470931e-3 - 1, -1e-9, 1e-9);

    // RD-4: amplitudes printed to ten digits.
    [Theory, InlineData(3, 2.981423970e-3), InlineData(25, 0.357770876e-3)]
    public void Amplitudes_of_class_A_are_the_known_ones(int k, double amplitude) =>
        Assert.InRange(RandomCourse.Amplitude(RandomCourse.Density('A'), k, 250) / amplitude - 1, -2e-9, 2e-9);

    // RD-4, RD-5 and its comment line: bounds included, 566/200 is 2.83.
    [Theory, InlineData(250, 3, 707), InlineData(200, 3, 566), InlineData(1000, 11, 2830), InlineData(100, 2, 283)]
    public void Components_run_from_0_011_to_2_83_cycles_a_metre_bounds_included(double length, int lowest, int highest) =>
        Assert.Equal((lowest, highest), RandomCourse.Components(length));

    // ISO 8608 as in check-values section 2.
    [Theory, InlineData('A', 16e-6), InlineData('B', 64e-6), InlineData('D', 1024e-6), InlineData('H', 262144e-6)]
    public void Each_class_has_four_times_the_density_of_the_one_before(char roadClass, double density) =>
        Assert.Equal(density, RandomCourse.Density(roadClass), 1e-18);

    // RD-5: 1e-12 m is the tolerance that it states.
    [Fact]
    public void Heights_of_class_D_seed_7_are_the_known_ones()
    {
        var heights = RandomCourse.Heights('D', 200, 7);
        Assert.Equal(4001, heights.Length);
        Assert.Equal(804, Known.Length);
        for (var i = 0; i <= 800; i++)
        {
            var cells = Known[i + 3].Split(',');
            Assert.Equal(i * 0.05, double.Parse(cells[0], CultureInfo.InvariantCulture), 1e-9);
            Assert.InRange(heights[i] - double.Parse(cells[1], CultureInfo.InvariantCulture), -1e-12, 1e-12);
        }
    }

    // The comment lines of RD-5: 1e-11 relative is the tolerance stated there.
    [Fact]
    public void Whole_of_class_D_seed_7_has_the_known_r_m_s_and_extremes()
    {
        var heights = RandomCourse.Heights('D', 200, 7)[..4000];
        Assert.InRange(Rms(heights) / 0.02829810916 - 1, -1e-11, 1e-11);
        Assert.InRange(Rms(RandomCourse.Untapered('D', 200, 7)) / 0.0283762187211 - 1, -1e-11, 1e-11);
        Assert.InRange(heights.Max() / 0.0778955119521 - 1, -1e-11, 1e-11);
        Assert.InRange(heights.Min() / -0.0722376298054 - 1, -1e-11, 1e-11);
    }

    // 13.33 m is no multiple of 0.05 m. Term by term as physics.md section 2 has it: 38 cosines, each to 1e-14 of its amplitude.
    [Fact]
    public void A_length_that_is_no_multiple_of_the_spacing_follows_the_sum_and_ends_at_its_end()
    {
        const double length = 13.33;
        var heights = RandomCourse.Heights('C', length, 5);
        Assert.Equal(268, heights.Length); // 0, 0.05, …, 13.30 and 13.33
        var stream = new QuarterCar.Numerics.SplitMix64(5);
        var phases = new double[38];
        for (var k = 1; k < phases.Length; k++)
            phases[k] = 2 * Math.PI * (stream.Next() >> 11) * Math.Pow(2, -53);
        for (var i = 0; i < 267; i++)
        {
            var s = i * 0.05;
            var sum = Enumerable.Range(1, 37).Sum(k =>
                Math.Sqrt(2 * 256e-6 * Math.Pow(k / length / 0.1, -2) / length) * Math.Cos(2 * Math.PI * k / length * s + phases[k]));
            var near = Math.Min(s, length - s) / (length / 10);
            var taper = near < 1 ? (1 - Math.Cos(Math.PI * near)) / 2 : 1;
            Assert.InRange(heights[i] - taper * sum, -1e-14, 1e-14);
        }
        Assert.Equal(0, heights[^1]);
        Assert.Equal(length, Ground.Build([new RandomPiece('C', length, 5)]).Length);
    }
}
