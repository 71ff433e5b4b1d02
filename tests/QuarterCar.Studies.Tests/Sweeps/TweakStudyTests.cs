using System.Globalization;

using QuarterCar.Model;
using QuarterCar.Scenarios.SpringLists;
using QuarterCar.Studies.Sweeps;

using Xunit;

namespace QuarterCar.Studies.Tests.Sweeps;

/// <summary>Steps of a coilover against statics by hand and against runs alone.</summary>
public sealed class TweakStudyTests
{
    private static TweakResult Tweak(string corner, Goal? goal = null, int jobs = 2, params SpringData[] shelf) =>
        TweakStudy.Run(new Studied(corner).Base, goal ?? Goal.Default, shelf.Length == 0 ? TweakShelf.Shipped() : new TweakShelf([.. shelf], [], false), Studied.Jobs(jobs));

    private static double Effect(TweakOutcome o, string name) => o.SideEffects.Single(e => e.Key == name).Value;

    // Without gas the load on the springs stays, so the coil nut carries the corner up by what it moves.
    [Fact]
    public void A_turn_of_the_coil_nut_lifts_the_corner_by_one_pitch()
    {
        var turns = Tweak(Corners.Plain).Steps.Where(s => s.Step.Path == "coilover.preload").ToList();
        Assert.Equal(2, turns.Count);
        foreach (TweakOutcome turn in turns)
        {
            Assert.Equal(2e-3, Math.Abs(turn.Step.To - turn.Step.From), 12);
            Assert.Equal(turn.Step.To - turn.Step.From, Effect(turn, "static.ride_height_m"), 9);
        }
    }

    [Fact]
    public void A_turn_says_how_far_it_goes_and_whether_that_was_given()
    {
        Assert.Equal(
            ["coil nut one turn down, 2.0 mm (a usual pitch)", "coil nut one turn up, 2.0 mm (a usual pitch)"],
            Tweak(Corners.Plain).Steps.Where(s => s.Step.Path == "coilover.preload").Select(s => s.Step.What).Order(StringComparer.Ordinal));
        string coarse = Corners.Plain.Replace("  preload: 30 mm", "  preload: 30 mm\n  body: { thread_pitch: 3 mm }", StringComparison.Ordinal);
        Assert.Contains(Tweak(coarse).Steps, s => s.Step.What == "coil nut one turn down, 3.0 mm");
    }

    [Fact]
    public void The_pitch_of_the_body_is_taken_where_it_is_given()
    {
        string fine = Corners.Plain.Replace("  preload: 30 mm", "  preload: 30 mm\n  body: { thread_pitch: 1.5 mm }", StringComparison.Ordinal);
        Assert.All(Tweak(fine).Steps.Where(s => s.Step.Path == "coilover.preload"), s => Assert.Equal(1.5e-3, Math.Abs(s.Step.To - s.Step.From), 12));
    }

