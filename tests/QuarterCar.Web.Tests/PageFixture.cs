using System.Net.Http.Json;
using System.Text.Json;
using System.Text.RegularExpressions;

using QuarterCar.TestKit.Programs;
using QuarterCar.Web.Serving;
using QuarterCar.Web.State;

namespace QuarterCar.Web.Tests;

/// <summary>The live page on a free port, with the scenario of the ledge, and questions put to it as a browser puts them.</summary>
public sealed partial class PageFixture : IAsyncLifetime
{
    private LivePage? _page;

    /// <summary>The text that the page opens with.</summary>
    public static string Ledge { get; } = File.ReadAllText(Checkout.At("scenarios", "quarry-ledge.yaml"));

    /// <summary>A corner for working out by hand: no gas, ratio 1.</summary>
    public const string Plain = """
        title: plain
        corner: { sprung_weight: 830 lbf, unsprung_weight: 145 lbf }
        tyre: { rate: 1250 lbf/in }
        coilover:
          stroke: 12 in
          springs:
            upper: { rate: 160 lbf/in, free_length: 14 in, solid_length: 4.6 in }
            lower: { rate: 225 lbf/in, free_length: 14 in, solid_length: 5.6 in }
          preload: 1.4 in
          stop_nut: { gap: 1.9 in, at: ride_height }
        terrain: [ flat: 10 ft, step: -3 in, flat: 20 ft ]
        speed: 6 mph
        cases:
          - { name: heavy, corner.sprung_weight: +250 lbf }
          - { name: other gap, coilover.stop_nut.gap: 1 in }
          - { name: no nut, coilover.stop_nut: none }
          - { name: other preload, coilover.preload: 2 in }
        """;

    /// <summary>Its address.</summary>
    public string Address => _page!.Address;

    /// <summary>Asks it.</summary>
    public HttpClient Client { get; } = new();

    /// <inheritdoc/>
    public async Task InitializeAsync()
    {
        _page = await LivePage.Start(OpenedScenario.Shipped(), 0);
        Client.BaseAddress = new Uri(Address);
    }

    /// <inheritdoc/>
    public async Task DisposeAsync()
    {
        Client.Dispose();
        await _page!.DisposeAsync();
    }

    /// <summary>Asks for a corner.</summary>
    /// <param name="changes">Changes that the browser holds.</param>
    /// <param name="more">Further parts of the question.</param>
    /// <param name="text">The scenario; null for the ledge.</param>
    /// <param name="load">The load case; null for the scenario as written.</param>
    public Task<JsonElement> Corner((string Path, string Text)[] changes, Dictionary<string, object?>? more = null, string? text = null, string? load = null)
    {
        var question = new Dictionary<string, object?>(more ?? []) { ["setup"] = Setup(changes, text, load) };
        return Ask("corner", question);
    }

    /// <summary>A setup as the browser holds it.</summary>
    public static object Setup((string Path, string Text)[] changes, string? text = null, string? load = null) =>
        new { text = text ?? Ledge, changes = changes.Select(c => new { path = c.Path, text = c.Text }).ToArray(), @case = load };

    /// <summary>The text of a scenario that ships.</summary>
    public static string Shipped(string name) => File.ReadAllText(Checkout.At("scenarios", name));

    /// <summary>Puts a question.</summary>
    public async Task<JsonElement> Ask(string kind, object question)
    {
        using HttpResponseMessage answer = await Client.PostAsJsonAsync("/api/" + kind, question);
        Assert.True(answer.IsSuccessStatusCode, $"{(int)answer.StatusCode}: {await answer.Content.ReadAsStringAsync()}");
        return await answer.Content.ReadFromJsonAsync<JsonElement>();
    }

    /// <summary>A figure of an answer, SI as the page carries it.</summary>
    public static double Figure(JsonElement answer, string name)
    {
        string html = answer.GetProperty("result").GetProperty("figures").GetString()!;
        Match found = FigureOf().Matches(html).Single(m => m.Groups[1].Value == name);
        return double.Parse(found.Groups[2].Value, System.Globalization.CultureInfo.InvariantCulture);
    }

    /// <summary>A figure of check --json with overrides.</summary>
    public static double Check(string key, params string[] arguments) => CheckOf("scenarios/quarry-ledge.yaml", key, arguments);

    /// <summary>The same of another file.</summary>
    public static double CheckOf(string file, string key, params string[] arguments)
    {
        ProcessResult result = ProgramProcess.Run(Checkout.Root, ["check", file, "--json", .. arguments]);
        Assert.True(result.Code == 0, result.Messages);
        using var json = JsonDocument.Parse(result.Out);
        return json.RootElement.GetProperty("static").GetProperty(key).GetDouble();
    }

    /// <summary>Changes of an answer, path to text.</summary>
    public static Dictionary<string, string> Changes(JsonElement answer) =>
        answer.GetProperty("changes").EnumerateArray().ToDictionary(c => c.GetProperty("path").GetString()!, c => c.GetProperty("text").GetString()!);

    [GeneratedRegex("data-figure=\"([^\"]+)\" data-si=\"([^\"]+)\"")]
    private static partial Regex FigureOf();
}

/// <summary>One page for all tests without a browser.</summary>
[CollectionDefinition(Name)]
public sealed class OnePage : ICollectionFixture<PageFixture>
{
    public const string Name = "page";
}
