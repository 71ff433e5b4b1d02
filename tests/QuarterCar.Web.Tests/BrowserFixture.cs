using Microsoft.Playwright;

using QuarterCar.Web.Serving;
using QuarterCar.Web.State;

namespace QuarterCar.Web.Tests;

/// <summary>A fact that needs the system's Chromium; skipped, with the reason, where it lacks.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class BrowserFactAttribute : FactAttribute
{
    public BrowserFactAttribute()
    {
        if (!File.Exists(BrowserFixture.Chromium)) Skip = $"needs {BrowserFixture.Chromium} (apt-get install chromium)";
    }
}

/// <summary>The same for a theory.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class BrowserTheoryAttribute : TheoryAttribute
{
    public BrowserTheoryAttribute()
    {
        if (!File.Exists(BrowserFixture.Chromium)) Skip = $"needs {BrowserFixture.Chromium} (apt-get install chromium)";
    }
}

/// <summary>The live page in a browser.</summary>
public sealed class BrowserFixture : IAsyncLifetime
{
    /// <summary>Where Debian puts it.</summary>
    public const string Chromium = "/usr/bin/chromium";

    private LivePage? _page;
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    /// <inheritdoc/>
    public async Task InitializeAsync()
    {
        if (!File.Exists(Chromium)) return;
        _page = await LivePage.Start(OpenedScenario.Shipped(), 0);
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = Chromium,
            Args = ["--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
    }

    /// <inheritdoc/>
    public async Task DisposeAsync()
    {
        if (_browser is not null) await _browser.DisposeAsync();
        _playwright?.Dispose();
        if (_page is not null) await _page.DisposeAsync();
    }

    /// <summary>A fresh visit: nothing remembered, the first answer drawn.</summary>
    public async Task<Visit> Open(int width = 1280, int height = 800, ColorScheme scheme = ColorScheme.Light)
    {
        IPage page = await _browser!.NewPageAsync(new() { ViewportSize = new() { Width = width, Height = height }, ColorScheme = scheme, ReducedMotion = ReducedMotion.Reduce });
        var errors = new List<string>();
        page.PageError += (_, error) => errors.Add(error);
        page.Console += (_, message) =>
        {
            if (message.Type == "error") errors.Add(message.Text);
        };
        await page.GotoAsync(_page!.Address);
        var visit = new Visit(page, errors);
        await visit.Drawn(1);
        return visit;
    }
}

/// <summary>One visit of the page.</summary>
/// <param name="Page">The browser's page.</param>
/// <param name="Errors">What its script complained of.</param>
public sealed record Visit(IPage Page, List<string> Errors) : IAsyncDisposable
{
    /// <summary>Answers drawn so far.</summary>
    public async Task<int> Count() => int.Parse(await Page.EvaluateAsync<string>("document.body.dataset.drawn ?? '0'"), System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>Waits until so many answers are drawn.</summary>
    public Task Drawn(int count) => Page.WaitForFunctionAsync("n => Number(document.body.dataset.drawn ?? 0) >= n", count);

    /// <summary>Does something and waits until its answer is drawn.</summary>
    public async Task Turn(Func<Task> turn)
    {
        int before = await Count();
        await turn();
        await Drawn(before + 1);
    }

    /// <summary>The input of a path.</summary>
    public ILocator Input(string path) => Page.Locator($"[id^='f-'][data-path=\"{path}\"]");

    /// <summary>Types a value.</summary>
    public Task Type(string path, string text) => Turn(async () =>
    {
        await Input(path).FillAsync(text);
        await Input(path).PressAsync("Enter");
    });

    /// <summary>A figure as the page carries it, SI.</summary>
    public async Task<double> Figure(string name) => double.Parse((await Page.GetAttributeAsync($"#figures [data-figure='{name}']", "data-si"))!, System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>What the scenario is, whatever way it is written.</summary>
    public Task<string> Hash() => Page.EvaluateAsync<string>("document.body.dataset.hash");

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await Page.CloseAsync();
        Assert.Empty(Errors);
    }
}

/// <summary>One browser for all its tests.</summary>
[CollectionDefinition(Name)]
public sealed class OneBrowser : ICollectionFixture<BrowserFixture>
{
    public const string Name = "browser";
}
