using Xunit;

namespace QuarterCar.Model.Tests;

/// <summary>The search for a root that balance and spring picking share: roots known in closed form, and what it costs.</summary>
public class FirstRootTests
{
    private int _asked;

    [Theory]
    [InlineData(2.0, 5.0, 2.0)]  // above 0 already at the low end
    [InlineData(1.0, 5.0, 1.0)]  // 0 there
    [InlineData(-4.0, 0.5, 0.5)] // below 0 still at the high end
    [InlineData(-4.0, 1.0, 1.0)] // 0 there
    [InlineData(-4.0, 5.0, 1.0)]
    public void An_end_is_the_root_where_the_function_does_not_change_its_sign(double low, double high, double root) =>
        Assert.Equal(root, FirstRoot.Rising(x => x - 1, low, high, 0));

    [Fact]
    public void A_line_is_solved_by_one_look_between_its_ends()
    {
        Assert.Equal(0.25, FirstRoot.Rising(Counted(x => 8 * (x - 0.25)), -1, 3, 0));
        Assert.Equal(3, _asked);
    }

    // Bisection takes 53 looks to the neighbouring double; one end that stays put takes more than half of that on each of these.
    [Theory]
    [InlineData(3, 2, 0, 10)]
    [InlineData(9, 0.5, 0, 1)]
    [InlineData(0.25, 0.1, 0, 1)]
    public void A_power_is_solved_to_the_last_bits_by_less_than_half_of_the_looks_of_bisection(double power, double value, double low, double high)
    {
        double expected = Math.Pow(value, 1 / power), found = FirstRoot.Rising(Counted(x => Math.Pow(x, power) - value), low, high, 0);
        Assert.Equal(expected, found, 4e-16 * Math.Max(1, expected));
        Assert.InRange(_asked, 4, 26);
    }

    // A jump has no zero: the first double past it, found by halving alone.
    [Theory]
    [InlineData(0.3)]
    [InlineData(-700.1)]
    public void Of_a_jump_the_first_double_above_it_is_found(double at)
    {
        Assert.Equal(at, FirstRoot.Rising(Counted(x => x < at ? -1 : 1e-3), -1000, 1000, 0));
        Assert.InRange(_asked, 30, 202);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void A_value_as_near_to_0_as_asked_for_ends_the_search(int side)
    {
        // The first look is where the chord of (−1, −1) and (1, 1) with a dent of 0.2 in its middle says 0: at 0, where the function is ±0.2.
        double Dented(double x) => x == 0 ? 0.2 * side : x;
        Assert.Equal(0, FirstRoot.Rising(Counted(Dented), -1, 1, 0.2));
        Assert.Equal(3, _asked);
        Assert.NotEqual(0, FirstRoot.Rising(Dented, -1, 1, 0.19));
    }

    private Func<double, double> Counted(Func<double, double> f) => x =>
    {
        _asked++;
        return f(x);
    };
}
