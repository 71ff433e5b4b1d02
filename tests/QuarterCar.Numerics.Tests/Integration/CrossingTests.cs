using QuarterCar.Numerics.Integration;
using QuarterCar.TestKit;

using Xunit;

namespace QuarterCar.Numerics.Tests.Integration;

/// <summary>The search that looks: guards written by their roots, found at them, and in few looks.</summary>
public class CrossingTests
{
    private static readonly Tolerance s_located = new(2e-13, "the locator stops within 1e-13 s");

    // (x − m)² − d lies below 0 between m ± √d: between looks, before the first and after the last, with the lower end on either side.
    [Theory]
    [InlineData(0.01, 1e-8)]
    [InlineData(0.02, 1e-5)]
    [InlineData(0.05, 1e-8)]
    [InlineData(0.1, 1e-8)]
    [InlineData(0.3, 1e-8)]
    [InlineData(0.55, 1e-10)]
    [InlineData(0.8, 1e-8)]
    [InlineData(0.9, 1e-8)]
    [InlineData(0.98, 1e-5)]
    [InlineData(0.99, 1e-8)]
    [InlineData(0.997, 1e-8)]
    public void A_dip_between_looks_is_found_where_it_begins(double middle, double depth)
    {
        Assert.True(Find(x => ((x - middle) * (x - middle)) - depth, out double theta, out int looks));
        new Tolerance(1e-11, "rounding of 1e-17 over a slope of 2·√d").Holds(middle - Math.Sqrt(depth), theta);
        Assert.InRange(looks, 1, 30);
    }

    [Theory]
    [InlineData(0.02)]
    [InlineData(0.3)]
    [InlineData(0.98)]
    public void A_dip_that_stays_above_the_boundary_is_no_crossing(double middle)
    {
        Assert.False(Find(x => ((x - middle) * (x - middle)) + 1e-9, out _, out int looks));
        Assert.InRange(looks, 8, 12);
    }

    // What does not come down to half of the lowest look is not followed.
    [Fact]
    public void A_shallow_dip_costs_no_look()
    {
        Assert.False(Find(x => ((x - 0.55) * (x - 0.55)) + 0.1, out _, out int looks));
        Assert.Equal(7, looks);
    }

    // A dip that is no parabola is closed in on: (x − m)⁴ + 1e-3·(x − m)² − d, down to its root by the square's formula.
    [Theory]
    [InlineData(0.3, 1e-6)]
    [InlineData(0.62, 1e-6)]
    [InlineData(0.87, 1e-5)]
    public void A_dip_that_is_flat_at_its_foot_is_found(double middle, double depth)
    {
        Assert.True(Find(x => Math.Pow(x - middle, 4) + (1e-3 * Math.Pow(x - middle, 2)) - depth, out double theta, out int looks));
        double square = (-1e-3 + Math.Sqrt(1e-6 + (4 * depth))) / 2;
        new Tolerance(1e-11, "rounding of 1e-16 over a slope of 1e-4").Holds(middle - Math.Sqrt(square), theta);
        Assert.InRange(looks, 1, 30);
    }

    // e^k(x − m) − 1 − k·(x − m) has its foot at m and is steeper on one side; lowered by ½k²w² it is out for 2w or so, from where MathNet's Brent finds its root.
    // Raised by as much it is not crossed, and it takes a dozen looks to be sure.
    [Theory]
    [InlineData(1e-1)]
    [InlineData(1e-2)]
    [InlineData(1e-3)]
    [InlineData(1e-4)]
    [InlineData(1e-5)]
    public void A_lopsided_dip_is_found_wherever_it_lies(double half)
    {
        foreach (double k in new[] { 1.0, -1, 4, -4, 8, -8 })
        {
            double depth = 0.5 * k * k * half * half;
            for (int i = 0; i < 97; i++)
            {
                double m = 0.02 + (0.01 * i);
                double Value(double x) => Math.Exp(k * (x - m)) - 1 - (k * (x - m)) - depth;
                if (Value(0) <= 0) continue;
                Assert.True(Find(Value, out double theta, out int looks), $"{k} at {m}");
                double root = MathNet.Numerics.RootFinding.Brent.FindRoot(Value, Math.Max(0, m - (2 * half)), m, 1e-14);
                new Tolerance(1e-9, "rounding of 1e-15 over a slope of k²·w").Holds(root, theta, $"{k} at {m}");
                Assert.InRange(looks, 1, half < 5e-5 ? 100 : 40); // of the narrowest the last digits are rounding, in which false position wanders
                Assert.False(Find(x => Value(x) + (2 * depth), out _, out looks), $"{k} at {m}");
                Assert.InRange(looks, 7, 20);
            }
        }
    }

