using QuarterCar.Model.Springs;
using QuarterCar.TestKit;

using Xunit;

namespace QuarterCar.Model.Tests.Springs;

/// <summary>Two springs in series, the softer held after its travel δ1: check-values sections 4 and 6 (C, formulas from memory).</summary>
public class SeriesDualRateTests
{
    private const double Inch = 0.0254, PoundPerInch = 0.45359237 * 9.80665 / 0.0254;

    // 12 digits are printed; the stack needs a handful of operations.
    private static readonly Tolerance s_rounding = Tolerance.Share(1e-12, "a handful of operations on doubles");
    private static readonly Tolerance s_printed = Tolerance.Share(1e-9, "the table gives nine to ten digits");

    private static SpringStack Stack(double k1, double k2, double held) =>
        SpringStack.Build(new SpringSetData(null, new SpringData(k1, 2, 0.1), new SpringData(k2, 2, 0.1)), held);

    // SP-10 to SP-12: k12 = k1·k2/(k1 + k2), F_x = k1·δ1, x_c = F_x/k12.
    [Theory]
    [InlineData(250, 350, 4, 145.833333333333, 1000, 6.857142857142857)]
    [InlineData(300, 300, 3, 150, 900, 6.0)]
    [InlineData(200, 400, 5, 133.333333333333, 1000, 7.5)]
    public void Held_upper_group_leaves_the_lower_springs_rate(double k1, double k2, double held, double k12, double force, double crossover)
    {
        SpringStack stack = Stack(k1 * PoundPerInch, k2 * PoundPerInch, held * Inch);
        StackBreak at = stack.Breaks[1];
        s_rounding.Holds(force * PoundPerInch * Inch, stack.CrossoverForce!.Value, "force");
        s_rounding.Holds(crossover * Inch, at.Compression, "travel");
        s_rounding.Holds(k12 * PoundPerInch, stack.Breaks[0].RateAbove, "rate below");
        s_rounding.Holds(k2 * PoundPerInch, at.RateAbove, "rate above");
        s_rounding.Holds(force * crossover / 2 * PoundPerInch * Inch * Inch, stack.Energy(at.Compression), "energy");
    }

    [Fact]
    public void Sp_10_in_newtons_per_metre() => s_printed.Holds(25539.330140, Stack(250 * PoundPerInch, 350 * PoundPerInch, 4 * Inch).Breaks[0].RateAbove);

    // NL-4: a mass dropped on the pair; at the deepest point the springs hold m·g·(h + x).
    [Theory]
    [InlineData(300, 0.3, 40e3, 60e3, 0.08, 0.3171897352427, 14231.3841145635)]
    [InlineData(300, 0.05, 40e3, 60e3, 0.08, 0.2333703859531, double.NaN)]
    [InlineData(250, 0.5, 250 * PoundPerInch, 350 * PoundPerInch, 0.1016, 0.3473950753975, 15065.859785736)]
    public void A_drop_on_the_pair_ends_where_the_energy_says(double mass, double height, double k1, double k2, double held, double deepest, double force)
    {
        SpringStack stack = Stack(k1, k2, held);
        s_printed.Holds(mass * 9.80665 * (height + deepest), stack.Energy(deepest), "energy");
        if (!double.IsNaN(force))
            s_printed.Holds(force, stack.Force(deepest), "force");
    }

    // NL-3 (Roark, from memory): the same on one spring, δ = W/k·(1 + √(1 + 2hk/W)).
    [Theory, InlineData(100, 20e3, 0, 0.0980665), InlineData(100, 20e3, 0.5, 0.27583163977727), InlineData(400, 40e3, 0.3, 0.3597092687177)]
    public void A_drop_on_one_spring_ends_where_the_energy_says(double mass, double rate, double height, double deepest)
    {
        var stack = SpringStack.Build(new SpringSetData(null, null, new SpringData(rate, 2, 0.1)), null);
        s_printed.Holds(mass * 9.80665 * (height + deepest), stack.Energy(deepest), "energy");
    }
}
