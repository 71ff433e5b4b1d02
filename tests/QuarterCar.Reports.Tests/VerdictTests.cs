using QuarterCar.Reports.Tests.Reference;
using QuarterCar.Reports.Words;

namespace QuarterCar.Reports.Tests;

public sealed class VerdictTests
{
    [Fact]
    public void The_ledge_s_verdict_gives_its_reference_numbers() => Assert.Equal(
        "Uses 96 % of the stroke, touches the bump stop once and tops out once. The slider meets the stop nut once, at 3.19 in shaft showing. "
        + "The tyre is in the air for 0.220 s. Every limit holds.",
        Plain(Verdict.Of(ReferenceRun.Read("quarry_ledge"))));

    [Theory]
    [InlineData("hard_bottom", "Uses 102 % of the stroke, hits metal at full bump 4 times and tops out once.")]
    [InlineData("gravel_lane", "Uses 77 % of the stroke, touches nothing.")]
    [InlineData("coil_bind", "Uses 94 % of the stroke, binds the coils 8 times, touches the bump stop 3 times and tops out twice.")]
    public void The_first_sentence_says_how_much_and_what_touched(string name, string expected) =>
        Assert.StartsWith(expected, Plain(Verdict.Of(ReferenceRun.Read(name))), StringComparison.Ordinal);

    [Theory]
    [InlineData(-0.004, "0 %")]
    [InlineData(-0.006, "-1 %")]
    [InlineData(0.955, "96 %")]
    public void A_share_that_rounds_to_none_has_no_sign(double share, string expected) => Assert.Equal(expected, Plain(Verdict.Percent(share)));

    [Fact]
    public void Every_figure_that_a_limit_may_name_has_words() =>
        Assert.All(QuarterCar.Studies.FigureTable.Names, n => Assert.DoesNotContain('_', FigureWords.OfName(n, 1, new QuarterCar.Reports.Units.Readable(QuarterCar.Scenarios.UnitSystem.Us)).Words));

    // 90.14 % and 89.84 % both round to 90 %: one decimal more tells them apart, and what holds needs none.
    [Theory]
    [InlineData(0.8984, 0.9014, true, "90.1", "89.8")]
    [InlineData(0.9014, 0.8984, false, "90", "90")]
    [InlineData(0.9, 0.98, true, "98", "90")]
    public void A_broken_limit_never_reads_as_if_it_held(double limit, double value, bool broken, string cameOut, string allowed)
    {
        var run = ReferenceRun.Read("quarry_ledge");
        run = run with { Limits = [new("travel.up_travel_used", limit, value, broken)] };
        var (line, largest) = FigureWords.OfLimit(run.Limits[0], new QuarterCar.Reports.Units.Readable(QuarterCar.Scenarios.UnitSystem.Us));
        Assert.Equal((cameOut, allowed, "%"), (line.Number, largest.Number, largest.Unit));
        Assert.Matches($"{System.Text.RegularExpressions.Regex.Escape(cameOut)} +of {System.Text.RegularExpressions.Regex.Escape(allowed)} ", Text(run));
        Assert.Contains($"<td class=\"n\">{cameOut}</td>", Html.RunReport.Write(run, []), StringComparison.Ordinal);
    }

    [Fact]
    public void A_broken_limit_is_named()
    {
        var run = ReferenceRun.Read("quarry_ledge");
        run = run with { Limits = [new("acceleration.peak_g", 3, 3.463085544042561, true)] };
        Assert.EndsWith("Breaks the limit on peak acceleration.", Verdict.Of(run), StringComparison.Ordinal);
    }

    [Fact]
    public void A_limit_on_a_figure_that_the_corner_does_not_have_is_not_said_to_hold()
    {
        var run = ReferenceRun.Read("quarry_ledge");
        run = run with { Limits = [new("travel.up_travel_used", 0.9, null, false), new("acceleration.peak_g", 5, 3.463085544042561, false)] };
        Assert.EndsWith("The limit on up-travel used cannot be judged here.", Verdict.Of(run), StringComparison.Ordinal);
        Assert.Matches("Up-travel used.*does not apply", Text(run));
        Assert.Matches("Peak acceleration.*holds", Text(run));
    }

    [Fact]
    public void A_run_that_stopped_early_says_so_first()
    {
        var run = ReferenceRun.Read("quarry_ledge");
        run = run with { Figures = run.Figures with { Run = run.Figures.Run with { End = "step_too_small", Time = 1.25, Message = "Loosen run.tolerance." } } };
        Assert.StartsWith("The run stopped early, at 1.250 s (step too small): Loosen run.tolerance.", Plain(Verdict.Of(run)), StringComparison.Ordinal);
        Assert.EndsWith("No limit was broken until then.", Verdict.Of(run), StringComparison.Ordinal);

        // It broke off at once: there is nothing that it used, touched or held.
        run = run with { Figures = run.Figures with { Travel = run.Figures.Travel with { TravelUse = double.NaN }, Tyre = run.Figures.Tyre with { Airborne = 0 }, Counts = [] } };
        Assert.Equal("The run stopped early, at 1.250 s (step too small): Loosen run.tolerance. Nothing moved that could be judged.", Plain(Verdict.Of(run)));
    }