    // A body in flight, g·x² below a line, that skims sine waves of height 1: at its lowest it is the depth below them. Looked for by 4001 samples.
    [Theory]
    [InlineData(1e-2)]
    [InlineData(1e-3)]
    [InlineData(1e-4)]
    [InlineData(1e-5)]
    public void No_touch_of_a_body_that_skims_waves_is_missed(double depth)
    {
        var random = new Random(1);
        double Between(double a, double b) => a + ((b - a) * random.NextDouble());
        for (int i = 0; i < 500; i++)
        {
            (double slope, double fall, double waves, double phase) = (Between(-0.3, 0.3), Between(0, 3), Between(0.6, 8), Between(0, 2 * Math.PI));
            double Gap(double x) => (slope * x) - (fall * x * x) - Math.Sin((2 * Math.PI * waves * x) + phase);
            double lift = Enumerable.Range(0, 4001).Min(k => Gap(k / 4000.0)) + depth;
            if (Gap(0) <= lift || Gap(1) <= lift) continue;
            string what = $"case {i}";
            Assert.True(Find(x => Gap(x) - lift, out double theta, out _, stretches: 1 + (int)(2 * waves)), what);
            Assert.True(Gap(theta) <= lift, what);
            Assert.DoesNotContain(Enumerable.Range(0, (int)(4000 * (theta - 1e-9)) + 1), k => Gap(k / 4000.0) < lift);
        }
    }

    // Half waves of a step, the dip in the first or the last of them: looks beside the ends are as close as these are short.
    [Theory]
    [InlineData(0.0025)]
    [InlineData(0.4975)]
    [InlineData(0.9975)]
    public void A_dip_in_one_of_eight_stretches_is_found(double middle)
    {
        Assert.True(Find(x => ((x - middle) * (x - middle)) - 1e-8, out double theta, out _, stretches: 8));
        new Tolerance(1e-11, "rounding of 1e-17 over a slope of 2e-4").Holds(middle - 1e-4, theta);
    }

    // x·(x − 0.02)·(x − 0.03): inside to begin with, for less than the first look of a step that is not cut.
    [Fact]
    public void The_first_look_is_early_in_the_first_stretch()
    {
        Assert.True(Find(x => x * (x - 0.02) * (x - 0.03), out double theta, out _, stretches: 8));
        new Tolerance(1e-11, "rounding of 1e-18 over a slope of 2e-4").Holds(0.02, theta);
    }

    // A dip behind the start in a step of ten microseconds is shorter than what events are promised to: rounding is not taken for it.
    [Theory]
    [InlineData(1e-3, true)]
    [InlineData(1e-5, false)]
    public void In_the_shortest_steps_nothing_is_looked_for_beside_the_start(double length, bool found) =>
        Assert.Equal(found, Find(x => ((x - 0.02) * (x - 0.02)) - 1e-5, out _, out _, length: length));

    [Theory]
    [InlineData(0.5, false)]
    [InlineData(0.5999, false)]
    [InlineData(0.60001, true)]
    [InlineData(0.7, true)]
    public void Nothing_is_looked_for_past_the_limit(double limit, bool found)
    {
        Assert.Equal(found, Find(x => 0.6 - x, out double theta, out _, limit));
        s_located.Holds(found ? 0.6 : 0, theta);
    }

    // Six half waves: sin(6πx) + c first falls to 0 in its second half wave, at (π + asin c)/6π; four looks a half wave, not four in all.
    [Theory]
    [InlineData(0.1)]
    [InlineData(0.9999)]
    public void The_first_of_many_dips_counts(double lift)
    {
        Assert.True(Find(x => Math.Sin(6 * Math.PI * x) + lift, out double theta, out _, stretches: 6));
        new Tolerance(1e-12, "rounding over a slope of 0.2").Holds((Math.PI + Math.Asin(lift)) / (6 * Math.PI), theta);
    }

    // x·(c − x) leaves its boundary at the start and returns at c; closer to the start than the resolution of time it has left at once.
    [Theory]
    [InlineData(0.05, 0.05)]
    [InlineData(1e-3, 1e-3)]
    [InlineData(1e-9, 1e-9)]
    [InlineData(1e-15, 0)]
    [InlineData(-1, 0)]
    public void A_start_on_the_boundary_is_no_crossing_until_it_has_been_inside(double inside, double expected)
    {
        Assert.True(Find(x => x * (inside - x), out double theta, out _));
        s_located.Holds(expected, theta);
    }

    // x·(x − ½) leaves at once and is back by the end; x·(x − 0.01)·(x − ½) is inside for a moment before it leaves and comes back.
    [Fact]
    public void A_return_later_in_the_step_does_not_hide_that_it_left()
    {
        Assert.True(Find(x => x * (x - 0.5), out double theta, out _));
        Assert.Equal(0, theta);
        Assert.True(Find(x => x * (x - 0.01) * (x - 0.5), out theta, out _));
        s_located.Holds(0.01, theta);
    }

