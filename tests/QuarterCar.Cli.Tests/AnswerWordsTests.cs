using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;

using QuarterCar.TestKit.Programs;

namespace QuarterCar.Cli.Tests;

/// <summary>What the answers of `sweep`, `reach`, `tweak` and `spread` say: nothing that a run of the same would not bear out.</summary>
public sealed class AnswerWordsTests : IDisposable
{
    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    // On 14 N/mm the lower spring is solid after 220 mm, the upper takes 3500/30 = 117 mm: less 30 mm of preload 307 mm of a stroke of 300 mm. On 27 N/mm it is 216 mm.
    [Fact]
    public void A_sweep_says_which_points_stand_on_metal()
    {
        string said = Words(Asked.Of("sweep", Level(), "--set", "coilover.bump_stop=none", "--vary", "coilover.springs.lower.rate=14:40:3 N/mm", "--goal", "ride_height_m:least"));
        Assert.Contains("2 of 3 points hold every limit.", said, StringComparison.Ordinal);
        Assert.Contains("stands on metal or bound coils: 1 points, lower rate 14.0 N/mm", said, StringComparison.Ordinal);
        Assert.Contains("inside the limits: 83.7 mm at lower rate 27.0 N/mm.", said, StringComparison.Ordinal); // 300 − 216.3 mm
    }

    // 250 mm of preload are more than the 204 mm that the load takes: the corner stands topped out, and shares of travel do not apply.
    [Fact]
    public void Only_contacts_are_said_to_be_limited_where_nothing_else_is()
    {
        string[] stiff = ["--set", "coilover.preload=250 mm", "--set", "limits={up_travel_used: 0.9}", "--vary", "coilover.springs.lower.free_length=350:360:2 mm"];
        Assert.Contains("the limit on up-travel used does not apply", Words(Asked.Of(["sweep", Level(), .. stiff])), StringComparison.Ordinal);
    }

    // The nut stays and the load is the same: with 10 mm more of preload the lower spring, and the slider on it, moves 10 mm away.
    [Fact]
    public void Where_the_stop_nut_stands_is_said_of_the_setup_that_is_named()
    {
        const string nut = "the stop nut has a gap of 30.0 mm at ride height.";
        string folder = _scratch.At("out");
        string[] most = ["--vary", "coilover.preload=20:40:3 mm", "--goal", "ride_height_m:most"];
        Assert.Contains("There " + nut, Words(Asked.Of(["sweep", Level(), .. most, "--out", folder])), StringComparison.Ordinal);
        Assert.Contains("There " + nut, System.Net.WebUtility.HtmlDecode(File.ReadAllText(folder + "/report.html")).Replace('\u00a0', ' '), StringComparison.Ordinal);
        Assert.Contains("At preload 40.0 mm " + nut, Words(Asked.Of("reach", Level(), "--vary", "coilover.preload=20:40 mm")), StringComparison.Ordinal);
        string[] several = ["reach", Level(), "--vary", "coilover.preload=20:40 mm", "--vary", "corner.unsprung_weight=500,600 N"];
        Assert.Contains("stop-nut gap 30.0 mm at ride", Words(Asked.Of(several)), StringComparison.Ordinal);
        Assert.Contains("stop-nut gap 20.0 mm at ride", Words(Asked.Of([.. several, "--nut", "reset"])), StringComparison.Ordinal);
        string tweak = Words(Asked.Of("tweak", Level(), "--goal", "ride_height_m:most"));
        Assert.Contains("down, 2.0 mm (a usual pitch): the stop nut stays, so that its gap at ride height is 2.0 mm larger.", tweak, StringComparison.Ordinal);
        Assert.Contains("solid; stop nut set anew to the gap as written.", tweak, StringComparison.Ordinal);
        string anew = Words(Asked.Of("tweak", Level(), "--goal", "ride_height_m:most", "--nut", "reset"));
        Assert.Contains("down, 2.0 mm (a usual pitch): stop nut set anew to the gap as written.", anew, StringComparison.Ordinal);
        Assert.DoesNotContain("the stop nut stays", anew, StringComparison.Ordinal);

        // Where all points are alike none is named.
        Assert.DoesNotContain("has a gap", Words(Asked.Of("sweep", Level(), "--vary", "coilover.preload=20:40:3 mm", "--goal", "primary_rate_N_m:least")), StringComparison.Ordinal);
    }

