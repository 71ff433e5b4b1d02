using MathNet.Numerics.LinearAlgebra;

using QuarterCar.TestKit;

using Xunit;

namespace QuarterCar.Numerics.Tests;

public class MatrixExponentialTests
{
    // The golden car of check-values section 1: K1 653, K2 63.3, μ 0.15, C 6, V 80 km/h, driven by the slope (R).
    private const double K1 = 653, K2 = 63.3, Mu = 0.15, C = 6, Speed = 80 / 3.6;

    // IRI-ST250, 200, 100, 50: World Bank TP 46 as printed in single precision (R) and computed (C).
    public static TheoryData<double, double[]> Printed => new()
    {
        { 0.250, [.9966071, .01091514, -.002083274, .0003190145, -.5563044, .9438768, -.8324718, .05064701, .02153176, .002126763, .7508714, .008221888, 3.335013, .3376467, -39.12762, .4347564] },
        { 0.200, [.9977588, .008780606, -6.436089e-4, 2.127641e-4, -.4660258, .9535856, -.4602074, .04352945, .01448438, .001418428, .8332105, .007105564, 2.908761, .2901964, -33.84164, .5574984] },
        { 0.100, [.9994014, .004442351, 2.188854e-4, 5.72179e-5, -.2570548, .975036, .007966216, .02458427, .003960378, 3.814527e-4, .9548048, .004055587, 1.687312, .1638951, -19.34264, .7948701] },
        { 0.050, [.9998452, .002235208, 1.062545e-4, 1.476399e-5, -.1352583, .9870245, .07098568, .01292695, .001030173, 9.842664e-5, .9882941, .002143501, .8983268, .08617964, -10.2297, .9031446] },
    };

    [Theory]
    [MemberData(nameof(Printed))]
    public void The_golden_cars_transition_matrix_is_the_printed_one(double dx, double[] st)
    {
        Matrix<double> e = Transition(dx / Speed);
        for (int i = 0; i < 16; i++)
            Tolerance.Share(2e-6, "the printed table was computed in single precision").Holds(st[i], e[i / 4, i % 4], $"ST {i / 4 + 1},{i % 4 + 1}");
    }

    // iri_st_pr.csv (C), with PR as the fifth column of the exponential of the augmented matrix.
    [Fact]
    public void The_golden_cars_transition_and_slope_response_are_the_computed_ones()
    {
        foreach (string[] row in CheckValues.Rows("iri_st_pr.csv"))
        {
            // dx and dt are rounded to six and eight places in the table: of dt the exact value is dx/V of the exact dx.
            double dt = ExactLength(CheckValues.Number(row[0])) / Speed;
            Matrix<double> e = Transition(dt);
            int r = int.Parse(row[2], System.Globalization.CultureInfo.InvariantCulture) - 1;
            for (int c = 0; c < 5; c++)
                Tolerance.Share(1e-9, "ten printed digits").Holds(CheckValues.Number(row[3 + c]), e[r, c], $"{row[0]} m, row {r + 1}, column {c + 1}");
        }
    }

    // IRI-DC (C): a constant slope is a fixed point, whatever the step.
    [Theory]
    [InlineData(0.05)]
    [InlineData(0.25)]
    [InlineData(3.7)]
    public void A_constant_slope_leaves_the_golden_car_as_it_is(double dx)
    {
        Matrix<double> e = Transition(dx / Speed);
        double[] expected = [1, 0, 1, 0];
        for (int r = 0; r < 4; r++)
            new Tolerance(1e-13 * Math.Max(1, e.L1Norm()), "sums of entries up to the matrix's norm").Holds(expected[r], e[r, 0] + e[r, 2] + e[r, 4]);
    }

    [Fact]
    public void A_nilpotent_matrix_has_a_finite_series()
    {
        Matrix<double> a = Matrix<double>.Build.DenseOfRowArrays([0, 2, 5], [0, 0, 3], [0, 0, 0]);
        Matrix<double> exact = Matrix<double>.Build.DenseOfRowArrays([1, 2, 5 + 3], [0, 1, 3], [0, 0, 1]);
        new Tolerance(1e-14, "rounding of sums near 10").Holds(0, (MatrixExponential.Of(a) - exact).L1Norm());
    }

    [Theory]
    [InlineData(1e-9)]
    [InlineData(0.3)]
    [InlineData(2)]
    [InlineData(40)]
    [InlineData(1000)]
    public void A_turning_matrix_turns_by_its_angle(double angle)
    {
        Matrix<double> e = MatrixExponential.Of(Matrix<double>.Build.DenseOfRowArrays([0, -angle], [angle, 0]));
        var rounding = new Tolerance(1e-15 * (4 + angle), "the angle's rounding and that of as many squarings");
        rounding.Holds(Math.Cos(angle), e[0, 0]);
        rounding.Holds(Math.Sin(angle), e[1, 0]);
        rounding.Holds(-Math.Sin(angle), e[0, 1]);
    }

    private static double ExactLength(double dx) =>
        dx == 0.166667 ? 1.0 / 6 : dx == 0.333333 ? 1.0 / 3 : dx;

    private static Matrix<double> Transition(double dt) => MatrixExponential.Of(dt * Matrix<double>.Build.DenseOfRowArrays(
        [0, 1, 0, 0, 0],
        [-K2, -C, K2, C, 0],
        [0, 0, 0, 1, 0],
        [K2 / Mu, C / Mu, -(K1 + K2) / Mu, -C / Mu, K1 / Mu],
        [0, 0, 0, 0, 0]));
}
