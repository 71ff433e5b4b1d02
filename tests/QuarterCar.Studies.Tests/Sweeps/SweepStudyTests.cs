using QuarterCar.Studies.Setups;
using QuarterCar.Studies.Sweeps;

using Xunit;

namespace QuarterCar.Studies.Tests.Sweeps;

/// <summary>Grids whose best point is known by hand, and the texts that describe them.</summary>
public sealed class SweepStudyTests
{
    private const double Weight = 350 * 9.80665;

    private static readonly Goal s_highest = new("static.ride_height_m", true);

    [Fact]
    public void Both_ends_are_included_and_inner_values_are_exact()
    {
        SweepGridAxis axis = new Studied(Corners.Plain).Grid("coilover.stop_nut.gap=0.8:1.6:5 in").Axes[0];
        double[] expected = [0.8 * 0.0254, 1.0 * 0.0254, 1.2 * 0.0254, 1.4 * 0.0254, 1.6 * 0.0254];
        for (int i = 0; i < 5; i++)
            Assert.Equal(expected[i], axis.At(i).Values[0].Si!.Value, 15);
        Assert.Equal("0.8 in", axis.At(0).Values[0].Text);
        Assert.Equal("1.6 in", axis.At(4).Values[0].Text);
    }

    [Fact]
    public void Each_end_may_have_a_unit_of_its_own()
    {
        SweepGridAxis axis = new Studied(Corners.Plain).Grid("coilover.preload=0 mm:4 in:3").Axes[0];
        Assert.Equal([0, 0.0508, 0.1016], Enumerable.Range(0, 3).Select(i => Math.Round(axis.At(i).Values[0].Si!.Value, 15)));
    }

    [Fact]
    public void The_last_path_varies_fastest()
    {
        SetupPlan plan = new Studied(Corners.Plain).Grid("coilover.preload=10:30:2 mm", "speed=1:3:3 m/s").Plan();
        Assert.Equal(6, plan.Count);
        Assert.Equal(["10 mm", "2 m/s"], plan.At(1).Values.Select(v => v.Text));
        Assert.Equal(["30 mm", "1 m/s"], plan.At(3).Values.Select(v => v.Text));
    }

    // Ride height = stroke − (W/k − p); spring frequency √(k/m)/2π is 1.20, 1.47, 1.70 Hz for 20, 30, 40 N/mm, and 1.6 is the limit.
    [Fact]
    public void The_best_point_is_the_best_of_those_that_hold_every_limit()
    {
        (SweepResult result, List<StudyRow> rows) = new Studied(Corners.Single)
            .Sweep(s_highest, Studied.Jobs(2), "coilover.springs.lower.rate=20:40:3 N/mm", "coilover.preload=0:40:3 mm");
        Assert.Equal(9, rows.Count);
        Assert.Equal([30e3, 0.04], result.Best!.Request.Values.Select(v => v.Si!.Value));
        Assert.Equal(0.3 - (Weight / 30e3) + 0.04, s_highest.Of(result.Best.Figures)!.Value, 9);
        Assert.Equal([40e3, 0.04], result.Unlimited!.Request.Values.Select(v => v.Si!.Value));
        Assert.Equal(6, result.Holding);
    }

    [Fact]
    public void The_nearest_limit_says_how_much_room_is_left()
    {
        SweepResult result = new Studied(Corners.Single).Sweep(s_highest, Studied.Jobs(2), "coilover.springs.lower.rate=20:40:3 N/mm").Result;
        double frequency = Math.Sqrt(30e3 / 350) / (2 * Math.PI);
        Assert.Equal("static.spring_frequency_hz", result.Nearest!.Figure);
        Assert.Equal(1.6, result.Nearest.Limit);
        Assert.Equal(1.6 - frequency, result.Nearest.Distance, 9);
    }

    [Fact]
    public void What_broke_where_is_told_by_limit()
    {
        SweepResult result = new Studied(Corners.Single).Sweep(s_highest, Studied.Jobs(2), "coilover.springs.lower.rate=20:60:5 N/mm").Result;
        SweepBreak broke = Assert.Single(result.Breaks);
        Assert.Equal("static.spring_frequency_hz", broke.Limit!.Figure);
        Assert.Equal(3, broke.Points);
        Assert.Equal(40e3, broke.Least[0], 6);
        Assert.Equal(60e3, broke.Most[0], 6);
        Assert.Equal(Math.Sqrt(60e3 / 350) / (2 * Math.PI), broke.Worst, 9);
    }

    [Fact]
    public void Nothing_inside_the_limits_leaves_no_best()
    {
        SweepResult result = new Studied(Corners.Single).Sweep(s_highest, Studied.Jobs(2), "coilover.springs.lower.rate=40:60:3 N/mm").Result;
        Assert.Null(result.Best);
        Assert.Null(result.Nearest);
        Assert.Equal(0, result.Holding);
    }