    // A gap that is varied is set, whatever --nut says; and a held crossover is held by setting the nut.
    [Fact]
    public void A_stop_nut_that_is_set_is_not_said_to_stay()
    {
        string[] gaps = ["compare", Level(), "--vary", "coilover.stop_nut.gap=10,20 mm", "--nut", "stays", "--json"];
        JsonElement rows = Asked.Of(gaps).Json().GetProperty("setups");
        Assert.Equal([0.01, 0.02], rows.EnumerateArray().Select(r => Math.Round(r.GetProperty("figures").GetProperty("static.stop_nut_gap_ride_height_m").GetDouble(), 9)));
        Assert.All(rows.EnumerateArray(), r => Assert.Equal("reset", r.GetProperty("stop_nut").GetString()));
        string[] held = ["compare", Level(), "--vary", "corner.unsprung_weight=500,600 N", "--hold", "ride_height,crossover", "--json"];
        Assert.All(Asked.Of(held).Json().GetProperty("setups").EnumerateArray(), r => Assert.Equal("reset", r.GetProperty("stop_nut").GetString()));
    }

    // Nothing that moves the ride height is varied, so that the preload of the file holds it.
    [Fact]
    public void What_is_held_by_is_said_where_an_answer_is_named()
    {
        double preload = Asked.Of("check", Level(), "--json").Json().GetProperty("static").GetProperty("preload_m").GetDouble() * 1e3;
        string words = string.Create(CultureInfo.InvariantCulture, $"what is held takes preload {preload:F1} mm");
        Assert.Contains(words, Words(Asked.Of("reach", Level(), "--vary", "corner.unsprung_weight=500:600 N", "--hold", "ride_height")), StringComparison.Ordinal);
        Assert.Contains(words, Words(Asked.Of("sweep", Level(), "--vary", "corner.unsprung_weight=500:600:3 N", "--goal", "wheel_hop_frequency_hz:least", "--hold", "ride_height")), StringComparison.Ordinal);
    }

