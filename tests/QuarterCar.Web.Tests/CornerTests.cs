using System.Globalization;
using System.Text.Json;

using QuarterCar.Model;
using QuarterCar.Scenarios.SpringLists;
using QuarterCar.TestKit;

namespace QuarterCar.Web.Tests;

/// <summary>What the page answers while something is turned.</summary>
[Collection(OnePage.Name)]
public sealed class CornerTests(PageFixture page)
{
    private static readonly Tolerance s_same = new(1e-12, "the page and the command line ask the same model with the same numbers");

    private static readonly Tolerance s_set = new(6e-6, "preload is written to 0.0001 in, and ride height moves by at most twice as much");

    [Theory]
    [InlineData("0.8 in")]
    [InlineData("2 in")]
    public async Task A_typed_stop_nut_gap_gives_the_crossover_that_check_gives(string gap)
    {
        JsonElement answer = await page.Corner([], new() { ["edits"] = new[] { new { path = "coilover.stop_nut.gap", text = gap } } });
        s_same.Holds(PageFixture.Check("crossover_shaft_showing_m", "--set", "coilover.stop_nut.gap=" + gap), PageFixture.Figure(answer, "static.crossover_shaft_showing_m"));
    }

    [Fact]
    public async Task A_press_of_the_arrow_key_opens_the_gap_by_a_quarter_inch()
    {
        JsonElement answer = await page.Corner([], new() { ["steps"] = new[] { new { path = "coilover.stop_nut.gap", count = 2 } } });
        Assert.Equal("1.75 in", PageFixture.Changes(answer)["coilover.stop_nut.gap"]);
    }

    [Fact]
    public async Task A_press_on_a_spring_takes_the_next_rate_of_the_list_in_the_fitted_length()
    {
        JsonElement answer = await page.Corner([], new() { ["steps"] = new[] { new { path = "coilover.springs.upper.rate", count = 1 } } });
        var changes = PageFixture.Changes(answer);
        Assert.Equal(("175 lbf/in", "12 in"), (changes["coilover.springs.upper.rate"], changes["coilover.springs.upper.free_length"]));
    }

    [Fact]
    public async Task A_press_up_and_one_down_come_back_to_the_spring_of_the_file()
    {
        const string rate = "coilover.springs.lower.rate";
        var up = PageFixture.Changes(await page.Corner([], new() { ["steps"] = new[] { new { path = rate, count = 1 } } }));
        Assert.Equal("250 lbf/in", up[rate]);
        JsonElement fitted = await page.Corner([.. up.Select(c => (c.Key, c.Value))]);
        Assert.Contains("The figures of the lower spring are those of the list that ships, which is invented", fitted.GetProperty("result").GetProperty("warnings").GetString(), StringComparison.Ordinal);
        JsonElement down = await page.Corner([.. up.Select(c => (c.Key, c.Value))], new() { ["steps"] = new[] { new { path = rate, count = -1 } } });
        Assert.Empty(PageFixture.Changes(down));
    }

    // What is said of the fitted spring's wire and diameters does not hold for the next one.
    [Fact]
    public async Task A_press_on_a_spring_brings_its_own_diameters_and_keeps_to_the_inner_one()
    {
        const string lower = "coilover.springs.lower.";
        JsonElement answer = await page.Corner([(lower + "inner_diameter", "2.5 in"), (lower + "wire_diameter", "0.4 in")], new() { ["steps"] = new[] { new { path = lower + "rate", count = 1 } } });
        var changes = PageFixture.Changes(answer);
        const double inch = 0.0254, poundsPerInch = 175.126835;
        SpringData next = InventedSprings.Springs().Springs.Where(s => Math.Abs(s.InnerDiameter!.Value - 2.5 * inch) < 1e-4 && s.Rate > 226 * poundsPerInch)
            .OrderBy(s => Math.Round(s.Rate)).ThenBy(s => Math.Abs(s.FreeLength - 14 * inch)).First();
        double Said(string key) => double.Parse(changes[lower + key].Split(' ')[0], CultureInfo.InvariantCulture);
        Assert.Equal(2.5, Said("inner_diameter"));
        Assert.Equal(next.SolidLength / inch, Said("solid_length"), 1e-3);
        Assert.True(!changes.TryGetValue(lower + "wire_diameter", out string? wire) ? next.WireDiameter is null : wire == "none" || Math.Abs(Said("wire_diameter") - next.WireDiameter!.Value / inch) < 1e-3);
    }