    [Fact]
    public void One_thread_gives_the_bits_of_several()
    {
        const string vary = "coilover.preload=0:60:7 mm";
        var (one, rowsOfOne) = new Studied(Corners.Plain).Sweep(Goal.Default, Studied.Jobs(1), vary);
        var (four, rowsOfFour) = new Studied(Corners.Plain).Sweep(Goal.Default, Studied.Jobs(4), vary);
        Assert.Equal(rowsOfOne.Select(r => r.Figures!.Value.AsEnumerable()), rowsOfFour.Select(r => r.Figures!.Value.AsEnumerable()));
        Assert.Equal(one.Best!.Index, four.Best!.Index);
        Assert.Equal(one.Map!.Goal.AsEnumerable(), four.Map!.Goal.AsEnumerable());
    }

    [Fact]
    public void The_parts_of_a_sweep_together_are_the_whole()
    {
        const string vary = "coilover.preload=0:60:7 mm";
        var studied = new Studied(Corners.Plain);
        var whole = studied.Sweep(Goal.Default, Studied.Jobs(2), vary).Rows;
        var parts = Enumerable.Range(1, 3).SelectMany(k => studied.Sweep(Goal.Default, new StudyOptions(2, k, 3), vary).Rows).OrderBy(r => r.Index);
        Assert.Equal(whole.Select(r => r.Figures!.Value.AsEnumerable()), parts.Select(r => r.Figures!.Value.AsEnumerable()));
    }

    // 350 kg weigh 3432 N. On 10 N/mm they stand 343 mm in, past the stroke of 300 mm; on 20 N/mm 172 mm.
    [Fact]
    public void A_point_that_stands_on_metal_holds_no_limit_and_is_not_the_best()
    {
        var (result, rows) = new Studied(Corners.NoLimits).Sweep(s_highest with { Most = false }, Studied.Jobs(2), "coilover.springs.lower.rate=10:30:3 N/mm");
        Assert.Equal(["stands on metal at full bump", "", ""], rows.Select(r => r.Note));
        Assert.Equal(2, result.Holding);
        Assert.Equal(20e3, result.Best!.Request.Values[0].Si!.Value, 6);
        SweepBreak broke = Assert.Single(result.Breaks);
        Assert.Null(broke.Limit);
        Assert.Equal((1, 10e3, 10e3), (broke.Points, Math.Round(broke.Least[0]), Math.Round(broke.Most[0])));
        Assert.Equal([false, true, true], result.Map!.Broken.Select(b => b < 0));
    }

    // 3432 N stand 229 mm in on 15 N/mm, past the first touch of the bump stop at 200 mm; on 20 N/mm 172 mm. Its touch is no event, for it holds from the start.
    [Fact]
    public void A_point_that_leans_on_its_bump_stop_does_not_hold_a_limit_on_touches_of_it()
    {
        var (result, rows) = new Studied(Corners.SingleWithStop("{ bump_stop: 0 }")).Sweep(s_highest with { Most = false }, Studied.Jobs(2), "coilover.springs.lower.rate=15:25:3 N/mm");
        Assert.Equal(["stands on its bump stop", "", ""], rows.Select(r => r.Note));
        Assert.All(rows, r => Assert.Null(r.Rest));
        Assert.Equal((2, 20e3), (result.Holding, Math.Round(result.Best!.Request.Values[0].Si!.Value)));
        SweepBreak broke = Assert.Single(result.Breaks);
        Assert.Equal(("counts.bump_stop", 1, true), (broke.Limit!.Figure, broke.Points, double.IsNaN(broke.Worst)));
        Assert.Equal([false, true, true], result.Map!.Broken.Select(b => b < 0));
        Assert.Equal(3, new Studied(Corners.SingleWithStop("{ spring_frequency_hz: 3 }")).Sweep(s_highest, Studied.Jobs(2), "coilover.springs.lower.rate=15:25:3 N/mm").Result.Holding);
    }

    // A drop begins at full droop: its touch is counted, though the corner comes to rest on the stop.
    [Fact]
    public void A_drop_onto_the_bump_stop_breaks_the_limit_by_its_count()
    {
        string drop = Corners.SingleWithStop("{ bump_stop: 0 }").Replace("terrain: [{ flat: 1 m }]", "drop: { height: 10 mm }", StringComparison.Ordinal).Replace("speed: 1 m/s\n", "", StringComparison.Ordinal)
            .Replace("duration: 0.1 s", "duration: 3 s", StringComparison.Ordinal);
        var (result, rows) = new Studied(drop).Sweep(s_highest, Studied.Jobs(1), "coilover.springs.lower.rate=15:60:2 N/mm");
        Assert.Equal(["", ""], rows.Select(r => r.Note));
        SweepBreak broke = Assert.Single(result.Breaks);
        Assert.Equal(("counts.bump_stop", 1, true), (broke.Limit!.Figure, broke.Points, broke.Worst >= 1));
    }

