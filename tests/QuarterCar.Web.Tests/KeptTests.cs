using Microsoft.Playwright;

namespace QuarterCar.Web.Tests;

/// <summary>Kept setups over a reload of the page, which asks for each of them again.</summary>
[Collection(OneBrowser.Name)]
public sealed class KeptTests(BrowserFixture browser)
{
    private const string Gap = "coilover.stop_nut.gap";

    [BrowserFact]
    public async Task A_turn_while_the_kept_setups_are_asked_for_again_loses_neither_them_nor_itself()
    {
        await using Visit visit = await browser.Open();
        await Keep(visit, "1 in", "2 in");
        TaskCompletionSource first = new(), go = new(), second = new(), turned = new();
        int kept = 0;
        await visit.Page.RouteAsync("**/api/corner", async route =>
        {
            // The turn waits for its answer until the second kept setup is asked for; the first one, until the turn is asked for.
            if (IsTurn(route))
            {
                if (first.Task.IsCompleted)
                {
                    turned.SetResult();
                    await second.Task;
                }
            }
            else if (kept++ == 0)
            {
                first.SetResult();
                await go.Task;
            }
            else
            {
                second.TrySetResult();
            }

            await route.ContinueAsync();
        });
        await visit.Page.ReloadAsync();
        await first.Task;
        await visit.Turn(async () =>
        {
            await visit.Input(Gap).PressAsync("ArrowUp");
            await turned.Task;
            go.SetResult();
        });
        Assert.NotEqual("2 in", await visit.Input(Gap).InputValueAsync());
        await Drawn(visit, 3);
        await Assertions.Expect(visit.Page.Locator("#kept li .words")).ToHaveTextAsync(["A stop nut gap 1 in", "B stop nut gap 2 in"]);
        Assert.Equal(2, await Remembered(visit));
    }

    [BrowserFact]
    public async Task A_kept_setup_without_an_answer_after_a_reload_stays_kept()
    {
        await using Visit visit = await browser.Open();
        await Keep(visit, "1 in", "2 in");
        int kept = 0;
        await visit.Page.RouteAsync("**/api/corner", route => !IsTurn(route) && kept++ == 0 ? route.FulfillAsync(new() { Status = 503, Body = "busy" }) : route.ContinueAsync());
        await visit.Page.ReloadAsync();
        await Drawn(visit, 2);
        await Assertions.Expect(visit.Page.Locator("#kept li .words")).ToHaveTextAsync(["A stop nut gap 1 in (not drawn)", "B stop nut gap 2 in"]);
        Assert.Equal(2, await Remembered(visit));
        await visit.Turn(() => visit.Page.GetByRole(AriaRole.Button, new() { Name = "Turn on from here, setup A" }).ClickAsync());
        Assert.Equal("1 in", await visit.Input(Gap).InputValueAsync());
        Assert.Equal(1, visit.Errors.RemoveAll(e => e.Contains("503", StringComparison.Ordinal)));
    }

    private static async Task Keep(Visit visit, params string[] gaps)
    {
        foreach (string gap in gaps)
        {
            await visit.Type(Gap, gap);
            await visit.Page.ClickAsync("#keep");
        }
    }

    // A question for a kept setup brings no edits.
    private static bool IsTurn(IRoute route) => route.Request.PostData!.Contains("\"edits\"", StringComparison.Ordinal);

    private static async Task Drawn(Visit visit, int lines) =>
        await visit.Page.WaitForFunctionAsync("n => echarts.getInstanceByDom(document.getElementById('chart-shaft'))?.getOption()?.series?.length === n", lines);

    private static Task<int> Remembered(Visit visit) => visit.Page.EvaluateAsync<int>("JSON.parse(sessionStorage.getItem('quartercar')).kept.length");
}
