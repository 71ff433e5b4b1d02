using System.Globalization;
using System.Text.Json;

using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;

using Microsoft.Playwright;

using QuarterCar.TestKit;

using Xunit.Abstractions;

namespace QuarterCar.Web.Tests;

/// <summary>The page under somebody's hands.</summary>
[Collection(OneBrowser.Name)]
public sealed class BrowserTests(BrowserFixture browser, ITestOutputHelper output)
{
    private const string Gap = "coilover.stop_nut.gap", Crossover = "static.crossover_shaft_showing_m", Weight = "corner.sprung_weight";

    private static readonly Tolerance s_same = new(1e-12, "the page and the command line ask the same model with the same numbers");

    [BrowserFact]
    public async Task Typing_a_gap_shows_the_crossover_of_check()
    {
        await using Visit visit = await browser.Open();
        await visit.Type(Gap, "0.8 in");
        double wanted = PageFixture.Check("crossover_shaft_showing_m", "--set", Gap + "=0.8 in");
        s_same.Holds(wanted, await visit.Figure(Crossover));
        string shown = (wanted / 0.0254).ToString("F2", CultureInfo.InvariantCulture);
        Assert.Equal(shown, (await visit.Page.InnerTextAsync($"#figures [data-figure='{Crossover}'] td.n")).Trim());
    }

    [BrowserFact]
    public async Task A_kept_setup_stands_beside_the_present_one_and_is_taken_up_again()
    {
        await using Visit visit = await browser.Open();
        double before = await visit.Figure(Crossover);
        string hash = await visit.Hash();
        await visit.Page.ClickAsync("#keep");
        await visit.Type(Gap, "2 in");
        ILocator row = visit.Page.Locator($"#differences tr[data-figure='{Crossover}']");
        await Assertions.Expect(row.Locator("td").First).ToHaveTextAsync("1.90");
        await Assertions.Expect(row).ToContainTextAsync((before / 0.0254).ToString("F2", CultureInfo.InvariantCulture));
        await visit.Turn(() => visit.Page.GetByRole(AriaRole.Button, new() { Name = "Turn on from here, setup A" }).ClickAsync());
        Assert.Equal(hash, await visit.Hash());
    }

    [BrowserFact]
    public async Task A_kept_drive_is_not_drawn_over_the_time_of_a_drop()
    {
        await using Visit visit = await browser.Open();
        await visit.Page.ClickAsync("#keep");
        await visit.Turn(() => visit.Page.GetByRole(AriaRole.Button, new() { Name = "Drop test instead" }).ClickAsync());
        foreach ((string name, int lines) in new[] { ("shaft", 1), ("tyre", 1), ("acceleration", 1), ("force", 5) })
        {
            Assert.Equal(lines, await visit.Page.EvaluateAsync<int>($"echarts.getInstanceByDom(document.getElementById('chart-{name}')).getOption().series.length"));
            string title = await visit.Page.InnerTextAsync("#title-" + name);
            Assert.Equal(lines == 1, title.EndsWith("(setup A runs over distance and is left out here)", StringComparison.Ordinal));
        }
    }

    [BrowserFact]
    public async Task A_load_case_says_what_it_adds_to_the_fields()
    {
        await using Visit visit = await browser.Open();
        await visit.Turn(() => visit.Page.SelectOptionAsync("#case", "two up and fuel"));
        await Assertions.Expect(visit.Page.Locator("#case-words")).ToHaveTextAsync("On top of the values below: sprung weight +120 lbf.");
        Assert.Equal("830 lbf", await visit.Input(Weight).InputValueAsync());
        await visit.Turn(() => visit.Page.SelectOptionAsync("#case", ""));
        await Assertions.Expect(visit.Page.Locator("#case-words")).ToBeHiddenAsync();
    }

    [BrowserFact]
    public async Task A_bad_value_is_explained_beside_its_field_while_the_last_answer_stays()
    {
        await using Visit visit = await browser.Open();
        double before = await visit.Figure(Crossover);
        await visit.Type(Gap, "1.5 psi");
        await Assertions.Expect(visit.Page.Locator($".field[data-path='{Gap}'] .problem")).ToContainTextAsync("wanted a length with its unit");
        await Assertions.Expect(visit.Page.Locator("#result")).ToHaveClassAsync("result stale");
        Assert.Equal(before, await visit.Figure(Crossover));
        await visit.Type(Gap, "1.25 in");
        await Assertions.Expect(visit.Page.Locator("#result")).ToHaveClassAsync("result");
        await Assertions.Expect(visit.Page.Locator($".field[data-path='{Gap}'] .problem")).ToBeHiddenAsync();
    }

