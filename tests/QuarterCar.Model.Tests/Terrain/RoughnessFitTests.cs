using QuarterCar.Model.Terrain;
using QuarterCar.Numerics.Signals;
using QuarterCar.TestKit;

using Xunit;

namespace QuarterCar.Model.Tests.Terrain;

/// <summary>ISO 8608 classes (check-values section 2): geometric means read in the standard, limits from memory, r.m.s. computed.</summary>
public class RoughnessFitTests
{
    public static TheoryData<char> Classes => [.. "ABCDEFGH"];

    [Theory, MemberData(nameof(Classes))]
    public void Class_has_its_mean_and_its_limits(char roadClass)
    {
        string[] row = CheckValues.Rows("iso8608_classes.csv").Single(r => r[0][0] == roadClass);
        Assert.Equal(CheckValues.Number(row[2]), 1e6 * RandomCourse.Density(roadClass), 1e-9);
        Assert.Equal(roadClass, RoughnessFit.ClassOf(1e-6 * CheckValues.Number(row[2])));
        if (row[1].Length > 0)
            Assert.Equal((roadClass - 1, roadClass), (RoughnessFit.ClassOf(0.999e-6 * CheckValues.Number(row[1])), RoughnessFit.ClassOf(1.001e-6 * CheckValues.Number(row[1]))));
        if (row[3].Length > 0)
            Assert.Equal((roadClass, roadClass + 1), (RoughnessFit.ClassOf(0.999e-6 * CheckValues.Number(row[3])), RoughnessFit.ClassOf(1.001e-6 * CheckValues.Number(row[3]))));
    }

    // RD-1 (C): the sum of the recipe's cosines becomes the integral of the band as Δn falls; both bounds belong to it, half a Δn too much at each:
    // Δn/(2·0.011) = 4.5e-5 of the mean square at 1000 km.
    [Theory, MemberData(nameof(Classes))]
    public void Cosines_of_a_long_course_add_up_to_the_r_m_s_of_the_band(char roadClass)
    {
        const double length = 1e6;
        string[] row = CheckValues.Rows("iso8608_classes.csv").Single(r => r[0][0] == roadClass);
        (double height, double slope) = (0, 0);
        var (lowest, highest) = RandomCourse.Components(length);
        for (int k = lowest; k <= highest; k++)
        {
            double square = Math.Pow(RandomCourse.Amplitude(RandomCourse.Density(roadClass), k, length), 2) / 2;
            height += square;
            slope += square * Math.Pow(2 * Math.PI * k / length, 2);
        }

        Tolerance.Share(3e-5, "half of 4.5e-5").Holds(1e-3 * CheckValues.Number(row[6]), Math.Sqrt(height), "heights");
        Tolerance.Share(3e-5, "less").Holds(CheckValues.Number(row[9]), Math.Sqrt(slope), "slopes");
    }

    [Fact]
    public void Spectrum_that_is_the_line_is_fitted_by_it()
    {
        // Cosines of whole waves, without the taper: every frequency has its density exactly.
        double[] heights = RandomCourse.Untapered('E', 500, 4);
        var fit = RoughnessFit.Of(Spectrum.EndMatched([.. heights, heights[0]], 0.05))!.Value;
        Assert.Equal('E', fit.RoadClass);
        Tolerance.Share(1e-9, "rounding of sums over ten thousand heights").Holds(4096e-6, fit.Density);
    }

    // Two octaves, eight thirds, forty twelfths; of a ground that is the line each band has the line's density at its centre.
    [Fact]
    public void Bands_are_the_standards_and_have_the_density_of_their_centres()
    {
        double[] heights = RandomCourse.Untapered('E', 2000, 4);
        (double Frequency, double Density)[] bands = [.. RoughnessFit.Bands(Spectrum.EndMatched([.. heights, heights[0]], 0.05))];
        Assert.Equal(50, bands.Length);
        Assert.Equal(Math.Sqrt(0.011 * Math.Pow(2, -5.5)), bands[0].Frequency, 1e-15);
        Assert.Equal(Math.Pow(2, -5), bands[1].Frequency, 1e-15);
        for (int third = 0; third < 8; third++)
            Assert.Equal(Math.Pow(2, -4.5 + ((third + 0.5) / 3)), bands[2 + third].Frequency, 1e-14);
        for (int twelfth = 0; twelfth < 39; twelfth++)
            Assert.Equal(Math.Pow(2, -4.5 + (8 / 3.0) + ((twelfth + 0.5) / 12)), bands[10 + twelfth].Frequency, 1e-14);
        Assert.Equal(Math.Sqrt(2.83 * Math.Pow(2, -4.5 + (8 / 3.0) + (39 / 12.0))), bands[49].Frequency, 1e-8);
        Assert.All(bands, b => Tolerance.Share(1e-9, "rounding of sums over forty thousand heights").Holds(4096e-6 * Math.Pow(b.Frequency / 0.1, -2), b.Density));
    }

    // The statistical test of check-values section 2: level within ±1 dB averaged over 50 seeds, slope −2 ± 0.1, of courses with their taper.
    [Fact]
    public void Fifty_courses_of_class_C_have_its_level_and_slope()
    {
        double level = 0;
        var sums = new SortedDictionary<double, double>();
        for (ulong seed = 1; seed <= 50; seed++)
        {
            double[] heights = RandomCourse.Heights('C', 250, seed);
            var spectrum = Spectrum.EndMatched(heights, 0.05);
            level += 10 * Math.Log10(RoughnessFit.Of(spectrum)!.Value.Density / 256e-6) / 50;
            foreach (var (frequency, density) in RoughnessFit.Bands(spectrum))
                sums[frequency] = sums.GetValueOrDefault(frequency) + density;
        }

        Assert.InRange(level, -1, 1);
        var (_, slope) = MathNet.Numerics.Fit.Line([.. sums.Keys.Select(Math.Log10)], [.. sums.Values.Select(Math.Log10)]);
        Assert.InRange(slope, -2.1, -1.9);
    }

    [Fact]
    public void Level_ground_has_no_class() => Assert.Null(RoughnessFit.Of(Spectrum.EndMatched(new double[400], 0.05)));
}
