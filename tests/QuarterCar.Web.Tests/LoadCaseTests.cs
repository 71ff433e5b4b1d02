using System.Text.Json;

using QuarterCar.TestKit;
using QuarterCar.TestKit.Programs;

namespace QuarterCar.Web.Tests;

/// <summary>A load case on the page: a change on top of the scenario that the fields show, whatever was turned in it before.</summary>
[Collection(OnePage.Name)]
public sealed class LoadCaseTests(PageFixture page)
{
    private const string Loaded = "two up and fuel", Weight = "corner.sprung_weight", RideHeight = "static.ride_height_m", Crossover = "static.crossover_shaft_showing_m";

    private static readonly Tolerance s_same = new(1e-12, "the page and the command line ask the same model with the same numbers");

    private static readonly Tolerance s_set = new(6e-6, "preload is written to 0.001 mm or 0.0001 in, and ride height moves by at most twice as much");

    [Fact]
    public async Task A_case_comes_on_top_of_what_was_turned()
    {
        JsonElement answer = await page.Corner([(Weight, "840 lbf")], load: Loaded);
        s_same.Holds(Loaded840("ride_height_m"), PageFixture.Figure(answer, RideHeight));
        JsonElement form = answer.GetProperty("form");
        Assert.Equal("840 lbf", form.GetProperty("values").GetProperty(Weight).GetString());
        Assert.Equal("On top of the values below: sprung weight +120 lbf.", form.GetProperty("caseWords").GetString());
    }

    [Fact]
    public async Task An_arrow_key_turns_the_scenario_and_the_case_stays_on_top()
    {
        JsonElement answer = await page.Corner([], new() { ["steps"] = new[] { new { path = Weight, count = 1 } } }, load: Loaded);
        Assert.Equal("840 lbf", PageFixture.Changes(answer)[Weight]);
        s_same.Holds(Loaded840("ride_height_m"), PageFixture.Figure(answer, RideHeight));
    }

    [Fact]
    public async Task The_sheet_has_the_case_of_what_was_turned()
    {
        JsonElement answer = await page.Ask("file", new { setup = PageFixture.Setup([(Weight, "840 lbf")]), kind = "sheet" });
        using var scratch = new Scratch();
        Assert.Equal(0, ProgramProcess.Run(scratch.Folder, "sheet", scratch.Write("ledge.yaml", With840), "--out", scratch.At("sheet.html")).Code);
        Assert.Equal(CaseRow(File.ReadAllText(scratch.At("sheet.html"))), CaseRow(answer.GetProperty("text").GetString()!));
    }

    [Fact]
    public async Task What_is_saved_under_a_case_is_the_scenario_without_it()
    {
        JsonElement saved = await page.Ask("file", new { setup = PageFixture.Setup([(Weight, "840 lbf")], load: Loaded), kind = "scenario" });
        Assert.Equal(With840, saved.GetProperty("text").GetString());
        JsonElement again = await page.Corner([], text: saved.GetProperty("text").GetString(), load: Loaded);
        Assert.Equal(Hash(await page.Corner([(Weight, "840 lbf")], load: Loaded)), Hash(again));
    }