    [Fact]
    public void Every_step_gives_what_a_run_alone_gives()
    {
        var studied = new Studied(Corners.Plain);
        TweakOutcome rebound = Tweak(Corners.Plain).Steps.Single(s => s.Step.Path == "coilover.damper.rebound" && s.Step.To > 1);
        double alone = studied.Alone("coilover.damper.rebound=[[0.1 m/s, 550 N], [1 m/s, 2750 N]]").Figures.Acceleration.PeakG;
        Assert.Equal(alone, rebound.Goal!.Value, 6);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Steps_come_best_first(bool most)
    {
        var result = Tweak(Corners.Plain, new Goal("acceleration.peak_g", most));
        var goals = result.Steps.Where(s => s.Goal is not null).Select(s => s.Goal!.Value).ToList();
        Assert.True(goals.Count >= 12);
        Assert.Equal(most ? goals.OrderDescending() : goals.Order(), goals);
        Assert.All(result.Steps.Where(s => s.Goal is not null), s => Assert.Equal(s.Goal!.Value - result.Base!.Value, s.Change!.Value, 12));
    }

    // 61 mm of bump stop reach into the travel that 50 mm leave free: the drop is chosen so that the shaft stops between the two.
    [Fact]
    public void A_contact_that_vanishes_is_named()
    {
        double most = new Studied(Corners.Plain).Alone("drop.height=0 mm", "coilover.bump_stop=none").Figures.Travel.MaxShaftTravel;
        string touching = Corners.Plain.Replace("height: 300 mm", "height: 0 mm", StringComparison.Ordinal)
            .Replace("length: 50 mm", FormattableString.Invariant($"length: {(0.3 - most + 2e-3) * 1e3:R} mm"), StringComparison.Ordinal)
            .Replace("[[20 mm, 2000 N], [45 mm, 20000 N]]", "[[100 mm, 2000 N]]", StringComparison.Ordinal);
        TweakOutcome shorter = Tweak(touching).Steps.Single(s => s.Step.Path == "coilover.bump_stop.length" && s.Step.To < s.Step.From);
        EventChange gone = Assert.Single(shorter.EventChanges, e => e.Event == "bump_stop");
        Assert.Equal(0, gone.After);
        Assert.True(gone.Before > 0);
    }

    // One spring has no crossover, and every step runs all the same.
    [Fact]
    public void A_goal_that_does_not_apply_is_no_failure_and_hides_no_side_effect()
    {
        TweakResult result = Tweak(Corners.Single, new Goal("static.crossover_force_N", false));
        Assert.Null(result.Base);
        Assert.False(result.Failed);
        Assert.All(result.Steps, s => Assert.NotEmpty(s.SideEffects));
    }

    [Fact]
    public void A_step_onto_loose_springs_is_not_feasible()
    {
        string loose = Corners.Plain.Replace("preload: 30 mm", "preload: 1 mm", StringComparison.Ordinal);
        TweakOutcome up = Tweak(loose).Steps.Single(s => s.Step.Path == "coilover.preload" && s.Step.To < 0);
        Assert.False(up.Feasible);
        Assert.Contains("loose by 1.0 mm", up.Reason, StringComparison.Ordinal);
    }

    // 60 N/mm over 30: of 300 mm of stroke and 15 of preload the lower takes two thirds, 210 mm of 211, the upper 105 of 200. A turn of 2 mm adds 4/3 mm to it: short by 0.3.
    [Fact]
    public void A_step_into_coil_bind_names_the_spring_that_is_short_and_by_how_much()
    {
        string edge = Corners.Plain.Replace("lower: { rate: 60 N/mm, free_length: 350 mm, solid_length: 130 mm }", "lower: { rate: 30 N/mm, free_length: 350 mm, solid_length: 139 mm }", StringComparison.Ordinal)
            .Replace("preload: 30 mm", "preload: 15 mm", StringComparison.Ordinal).Replace("  stop_nut: { gap: 20 mm, at: ride_height }\n", "", StringComparison.Ordinal);
        TweakOutcome down = Tweak(edge).Steps.Single(s => s.Step.Path == "coilover.preload" && s.Step.To > s.Step.From);
        Assert.Equal("the lower spring binds, short by 0.3 mm at full bump", down.Reason);
    }

    // 20 N/mm carry 20·(200 + 10) = 4200 N at full bump. 4180 N leave 1 mm of it; with the nut a turn of 2 mm up 4160 are left, and metal carries the rest.
    [Theory]
    [InlineData(4180, "with it the corner stands on metal at full bump")]
    [InlineData(4150, null)]
    public void A_step_after_which_the_corner_stands_on_metal_is_not_feasible(double weight, string? reason)
    {
        TweakResult result = Tweak(Corners.SingleNearMetal(weight));
        Assert.Null(result.Rest);
        var nut = result.Steps.Where(s => s.Step.Path == "coilover.preload").ToList();
        Assert.Equal(reason, nut.Single(s => s.Step.To < s.Step.From).Reason);
        Assert.Null(nut.Single(s => s.Step.To > s.Step.From).Reason);
    }

    // 20·(180 + 10) = 3800 N at the first touch of a bump stop of 20 mm; 3780 N leave 1 mm. With the nut a turn of 2 mm up springs give 3760 N there.
    [Fact]
    public void A_step_after_which_the_corner_leans_on_its_bump_stop_breaks_the_limit_on_touches_of_it()
    {
        string near = Corners.SingleNearMetal(3780).Replace("{ step: 20 mm }, ", "", StringComparison.Ordinal)
            .Replace("  preload:", "  bump_stop: { on: shaft, length: 20 mm, force: [[10 mm, 2000 N]] }\n  preload:", StringComparison.Ordinal);
        var free = Tweak(near).Steps.Where(s => s.Step.Path == "coilover.preload");
        Assert.All(free, s => Assert.Empty(s.LimitsBroken));
        var held = Tweak(near.Replace("up_travel_used: 0.95", "bump_stop: 0", StringComparison.Ordinal)).Steps.Where(s => s.Step.Path == "coilover.preload").ToList();
        Assert.Equal("counts.bump_stop", Assert.Single(held.Single(s => s.Step.To < s.Step.From).LimitsBroken));
        Assert.Empty(held.Single(s => s.Step.To > s.Step.From).LimitsBroken);
    }

    [Fact]
    public void A_corner_that_stands_on_metal_as_written_is_said_to_and_is_no_step_s_doing()
    {
        TweakResult result = Tweak(Corners.SingleNearMetal(4250));
        Assert.Equal("stands on metal at full bump", result.Rest);
        Assert.All(result.Steps.Where(s => s.Step.Path == "coilover.preload"), s => Assert.Null(s.Reason));
    }

    [Fact]
    public void The_next_spring_comes_from_the_shelf_in_the_nearest_length()
    {
        SpringData[] shelf = [new(50e3, 0.30, 0.1), new(70e3, 0.25, 0.1), new(70e3, 0.34, 0.12), new(80e3, 0.35, 0.1), new(60e3, 0.3, 0.1)];
        var lower = Tweak(Corners.Plain, shelf: shelf).Steps.Where(s => s.Step.Path == "coilover.springs.lower.rate").ToDictionary(s => s.Step.To);
        Assert.Equal([50e3, 70e3], lower.Keys.Order());
        Assert.Contains("free_length: 0.34 m", lower[70e3].Step.Change.Text, StringComparison.Ordinal);
    }

    // The corner has 60 N/mm on both places and says nothing about diameters: a body of 2.5 in is taken, whose springs have 3 in inside; rates from the file itself.
    [Fact]
    public void Without_a_list_the_next_spring_comes_from_the_one_that_ships()
    {
        var rates = Shipped().Where(r => r.Inner == 3.0).Select(r => r.Rate * 4.4482216152605 / 0.0254).ToList();
        double above = rates.Where(r => r > 60e3).Min(), below = rates.Where(r => r < 60e3).Max();
        var upper = Tweak(Corners.Plain).Steps.Where(s => s.Step.Path == "coilover.springs.upper.rate").ToList();
        Assert.Equal([below, above], upper.Select(s => s.Step.To).Order().Select(r => Math.Round(r, 6)).ToArray(), (a, b) => Math.Abs(a - b) < 1);
        Assert.All(upper, s => Assert.Equal(s.Step.To, s.Step.Spring!.Rate));
        Assert.All(upper, s => Assert.Equal(3.0 * 0.0254, s.Step.Spring!.InnerDiameter!.Value, 6));
    }

    // A lower spring 40 mm longer at the same preload puts the coil nut 40 mm higher.
    [Fact]
    public void A_longer_spring_moves_the_coil_nut_up_its_thread()
    {
        string body = Corners.Plain.Replace("  preload: 30 mm", "  preload: 30 mm\n  body: { seat_length: 600 mm, thread: 100 mm, slider: 10 mm }", StringComparison.Ordinal);
        TweakOutcome same = Tweak(body, shelf: [new(70e3, Free(body), 0.1)]).Steps.First(s => s.Step.Path == "coilover.springs.lower.rate");
        TweakOutcome longer = Tweak(body, shelf: [new(70e3, Free(body) + 0.04, 0.1)]).Steps.First(s => s.Step.Path == "coilover.springs.lower.rate");
        Assert.Equal(0, Effect(same, "fit.nut_from_top_m"), 9);
        Assert.Equal(-0.04, Effect(longer, "fit.nut_from_top_m"), 9);
    }

    private static double Free(string corner) => new Studied(corner).Base.Scenario.Corner.Coilover.Springs.Lower.FreeLength;

    private static IEnumerable<(double Rate, double Inner)> Shipped()
    {
        using var reader = new StreamReader(InventedSprings.Open("invented-springs.csv"));
        string[] lines = [.. reader.ReadToEnd().Split('\n').Where(l => l.Length > 0 && l[0] != '#')], head = lines[0].Trim().Split(',');
        int rate = Array.IndexOf(head, "rate_lbf_in"), inner = Array.IndexOf(head, "inner_diameter_in");
        return [.. lines.Skip(1).Select(l => l.Split(',')).Select(c => (double.Parse(c[rate], CultureInfo.InvariantCulture), double.Parse(c[inner], CultureInfo.InvariantCulture)))];
    }

    [Fact]
    public void One_thread_gives_what_several_give() =>
        Assert.Equal(Tweak(Corners.Plain, jobs: 1).Steps.Select(s => (s.Step.Path, s.Goal)), Tweak(Corners.Plain, jobs: 4).Steps.Select(s => (s.Step.Path, s.Goal)));
}
