using QuarterCar.Model;
using QuarterCar.Scenarios.Reading;

using static QuarterCar.Scenarios.Tests.Readings;

namespace QuarterCar.Scenarios.Tests;

/// <summary>What stays of the scenario as written when something else changes: the stop nut's place, and the weight that a spring load meant.</summary>
public class StopNutRuleTests
{
    // m: C* that the standing base of these tests answers.
    private const double _held = 0.15;

    private static readonly string _loaded = Bench.Replace("sprung_weight: 800 lbf", "spring_load: 700 lbf", StringComparison.Ordinal);

    [Fact]
    public void Nut_is_set_anew_when_a_value_is_set()
    {
        var result = Read(Bench, "coilover.preload=2 in");
        Assert.Equal(new StopNutData(1.2 * 0.0254, StopNutReference.RideHeight), result.Good().Corner.Coilover.StopNut);
        Assert.Equal(NutRule.Reset, result.Nut);
    }

    [Fact]
    public void Nut_stays_for_a_case()
    {
        var result = With(Bench, Options(new Standing(_held)) with { Case = "heavy" });
        Assert.Equal(new StopNutData(_held, StopNutReference.UpperTravel), result.Good().Corner.Coilover.StopNut);
        Assert.Equal(NutRule.Stays, result.Nut);
    }

    [Fact]
    public void Held_travel_grows_by_the_preload_and_shrinks_by_the_lower_springs_length()
    {
        // C*' = C* + (p' − p) − (L_lower' − L_lower): 0.15 m + 10 mm − 25 mm.
        var options = Options(new Standing(_held)) with { Nut = NutRule.Stays, Sets = ["coilover.preload=48.1 mm", "coilover.springs.lower.free_length=380.6 mm"] };
        var nut = With(Bench, options).Good().Corner.Coilover.StopNut!;
        Assert.Equal(StopNutReference.UpperTravel, nut.At);
        Assert.Equal(0.135, nut.Length, 1e-15);
    }

    [Fact]
    public void Held_travel_is_that_of_the_scenario_as_written()
    {
        var standing = new Standing(_held);
        _ = With(Bench, Options(standing) with { Case = "heavy" }).Good();
        Assert.Equal(800 * 4.4482216152605, Assert.Single(standing.Asked).SprungWeight!.Value, 1e-11);
    }

    [Fact]
    public void With_case_and_set_the_nut_is_set_for_the_setup_and_then_stays_for_the_load()
    {
        var standing = new Standing(_held);
        var result = With(Bench, Options(standing) with { Case = "heavy", Sets = ["coilover.preload=50 mm"] });
        var asked = Assert.Single(standing.Asked);
        Assert.Equal(0.05, asked.Coilover.Preload, 1e-16);
        Assert.Equal(800 * 4.4482216152605, asked.SprungWeight!.Value, 1e-11);
        Assert.Equal(new StopNutData(_held, StopNutReference.UpperTravel), result.Good().Corner.Coilover.StopNut);
    }

    [Fact]
    public void Nut_that_is_itself_set_is_where_it_is_set()
    {
        var result = With(Bench, Options(new Standing(_held)) with { Nut = NutRule.Stays, Sets = ["coilover.stop_nut.gap=10 mm"] });
        Assert.Equal(new StopNutData(0.01, StopNutReference.RideHeight), result.Good().Corner.Coilover.StopNut);
        Assert.Equal(NutRule.Reset, result.Nut);
    }

    [Fact]
    public void Changes_away_from_the_corner_leave_the_nut_alone()
    {
        var result = With(Bench, Options(new Standing()) with { Nut = NutRule.Stays, Sets = ["speed=9 mph"] });
        Assert.Equal(StopNutReference.RideHeight, result.Good().Corner.Coilover.StopNut!.At);
        Assert.Null(result.Nut);
    }

    [Fact]
    public void Place_that_cannot_be_worked_out_is_a_problem() =>
        Assert.Equal(
            ["bench.yaml:16: coilover.stop_nut: found a stop nut whose place in the scenario as written could not be worked out; wanted a scenario that stands on its springs, or --nut reset"],
            With(Bench, ReadOptions.Plain with { Case = "heavy" }).Lines());

    [Fact]
    public void Nut_cannot_stand_above_the_free_slider() =>
        Assert.StartsWith(
            "bench.yaml:16: coilover.stop_nut: found a stop nut that would stand above",
            Assert.Single(With(Bench, Options(new Standing(0.01)) with { Nut = NutRule.Stays, Sets = ["coilover.preload=0 in"] }).Lines()),
            StringComparison.Ordinal);