    [Fact]
    public async Task A_change_that_a_case_cannot_live_with_is_named_where_the_case_is_needed()
    {
        (string, string)[] changes = [("coilover.gas", "none")]; // the case "hot" sets its temperature
        Assert.True((await page.Corner(changes)).TryGetProperty("result", out _));
        Assert.Contains("coilover.gas.pressure", (await page.Corner(changes, load: "hot")).GetProperty("problems").ToString(), StringComparison.Ordinal);
        foreach (string kind in new[] { "scenario", "sheet" })
        {
            JsonElement answer = await page.Ask("file", new { setup = PageFixture.Setup(changes), kind });
            Assert.Contains("coilover.gas.pressure", answer.GetProperty("problem").GetString(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task How_much_an_input_matters_under_a_case_goes_through_what_the_page_shows()
    {
        foreach (string path in new[] { Weight, "coilover.preload" })
        {
            double shown = PageFixture.Figure(await page.Corner([], load: Loaded), Crossover) / 0.0254;
            JsonElement answer = await page.Ask("matter", new { setup = PageFixture.Setup([], load: Loaded), path, figure = Crossover });
            double now = answer.GetProperty("now").GetDouble();
            new Tolerance(1e-4, "six figures are sent").Holds(shown, answer.GetProperty("points").EnumerateArray().Single(p => p[0].GetDouble() == now)[1].GetDouble(), path);
        }
    }

    [Theory]
    [InlineData("ride_height", "laden")]
    [InlineData("ride_height", "laden, raised")]
    [InlineData("crossover", "laden")]
    [InlineData("crossover", "laden, raised")]
    [InlineData("crossover", "hot")]
    public async Task What_is_held_is_held_under_the_case(string hold, string load)
    {
        string text = PageFixture.Shipped("load-cases.yaml");
        JsonElement before = await page.Corner([], text: text, load: load);
        JsonElement after = await page.Corner([], new() { ["hold"] = hold, ["base"] = Array.Empty<object>(), ["edits"] = new[] { new { path = "coilover.springs.lower.rate", text = "150 N/mm" } } }, text, load);
        Assert.NotEqual("15 mm", PageFixture.Changes(after)["coilover.preload"]);
        s_set.Holds(PageFixture.Figure(before, RideHeight), PageFixture.Figure(after, RideHeight));
        if (hold == "crossover") s_set.Holds(PageFixture.Figure(before, Crossover), PageFixture.Figure(after, Crossover));
    }

    [Fact]
    public async Task A_preload_that_the_case_sets_cannot_hold_anything()
    {
        string text = PageFixture.Shipped("load-cases.yaml").Replace("coilover.preload: +15 mm", "coilover.preload: 30 mm", StringComparison.Ordinal);
        JsonElement answer = await page.Corner([], new() { ["hold"] = "ride_height", ["base"] = Array.Empty<object>(), ["edits"] = new[] { new { path = "coilover.springs.lower.rate", text = "150 N/mm" } } }, text, "laden, raised");
        Assert.StartsWith("Found a load case that sets it", answer.GetProperty("problems")[0].GetProperty("words").GetString(), StringComparison.Ordinal);
    }

    // Inches and lbf, no gas, ratio 1. As written 600/160 + 1.6 = 5.35 holds the upper spring, and 850 lbf press it by 5.3125: the slider is free.
    // At 130 lbf/in the gap set anew holds it at 600/130 + 1.6 = 6.215, and 850 lbf would press it by 6.538: the slider is on the nut. The shaft
    // stands where it stood, at 850/160 + 850/225 - 1.4, with a preload of 600/130 + 1.6 + 850/225 less that: 2.302885.
    [Fact]
    public async Task A_ride_height_is_held_where_the_case_brings_the_slider_onto_the_nut()
    {
        JsonElement after = await Turned("ride_height", "heavy", ("sprung_weight: 830 lbf", "sprung_weight: 600 lbf"), ("gap: 1.9 in", "gap: 1.6 in"));
        Assert.Empty(after.GetProperty("problems").EnumerateArray());
        Assert.Equal("2.3029 in", PageFixture.Changes(after)["coilover.preload"]);
        s_set.Holds((12 - 850 / 160.0 - 850 / 225.0 + 1.4) * 0.0254, PageFixture.Figure(after, RideHeight));
    }

    // The nut holds the upper spring at 830/160 + 1.9 = 7.0875 in whatever is fitted; at 130 lbf/in it meets the slider under 921.375 lbf.
    [Fact]
    public async Task A_stop_nut_is_held_on_the_body_under_the_case()
    {
        JsonElement after = await Turned("nut", "heavy");
        new Tolerance(5e-6, "the gap is written to 0.0001 in, and the crossover moves by at most twice as much").Holds((12 - 7.0875 - 921.375 / 225 + 1.4) * 0.0254, PageFixture.Figure(after, Crossover));
    }

    [Theory]
    [InlineData("crossover", "other gap", "coilover.stop_nut.gap")]
    [InlineData("nut", "other gap", "coilover.stop_nut.gap")]
    [InlineData("crossover", "no nut", "coilover.stop_nut")]
    [InlineData("crossover", "other preload", "coilover.preload")]
    public async Task What_the_case_sets_itself_is_named_where_it_cannot_be_held(string hold, string load, string path)
    {
        JsonElement problem = (await Turned(hold, load)).GetProperty("problems")[0];
        Assert.Equal(path, problem.GetProperty("path").GetString());
        Assert.Equal("Found a load case that sets it whatever the scenario says; wanted the scenario as written, or nothing held.", problem.GetProperty("words").GetString());
    }

    [Fact]
    public async Task A_ride_height_is_held_under_a_case_with_another_gap()
    {
        JsonElement after = await Turned("ride_height", "other gap");
        s_set.Holds((12 - 830 / 160.0 - 830 / 225.0 + 1.4) * 0.0254, PageFixture.Figure(after, RideHeight));
    }

    // A corner of plain numbers with its upper spring turned from 160 to 130 lbf/in while something is held.
    private Task<JsonElement> Turned(string hold, string load, params (string Old, string New)[] other) => page.Corner(
        [],
        new() { ["hold"] = hold, ["base"] = Array.Empty<object>(), ["edits"] = new[] { new { path = "coilover.springs.upper.rate", text = "130 lbf/in" } } },
        other.Aggregate(PageFixture.Plain, (text, o) => text.Replace(o.Old, o.New, StringComparison.Ordinal)),
        load);

    private static string With840 => PageFixture.Ledge.Replace("sprung_weight: 830 lbf", "sprung_weight: 840 lbf", StringComparison.Ordinal);

    // The scenario with the turned weight written into its file: the command line's own way to a case on top of it.
    private static double Loaded840(string key)
    {
        using var scratch = new Scratch();
        return PageFixture.CheckOf(scratch.Write("ledge.yaml", With840), key, "--case", Loaded);
    }

    private static string CaseRow(string sheet)
    {
        int from = sheet.IndexOf("Ride height, " + Loaded, StringComparison.Ordinal);
        return sheet[from..sheet.IndexOf("</tr>", from, StringComparison.Ordinal)];
    }

    private static string Hash(JsonElement answer) => answer.GetProperty("result").GetProperty("hash").GetString()!;
}