    [Theory]
    [InlineData("drop", "course")]
    [InlineData("course", "drop")]
    public async Task Back_from_the_other_excitation_stands_what_the_file_has(string there, string back)
    {
        string text = there == "drop" ? PageFixture.Ledge : PageFixture.Shipped("drop-test.yaml");
        JsonElement before = await page.Corner([], text: text), other = await Turned([], there);
        Assert.NotEqual(Hash(before), Hash(other));
        Assert.Equal(Hash(before), Hash(await Turned([.. PageFixture.Changes(other).Select(c => (c.Key, c.Value))], back)));

        Task<JsonElement> Turned((string, string)[] changes, string to) => page.Corner(changes, new() { ["edits"] = new[] { new { path = "excitation", text = to } } }, text);
    }

    // Half a second at 6 mph ends before the ledge; 1600 lbf over 0.94 is more than springs and gas hold at the bump stop.
    [Fact]
    public async Task A_corner_that_stands_on_its_bump_stop_is_not_said_to_touch_nothing()
    {
        JsonElement answer = await page.Corner([("corner.sprung_weight", "1600 lbf"), ("run.duration", "0.5 s")]);
        string said = answer.GetRawText();
        Assert.Contains("none begins: the corner stands on its bump stop from the start", said, StringComparison.Ordinal);
        Assert.Contains("No event: the corner stands on its bump stop from the start.", said, StringComparison.Ordinal);
        Assert.DoesNotContain("othing touches", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_gap_stops_at_zero()
    {
        JsonElement answer = await page.Corner([], new() { ["steps"] = new[] { new { path = "coilover.stop_nut.gap", count = -9 } } });
        Assert.Equal("0 in", PageFixture.Changes(answer)["coilover.stop_nut.gap"]);
    }

    [Fact]
    public async Task A_bare_number_means_the_unit_that_is_shown()
    {
        JsonElement answer = await page.Corner([], new() { ["edits"] = new[] { new { path = "coilover.stop_nut.gap", text = "40" } }, ["units"] = "si" });
        Assert.Equal("40 mm", PageFixture.Changes(answer)["coilover.stop_nut.gap"]);
    }

    [Theory]
    [InlineData("us", "speed", "6 mph", "8", "8 mph")]
    [InlineData("si", "speed", "6 mph", "10", "10 km/h")] // shown as 9.6561 km/h
    [InlineData("us", "terrain[0].flat", "10 ft", "12", "12 ft")]
    [InlineData("us", "run.sample", "1 ms", "2", "2 ms")]
    [InlineData("si", "corner.unsprung_weight", "380 kg", "400", "400 kg")]
    [InlineData("us", "corner.unsprung_weight", "380 kg", "400", "400 lbf")] // shown in lbf
    [InlineData("si", "coilover.gas.pressure", "1200 kPa", "1300", "1300 kPa")]
    [InlineData("us", "coilover.stop_nut.gap", "40 psi", "1.5", "1.5 in")] // a mistake is no unit to go by
    [InlineData("si", "coilover.springs.upper.wire_diameter", "none", "12", "12 mm")] // nothing stands there
    [InlineData("us", "coilover.preload", "none", "1.5", "1.5 in")] // a default of 0 m is no unit to go by
    public async Task A_bare_number_keeps_the_unit_of_its_field(string units, string path, string present, string typed, string wanted)
    {
        (string, string)[] before = path.StartsWith("terrain", StringComparison.Ordinal) ? [] : [(path, present)];
        JsonElement answer = await page.Corner(before, new() { ["edits"] = new[] { new { path, text = typed } }, ["units"] = units });
        Assert.Equal(wanted, PageFixture.Changes(answer)[path]);
    }

    // From the file, in mm: stroke 300, preload 20, the upper spring closes by 150, the lower by 340 less its solid length. Nothing is left to compress
    // after 150 + 200 - 20 = 330 of shaft travel, past full bump, after 150 + 150 - 20 = 280, and after 150 + 120 - 20 = 250.
    [Theory]
    [InlineData("140 mm", "26 km/h", 0.3)]
    [InlineData("190 mm", "12 km/h", 0.28)]
    [InlineData("220 mm", "26 km/h", 0.25)]
    public async Task The_margin_to_metal_ends_at_full_bump_or_where_all_coils_are_bound(string solid, string speed, double end)
    {
        JsonElement answer = await page.Corner([("coilover.springs.lower.solid_length", solid), ("speed", speed)], text: PageFixture.Shipped("coil-bind.yaml"));
        double deepest = 0.3 * PageFixture.Figure(answer, "travel.travel_use");
        new Tolerance(1e-12, "a difference of lengths").Holds(end - deepest, PageFixture.Figure(answer, "margin_to_metal_m"));
    }

    [Fact]
    public async Task Switching_units_converts_what_is_shown_and_leaves_what_was_typed()
    {
        JsonElement answer = await page.Corner([("coilover.stop_nut.gap", "1.5 in")], new() { ["units"] = "si" });
        Assert.Equal("1.5 in", PageFixture.Changes(answer)["coilover.stop_nut.gap"]);
        JsonElement values = answer.GetProperty("form").GetProperty("values");
        Assert.Equal("38.1 mm", values.GetProperty("coilover.stop_nut.gap").GetString());
        Assert.Equal("9.6561 km/h", values.GetProperty("speed").GetString());
    }

    [Fact]
    public async Task Every_mistake_is_named_with_its_field_and_there_is_no_result()
    {
        JsonElement answer = await page.Corner([("coilover.stop_nut.gap", "1 lbf"), ("speed", "fast")]);
        Assert.Equal(["coilover.stop_nut.gap", "speed"], answer.GetProperty("problems").EnumerateArray().Select(p => p.GetProperty("path").GetString()).Order(StringComparer.Ordinal));
        Assert.False(answer.TryGetProperty("result", out _));
    }

    [Fact]
    public async Task Holding_the_ride_height_keeps_it_while_springs_change()
    {
        JsonElement before = await page.Corner([]);
        JsonElement after = await page.Corner([], new() { ["hold"] = "ride_height", ["base"] = Array.Empty<object>(), ["steps"] = new[] { new { path = "coilover.springs.upper.rate", count = 2 } } });
        s_set.Holds(PageFixture.Figure(before, "static.ride_height_m"), PageFixture.Figure(after, "static.ride_height_m"));
        Assert.NotEqual("1.4 in", PageFixture.Changes(after)["coilover.preload"]);
    }

    [Fact]
    public async Task Holding_ride_height_and_crossover_keeps_both()
    {
        JsonElement before = await page.Corner([]);
        JsonElement after = await page.Corner([], new() { ["hold"] = "crossover", ["base"] = Array.Empty<object>(), ["steps"] = new[] { new { path = "coilover.springs.lower.rate", count = 1 } } });
        s_set.Holds(PageFixture.Figure(before, "static.ride_height_m"), PageFixture.Figure(after, "static.ride_height_m"));
        new Tolerance(1.5e-5, "gap and preload are each written to 0.0001 in; the crossover moves by at most a few times as much").Holds(
            PageFixture.Figure(before, "static.crossover_shaft_showing_m"), PageFixture.Figure(after, "static.crossover_shaft_showing_m"));
    }

    [Fact]
    public async Task A_stop_nut_held_on_the_body_stands_where_check_leaves_it()
    {
        JsonElement answer = await page.Corner([], new() { ["hold"] = "nut", ["base"] = Array.Empty<object>(), ["edits"] = new[] { new { path = "coilover.preload", text = "1.8 in" } } });
        double wanted = PageFixture.Check("crossover_shaft_showing_m", "--set", "coilover.preload=1.8 in", "--nut", "stays");
        new Tolerance(1e-5, "the gap is written to 0.0001 in, and the crossover moves by at most a few times as much").Holds(wanted, PageFixture.Figure(answer, "static.crossover_shaft_showing_m"));
    }

    // 850 lbf on the springs for 780, whatever the gas does: both springs are pressed by 70/200 + 70/300 more, 1.6 + 0.58333 of preload take it up.
    [Theory]
    [InlineData("ride_height")]
    [InlineData("crossover")]
    public async Task What_is_held_is_held_where_another_load_on_the_springs_is_given(string hold)
    {
        string text = PageFixture.Shipped("weighed-corner.yaml");
        JsonElement before = await page.Corner([], text: text);
        JsonElement after = await page.Corner([], new() { ["hold"] = hold, ["base"] = Array.Empty<object>(), ["edits"] = new[] { new { path = "corner.spring_load", text = "850 lbf" } } }, text);
        Assert.Equal("2.1833 in", PageFixture.Changes(after)["coilover.preload"]);
        s_set.Holds(PageFixture.Figure(before, "static.ride_height_m"), PageFixture.Figure(after, "static.ride_height_m"));
        if (hold == "crossover") s_set.Holds(PageFixture.Figure(before, "static.crossover_shaft_showing_m"), PageFixture.Figure(after, "static.crossover_shaft_showing_m"));
    }

    // The nut holds the upper spring at 830/160 + 1.9 - 6.4 = 0.6875 in; 1.4 in of preload alone press it by 1.4 · 225/385 = 0.818 in.
    [Fact]
    public async Task A_stop_nut_that_would_press_on_the_slider_at_full_droop_is_not_written_as_no_gap()
    {
        JsonElement answer = await page.Corner([], new() { ["hold"] = "nut", ["base"] = Array.Empty<object>(), ["edits"] = new[] { new { path = "coilover.springs.lower.free_length", text = "20.4 in" } } }, PageFixture.Plain);
        Assert.StartsWith("Found a stop nut that would press on the slider at full droop", answer.GetProperty("problems")[0].GetProperty("words").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_part_put_in_and_taken_out_leaves_the_corner_as_it_was()
    {
        JsonElement before = await page.Corner([]);
        JsonElement with = await page.Corner([], new() { ["edits"] = new[] { new { path = "coilover.springs.tender", text = "{rate: 55 lbf/in, free_length: 4 in, solid_length: 1.1 in}" } } });
        Assert.NotEqual(Hash(before), Hash(with));
        JsonElement after = await page.Corner([("coilover.springs.tender", "{rate: 55 lbf/in, free_length: 4 in, solid_length: 1.1 in}")], new() { ["edits"] = new[] { new { path = "coilover.springs.tender", text = "none" } } });
        Assert.Equal(Hash(before), Hash(after));
    }

    [Fact]
    public async Task A_piece_of_ground_is_added_at_the_end_and_taken_out_again()
    {
        JsonElement added = await page.Corner([], new() { ["edits"] = new[] { new { path = "terrain[+]", text = "{flat: 10 ft}" } } });
        Assert.Equal("[{ flat: 10 ft }, { step: -20 in }, { flat: 60 ft }, {flat: 10 ft}]", PageFixture.Changes(added)["terrain"]);
        JsonElement taken = await page.Corner([("terrain", PageFixture.Changes(added)["terrain"])], new() { ["edits"] = new[] { new { path = "terrain[3]", text = "none" } } });
        Assert.Equal(Hash(await page.Corner([])), Hash(taken));
    }

    [Fact]
    public async Task How_much_an_input_matters_is_a_curve_through_the_present_value()
    {
        JsonElement answer = await page.Ask("matter", new { setup = PageFixture.Setup([]), path = "coilover.stop_nut.gap", figure = "static.crossover_shaft_showing_m" });
        double[][] points = [.. answer.GetProperty("points").EnumerateArray().Select(p => p.EnumerateArray().Select(v => v.GetDouble()).ToArray())];
        double wanted = PageFixture.Check("crossover_shaft_showing_m") / 0.0254;
        new Tolerance(1e-4, "six figures are sent").Holds(wanted, points.Single(p => p[0] == 1.25)[1]);
        Assert.True(points.Length > 8);
    }

    // Held ride height is met by the preload, so that it is the same at every rate; and of the preload itself nothing is left to see.
    [Fact]
    public async Task How_much_an_input_matters_follows_what_is_held()
    {
        JsonElement answer = await page.Ask("matter", Question("coilover.springs.upper.rate"));
        double height = PageFixture.Check("ride_height_m") / 0.0254;
        double[] heights = [.. answer.GetProperty("points").EnumerateArray().Select(p => p[1].GetDouble())];
        Assert.True(heights.Length > 8);
        var tape = new Tolerance(2e-4, "in: preload is set to four decimals of an inch, six figures are sent");
        Assert.All(heights, h => tape.Holds(height, h));
        Assert.Equal(", the ride height held", answer.GetProperty("held").GetString());
        Assert.StartsWith("What is held sets this input", (await page.Ask("matter", Question("coilover.preload"))).GetProperty("problem").GetString(), StringComparison.Ordinal);

        static object Question(string path) => new { setup = PageFixture.Setup([]), path, figure = "static.ride_height_m", hold = "ride_height", @base = Array.Empty<object>() };
    }

    [Fact]
    public async Task What_is_held_says_so_where_a_value_gives_way_to_it()
    {
        JsonElement answer = await page.Corner([], new() { ["hold"] = "ride_height", ["base"] = Array.Empty<object>(), ["edits"] = new[] { new { path = "coilover.preload", text = "1.9 in" } } });
        JsonElement form = answer.GetProperty("form"), note = Assert.Single(form.GetProperty("notes").EnumerateArray());
        Assert.Equal("coilover.preload", note.GetProperty("path").GetString());
        Assert.Equal($"What is held sets this: {form.GetProperty("values").GetProperty("coilover.preload").GetString()} in place of 1.9 in. Hold nothing to set it yourself.", note.GetProperty("words").GetString());
        JsonElement other = await page.Corner([], new() { ["hold"] = "ride_height", ["base"] = Array.Empty<object>(), ["edits"] = new[] { new { path = "corner.sprung_weight", text = "900 lbf" } } });
        Assert.Empty(other.GetProperty("form").GetProperty("notes").EnumerateArray());
    }

    // At nearly every one of 120 crests the slider leaves the nut and comes back, or the tyre the ground.
    [Fact]
    public async Task Events_beyond_those_shown_are_counted()
    {
        JsonElement answer = await page.Corner([("terrain", "[{ whoops: { height: 10 in, spacing: 8 ft, count: 120 } }]"), ("speed", "20 mph")], text: PageFixture.Plain);
        string events = answer.GetProperty("result").GetProperty("events").GetString()!;
        Assert.Equal(200, events.Split("<li").Length - 1);
        Assert.Matches("The first 200 of [0-9]+: the file of events has them all", events);
    }

    [Fact]
    public async Task Setups_beside_each_other_stand_in_one_table()
    {
        JsonElement answer = await page.Ask("compare", new { setups = new[] { PageFixture.Setup([]), PageFixture.Setup([("coilover.stop_nut.gap", "2 in")]) } });
        Assert.Contains("data-figure=\"static.crossover_shaft_showing_m\"", answer.GetProperty("table").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Setups_over_other_ground_or_at_another_speed_are_said_to_be()
    {
        const string unlike = "They do not all take the same obstacle at the same speed";
        async Task<string> Table(params (string, string)[] changes) =>
            (await page.Ask("compare", new { setups = new[] { PageFixture.Setup([]), PageFixture.Setup(changes) } })).GetProperty("table").GetString()!;
        Assert.Contains(unlike, await Table(("speed", "4 mph")), StringComparison.Ordinal);
        Assert.Contains(unlike, await Table(("terrain[1].step", "-16 in")), StringComparison.Ordinal);
        Assert.DoesNotContain(unlike, await Table(("coilover.preload", "2 in")), StringComparison.Ordinal);
    }

    // A rod of 1.75 in takes up 1.02·2.405·12 = 29.4 in³ over the stroke, and the gas has 28.
    [Fact]
    public async Task A_curve_of_which_a_point_cannot_be_is_a_curve_all_the_same()
    {
        JsonElement answer = await page.Ask("matter", new { setup = PageFixture.Setup([]), path = "coilover.gas.rod_diameter", figure = "static.ride_height_m" });
        Assert.StartsWith("Left out where the corner cannot be: ", answer.GetProperty("leftOut").GetString(), StringComparison.Ordinal);
        Assert.True(answer.GetProperty("points").GetArrayLength() > 5);
        Assert.False(answer.TryGetProperty("failed", out _)); // by that name the page knows an answer that did not come
    }

    // Both springs together hold 93.5 lbf/in · (12 + 1.4) in = 1253 lbf where no nut stops one: 1500 lbf stand on metal.
    [Fact]
    public async Task A_setup_that_stands_on_metal_says_so_below_the_table()
    {
        var heavy = PageFixture.Setup([("corner.sprung_weight", "1500 lbf"), ("coilover.stop_nut", "none")], PageFixture.Plain);
        JsonElement answer = await page.Ask("compare", new { setups = new[] { PageFixture.Setup([], PageFixture.Plain), heavy } });
        Assert.Contains("<p class=\"alarm\"><span class=\"mark\" data-setup=\"1\"></span><span>A</span>: stands on metal at full bump</p>", answer.GetProperty("table").GetString(), StringComparison.Ordinal);
    }

    private static string Hash(JsonElement answer) => answer.GetProperty("result").GetProperty("hash").GetString()!;
}
