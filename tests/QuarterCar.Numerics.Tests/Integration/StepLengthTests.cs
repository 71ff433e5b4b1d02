using QuarterCar.Numerics.Integration;
using QuarterCar.TestKit;
using QuarterCar.TestKit.Running;

using Xunit;

namespace QuarterCar.Numerics.Tests.Integration;

/// <summary>How long the steps are where no error limits them (y' = 1): six times the last one's length, cut at the end, at breaks and at crossings.</summary>
public class StepLengthTests
{
    private static readonly Tolerance s_rounding = new(1e-10, "a crossing to 1e-13 s, grown sixfold a few times");
    private static readonly IntegrationSettings s_settings = TestRun.Settings(1e-9, 1e-9) with { FirstStep = 1e-3 };

    // Past the end of the run.
    private const double Never = 2;

    [Fact]
    public void A_step_without_error_is_followed_by_one_six_times_as_long() => Lengths([0.001, 0.006, 0.036, 0.216, 0.741], Never, Never);

    // Cut at 0.05 after 7 ms of the 216 that it might have had: those are not forgotten.
    [Fact]
    public void A_step_cut_by_a_break_does_not_shorten_the_next() => Lengths([0.001, 0.006, 0.036, 0.007, 0.216, 0.734], Never, Never, 0.05);

    // Within a ten-thousandth of the break a step goes all the way: 36.003 ms in place of 36.
    [Fact]
    public void A_step_that_all_but_reaches_a_break_goes_all_the_way() => Lengths([0.001, 0.006, 0.036003, 0.216018, 0.740979], Never, Never, 0.043003);

    // Of 36 ms a crossing leaves 1; the next step is tried at 216 all the same.
    [Fact]
    public void A_step_cut_once_by_a_crossing_does_not_shorten_the_next() => Lengths([0.001, 0.006, 0.001, 0.216, 0.776], 0.008, Never);

    // Of the 216 ms the second crossing leaves 1 again, 0.46 % of them: the next begins with four times that.
    [Fact]
    public void Cut_twice_in_a_row_soon_after_its_start_a_step_goes_on_from_what_it_came_to() => Lengths([0.001, 0.006, 0.001, 0.001, 0.004, 0.024, 0.144, 0.819], 0.008, 0.009);

    // 1 µs of 216 ms is less than a thousandth of it: that is the least.
    [Fact]
    public void It_goes_on_from_a_thousandth_of_what_was_tried_at_least() => Lengths([0.001, 0.006, 0.001, 1e-6, 2.16e-4, 1.296e-3, 7.776e-3, 0.046656, 0.279936, 0.656119], 0.008, 0.008001);

    // 100 ms of 216 is nearly half of it.
    [Fact]
    public void A_cut_later_in_a_step_shortens_nothing() => Lengths([0.001, 0.006, 0.001, 0.1, 0.892], 0.008, 0.108);

    private static void Lengths(double[] expected, double first, double second, params double[] breaks)
    {
        TestRun run = TestRun.Switched(new Line(first, -1, second, -1), 0b11, default, 1, s_settings, breaks);
        double[] found = [.. run.Log.Steps.ToArray().Select(s => s.End - s.Start)];
        Assert.Equal(expected.Length, found.Length);
        for (int i = 0; i < found.Length; i++)
            s_rounding.Holds(expected[i], found[i], $"step {i}");
    }
}