    // The same in a step of a microsecond, where a ten-thousandth of it is beyond the resolution, and a ten-millionth is not.
    [Theory]
    [InlineData(1e-4, 1e-4)]
    [InlineData(1e-9, 0)]
    public void The_resolution_is_one_of_time(double inside, double expected)
    {
        Assert.True(Find(x => x * (inside - x), out double theta, out _, length: 1e-6));
        new Tolerance(expected == 0 ? 0 : 2e-7, "1e-13 s of 1e-6 s").Holds(expected, theta);
    }

    // In the first nanoseconds of a step what seems to fall may be rounding: a guard at rest on its boundary that moves inside is not left.
    [Theory]
    [InlineData(1e-17, 1)]
    [InlineData(1e-12, 1e-6)]
    public void Rounding_at_the_start_is_no_dip(double start, double length) =>
        Assert.False(Find(x => x == 0 ? start : x < 0.01 ? -start : x * x, out _, out _, length: length));

    // 0 at the look at a quarter, then outside; and 0 there, then in a dip.
    [Fact]
    public void A_zero_on_a_look_is_the_crossing()
    {
        Assert.True(Find(x => 0.25 - x, out double theta, out _));
        Assert.Equal(0.25, theta);
        Assert.True(Find(x => (x - 0.25) * (x - 0.26), out theta, out _));
        Assert.Equal(0.25, theta);
    }

    // Four looks a stretch with both ends, one early, one beside the end; one beside the start where the guard may have dipped before the early one.
    [Theory]
    [InlineData(0.5, 1, 8)]
    [InlineData(-0.5, 1, 7)]
    [InlineData(0.5, 5, 24)]
    [InlineData(-0.5, 5, 23)]
    public void A_guard_inside_all_along_takes_four_looks_a_stretch_and_a_few(double slope, int stretches, int expected)
    {
        Assert.False(Find(x => 1 + (slope * x), out double theta, out int looks, stretches: stretches));
        Assert.Equal((0.0, expected), (theta, looks));
    }

    // Superlinear (Dowell and Jarratt: order 1.44 a look), and no crawl where one end is steep and the other flat; a bisection each 16.
    [Theory]
    [InlineData(1, 2)]
    [InlineData(2, 9)]
    [InlineData(9, 12)]
    [InlineData(60, 14)]
    public void False_position_does_not_crawl(int power, int most)
    {
        var looks = new Looks();
        var function = new Counted(x => 0.3 - Math.Pow(x, power), looks);
        double theta = Crossing.Locate(ref function, 1, 0, 0.3, 1, -0.7), root = Math.Pow(0.3, 1.0 / power);
        s_located.Holds(root, theta);
        Assert.InRange(looks.Count, 1, most);

        looks = new Looks();
        function = new Counted(x => Math.Pow(1 - x, power) - 0.3, looks);
        theta = Crossing.Locate(ref function, 1, 0, 0.7, 1, -0.3);
        s_located.Holds(1 - root, theta);
        Assert.InRange(looks.Count, 1, most);
    }

    // A step of a microsecond is searched to 1e-13 s and no closer.
    [Fact]
    public void A_short_step_takes_fewer_looks()
    {
        int[] looks = new int[2];
        foreach ((int i, double length) in new[] { (0, 1.0), (1, 1e-6) })
        {
            var counted = new Looks();
            var function = new Counted(x => 0.3 - Math.Pow(x, 9), counted);
            new Tolerance(2e-13 / length, "1e-13 s").Holds(Math.Pow(0.3, 1.0 / 9), Crossing.Locate(ref function, length, 0, 0.3, 1, -0.7));
            looks[i] = counted.Count;
        }

        Assert.True(looks[1] < looks[0], $"{looks[1]} against {looks[0]}");
    }

    // What is returned lies past the boundary or on it, never before.
    [Theory]
    [InlineData(0.1)]
    [InlineData(0.37)]
    [InlineData(0.9)]
    public void The_place_is_not_inside(double root)
    {
        static double Value(double x, double at) => Math.Exp(at) - Math.Exp(x);
        var function = new Counted(x => Value(x, root), new Looks());
        double theta = Crossing.Locate(ref function, 1, 0, Value(0, root), 1, Value(1, root));
        Assert.True(Value(theta, root) <= 0);
        s_located.Holds(root, theta);
    }

    private static bool Find(Func<double, double> guard, out double theta, out int looks, double limit = 1, double length = 1, int stretches = 1)
    {
        var counted = new Looks();
        var function = new Counted(guard, counted);
        bool found = Crossing.TryFind(ref function, limit, length, stretches, out theta);
        looks = counted.Count;
        return found;
    }

    private sealed class Looks
    {
        public int Count { get; set; }
    }

    private readonly struct Counted(Func<double, double> guard, Looks looks) : IGuardFunction
    {
        public double Value(double theta)
        {
            looks.Count++;
            return guard(theta);
        }
    }
}