    // The corner stands with its springs' preload of 20 mm in hand at one height, with 40 mm 20 mm higher: of 0.24 m the second shows more.
    [Fact]
    public void A_comparison_names_the_setups_that_break_a_limit()
    {
        double low = Asked.Of("check", Level(), "--set", "coilover.preload=20 mm", "--nut", "stays", "--json").Json().GetProperty("static").GetProperty("ride_height_m").GetDouble();
        string limit = string.Create(CultureInfo.InvariantCulture, $"limits={{static.ride_height_m: {low + 0.01:F4}}}");
        Assert.Contains("B breaks a limit of its scenario.", Words(Asked.Of("compare", Level(), "--set", limit, "--vary", "coilover.preload=20,40 mm")), StringComparison.Ordinal);
        Assert.DoesNotContain("of its scenario", Words(Asked.Of("compare", Level(), "--set", limit, "--vary", "coilover.preload=20,21 mm")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_list_of_springs_without_a_split_is_no_list()
    {
        Asked asked = Asked.Of("compare", Level(), "--vary", "coilover.preload=20,30 mm", "--springs", "nowhere.csv");
        Assert.Equal(ExitCode.BadInput, asked.Code);
        Assert.Contains("--springs: found a list of springs without --split; wanted --split", asked.Messages, StringComparison.Ordinal);
    }

    // From 204 mm of preload on the corner stands topped out.
    [Fact]
    public void A_limit_that_holds_because_it_does_not_apply_is_said_not_to_be_judged()
    {
        string[] sets = ["--set", "limits={up_travel_used: 0.99, travel_use: 0.99}"];
        const string open = "the limit on up-travel used cannot be judged";
        Assert.Contains("At preload 250.0 mm " + open, Words(Asked.Of(["reach", Level(), .. sets, "--vary", "coilover.preload=30:250 mm"])), StringComparison.Ordinal);
        Assert.DoesNotContain(open, Words(Asked.Of(["reach", Level(), .. sets, "--vary", "coilover.preload=30:60 mm"])), StringComparison.Ordinal);
        string[] sweep = ["sweep", Level(), .. sets, "--vary", "coilover.preload=230:250:2 mm"];
        Assert.Contains("There " + open, Words(Asked.Of([.. sweep, "--goal", "preload_m:least"])), StringComparison.Ordinal);
        Assert.Contains("At preload 230.0 mm " + open, Words(Asked.Of(sweep)), StringComparison.Ordinal); // all alike
    }

    // 174.2 of 300 mm are 58.06 %.
    [Fact]
    public void What_breaks_a_limit_is_told_from_it() => Assert.Contains(
        "Stroke used above 58.0 %: 2 points, worst 58.1 %",
        Words(Asked.Of("sweep", Level(), "--set", "limits={travel_use: 0.58}", "--vary", "coilover.springs.lower.free_length=350:360:2 mm")),
        StringComparison.Ordinal);

    [Fact]
    public void A_part_says_on_the_screen_that_it_is_one()
    {
        const string part = "This is part 1 of 2: everything here is about its own setups alone;";
        foreach (string[] study in (string[][])[["sweep", "--vary", "coilover.preload=20:40:3 mm"], ["compare", "--vary", "coilover.preload=20,40 mm"], ["spread", "--samples", "4", "--set", "tolerances={corner.sprung_weight: 4 %}"]])
        {
            string[] whole = [study[0], Level(), .. study[1..]];
            Assert.Contains(part, Words(Asked.Of([.. whole, "--part", "1/2"])), StringComparison.Ordinal);
            Assert.DoesNotContain("This is part", Words(Asked.Of(whole)), StringComparison.Ordinal);
        }
    }

    // From 0.3 m it takes more than half of the stroke with every step, and without its bump stop it goes into metal.
    [Fact]
    public void What_a_step_leaves_broken_is_said_with_it()
    {
        string scenario = _scratch.Write("plain.yaml", Scenarios.Plain(limit: 0.5));
        string clear = Words(Asked.Of("tweak", scenario));
        Assert.Contains("the limit on stroke used is still broken.", clear, StringComparison.Ordinal);
        Assert.DoesNotContain("This setup meets metal", clear, StringComparison.Ordinal);
        string metal = Words(Asked.Of("tweak", scenario, "--set", "coilover.bump_stop=none", "--set", "drop.height=0.8 m"));
        Assert.Contains("; it still meets metal or binds its coils, and the limit on stroke used is still broken.", metal, StringComparison.Ordinal);
        Assert.Contains("This setup meets metal or binds its coils on this course", metal, StringComparison.Ordinal);
    }

    // As written it ends 0.6 % short of metal, at 163.7 mm of drop it would meet it. Three steps that use more of the stroke go into it.
    [Fact]
    public void A_step_that_newly_meets_metal_is_not_the_one_that_helps()
    {
        string said = Words(Asked.Of("tweak", _scratch.Write("plain.yaml", Scenarios.Plain(limit: 2)), "--set", "coilover.bump_stop=none", "--set", "drop.height=155 mm", "--goal", "travel_use:most"));
        Assert.Contains("bind, mm next softer upper spring, 26.3 N/mm", said, StringComparison.Ordinal); // first in the table
        Assert.Contains("Compression damping −10 %: metal to metal appears", said, StringComparison.Ordinal);
        Assert.StartsWith("Plain corner Next softer lower spring, 39.4 N/mm helps most:", said, StringComparison.Ordinal);
        Assert.DoesNotContain("146.2 mm solid; stop nut set anew to the gap as written; metal", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Setups_that_take_different_obstacles_are_said_to()
    {
        const string unlike = "They do not all take the same obstacle at the same speed";
        string slow = Level(), fast = _scratch.Write("fast.yaml", File.ReadAllText(slow).Replace("speed: 1 m/s", "speed: 2 m/s", StringComparison.Ordinal));
        Assert.Contains(unlike, Words(Asked.Of("compare", slow, fast)), StringComparison.Ordinal);
        Assert.Contains(unlike, Words(Asked.Of("compare", slow, "--vary", "speed=1,2 m/s")), StringComparison.Ordinal);
        Assert.DoesNotContain(unlike, Words(Asked.Of("compare", slow, slow)), StringComparison.Ordinal);
        Assert.DoesNotContain(unlike, Words(Asked.Of("compare", slow, "--vary", "coilover.preload=20,40 mm")), StringComparison.Ordinal);
        Assert.DoesNotContain(unlike, Words(Asked.Of("compare", slow, "--vary", "speed=2 m/s", "--vary", "coilover.preload=20,40 mm")), StringComparison.Ordinal);
    }

    // The primary rate of 30 over 30, 35 and 40 N/mm does not hang on the preload; the least is 15.0 N/mm.
    [Fact]
    public void Equals_of_a_sweep_are_said_to_be_equal()
    {
        string[] goal = ["--vary", "coilover.preload=20:40:3 mm", "--goal", "primary_rate_N_m:least"];
        Assert.Contains("Primary rate is 17.1 N/mm at all 3 points inside the limits.", Words(Asked.Of(["sweep", Level(), .. goal])), StringComparison.Ordinal);
        Assert.Contains(
            "15.0 N/mm at preload 20.0 mm, lower rate 30.0 N/mm, one of 3 points that are alike in it.",
            Words(Asked.Of(["sweep", Level(), .. goal, "--vary", "coilover.springs.lower.rate=30:40:3 N/mm"])),
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("sweep", "--vary", "coilover.preload=20:40:3 mm")]
    [InlineData("tweak")]
    public void A_goal_that_does_not_apply_is_said_not_to(string verb, params string[] more)
    {
        Asked asked = Asked.Of([verb, Level(), "--set", "coilover.stop_nut=none", "--goal", "crossover_force_N:least", .. more]);
        Assert.Equal(ExitCode.Done, asked.Code);
        Assert.Contains("Force at crossover does not apply to this corner.", asked.Out, StringComparison.Ordinal);
    }

    // From either side of where it breaks: what the words name holds when it is run, and the words lie no farther than the resolution from what the JSON has.
    [Theory]
    [InlineData(0.85, "drop.height=1:60 cm", "drop height", "mm", 1e-3)]
    [InlineData(0.9, "coilover.springs.lower.rate=80:30 N/mm", "lower rate", "N/mm", 1e3)]
    public void What_a_reach_names_holds(double limit, string way, string words, string unit, double size)
    {
        string scenario = _scratch.Write("plain.yaml", Scenarios.Plain(limit));
        string said = Words(Asked.Of("reach", scenario, "--vary", way));
        string number = Regex.Match(said, $"holds up to {words} ([0-9.]+) {Regex.Escape(unit)}").Groups[1].Value;
        Assert.NotEmpty(number);
        JsonElement json = Asked.Of("reach", scenario, "--vary", way, "--json").Json();
        Assert.InRange(Math.Abs(double.Parse(number, CultureInfo.InvariantCulture) * size - json.GetProperty("largest").GetDouble()), 0, json.GetProperty("resolution").GetDouble());
        JsonElement run = Asked.Of("run", scenario, "--set", $"{way.Split('=')[0]}={number} {unit}", "--json").Json();
        Assert.False(run.GetProperty("limits")[0].GetProperty("broken").GetBoolean());
    }

    [Fact]
    public void Setups_that_all_hold_throughout_have_none_that_goes_farthest()
    {
        string said = Words(Asked.Of("reach", _scratch.Write("plain.yaml", Scenarios.Plain(limit: 2)), "--vary", "drop.height=10:20 cm", "--vary", "coilover.preload=20,30,40 mm"));
        Assert.Contains("All 3 setups hold all the way to drop height 200.0 mm.", said, StringComparison.Ordinal);
    }

    // Rows and columns of a map lie in the order of their values, however they were listed.
    [Fact]
    public void The_order_of_a_list_does_not_change_the_map()
    {
        string scenario = _scratch.Write("plain.yaml", Scenarios.Plain(limit: 2));
        string[] pictures = [.. ((string[])["20,30,45 mm", "45,20,30 mm"]).Select((list, i) =>
        {
            string folder = _scratch.At($"map{i}");
            Assert.Equal(ExitCode.Done, Asked.Of("sweep", scenario, "--vary", "coilover.preload=" + list, "--vary", "drop.height=10:30:3 cm", "--out", folder).Code);
            return File.ReadAllText(folder + "/sweep.svg");
        })];
        Assert.Equal(pictures[0], pictures[1]);
    }

    [Fact]
    public void A_spread_says_how_many_samples_stand_on_metal_and_how_many_are_left()
    {
        // 3500/30 + 3500/25 − 30 mm are 226.7 mm: below 25 of 20 to 40 N/mm, a quarter of the samples, the corner stands on metal.
        string said = Words(Asked.Of(
            "spread", Level(), "--samples", "40", "--set", "coilover.stroke=226.7 mm", "--set", "coilover.bump_stop=none", "--set", "coilover.springs.lower.rate=30 N/mm",
            "--set", "tolerances={coilover.springs.lower.rate: {within: 10 N/mm, shape: uniform}}", "--out", _scratch.At("out")));
        Assert.Contains("10 of 40 samples stand on metal or bound coils. Of the 30 samples that have an up-travel nine of ten use ", said, StringComparison.Ordinal);
        Assert.Contains("Up-travel used, from ride height (30 of 40 samples)", File.ReadAllText(_scratch.At("out/report.html")), StringComparison.Ordinal);
    }

    private static string Words(Asked asked) => Regex.Replace(asked.Out.Replace('\u00a0', ' '), @"\s+", " ");

    // The plain corner on level ground: what it does is to stand.
    private string Level() => _scratch.Write(
        "level.yaml",
        Scenarios.Plain(limit: 2).Replace("drop: { height: 0.3 m }", "terrain: [{ flat: 1 m }]\nspeed: 1 m/s", StringComparison.Ordinal).Replace("duration: 2 s", "duration: 0.1 s", StringComparison.Ordinal));
}
