using System.Numerics;

using MathNet.Numerics.LinearAlgebra;

using QuarterCar.Model.Terrain;
using QuarterCar.TestKit;

using Xunit;

namespace QuarterCar.Model.Tests.Terrain;

/// <summary>The golden car of the International Roughness Index (check-values section 1).</summary>
public class GoldenCarTests
{
    private const double Speed = 80 / 3.6;

    // World Bank Technical Paper 46, single precision (R); the widely copied .4347664 at 250 mm is a typing error for .4347564 (C).
    public static TheoryData<double, double[], double[]> Published => new()
    {
        {
            0.25,
            [
                .9966071, .01091514, -.002083274, .0003190145, -.5563044, .9438768, -.8324718, .05064701,
                .02153176, .002126763, .7508714, .008221888, 3.335013, .3376467, -39.12762, .4347564,
            ],
            [.005476107, 1.388776, .2275968, 35.79262]
        },
        {
            0.2,
            [
                .9977588, .008780606, -6.436089e-4, 2.127641e-4, -.4660258, .9535856, -.4602074, .04352945,
                .01448438, .001418428, .8332105, .007105564, 2.908761, .2901964, -33.84164, .5574984,
            ],
            [.002885245, .9262331, .1523053, 30.93289]
        },
        {
            0.1,
            [
                .9994014, .004442351, 2.188854e-4, 5.72179e-5, -.2570548, .975036, .007966216, .02458427,
                .003960378, 3.814527e-4, .9548048, .004055587, 1.687312, .1638951, -19.34264, .7948701,
            ],
            [3.793992e-4, .2490886, .04123478, 17.65532]
        },
        {
            0.05,
            [
                .9998452, .002235208, 1.062545e-4, 1.476399e-5, -.1352583, .9870245, .07098568, .01292695,
                .001030173, 9.842664e-5, .9882941, .002143501, .8983268, .08617964, -10.2297, .9031446,
            ],
            [4.858894e-5, .06427258, .01067582, 9.331372]
        },
    };

    [Theory, MemberData(nameof(Published))]
    public void Transition_is_the_published_one(double spacing, double[] st, double[] pr)
    {
        var single = Tolerance.Share(2e-6, "the tables are of single precision: up to 9.2e-7 was found");
        var forced = Tolerance.Share(1e-5, "the same, 2e-6 to 1e-5");
        var cancelled = Tolerance.Share(1e-3, "single precision cancels in the published first entry: up to 7.3e-4 was found");
        var (transition, response) = GoldenCar.Step(spacing);
        for (int i = 0; i < 16; i++)
            single.Holds(st[i], transition[i / 4, i % 4], $"ST {i / 4 + 1},{i % 4 + 1}");
        for (int i = 0; i < 4; i++)
            (i == 0 ? cancelled : forced).Holds(pr[i], response[i], $"PR {i + 1}");
    }

    // Ten digits are printed (C); spacings whose own digits are rounded there (1/6 m, 1/3 m) are left out.
    [Fact]
    public void Transition_is_that_of_double_arithmetic_for_every_spacing_of_the_table()
    {
        var printed = Tolerance.Share(1e-9, "ten digits are printed");
        foreach (double[] row in CheckValues.Rows("iri_st_pr.csv").Select(r => r.Select(CheckValues.Number).ToArray()).Where(r => Math.Abs(r[0] - r[1] * Speed) < 1e-12))
        {
            var (transition, response) = GoldenCar.Step(row[0]);
            for (int i = 0; i < 4; i++)
                printed.Holds(row[3 + i], transition[(int)row[2] - 1, i], $"ST {row[2]},{i + 1} at {row[0]} m");
            printed.Holds(row[7], response[(int)row[2] - 1], $"PR {row[2]} at {row[0]} m");
        }
    }

    // IRI-DC (C): a constant slope is a fixed point.
    [Theory, InlineData(0.05), InlineData(0.25), InlineData(0.6096), InlineData(3)]
    public void Car_keeps_to_a_constant_slope(double spacing)
    {
        var (transition, response) = GoldenCar.Step(spacing);
        for (int i = 0; i < 4; i++)
        {
            double[] terms = [transition[i, 0], transition[i, 2], response[i]];
            new Tolerance(1e-13 * Math.Max(1, terms.Max(Math.Abs)), "rounding of the largest term").Holds(i % 2 == 0 ? 1 : 0, terms.Sum(), $"row {i + 1}");
        }
    }

    // IRI-EV1, EV2 (C).
    [Fact]
    public void Eigenvalues_are_those_of_body_and_wheel()
    {
        Complex[] found = [.. GoldenCar.Motion().A.Evd().EigenValues.Where(e => e.Imaginary > 0).OrderBy(e => e.Imaginary)];
        Assert.Equal(2, found.Length);
        Assert.InRange((found[0] - new Complex(-2.590073787, 7.323397386)).Magnitude, 0, 1e-8);
        Assert.InRange((found[1] - new Complex(-20.409926213, 64.422626105)).Magnitude, 0, 1e-8);
    }