    // A travel of 200 mm is used up by 3432 N on less than 17.2 N/mm, 100 mm before full bump.
    [Fact]
    public void A_point_that_stands_on_bound_coils_holds_no_limit()
    {
        string bound = Corners.NoLimits.Replace("solid_length: 100 mm", "solid_length: 300 mm", StringComparison.Ordinal);
        var (result, rows) = new Studied(bound).Sweep(s_highest, Studied.Jobs(2), "coilover.springs.lower.rate=15:25:3 N/mm");
        Assert.Equal(["stands on bound coils", "", ""], rows.Select(r => r.Note));
        Assert.Equal(2, result.Holding);
    }

    // The primary rate of 60 over 60, 80, 100 N/mm does not hang on the preload: three points each.
    [Fact]
    public void The_points_that_an_answer_was_picked_from_are_counted_with_the_poorest_of_them()
    {
        SweepResult result = new Studied(Corners.Plain)
            .Sweep(new Goal("static.primary_rate_N_m", false), Studied.Jobs(2), "coilover.preload=10:30:3 mm", "coilover.springs.lower.rate=60:100:3 N/mm").Result;
        Assert.Equal(result.Holding, result.Field!.Value.Points);
        Assert.Equal(60e3 * 100e3 / 160e3, result.Field.Value.Poorest, 6);
    }

    [Theory]
    [InlineData("2 in,0.5 in,1 in", true)]
    [InlineData("0.5 in,none,1 in", false)]
    [InlineData("1 in,0.5 in,25.4 mm", false)] // one of them twice
    [InlineData("1 in", false)]
    public void Values_are_an_axis_where_all_are_numbers_and_no_two_the_same(string values, bool numeric)
    {
        SetupRequest[] points = [.. values.Split(',').Select(v => SetupRequest.Of([SetupValue.Of("coilover.preload", v)]))];
        Assert.Equal(numeric, SweepGridAxis.Of(["coilover.preload"], [.. points]).Numeric);
    }

    [Fact]
    public void One_path_in_two_spellings_is_one_path() =>
        Assert.Contains(new Studied(Corners.NoLimits).Mistakes("terrain[0].flat=1:2:2 m", "terrain[00].flat=1:2:2 m"), p => p is { Key: "terrain[0].flat", Found: "the path a second time" });

    [Fact]
    public void A_large_grid_keeps_a_small_map_with_both_ends()
    {
        SweepMap map = new MapWork(new Studied(Corners.Plain).Grid("coilover.preload=0:60:1000000 mm"), 2).Map();
        Assert.Equal(2001, map.Goal.Length);
        Assert.Equal(0, map.Axes[0].At[0]);
        Assert.Equal(0.06, map.Axes[0].At[^1], 15);
    }

    [Theory]
    [InlineData("coilover.preload=1:2:1 in", "a count of 1")]
    [InlineData("coilover.preload=1:2:two in", "the count 'two in'")]
    [InlineData("coilover.preload=1:1:5 in", "two equal ends")]
    [InlineData("coilover.preload=1:2:5", "'1'")]
    [InlineData("coilover.preload=1:2:5 lbf", "'1 lbf'")]
    [InlineData("coilover.preload=1:2 in", "'coilover.preload=1:2 in'")]
    [InlineData("coilover.stop_nut.gap=-1:2:4 in", "'-1 in'")]
    [InlineData("coilover.damper.compression=1:2:4 N", "no single number")]
    [InlineData("coilover.prelaod=1:2:4 in", "an unknown path")]
    [InlineData("terrain[9].step=1:2:4 in", "a path that does not fit what stands there")]
    [InlineData("title=1:2:4", "a title that varies")]
    [InlineData("limits.spring_frequency_hz=1:2:4", "limits that vary")]
    [InlineData("speed=1:nan:4 m/s", "nan")]
    public void A_range_that_cannot_be_run_is_refused_with_what_was_found(string vary, string found) =>
        Assert.Contains(new Studied(Corners.Plain).Mistakes(vary), p => p.Found.Contains(found, StringComparison.Ordinal));

    [Fact]
    public void A_grid_above_ten_million_points_is_refused_with_its_number() =>
        Assert.Contains("a grid of 10,004,569 points", new Studied(Corners.Plain).Grid("coilover.preload=0:60:3163 mm", "corner.sprung_weight=300:400:3163 kg").TooLarge, StringComparison.Ordinal);

    [Theory]
    [InlineData("peak_g:least", "acceleration.peak_g:least")]
    [InlineData("travel.up_travel_used:most", "travel.up_travel_used:most")]
    public void A_goal_is_named_by_a_figure_or_its_last_part(string text, string goal) => Assert.Equal(goal, Goal.Parse(text, out _, out _)!.ToString());

    [Theory]
    [InlineData("acceleration.peak_h:least", "'acceleration.peak_g'")]
    [InlineData("peak_N:least:x", "FIGURE:least")]
    [InlineData("peak_g:lowest", "FIGURE:least")]
    public void A_goal_that_is_none_is_refused_with_the_nearest(string text, string wanted)
    {
        Assert.Null(Goal.Parse(text, out string found, out string want));
        Assert.NotEmpty(found);
        Assert.Contains(wanted, want, StringComparison.Ordinal);
    }
}