    [BrowserFact]
    public async Task Undo_and_redo_go_back_and_forth()
    {
        await using Visit visit = await browser.Open();
        string before = await visit.Hash();
        await visit.Type(Gap, "2 in");
        string after = await visit.Hash();
        await visit.Turn(() => visit.Page.ClickAsync("#undo"));
        Assert.Equal((before, "1.25 in"), (await visit.Hash(), await visit.Input(Gap).InputValueAsync()));
        await visit.Turn(() => visit.Page.Keyboard.PressAsync("Control+Shift+Z"));
        Assert.Equal(after, await visit.Hash());
    }

    [BrowserFact]
    public async Task A_saved_scenario_opened_again_is_the_same()
    {
        await using Visit visit = await browser.Open();
        await visit.Type(Gap, "31 mm");
        await visit.Input("coilover.springs.upper.rate").PressAsync("ArrowUp");
        await visit.Page.WaitForTimeoutAsync(300);
        string hash = await visit.Hash();
        IDownload saved = await visit.Page.RunAndWaitForDownloadAsync(() => visit.Page.ClickAsync("#save"));
        Assert.Equal("quarry-ledge.yaml", saved.SuggestedFilename);
        string path = await saved.PathAsync();
        Assert.Contains("# the tyre rolls off the edge", await File.ReadAllTextAsync(path), StringComparison.Ordinal);
        await visit.Type(Gap, "5 mm");
        await visit.Turn(() => visit.Page.SetInputFilesAsync("#open-file", path));
        Assert.Equal(hash, await visit.Hash());
    }

    [BrowserFact]
    public async Task What_was_typed_last_is_in_the_file_however_late_its_answer_comes()
    {
        await using Visit visit = await browser.Open();
        await visit.Page.RouteAsync("**/api/corner", async route =>
        {
            await Task.Delay(700);
            await route.ContinueAsync();
        });
        IDownload saved = await visit.Page.RunAndWaitForDownloadAsync(async () =>
        {
            await visit.Input(Gap).FillAsync("2.25 in");
            await visit.Input(Gap).PressAsync("Tab");
            await visit.Page.ClickAsync("#save");
        });
        Assert.Contains("gap: 2.25 in", await File.ReadAllTextAsync(await saved.PathAsync()), StringComparison.Ordinal);
    }

    [BrowserFact]
    public async Task Without_an_answer_to_what_was_typed_nothing_is_saved_or_kept()
    {
        await using Visit visit = await browser.Open();
        await visit.Page.RouteAsync("**/api/corner", route => route.FulfillAsync(new() { Status = 503, Body = "busy" }));
        await visit.Input(Gap).FillAsync("2.25 in");
        await visit.Input(Gap).PressAsync("Tab");
        await visit.Page.ClickAsync("#keep");
        await visit.Page.ClickAsync("#save");
        await Assertions.Expect(visit.Page.Locator("#said")).ToContainTextAsync("no file of it can be written");
        Assert.Equal("0.5", await visit.Page.EvaluateAsync<string>("getComputedStyle(document.getElementById('verdict')).opacity"));
        await Assertions.Expect(visit.Page.Locator("#kept li .words")).ToHaveCountAsync(0);
        Assert.Equal(1, visit.Errors.RemoveAll(e => e.Contains("503", StringComparison.Ordinal)));
    }

    [BrowserFact]
    public async Task A_mistake_that_no_field_shows_stays_when_a_file_is_asked_for()
    {
        await using Visit visit = await browser.Open();
        await visit.Turn(() => visit.Page.SetInputFilesAsync("#open-file", new FilePayload { Name = "odd.yaml", MimeType = "application/yaml", Buffer = System.Text.Encoding.UTF8.GetBytes(PageFixture.Plain + "\nspare_wheel: yes\n") }));
        ILocator mistake = visit.Page.Locator("#mistakes .mistake");
        await Assertions.Expect(mistake).ToContainTextAsync("spare_wheel");
        await visit.Page.ClickAsync("#save");
        await Assertions.Expect(visit.Page.Locator("#said")).ToHaveTextAsync("Correct the mistakes first.");
        await Assertions.Expect(mistake).ToContainTextAsync("spare_wheel");
    }

    [BrowserFact]
    public async Task The_keyboard_alone_is_enough()
    {
        await using Visit visit = await browser.Open();
        double before = await visit.Figure(Crossover);
        await Reach(visit, $"document.activeElement.dataset.path === '{Gap}'");
        await visit.Turn(() => visit.Page.Keyboard.PressAsync("ArrowUp"));
        Assert.True(await visit.Figure(Crossover) < before);
        await Reach(visit, "document.activeElement.id === 'keep'");
        await visit.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(visit.Page.Locator("#kept li .words")).ToContainTextAsync("stop nut gap 1.5 in");
        await Reach(visit, "document.activeElement.id === 'time'");
        string there = await visit.Page.InnerTextAsync("#readout");
        await visit.Page.Keyboard.PressAsync("ArrowRight");
        Assert.NotEqual(there, await visit.Page.InnerTextAsync("#readout"));
        await Reach(visit, "document.activeElement.matches('.events button')");
        await visit.Page.Keyboard.PressAsync("Enter");
        Assert.StartsWith((await visit.Page.EvaluateAsync<string>("Number(document.activeElement.dataset.time).toFixed(1)")), await visit.Page.InnerTextAsync("#readout"), StringComparison.Ordinal);
    }