    [Fact]
    public void A_standing_corner_s_verdict_gives_its_reference_numbers() => Assert.Equal(
        "Stands at 5.32 in shaft showing, 44 % of the stroke left for bump. Crosses over at 3.19 in from 94 lbf/in to 225 lbf/in. 0.97 in clear of coil bind at full bump.",
        Plain(Verdict.Of(ReferenceRun.Read("quarry_ledge").Standing)));

    [Fact]
    public void A_corner_on_bound_coils_has_nothing_left_for_bump() => Assert.StartsWith(
        "Stands on bound coils, at 200.0 mm shaft showing: nothing is left for bump.",
        Plain(Verdict.Of(Scene.Check("coil-bind", "coilover.springs.upper.solid_length=200 mm", "coilover.springs.lower.solid_length=280 mm", "corner.sprung_weight=2.7 kN"))),
        StringComparison.Ordinal);

    // What holds from the start is no event: both counts are 0.
    [Fact]
    public void Limits_of_a_corner_that_stands_on_metal_are_not_said_to_hold() => Assert.EndsWith(
        "No limit is broken, but no contact that holds from the start is counted: the corner stands on metal or bound coils.",
        Verdict.Of(Scene.Run("quarry-ledge", "corner.sprung_weight=8000 lbf", "terrain=[{ flat: 20 ft }]", "limits={ bottom_out: 0, coil_bind: 0 }", "run.duration=0.1 s")),
        StringComparison.Ordinal);

    // The weights of StartContactsTests: 1600 lbf stand on the bump stop, 200 lbf top out, where shares of travel do not apply.
    [Theory]
    [InlineData("1600 lbf", "{ bump_stop: 0 }", "No limit is broken, but a touch that holds from the start is not counted: the corner stands on its bump stop.")]
    [InlineData("1600 lbf", "{ bottom_out: 0 }", "Every limit holds.")]
    [InlineData("200 lbf", "{ top_out: 0 }", "No limit is broken, but a touch that holds from the start is not counted: the corner stands on its top-out.")]
    [InlineData("200 lbf", "{ up_travel_used: 0.9, top_out: 0 }", "cannot be judged here. A touch that holds from the start is not counted: the corner stands on its top-out.")]
    public void Limits_on_touches_of_a_stop_that_the_corner_stands_on_are_not_said_to_hold(string weight, string limits, string expected) => Assert.EndsWith(
        expected,
        Verdict.Of(Scene.Run("quarry-ledge", "corner.sprung_weight=" + weight, "terrain=[{ flat: 20 ft }]", "limits=" + limits, "run.duration=0.1 s")),
        StringComparison.Ordinal);

    // The upper spring is solid from 100 mm of its own on; the lower one gives further.
    [Fact]
    public void A_spring_that_goes_solid_alone_is_not_nothing()
    {
        var run = Scene.Run("gravel-lane", "coilover.stop_nut=none", "coilover.springs.upper.solid_length=182 mm");
        Assert.Equal((0, true), (Verdict.Count(run, "coil_bind"), Verdict.Count(run, "upper_bind") > 0));
        Assert.Contains(", takes the upper spring solid ", Verdict.Travel(run), StringComparison.Ordinal);
        Assert.Contains("No bump stop, no metal and no top-out is touched, but the upper spring goes solid ", QuarterCar.Reports.Html.RunReport.Write(run, []), StringComparison.Ordinal);
    }

    [Fact]
    public void A_force_on_assumed_metal_is_said_on_the_screen_to_be_no_strength_figure()
    {
        Assert.Contains("The force of “tops out” and “coil bind” is not a strength figure: the stiffness behind it", Text(ReferenceRun.Read("coil_bind")).ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.DoesNotContain("strength figure", Text(Scene.Run("quarry-ledge", "coilover.top_out={ rate: 400 N/mm, loss: 1 s/m }")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    public void Words_are_the_same_in_every_culture(string culture)
    {
        var run = ReferenceRun.Read("coil_bind");
        Assert.Equal(Cultures.In("", () => Text(run)), Cultures.In(culture, () => Text(run)));
    }

    [Theory]
    [InlineData("quarry_ledge")]
    [InlineData("coil_bind")]
    [InlineData("fast_whoops")]
    public void Terminal_text_begins_with_the_verdict_fits_80_columns_and_has_no_colour_when_redirected(string name)
    {
        string text = Text(ReferenceRun.Read(name));
        string[] lines = text.Split('\n');
        Assert.StartsWith("Uses ", lines[1], StringComparison.Ordinal);
        Assert.All(lines, l => Assert.InRange(l.TrimEnd('\r').Length, 0, 80));
        Assert.DoesNotContain('\u001b', text);
    }

    [Fact]
    public void Decimal_points_stand_below_each_other() =>
        Assert.Equal(["  5.32", "755   ", " -0.1 "], Align.AtPoint(["5.32", "755", "-0.1"]));

    [Fact]
    public void Markup_in_a_title_is_printed_as_it_stands()
    {
        var run = ReferenceRun.Read("quarry_ledge");
        run = run with { Scenario = run.Scenario with { Title = "A [red]title[/] with [brackets]" } };
        Assert.StartsWith("A [red]title[/] with [brackets]", Text(run), StringComparison.Ordinal);
    }

    private static string Plain(string text) => text.Replace('\u00a0', ' ');

    private static string Text(QuarterCar.Studies.RunResult run)
    {
        using var writer = new StringWriter();
        RunText.Write(run, writer);
        CheckText.Write(run.Standing, writer);
        return writer.ToString();
    }
}