    // Table of gains (C), eight digits printed; the moving average has sin(πn·0.25)/(πn·0.25).
    [Fact]
    public void Gain_over_wavelength_is_that_of_the_table()
    {
        foreach (double[] row in CheckValues.Rows("iri_gain.csv").Select(r => r.Select(CheckValues.Number).ToArray()))
        {
            double angle = Math.PI * GoldenCar.Averaging / row[0], average = Math.Abs(Math.Sin(angle) / angle);
            Tolerance.Share(1e-6, "eight digits are printed").Holds(row[3], Gain(row[0]), $"gain at {row[0]} m");
            Tolerance.Share(1e-6, "eight digits are printed").Holds(row[5], Gain(row[0]) * average, $"with average at {row[0]} m");
        }
    }

    // IRI-G1 to G6 (C).
    [Theory]
    [InlineData(2.4, 1.664003, 1e-6), InlineData(15.4, 1.535089, 1e-6), InlineData(16, 1.536681, 1e-6)]
    [InlineData(2.292336992, 1.676482671, 1e-8), InlineData(15.776871575, 1.537599752, 1e-8), InlineData(6.198870, 1.148591783, 1e-8)]
    [InlineData(1.270941560, 0.5, 1e-8), InlineData(28.905011937, 0.5, 1e-8)]
    public void Gain_has_its_known_peaks_and_crossings(double wavelength, double gain, double allowed) => Assert.Equal(gain, Gain(wavelength), allowed);

    // IRI-G6: at ω = √(K1/(1 + μ)) the gain is 1 + μ whatever spring and damper are.
    [Fact]
    public void Gain_at_the_rattle_invariant_is_1_15() => Assert.Equal(1.15, Gain(2 * Math.PI * Speed / Math.Sqrt(653 / 1.15)), 1e-12);

    // Section 1.3 (C), eleven digits; no moving average.
    [Theory, InlineData(0.25, 0.18565204295), InlineData(0.05, 0.18602080165)]
    public void Triangle_of_1_mm_from_rest_has_its_known_index(double spacing, double index) =>
        Holds(index, GoldenCar.Index(Heights(15, spacing, s => s < 3 ? Math.Clamp((s - 1) / 2, 0, 1) : Math.Clamp((5 - s) / 2, 0, 1)), spacing, fromRest: true));

    // T1b: the mean of the five heights that 250 mm hold at 50 mm; where five are not there, there is no mean, so 14.8 m remain.
    [Fact]
    public void Triangle_averaged_over_250_mm_has_its_known_index()
    {
        double[] heights = Heights(15, 0.05, s => s < 3 ? Math.Clamp((s - 1) / 2, 0, 1) : Math.Clamp((5 - s) / 2, 0, 1));
        double[] means = [.. Enumerable.Range(0, heights.Length - 4).Select(i => heights.AsSpan(i, 5).ToArray().Average())];
        Holds(0.18775326136, GoldenCar.Index(means, 0.05, fromRest: true));
    }

    [Theory, InlineData(0.25, 0.62550643425), InlineData(0.05, 0.62686026801)]
    public void Triangle_of_20_mm_on_100_m_has_its_known_index(double spacing, double index) =>
        Holds(index, GoldenCar.Index(Heights(100, spacing, s => 20 * Math.Clamp(1 - Math.Abs(s - 22) / 2, 0, 1)), spacing));

    [Theory, InlineData(0.25, 0.34565666466), InlineData(0.05, 0.34366526817)]
    public void Step_of_10_mm_over_a_quarter_metre_has_its_known_index(double spacing, double index) =>
        Holds(index, GoldenCar.Index(Heights(100, spacing, s => 10 * Math.Clamp((s - 20) / 0.25, 0, 1)), spacing));

    // Section 1.2 (C): tail of 2000 m of a sine of 10 mm and 5 m, sampled every 0.25 m; at a start on the mean slope the transient is over long before.
    [Theory, InlineData(0.25, 9.3023236), InlineData(0.05, 9.3557909)]
    public void Long_sine_has_the_index_of_its_gain(double spacing, double index)
    {
        double[] heights = Heights(40_000, spacing, s => 10 * Math.Sin(2 * Math.PI * s / 5));
        Tolerance.Share(1e-4, "the start is 1e-3 of 40 km in distance and a tenth of the answer in height").Holds(index, GoldenCar.Index(heights, spacing));
    }

    private static void Holds(double index, double actual) => Tolerance.Share(1e-9, "the tolerance that the table states").Holds(index, actual);

    // Heights given in mm.
    private static double[] Heights(double length, double spacing, Func<double, double> millimetres) =>
        [.. Enumerable.Range(0, (int)Math.Round(length / spacing) + 1).Select(i => 1e-3 * millimetres(i * spacing))];

    /// <summary>|(ż_s − ż_u)/slope| of a steady sine.</summary>
    private static double Gain(double wavelength)
    {
        var (a, b) = GoldenCar.Motion();
        var turning = Matrix<Complex>.Build.DenseIdentity(4) * new Complex(0, 2 * Math.PI * Speed / wavelength) - a.ToComplex();
        var z = turning.Solve(b.ToComplex());
        return (z[0] - z[2]).Magnitude;
    }
}