    [BrowserTheory]
    [InlineData(ColorScheme.Light, 820, 1180)]
    [InlineData(ColorScheme.Dark, 1280, 800)]
    public async Task Axe_finds_nothing_serious(ColorScheme scheme, int width, int height)
    {
        await using Visit visit = await browser.Open(width, height, scheme);
        await visit.Page.ClickAsync("#keep");
        await visit.Type(Gap, "2 in");
        await visit.Page.EvaluateAsync("document.querySelectorAll('details').forEach(d => d.open = true)");
        await visit.Page.Locator($"button.matter[data-path='{Gap}']").ClickAsync();
        await Assertions.Expect(visit.Page.Locator("#matter-words")).ToContainTextAsync("over stop-nut gap");
        AxeResult result = await visit.Page.RunAxe();
        var serious = result.Violations.Where(v => v.Impact is "serious" or "critical").Select(v => $"{v.Id}: {v.Help}: {string.Join(" | ", v.Nodes.Take(4).Select(n => n.Html))}");
        Assert.Empty(serious);
    }

    [BrowserFact]
    public async Task Switching_to_SI_converts_the_inputs_and_back_again_loses_nothing()
    {
        await using Visit visit = await browser.Open();
        await visit.Type(Gap, "1.3 in");
        string hash = await visit.Hash();
        await visit.Turn(() => visit.Page.CheckAsync("#units input[value=si]"));
        Assert.Equal("33.02 mm", await visit.Input(Gap).InputValueAsync());
        await visit.Turn(() => visit.Page.CheckAsync("#units input[value=us]"));
        Assert.Equal(("1.3 in", hash), (await visit.Input(Gap).InputValueAsync(), await visit.Hash()));
    }

    [BrowserFact]
    public async Task From_key_press_to_redrawn_plots_takes_less_than_a_tenth_of_a_second_more_often_than_not()
    {
        await using Visit visit = await browser.Open();
        await visit.Page.EvaluateAsync("window.turns = []; document.addEventListener('drawn', e => window.turns.push(e.detail));");
        (double least, string words) = (double.PositiveInfinity, "");
        for (int round = 0; round < 3 && least >= Allowed; round++)
        {
            // The quietest of three rounds, a while apart: other tests run beside this one.
            if (round > 0) await Task.Delay(TimeSpan.FromSeconds(3));
            (double took, string said) = await Measure(visit, 830 + (40 * round));
            if (took < least) (least, words) = (took, said);
        }

        output.WriteLine(words);
        await Console.Out.WriteLineAsync(words);
        Assert.True(least < Allowed, words);
    }

    private const double Allowed = 100;

    // By the clock, and where others want the processors too, by this page's share of the clock: .ci/run asks once more while nothing else runs.
    private static async Task<(double Took, string Words)> Measure(Visit visit, int weight)
    {
        // Never a weight that was there before: nothing is remembered, everything is computed.
        const int warm = 6, counted = 25;
        await visit.Type(Weight, string.Create(CultureInfo.InvariantCulture, $"{weight}.5 lbf"));
        var others = new List<int>();
        for (int i = 0; i < warm + counted; i++)
        {
            await visit.Turn(() => visit.Input(Weight).PressAsync("ArrowUp"));
            others.Add(Runnable() - 1);
        }

        JsonElement turns = await visit.Page.EvaluateAsync<JsonElement>("window.turns");
        double[] Sorted(string name) => [.. turns.EnumerateArray().TakeLast(counted).Select(t => t.GetProperty(name).GetDouble()).Order()];
        double[] took = Sorted("took");
        double median = took[counted / 2], run = Sorted("computed")[counted / 2], wanted = Math.Max(1, others.Order().ElementAt(others.Count / 2) / (double)Environment.ProcessorCount);
        return (median / wanted, string.Create(CultureInfo.InvariantCulture, $"key press to redrawn plots: median {median:F0} ms, slowest {took[^1]:F0} ms; reading and running the scenario {run:F1} ms of it ({run / median:P0}); each processor wanted by {wanted:F1} threads"));
    }

    // Threads that run or wait for a processor now, this one among them; where the system does not say, it alone.
    private static int Runnable() => File.Exists("/proc/loadavg") ? int.Parse(File.ReadAllText("/proc/loadavg").Split(' ')[3].Split('/')[0], CultureInfo.InvariantCulture) : 1;

    /// <summary>Presses Tab until something has the focus.</summary>
    private static async Task Reach(Visit visit, string condition)
    {
        for (int i = 0; i < 150; i++)
        {
            if (await visit.Page.EvaluateAsync<bool>(condition)) return;
            await visit.Page.Keyboard.PressAsync("Tab");
        }

        Assert.Fail("Tab does not reach " + condition);
    }
}
