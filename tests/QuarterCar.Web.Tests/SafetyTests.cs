using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;

using QuarterCar.TestKit.Programs;
using QuarterCar.Web.Serving;
using QuarterCar.Web.State;

namespace QuarterCar.Web.Tests;

/// <summary>The page is for this machine and for itself alone, and junk does not take it down.</summary>
[Collection(OnePage.Name)]
public sealed class SafetyTests(PageFixture page)
{
    [Theory]
    [InlineData("Host", "evil.example")]
    [InlineData("Host", "localhost")]
    [InlineData("Origin", "http://evil.example")]
    [InlineData("Origin", "null")]
    [InlineData("Sec-Fetch-Site", "cross-site")]
    public async Task A_question_from_elsewhere_is_refused(string header, string value)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/corner") { Content = JsonContent.Create(new { setup = PageFixture.Setup([]) }) };
        request.Headers.TryAddWithoutValidation(header, value);
        using HttpResponseMessage answer = await page.Client.SendAsync(request);
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.False(answer.Headers.Contains("Access-Control-Allow-Origin"));
    }

    [Fact]
    public async Task A_page_under_another_name_is_refused()
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/") { Headers = { Host = "rebound.example" } };
        using HttpResponseMessage answer = await page.Client.SendAsync(request);
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
    }

    [Theory]
    [InlineData("")]
    [InlineData("{")]
    [InlineData("null")]
    [InlineData("[1, 2]")]
    [InlineData("{}")]
    [InlineData("{\"setup\": {\"text\": \"a\"}}")]
    [InlineData("{\"setup\": {\"text\": \"a\", \"changes\": [null]}}")]
    [InlineData("{\"setup\": {\"text\": \"a\", \"changes\": [{\"path\": \"x=y\", \"text\": \"1\"}]}}")]
    [InlineData("{\"setup\": {\"text\": 7, \"changes\": []}}")]
    public async Task Junk_is_answered_with_words(string body)
    {
        foreach (string kind in new[] { "corner", "matter", "compare", "file" })
        {
            using HttpResponseMessage answer = await page.Client.PostAsync("/api/" + kind, new StringContent(body, Encoding.UTF8, "application/json"));
            Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
            Assert.StartsWith("The ", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("a: b")]
    [InlineData("\u0000\u0001")]
    [InlineData("title: [[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[")]
    [InlineData("terrain: 3")]
    [InlineData("title: x\ncoilover: 4\nterrain: [1, {step: {}}]")]
    public async Task A_text_that_is_no_scenario_is_answered_with_what_is_wrong(string text)
    {
        JsonElement answer = await page.Corner([], text: text);
        Assert.NotEmpty(answer.GetProperty("problems").EnumerateArray());
        JsonElement turned = await page.Corner([], new() { ["steps"] = new[] { new { path = "terrain[7].step", count = 3 } }, ["edits"] = new[] { new { path = "terrain[+]", text = "{" }, new { path = "terrain[99999999999]", text = "none" } } }, text);
        Assert.NotEmpty(turned.GetProperty("problems").EnumerateArray());
    }

    [Fact]
    public async Task More_than_10_MB_is_refused()
    {
        using HttpResponseMessage answer = await page.Client.PostAsJsonAsync("/api/corner", new { setup = PageFixture.Setup([], new string('a', 10_100_000)) });
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
    }

    [Fact]
    public async Task Ten_pages_at_once_and_some_that_leave_early_are_all_answered()
    {
        async Task Leave()
        {
            using var cancel = new CancellationTokenSource(5);
            await Assert.ThrowsAnyAsync<OperationCanceledException>(() => page.Client.PostAsJsonAsync("/api/matter", new { setup = PageFixture.Setup([]), path = "speed", figure = "acceleration.peak_g" }, cancel.Token));
        }

        await Task.WhenAll(Enumerable.Range(0, 10).Select(i => page.Corner([("coilover.stop_nut.gap", $"{i} mm")])).Cast<Task>().Concat(Enumerable.Range(0, 5).Select(_ => Leave())));
        Assert.Empty((await page.Corner([])).GetProperty("problems").EnumerateArray());
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Edits_and_steps_stop_when_nobody_waits_for_them_any_more(bool edits)
    {
        using var gone = new CancellationTokenSource();
        int asked = 0;
        IEnumerable<T> Three<T>(T one)
        {
            while (true)
            {
                if (++asked == 3) gone.Cancel();
                if (asked > 100) yield break;
                yield return one;
            }
        }

        var turn = new Turn(new State.Library(OpenedScenario.Shipped()), QuarterCar.Scenarios.UnitSystem.Us);
        var setup = new SetupState(PageFixture.Ledge, [], null);
        Assert.Throws<OperationCanceledException>(() => turn.Apply(setup, edits ? Three(new Change("speed", "7")) : [], edits ? [] : Three(new Step("speed", 1)), gone.Token));
        Assert.Equal(3, asked);
    }

    [Fact]
    public async Task An_uploaded_text_reads_no_file()
    {
        JsonElement answer = await page.Corner([], text: PageFixture.Ledge.Replace("  - step: -20 in", "  - profile: { file: course.csv }", StringComparison.Ordinal));
        Assert.Equal("terrain[1].profile.file", Assert.Single(answer.GetProperty("problems").EnumerateArray()).GetProperty("path").GetString());
    }

    [Fact]
    public async Task Only_profiles_that_the_opened_scenario_names_are_read()
    {
        using var scratch = new Scratch();
        scratch.Write("course.csv", "distance_m,height_m\n0,0\n5,0.1\n");
        scratch.Write("secret.csv", "distance_m,height_m\n0,0\n5,0.2\n");
        string text = PageFixture.Ledge.Replace("  - step: -20 in", "  - profile: { file: course.csv }", StringComparison.Ordinal);
        await using LivePage own = await LivePage.Start(OpenedScenario.Load(scratch.Write("own.yaml", text), new())!, 0);
        using var client = new HttpClient { BaseAddress = new Uri(own.Address) };
        Assert.Empty(await Problems(client, PageFixture.Setup([], text)));
        Assert.Equal(["terrain[1].profile.file"], await Problems(client, PageFixture.Setup([("terrain[1].profile.file", "secret.csv")], text)));
        Assert.Equal(["terrain[1].profile.file"], await Problems(client, PageFixture.Setup([("terrain[1].profile.file", "../own.yaml")], text)));
        Assert.Equal(["terrain[1].profile.file"], await Problems(client, PageFixture.Setup([], text + "\n# uploaded")));
    }

    [Theory]
    [InlineData("\"terrain[1]\": { profile: { file: FILE } }")]
    [InlineData("\"terrain[1].profile\": { file: FILE }")]
    [InlineData("\"terrain[1].profile.file\": FILE")]
    [InlineData("\"terrain[1].profile.file\": =FILE")]
    [InlineData("terrain: [{ flat: 1 m }, { profile: { file: FILE } }]")]
    public async Task A_load_case_reads_the_profiles_that_the_opened_scenario_names_and_no_others(string change)
    {
        using var scratch = new Scratch();
        scratch.Write("course.csv", "distance_m,height_m\n0,0\n5,0.1\n");
        scratch.Write("other.csv", "distance_m,height_m\n0,0\n5,0.2\n");
        scratch.Write("secret.csv", "my password,is\nhunter2,0\n");
        string text = PageFixture.Ledge.Replace("  - step: -20 in", "  - profile: { file: course.csv }", StringComparison.Ordinal);
        text = text.Replace("cases:", "cases:\n  - { name: named, " + change.Replace("FILE", "other.csv", StringComparison.Ordinal) + " }", StringComparison.Ordinal);
        await using LivePage own = await LivePage.Start(OpenedScenario.Load(scratch.Write("own.yaml", text), new())!, 0);
        using var client = new HttpClient { BaseAddress = new Uri(own.Address) };
        (string, string)[] added = [("cases", "[{ name: added, " + change.Replace("FILE", "secret.csv", StringComparison.Ordinal) + " }]")];
        foreach (string? load in new[] { null, "added" })
        {
            using HttpResponseMessage answer = await client.PostAsJsonAsync("/api/corner", new { setup = PageFixture.Setup(added, text, load) });
            string body = await answer.Content.ReadAsStringAsync();
            Assert.DoesNotContain("password", body, StringComparison.Ordinal);
            Assert.Contains("which the scenario does not name as it was opened", body, StringComparison.Ordinal);
        }

        Assert.Empty(await Problems(client, PageFixture.Setup([], text, "named")));
        Assert.Empty(await Problems(client, PageFixture.Setup([("terrain[1].profile.file", "other.csv")], text)));
    }

    [Fact]
    public async Task A_longer_run_than_the_page_computes_is_explained()
    {
        JsonElement answer = await page.Corner([("run.duration", "1000000 s"), ("run.sample", "10 s")]);
        Assert.Contains("command line", Assert.Single(answer.GetProperty("problems").EnumerateArray()).GetProperty("words").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task No_title_or_name_becomes_markup_in_an_answer()
    {
        const string bad = "<img src=x onerror=alert(1)> \" ' &";
        string text = PageFixture.Ledge.Replace("title: Quarry ledge", $"title: '{bad.Replace("'", "''", StringComparison.Ordinal)}'\n#", StringComparison.Ordinal).Replace("name: hot", "name: '<img src=x>'", StringComparison.Ordinal);
        JsonElement corner = await page.Corner([("coilover.preload", "<img src=x>")], text: text);
        Assert.DoesNotContain("<img", corner.GetProperty("form").GetProperty("html").GetString(), StringComparison.Ordinal);
        JsonElement result = (await page.Corner([], text: text)).GetProperty("result");
        Assert.Equal(bad, result.GetProperty("title").GetString());
        foreach (string part in new[] { "figures", "allFigures", "warnings", "events" }) Assert.DoesNotContain("<img", result.GetProperty(part).GetString(), StringComparison.Ordinal);
        JsonElement table = await page.Ask("compare", new { setups = new[] { PageFixture.Setup([], text), PageFixture.Setup([("speed", "5 mph")], text) } });
        Assert.DoesNotContain("<img", table.GetProperty("table").GetString(), StringComparison.Ordinal);
        JsonElement sheet = await page.Ask("file", new { setup = PageFixture.Setup([], text), kind = "sheet" });
        Assert.DoesNotContain("<img", sheet.GetProperty("text").GetString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("PUT", "/api/corner")]
    [InlineData("DELETE", "/")]
    [InlineData("OPTIONS", "/api/corner")]
    [InlineData("GET", "/api/corner")]
    [InlineData("GET", "/page/../../etc/passwd")]
    [InlineData("GET", "/page/%2e%2e%2f%2e%2e%2fetc%2fpasswd")]
    [InlineData("GET", "/page/..\\..\\etc")]
    [InlineData("GET", "/page/%00")]
    public async Task Another_method_or_another_address_gives_nothing(string method, string path)
    {
        using var request = new HttpRequestMessage(new HttpMethod(method), page.Address + path);
        using HttpResponseMessage answer = await page.Client.SendAsync(request);
        Assert.InRange((int)answer.StatusCode, 400, 499);
        Assert.DoesNotContain("root:", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task No_part_of_the_page_comes_from_elsewhere()
    {
        using HttpResponseMessage answer = await page.Client.GetAsync("/");
        Assert.StartsWith("default-src 'none'; script-src 'self'; style-src 'self';", answer.Headers.GetValues("Content-Security-Policy").Single(), StringComparison.Ordinal);
        string html = await answer.Content.ReadAsStringAsync();
        Assert.DoesNotContain("//", html.Replace("<!--", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.DoesNotContain("{{", html, StringComparison.Ordinal);
        using HttpResponseMessage library = await page.Client.GetAsync("/page/charts-library.js");
        Assert.Equal(HttpStatusCode.OK, library.StatusCode);
        using HttpResponseMessage other = await page.Client.GetAsync("/page/..%2Fappsettings.json");
        Assert.Equal(HttpStatusCode.NotFound, other.StatusCode);
    }

    private static async Task<string[]> Problems(HttpClient client, object setup)
    {
        using HttpResponseMessage answer = await client.PostAsJsonAsync("/api/corner", new { setup });
        JsonElement json = await answer.Content.ReadFromJsonAsync<JsonElement>();
        return [.. json.GetProperty("problems").EnumerateArray().Select(p => p.GetProperty("path").GetString()!)];
    }
}