    [Fact]
    public void Spring_load_as_written_stays_a_spring_load()
    {
        var corner = Read(_loaded).Good().Corner;
        Assert.Null(corner.SprungWeight);
        Assert.Equal(700 * 4.4482216152605, corner.SpringLoad!.Value, 1e-11);
    }

    [Fact]
    public void Spring_load_becomes_a_weight_where_the_corner_changes()
    {
        var corner = With(_loaded, Options(new Standing(sprungWeight: 3500)) with { Sets = ["coilover.preload=2 in"] }).Good().Corner;
        Assert.Equal((3500.0, null), (corner.SprungWeight!.Value, corner.SpringLoad));
    }

    [Fact]
    public void Change_of_weight_starts_from_the_weight_that_the_load_meant()
    {
        var options = Options(new Standing(_held, 3500)) with { Case = "heavy" };
        Assert.Equal(3500 + (120 * 4.4482216152605), With(_loaded, options).Good().Corner.SprungWeight!.Value, 1e-11);
    }

    [Fact]
    public void Spring_load_that_is_itself_varied_stays_a_load()
    {
        var corner = With(_loaded, Options(new Standing(sprungWeight: 3500)) with { Sets = ["corner.spring_load=3 kN"] }).Good().Corner;
        Assert.Equal((null, 3000.0), (corner.SprungWeight, corner.SpringLoad!.Value));
    }

    [Fact]
    public void Case_may_change_the_load_or_the_weight_that_it_meant()
    {
        var text = _loaded + "\n  - { name: more load, corner.spring_load: +50 lbf }";
        var corner = With(text, Options(new Standing(_held, 3500)) with { Case = "more load", Nut = NutRule.Reset }).Good().Corner;
        Assert.Null(corner.SprungWeight);
        Assert.Equal(750 * 4.4482216152605, corner.SpringLoad!.Value, 1e-11);
    }

    [Fact]
    public void Case_that_comes_last_is_a_change_on_top_of_what_is_set()
    {
        var options = Options(new Standing(_held)) with { Case = "heavy", Sets = ["corner.sprung_weight=840 lbf"] };
        Assert.Equal(840 * 4.4482216152605, With(Bench, options).Good().Corner.SprungWeight!.Value, 1e-11);
        var standing = new Standing(_held);
        var result = With(Bench, options with { CaseComesLast = true, Base = standing });
        Assert.Equal(960 * 4.4482216152605, result.Good().Corner.SprungWeight!.Value, 1e-11);
        Assert.Equal((NutRule.Stays, 840 * 4.4482216152605), (result.Nut, Assert.Single(standing.Asked).SprungWeight!.Value));
    }

    [Fact]
    public void Spring_load_that_is_set_means_its_weight_before_the_case_that_comes_last()
    {
        var standing = new Standing(_held, 3600);
        var options = Options(standing) with { Case = "heavy", Sets = ["corner.spring_load=3 kN"], CaseComesLast = true };
        Assert.Equal(3600 + (120 * 4.4482216152605), With(_loaded, options).Good().Corner.SprungWeight!.Value, 1e-11);
        Assert.Equal(3000, standing.Asked[0].SpringLoad!.Value);
    }

    [Fact]
    public void Spring_load_means_the_weight_as_written_where_something_else_is_set_before_the_case()
    {
        var standing = new Standing(_held, 3500);
        var options = Options(standing) with { Case = "heavy", Sets = ["coilover.preload=2 in"], CaseComesLast = true };
        Assert.Equal(3500 + (120 * 4.4482216152605), With(_loaded, options).Good().Corner.SprungWeight!.Value, 1e-11);
        Assert.Equal((1.5 * 0.0254, 700 * 4.4482216152605), (standing.Asked[0].Coilover.Preload, standing.Asked[0].SpringLoad!.Value));
    }

    [Fact]
    public void Spring_load_without_an_answer_is_a_problem() =>
        Assert.StartsWith("bench.yaml:3: corner.spring_load: found a spring load whose sprung weight", Assert.Single(Read(_loaded, "coilover.preload=2 in").Lines()), StringComparison.Ordinal);

    private static ReadOptions Options(IStandingBase standing) => ReadOptions.Plain with { Base = standing };
}
