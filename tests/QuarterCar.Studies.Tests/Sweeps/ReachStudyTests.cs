using QuarterCar.Studies.Setups;
using QuarterCar.Studies.Sweeps;

using Xunit;

namespace QuarterCar.Studies.Tests.Sweeps;

/// <summary>How far a path can go, against drops with closed forms and against runs by hand.</summary>
public sealed class ReachStudyTests
{
    // From the height whose depth is the limit (check values NL-3 and NL-4): the tyre, 1e8 N/m, sinks by F/k_t and stores F²/2k_t, so
    // the same depth of spring takes (F²/2k_t)/W − F/k_t more height: 1.0e-4 m for 5.5 kN on 100 kg, 2.0e-4 m for 14.2 kN on 300 kg;
    // the unsprung 0.2 kg gives up 0.2 % of the fall's energy in the tyre, which the spring does not see. Beside it the resolution.
    [Theory]
    [InlineData(Corners.DropOnSpring, 0.4, 0.6, 0.5, 1.0e-4)]
    [InlineData(Corners.DropOnPair, 0.2, 0.4, 0.3, 2.0e-4)]
    public void The_height_that_uses_a_given_depth_is_that_of_the_closed_form(string corner, double from, double to, double height, double tyre)
    {
        ReachSetup reach = new Studied(corner).Reach(FormattableString.Invariant($"drop.height={from}:{to} m"));
        Assert.Equal((to - from) / 1024, reach.Resolution, 12);
        Assert.InRange(reach.Largest!.Value, height + tyre - reach.Resolution - 2e-5, height + tyre + 2e-5);
        Assert.Equal("travel.max_shaft_travel_m", reach.FirstBroken!.Verdict!.Figure);
    }

    [Fact]
    public void The_answer_holds_when_run_alone_and_breaks_a_resolution_farther()
    {
        var studied = new Studied(Corners.DropOnPair);
        ReachSetup reach = studied.Reach("drop.height=10:40 cm");
        string Height(double h) => FormattableString.Invariant($"drop.height={h:R} m");
        Assert.False(studied.Alone(Height(reach.Largest!.Value)).Limits[0].Broken);
        LimitVerdict beyond = studied.Alone(Height(reach.Largest.Value + reach.Resolution)).Limits[0];
        Assert.True(beyond.Broken);
        Assert.Equal(beyond.Value!.Value, reach.FirstBroken!.Verdict!.Value!.Value, 9);
        Assert.Equal(reach.Largest.Value + reach.Resolution, reach.FirstBroken.At, 12);
    }

    [Fact]
    public void The_scan_has_33_points_with_both_ends()
    {
        ReachSetup reach = new Studied(Corners.DropOnSpring).Reach("drop.height=10:42 cm");
        Assert.Equal(33, reach.Scan.Length);
        Assert.Equal(0.10, reach.Scan[0].At, 15);
        Assert.Equal(0.11, reach.Scan[1].At, 15);
        Assert.Equal(0.42, reach.Scan[32].At, 15);
    }

    [Fact]
    public void A_way_that_holds_throughout_goes_to_its_end_and_breaks_nothing()
    {
        ReachSetup reach = new Studied(Corners.DropOnSpring).Reach("drop.height=0:0.4 m");
        Assert.Equal(0.4, reach.Largest);
        Assert.Null(reach.FirstBroken);
    }

    [Fact]
    public void A_first_value_that_breaks_leaves_no_largest()
    {
        ReachSetup reach = new Studied(Corners.DropOnSpring).Reach("drop.height=0.6:0.9 m");
        Assert.Null(reach.Largest);
        Assert.Equal(0.6, reach.FirstBroken!.At);
    }

    [Fact]
    public void A_way_may_lead_downward()
    {
        ReachSetup down = new Studied(Corners.DropOnSpring).Reach("coilover.springs.lower.rate=40:10 N/mm");
        Assert.InRange(down.Largest!.Value, 20e3, 20e3 + (30e3 / 1024) + 10);
    }

    [Fact]
    public void A_stretch_that_breaks_between_two_that_hold_is_found()
    {
        var studied = new Studied(Corners.Whoops);
        ReachSetup reach = studied.Reach("speed=1:30 m/s");
        Assert.True(reach.Scan[0].Holds);
        Assert.True(reach.Scan[^1].Holds);
        Assert.True(reach.HoldsAgain);
        // Shaking at 4 m a whoop meets √(k/m)/2π = 1.47 Hz at 5.9 m/s: the first break comes before, and beyond twice that speed it is calm.
        Assert.InRange(reach.Largest!.Value, 1, 5.9);
        Assert.False(studied.Alone("speed=28 m/s").Limits[0].Broken);
        Assert.True(studied.Alone("speed=5.9 m/s").Limits[0].Broken);
    }

