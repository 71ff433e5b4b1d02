using System.Text.Json;

using QuarterCar.TestKit.Programs;

namespace QuarterCar.Web.Tests;

/// <summary>What is saved, opened again, is the same scenario; sheet and traces are those of the command line.</summary>
[Collection(OnePage.Name)]
public sealed class FileTests(PageFixture page)
{
    [Theory]
    [InlineData("coilover.stop_nut.gap", "2 in")]
    [InlineData("coilover.friction", "25 lbf")]
    [InlineData("coilover.springs.upper.wire_diameter", "0.48 in")]
    [InlineData("coilover.damper.rebound", "[[4 in/s, 150 lbf], [75 in/s, 900 lbf]]")]
    [InlineData("tyre.sidewall", "5 in", "tyre.rim_rate", "9000 lbf/in")]
    [InlineData("coilover.body", "{ seat_length: 27.8 in, thread: 6 in }", "coilover.body.thread_pitch", "2 mm")]
    [InlineData("terrain", "[{ flat: 5 ft }, { ramp: { rise: 1 ft, length: 6 ft } }]")]
    public async Task Changes_are_written_into_the_text_and_comments_stay(params string[] pathsAndTexts)
    {
        (string, string)[] changes = [.. pathsAndTexts.Chunk(2).Select(p => (p[0], p[1]))];
        string saved = await Saved(changes);
        Assert.Equal(await Hash(changes, null), await Hash([], saved));
        if (changes[0].Item1 != "terrain") Assert.Contains("# what this wheel carries through its spring", saved, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_has_no_place_in_the_text_gives_a_clean_file_of_the_same_scenario()
    {
        (string, string)[] changes = [("coilover.stop_nut", "none"), ("title", "\"A: new, name\""), ("coilover.springs.tender", "{rate: 55 lbf/in, free_length: 4 in, solid_length: 1.1 in}")];
        string saved = await Saved(changes);
        Assert.Equal(await Hash(changes, null), await Hash([], saved));
    }

    [Fact]
    public async Task Every_scenario_that_ships_is_saved_clean_and_read_back_as_the_same()
    {
        foreach (string file in Directory.EnumerateFiles(Checkout.At("scenarios"), "*.yaml"))
        {
            string text = File.ReadAllText(file);
            if (text.Contains("- profile:", StringComparison.Ordinal)) continue; // a posted text may name no file of this machine
            (string, string)[] changes = [("run.tolerance", "1e-7"), ("run.tolerance", "none")];
            JsonElement answer = await page.Ask("file", new { setup = PageFixture.Setup(changes, text), kind = "scenario" });
            Assert.Equal(await Hash(changes, text), await Hash([], answer.GetProperty("text").GetString()!));
        }
    }

    [Fact]
    public async Task The_trace_is_that_of_run()
    {
        using var scratch = new Scratch();
        Assert.Equal(0, ProgramProcess.Run(Checkout.Root, "run", "scenarios/quarry-ledge.yaml", "--out", scratch.At("out")).Code);
        JsonElement answer = await page.Ask("file", new { setup = PageFixture.Setup([]), kind = "trace" });
        Assert.Equal(File.ReadAllText(scratch.At("out/trace.csv")), answer.GetProperty("text").GetString());
    }

    [Fact]
    public async Task The_setup_sheet_names_what_was_changed()
    {
        JsonElement answer = await page.Ask("file", new { setup = PageFixture.Setup([("coilover.stop_nut.gap", "2 in")]), kind = "sheet" });
        Assert.Contains("changed: coilover.stop_nut.gap=2 in", answer.GetProperty("text").GetString(), StringComparison.Ordinal);
    }

    // The page loads the changed scenario; the command line changes the loaded one (SheetVerbTests).
    [Fact]
    public async Task The_setup_sheet_says_that_the_case_came_last()
    {
        JsonElement answer = await page.Ask("file", new { setup = PageFixture.Setup([("coilover.preload", "1.6 in")], PageFixture.Plain, "heavy"), kind = "sheet" });
        Assert.Contains("changed: coilover.preload=1.6 in, then load case: heavy", answer.GetProperty("text").GetString(), StringComparison.Ordinal);
    }

    private async Task<string> Saved((string, string)[] changes) =>
        (await page.Ask("file", new { setup = PageFixture.Setup(changes), kind = "scenario" })).GetProperty("text").GetString()!;

    private async Task<string> Hash((string, string)[] changes, string? text)
    {
        JsonElement answer = await page.Corner(changes, text: text);
        Assert.True(answer.TryGetProperty("result", out JsonElement result), answer.GetProperty("problems").ToString());
        return result.GetProperty("hash").GetString()!;
    }
}
