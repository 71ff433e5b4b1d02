using QuarterCar.Scenarios;
using QuarterCar.Studies.Tests.Reference;

using Xunit;

namespace QuarterCar.Studies.Tests;

/// <summary>Every warning about how a corner stands: a scenario that raises it and one beside it that does not. Bands are common practice without a source; the numbers beside each row are worked by hand.</summary>
public class StandingWarningsTests
{
    private const string Body = "coilover.body={ seat_length: 27.8 in, thread: 6 in, thread_pitch: 2 mm, slider: 1.2 in, diameter: 2.5 in }";
    private const string ShortSeat = "coilover.body={ seat_length: 25.5 in, thread: 6 in, thread_pitch: 2 mm, slider: 1.2 in, diameter: 2.5 in }";
    private const string ShortThread = "coilover.body={ seat_length: 27.8 in, thread: 1.9 in, thread_pitch: 2 mm, slider: 1.2 in, diameter: 2.5 in }";
    private const string Slim = "coilover.body={ diameter: 2.0 in }";
    private const string Short = "coilover.springs.upper.solid_length=170 mm|coilover.springs.lower.solid_length=190 mm";
    private const string Lower = "coilover.springs.lower=";

    [Theory]
    [InlineData("loose_at_full_droop", "quarry_ledge", "coilover.preload=-0.1 in", "coilover.preload=0 in")]
    [InlineData("binds_before_full_bump", "coil_bind", "", "coilover.stroke=220 mm")] // 22.6 mm short of 250
    [InlineData("below_least_preload", "quarry_ledge", ShortSeat, Body)] // 12 + 14 + 1.2 = 27.2: 1.7 in needed, 1.4 set; none needed
    [InlineData("beyond_thread", "quarry_ledge", ShortThread, Body)] // the nut stands 1.4 + 0.6 = 2.0 in down
    [InlineData("spring_over_body", "quarry_ledge", Body + "|coilover.springs.upper.inner_diameter=2.5 in", Body + "|coilover.springs.upper.inner_diameter=2.6 in")]
    [InlineData("bows", "quarry_ledge", Lower + "{ rate: 225 lbf/in, free_length: 18 in, solid_length: 5.6 in, mean_diameter: 2.9 in }", Lower + "{ rate: 225 lbf/in, free_length: 14 in, solid_length: 5.6 in, mean_diameter: 2.9 in }")]
    [InlineData("bows", "quarry_ledge", Slim + "|coilover.springs.lower.rate=145 lbf/in", Slim + "|coilover.springs.lower.rate=155 lbf/in")]
    [InlineData("bows", "quarry_ledge", Slim + "|coilover.springs.lower.rate=145 lbf/in", "coilover.body={ diameter: 2.5 in }|coilover.springs.lower.rate=145 lbf/in")]
    [InlineData("crossover_never", "quarry_ledge", "coilover.stop_nut.gap=4 in", "coilover.stop_nut.gap=1.25 in")] // 3.19 in showing at 1.25, 1.71 in a gap inch
    [InlineData("on_stop_nut_at_ride_height", "quarry_ledge", "coilover.stop_nut={ gap: 3.8 in, at: full_droop }", "coilover.stop_nut={ gap: 4.0 in, at: full_droop }")] // 3.90 in closes by ride height
    [InlineData("tender_near_ride_height", "tender_triple", "coilover.springs.tender.rate=180 lbf/in", "")] // solid at 648 lbf of 737; at 223
    [InlineData("tender_near_ride_height", "tender_triple", "coilover.springs.tender.rate=220 lbf/in", "coilover.springs.tender.rate=100 lbf/in")] // solid at 792 of 737; at 360, 2.0 in earlier of the band's 1.3
    [InlineData("standing_on_bump_stop", "quarry_ledge", "corner.sprung_weight=1150 lbf", "")]
    [InlineData("standing_topped_out", "quarry_ledge", "coilover.preload=9 in", "")] // 9 in of 94 lbf/in and gas on the shaft against 883
    [InlineData("standing_bottomed_out", "single_spring_ditch", "coilover.bump_stop=none|corner.sprung_weight=2150 lbf", "")] // 2389 on the shaft, 2338 to solid at 8.35 in
    [InlineData("standing_on_bound_coils", "coil_bind", Short + "|corner.sprung_weight=2700 N", Short)] // 60 mm of each spring carry 2640 N: 225 kg are 2399 N at the shaft, 2700 N are 2935
    [InlineData("motion_ratio_above_1", "quarry_ledge", "corner.motion_ratio=1.02", "corner.motion_ratio=1")]
    [InlineData("motion_ratio_varies", "quarry_ledge", "corner.motion_ratio=[[0 in, 0.90], [12 in, 1.00]]", "corner.motion_ratio=[[0 in, 0.90], [12 in, 0.97]]")]
    [InlineData("frequency_unusual", "loading_ramp", "", "corner.sprung_weight=12 kN")] // 1.64 Hz; by √(9.7/12) 1.47
    [InlineData("frequency_unusual", "quarry_ledge", "tyre.rate=120 lbf/in", "")] // 94 and 120 in series carry 830 lbf at 0.77 Hz or less
    [InlineData("unsprung_share_unusual", "quarry_ledge", "corner.unsprung_weight=90 lbf", "corner.unsprung_weight=95 lbf")] // 9.8 and 10.3 %
    [InlineData("unsprung_share_unusual", "quarry_ledge", "corner.unsprung_weight=360 lbf", "corner.unsprung_weight=350 lbf")] // 30.3 and 29.7 %
    [InlineData("droop_share_unusual", "quarry_ledge", "coilover.preload=0.6 in", "")] // 0.8 in more of 12: 62 %
    [InlineData("droop_share_unusual", "single_spring_ditch", "coilover.preload=0.8 in", "")] // 0.45 in less of 8: 27 %
    [InlineData("damper_falls", "quarry_ledge", "coilover.damper.rebound=[[4 in/s, 140 lbf], [18 in/s, 310 lbf], [75 in/s, 300 lbf]]", "coilover.damper.rebound=[[4 in/s, 140 lbf], [18 in/s, 310 lbf], [75 in/s, 310 lbf]]")]
    [InlineData("not_checked", "quarry_ledge", Body, Body + "|coilover.springs.upper.inner_diameter=2.6 in|coilover.springs.lower={ rate: 225 lbf/in, free_length: 14 in, solid_length: 5.6 in, inner_diameter: 2.6 in, mean_diameter: 3 in }")]
    public void A_warning_is_raised_where_it_should_be_and_not_beside_it(string code, string scenario, string raised, string quiet)
    {
        Assert.Contains(code, Codes(scenario, raised));
        Assert.DoesNotContain(code, Codes(scenario, quiet));
    }