    [Fact]
    public void Several_setups_each_get_their_own_answer()
    {
        var studied = new Studied(Corners.DropOnSpring);
        SetupRequest Rate(double rate) => SetupRequest.Of([SetupValue.Of("coilover.springs.lower.rate", FormattableString.Invariant($"{rate} N/mm"))]);
        ReachResult both = studied.Reach("drop.height=0.1:0.9 m", SetupPlan.List(["coilover.springs.lower.rate"], [Rate(15), Rate(20)]));
        Assert.Equal(["lower rate 15 N/mm", "lower rate 20 N/mm"], both.Setups.Select(s => s.Request.Title));
        // The same depth under a softer spring: h = kδ²/2W − δ, 0.306 m for 15 N/mm.
        double soft = (15e3 * 0.27583163977727 * 0.27583163977727 / (2 * 980.665)) - 0.27583163977727;
        Assert.InRange(both.Setups[0].Largest!.Value, soft - 1e-3, soft + 2e-4);
        Assert.InRange(both.Setups[1].Largest!.Value, 0.5 - 1e-3, 0.5 + 2e-4);
    }

    [Fact]
    public void One_thread_finds_what_several_find()
    {
        ReachSetup one = new Studied(Corners.Plain).Reach("drop.height=0.1:1.2 m", 1), four = new Studied(Corners.Plain).Reach("drop.height=0.1:1.2 m", 4);
        Assert.Equal(one.Largest, four.Largest);
        Assert.Equal(one.FirstBroken, four.FirstBroken);
        Assert.Equal(one.Scan.AsEnumerable(), four.Scan.AsEnumerable());
    }

    // 3432.3 N on k stand at the stroke of 300 mm where k is 11.441 N/mm.
    [Fact]
    public void A_way_ends_where_the_corner_comes_to_stand_on_metal()
    {
        ReachSetup down = new Studied(Corners.NoLimits).Reach("coilover.springs.lower.rate=30:10 N/mm");
        Assert.InRange(down.Largest!.Value, 11.441e3, 11.441e3 + down.Resolution);
        Assert.Equal((null, null, "stands on metal at full bump"), (down.FirstBroken!.Verdict, down.FirstBroken.Failure, down.FirstBroken.Rest));
        Assert.False(down.HoldsAgain);
        Assert.False(down.Failed);
        Assert.Equal("stands on metal at full bump", down.Scan[^1].Rest);
    }

    // 3432.3 N on 30 N/mm take 114.4 mm: a preload of more holds the shaft out. On k they stand 200 mm in, where the bump stop begins, at 17.162 N/mm.
    [Theory]
    [InlineData("{ top_out: 0 }", "coilover.preload=50:200 mm", 0.11441, "stands topped out")]
    [InlineData("{ bump_stop: 0 }", "coilover.springs.lower.rate=30:15 N/mm", 17.1616e3, "stands on its bump stop")]
    public void A_way_ends_where_the_corner_comes_to_lean_on_a_stop_whose_touches_are_limited(string limits, string way, double edge, string stands)
    {
        ReachSetup reached = new Studied(Corners.SingleWithStop(limits)).Reach(way);
        Assert.InRange(Math.Abs(reached.Largest!.Value - edge), 0, reached.Resolution);
        Assert.Equal(("counts." + limits.Split(' ')[1].TrimEnd(':'), 0, true, null, stands), (reached.FirstBroken!.Verdict!.Figure, reached.FirstBroken.Verdict.Value, reached.FirstBroken.Verdict.Broken, reached.FirstBroken.Failure, reached.FirstBroken.Rest));
        Assert.Equal("", reached.HeldBy);
        Assert.Null(new Studied(Corners.SingleWithStop("{ spring_frequency_hz: 30 }")).Reach(way).FirstBroken);
    }

    [Fact]
    public void Bound_coils_are_a_limit_although_the_scenario_sets_none() =>
        Assert.Equal("counts.coil_bind", new Studied(Corners.Plain).Reach("drop.height=0.1:3 m").FirstBroken!.Verdict!.Figure);
}
