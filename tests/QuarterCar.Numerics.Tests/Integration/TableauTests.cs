using QuarterCar.Numerics.Integration;
using QuarterCar.TestKit;

using Xunit;

namespace QuarterCar.Numerics.Tests.Integration;

// The order conditions of Butcher's trees: Hairer, Nørsett, Wanner, Solving Ordinary Differential Equations I, II.2 (from memory).
public class TableauTests
{
    private static readonly Tolerance s_digits = new(1e-14, "sixteen-digit weights of up to 6 over stages that add up weights of up to 45");

    [Fact]
    public void Every_row_sums_to_its_node()
    {
        for (int i = 0; i < DormandPrince853.AllStages; i++)
        {
            var digits = new Tolerance(1e-16 * (4 + DormandPrince853.A[i].Sum(Math.Abs)), "each weight carries half a unit of its sixteenth digit");
            digits.Holds(i == 12 ? 1 : DormandPrince853.C[i], DormandPrince853.A[i].Sum(), $"row {i}");
        }
    }

    [Fact]
    public void The_last_stage_is_the_solution_itself() => Assert.Equal(1, DormandPrince853.C[DormandPrince853.Stages]);

    [Fact]
    public void The_weights_integrate_powers_up_to_the_seventh()
    {
        for (int p = 1; p <= 8; p++)
            s_digits.Holds(1.0 / p, Enumerable.Range(0, 12).Sum(i => DormandPrince853.B[i] * Math.Pow(DormandPrince853.C[i], p - 1)), $"power {p - 1}");
    }

    [Fact]
    public void There_are_as_many_trees_as_known() =>
        Assert.Equal([1, 1, 2, 4, 9, 20, 48, 115], Enumerable.Range(1, 8).Select(order => Tree.OfOrder(order).Count));

    [Fact]
    public void The_solution_meets_all_two_hundred_conditions_of_order_eight()
    {
        foreach (Tree tree in Tree.UpTo(8))
            s_digits.Holds(1 / tree.Density, tree.Weigh(DormandPrince853.B.AsSpan()), tree.ToString());
    }

    [Fact]
    public void The_solution_is_not_of_order_nine() =>
        Assert.True(Tree.OfOrder(9).Max(tree => Math.Abs(tree.Weigh(DormandPrince853.B.AsSpan()) - 1 / tree.Density)) > 1e-7);

    [Fact]
    public void The_fifth_order_estimate_sees_nothing_up_to_order_five_and_something_at_six() => Sees(DormandPrince853.Error5.AsSpan(), 5);

    [Fact]
    public void The_third_order_estimate_sees_nothing_up_to_order_three_and_something_at_four() => Sees(DormandPrince853.Error3.AsSpan(), 3);

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.37)]
    [InlineData(0.5)]
    [InlineData(0.81)]
    [InlineData(1)]
    public void The_interpolant_meets_all_conditions_of_order_seven(double theta)
    {
        double[] weights = InterpolantWeights(theta);
        var digits = new Tolerance(4e-14, "the weights of its coefficients reach 528 and carry sixteen digits");
        foreach (Tree tree in Tree.UpTo(7))
            digits.Holds(Math.Pow(theta, tree.Order) / tree.Density, tree.Weigh(weights), tree.ToString());
    }

    private static void Sees(ReadOnlySpan<double> weights, int order)
    {
        foreach (Tree tree in Tree.UpTo(order))
            s_digits.Holds(0, tree.Weigh(weights), tree.ToString());
        double most = 0;
        foreach (Tree tree in Tree.OfOrder(order + 1))
            most = Math.Max(most, Math.Abs(tree.Weigh(weights)));
        Assert.True(most > 1e-5);
    }

    // The nested form of DenseStep, for one stage at a time.
    private static double[] InterpolantWeights(double theta)
    {
        double[] weights = new double[DormandPrince853.AllStages];
        for (int i = 0; i < weights.Length; i++)
        {
            double b = i < 12 ? DormandPrince853.B[i] : 0, first = i == 0 ? 1 : 0, last = i == 12 ? 1 : 0;
            double[] c = [b, first - b, 2 * b - last - first, .. DormandPrince853.Dense.Select(row => row[i])];
            double p = 0;
            for (int k = c.Length - 1; k >= 0; k--)
                p = (k % 2 == 0 ? theta : 1 - theta) * (c[k] + p);
            weights[i] = p;
        }

        return weights;
    }
}