    // 90 lbf lost over 30 in/s: the 220 left at 48 in/s are gone 73 in/s later.
    [Fact]
    public void A_falling_damper_table_says_where_its_force_is_gone() =>
        Assert.Contains("gone at 121 in/s", StandingStudy.Of(ReferenceRun.Load("quarry_ledge").Scenario("coilover.damper.rebound=[[4 in/s, 140 lbf], [18 in/s, 310 lbf], [48 in/s, 220 lbf]]")).Warnings.Single(w => w.Code == "damper_falls").Message, StringComparison.Ordinal);

    [Fact]
    public void A_load_case_that_puts_the_slider_on_its_nut_is_named()
    {
        Scenario scenario = ReferenceRun.Load("quarry_ledge").Scenario();
        Scenario Heavy(string weight) => ReferenceRun.Load("quarry_ledge").Scenario("corner.sprung_weight=" + weight, "coilover.stop_nut={ gap: 5.15 in, at: full_droop }");
        StandingResult result = StandingStudy.Of(scenario, [("four up", Heavy("1060 lbf")), ("two up", Heavy("900 lbf"))]);
        Warning one = Assert.Single(result.Warnings, w => w.Code == "on_stop_nut_at_ride_height");
        Assert.Contains("'four up'", one.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_load_case_that_changes_preload_says_what_that_brings_and_does_not_repeat_the_scenario()
    {
        // The nut stands 0.6 in below first contact: 1.4 + 0.6 = 2.0 in down a thread of 1.9, with 2.4 in of preload 3.0.
        string[] words = [.. Cases(("raised", "coilover.preload=2.4 in"), ("lowered", "coilover.preload=-0.1 in"), ("two up", "corner.sprung_weight=900 lbf"))];
        Assert.Contains("The coil nut would stand 0.10 in past the end of its thread: use less preload or longer springs.", words);
        Assert.Contains("In the load case 'raised' the coil nut would stand 1.10 in past the end of its thread: use less preload or longer springs.", words);
        Assert.Contains(words, w => w.StartsWith("In the load case 'lowered' the springs are loose by 0.10 in at full droop", StringComparison.Ordinal));
        Assert.DoesNotContain(words, w => w.Contains("'two up'", StringComparison.Ordinal));

        IEnumerable<string> Cases(params (string Name, string Set)[] cases) => StandingStudy.Of(
            ReferenceRun.Load("quarry_ledge").Scenario(ShortThread),
            cases.Select(c => (c.Name, ReferenceRun.Load("quarry_ledge").Scenario(ShortThread, c.Set)))).Warnings.Select(w => w.Message);
    }

    [Fact]
    public void A_bound_lower_spring_says_where_and_that_the_stop_nut_takes_the_load()
    {
        // Reference: lower spring solid with 22.6 mm of shaft showing, after the crossover.
        string message = Message("coil_bind", "", "binds_before_full_bump");
        Assert.Contains("The lower spring goes solid with 22.6 mm of shaft showing, short by 22.6 mm", message, StringComparison.Ordinal);
        Assert.Contains("the stop nut takes the load", message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bound_upper_spring_with_its_slider_free_loads_the_coil_nut() =>
        Assert.Contains("the coil nut takes the load", Message("coil_bind", "coilover.stop_nut=none|coilover.springs.lower.rate=120 N/mm", "binds_before_full_bump"), StringComparison.Ordinal);

    [Fact]
    public void A_tender_near_ride_height_is_not_cured_by_preload_and_nobody_is_told_so()
    {
        Assert.DoesNotContain("preload", Message("tender_triple", "coilover.springs.tender.rate=180 lbf/in", "tender_near_ride_height"), StringComparison.Ordinal);
        Assert.Contains("tender_near_ride_height", Codes("tender_triple", "coilover.springs.tender.rate=180 lbf/in|coilover.preload=4 in"));
    }

    [Fact]
    public void A_load_case_that_presses_the_coils_solid_is_named()
    {
        StandingResult result = StandingStudy.Of(Read("coil_bind", Short), [("loaded", Read("coil_bind", Short + "|corner.sprung_weight=2700 N"))]);
        Assert.StartsWith("In the load case 'loaded' the corner stands on bound coils", Assert.Single(result.Warnings, w => w.Code == "standing_on_bound_coils").Message, StringComparison.Ordinal);
    }

    // 88 of 918 lbf are 9.59 %.
    [Fact]
    public void A_figure_outside_its_band_is_told_from_the_band() =>
        Assert.Contains("is 9.6 % of the corner, outside the common 10 to 20 %", Message("quarry_ledge", "corner.unsprung_weight=88 lbf", "unsprung_share_unusual"), StringComparison.Ordinal);

    [Fact]
    public void Too_little_preload_names_force_and_energy_for_the_compressor()
    {
        // 1.7 in · 93.51 lbf/in = 159 lbf; ½ · 159 · 1.7 / 12 = 11 ft·lbf
        string message = Message("quarry_ledge", ShortSeat, "below_least_preload");
        Assert.Contains("at least 1.70 in", message, StringComparison.Ordinal);
        Assert.Contains("159 lbf", message, StringComparison.Ordinal);
        Assert.Contains("11 ft·lbf", message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_not_checked_is_one_warning_that_names_the_keys()
    {
        string message = Message("tender_triple", "coilover.body={ seat_length: 27.8 in }", "not_checked");
        foreach (string key in new[] { "body.slider", "body.thread", "body.thread_pitch", "body.diameter", "tender.inner_diameter", "lower.mean_diameter" })
            Assert.Contains("coilover." + (key.StartsWith("body", StringComparison.Ordinal) ? "" : "springs.") + key, message, StringComparison.Ordinal);
    }

    [Theory, InlineData("quarry_ledge", Body), InlineData("tender_triple", ""), InlineData("coil_bind", ""), InlineData("loading_ramp", "")]
    public void Every_message_is_one_sentence_that_says_what_to_do_in_the_output_units(string scenario, string sets)
    {
        foreach (Warning w in StandingStudy.Of(Read(scenario, sets)).Warnings)
        {
            Assert.EndsWith(".", w.Message, StringComparison.Ordinal);
            Assert.DoesNotContain(". ", w.Message, StringComparison.Ordinal);
            Assert.Contains(':', w.Message);
        }
    }

    [Theory, MemberData(nameof(ReferenceTests.Names), MemberType = typeof(ReferenceTests))]
    public void Check_and_run_stand_at_the_same_ride_height_crossover_and_bind(string name)
    {
        Scenario scenario = ReferenceRun.Load(name).Scenario("run.duration=10 ms");
        StandingResult check = StandingStudy.Of(scenario);
        RunResult run = SingleRun.Of(scenario);
        Assert.Equal(check.Figures, run.Standing.Figures);
        Assert.Equal(check.Springs.AsEnumerable(), run.Standing.Springs.AsEnumerable());
    }

    private static string Message(string scenario, string sets, string code) => StandingStudy.Of(Read(scenario, sets)).Warnings.Single(w => w.Code == code).Message;

    private static IEnumerable<string> Codes(string scenario, string sets) => StandingStudy.Of(Read(scenario, sets)).Warnings.Select(w => w.Code);

    private static Scenario Read(string scenario, string sets) => ReferenceRun.Load(scenario).Scenario(sets.Split('|', StringSplitOptions.RemoveEmptyEntries));
}
