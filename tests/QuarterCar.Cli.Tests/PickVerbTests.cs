using System.Globalization;
using System.Text.Json;

using QuarterCar.TestKit.Programs;

namespace QuarterCar.Cli.Tests;

/// <summary>`pick`: keys, words, bad input, and that what it picks stands where `check` says.</summary>
public sealed class PickVerbTests : IDisposable
{
    private const string Keys =
        "tender_rate_N_m,upper_rate_N_m,lower_rate_N_m,upper_free_length_m,upper_solid_length_m,lower_free_length_m,lower_solid_length_m,tender_free_length_m,tender_solid_length_m,"
        + "primary_rate_N_m,secondary_rate_N_m,rate_step,settle_m,preload_m,ride_height_lowest_m,ride_height_highest_m,bind_clearance_full_bump_m,warnings";

    private static readonly string[] s_asked = ["pick", "--load", "3500 N", "--stroke", "300 mm", "--ride-height", "130 mm"];
    private readonly Scratch _scratch = new();
    private readonly string _list;

    public PickVerbTests() => _list = _scratch.Write("list.csv", "rate_N_mm,free_length_mm,solid_length_mm\n20,400,120\n30,400,120\n45,400,120\n");

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public void Json_has_the_contracts_keys_and_nothing_else()
    {
        var pick = Asked.Of([.. s_asked, "--springs", _list, "--json"]).Json();
        Assert.Equal("required_primary_rate_N_m,sets", Names(pick));
        Assert.Equal(6, pick.GetProperty("sets").GetArrayLength());
        Assert.All(pick.GetProperty("sets").EnumerateArray(), s => Assert.Equal(Keys, Names(s)));
        Assert.Equal(3500 / 0.195, pick.GetProperty("required_primary_rate_N_m").GetDouble(), 1e-9); // 170 mm of travel, 25 mm of preload
    }

    [Fact]
    public void Values_whose_unit_the_shell_splits_off_are_read_as_one()
    {
        Asked quoted = Asked.Of([.. s_asked, "--springs", _list]), bare = Asked.Of([.. s_asked.SelectMany(a => a.Split(' ')), "--springs", _list]);
        Assert.Equal((ExitCode.Done, quoted.Out), (bare.Code, bare.Out));
        Asked joined = Asked.Of("pick", "--load=3500", "N", "--stroke=300", "mm", "--ride-height=130", "mm", "--springs", _list);
        Assert.Equal((ExitCode.Done, quoted.Out), (joined.Code, joined.Out));

        // Behind a count it is a file, however it is named.
        Assert.Contains("several scenarios", Asked.Of("compare", Scenarios.QuarryLedge, "--vary", "speed=5,6 mph", "--jobs", "2", "m").Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void The_first_set_put_into_a_scenario_stands_at_the_wanted_ride_height_and_binds_as_check_says()
    {
        var set = Asked.Of([.. s_asked, "--springs", _list, "--gap", "20 mm", "--gas-pressure", "8 bar", "--gas-volume", "400 cm^3", "--rod-diameter", "20 mm", "--json"])
            .Json().GetProperty("sets")[0];
        string Number(string key) => set.GetProperty(key).GetDouble().ToString("R", CultureInfo.InvariantCulture);
        string Spring(string name) => $"{{ rate: {Number(name + "_rate_N_m")} N/m, free_length: {Number(name + "_free_length_m")} m, solid_length: {Number(name + "_solid_length_m")} m }}";
        string file = _scratch.Write("picked.yaml", $$"""
            title: picked
            corner: { sprung_weight: 3500 N, unsprung_weight: 600 N }
            tyre: { rate: 200 N/mm }
            coilover:
              stroke: 300 mm
              springs:
                upper: {{Spring("upper")}}
                lower: {{Spring("lower")}}
              preload: {{Number("preload_m")}} m
              stop_nut: { gap: 20 mm, at: ride_height }
              gas: { pressure: 8 bar, rod_diameter: 20 mm, volume: 400 cm^3 }
            drop: { height: 0.3 m }
            """);
        var standing = Asked.Of("check", file, "--json").Json().GetProperty("static");
        Assert.Equal(0.130, standing.GetProperty("ride_height_m").GetDouble(), 1e-9); // the balance is found to rounding
        Assert.Equal(set.GetProperty("bind_clearance_full_bump_m").GetDouble(), standing.GetProperty("bind_clearance_full_bump_m").GetDouble(), 1e-9);
        Assert.Equal(set.GetProperty("primary_rate_N_m").GetDouble(), standing.GetProperty("primary_rate_N_m").GetDouble(), 1e-6);
    }

    // 30 over 45 N/mm is 18 N/mm, 194.4 mm under the load: 24.4 mm of preload at 170 mm of droop, 44.4 at 150. Two springs of 400 mm and 30 mm of slider need 40 on 790 mm.
    [Fact]
    public void Too_little_preload_to_assemble_is_mended_as_its_remark_says()
    {
        Assert.EndsWith("take shorter or softer springs, or a higher ride height.", Remark("130 mm", 45), StringComparison.Ordinal);
        Assert.NotNull(Remark("110 mm", 45));
        Assert.Null(Remark("150 mm", 45));
        Assert.Null(Remark("130 mm", 30)); // 30 over 30: 233 mm under the load, 63 mm of preload

        string? Remark(string height, double lower)
        {
            string[] asked = ["pick", "--load", "3500 N", "--stroke", "300 mm", "--ride-height", height, "--springs", _list, "--seat-length", "790 mm", "--slider", "30 mm", "--json"];
            JsonElement set = Asked.Of(asked).Json().GetProperty("sets").EnumerateArray()
                .Single(s => s.GetProperty("upper_rate_N_m").GetDouble() == 30_000 && s.GetProperty("lower_rate_N_m").GetDouble() == lower * 1000);
            return set.GetProperty("warnings").EnumerateArray().Where(w => w.GetProperty("code").GetString() == "below_least_preload").Select(w => w.GetProperty("message").GetString()).SingleOrDefault();
        }
    }

    [Fact]
    public void What_was_not_given_is_said_to_be_not_checked()
    {
        Asked asked = Asked.Of([.. s_asked, "--springs", _list]);
        Assert.Equal(ExitCode.Done, asked.Code);
        Assert.Contains("not checked", asked.Out, StringComparison.Ordinal);
        Assert.Contains("--seat-length", asked.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void The_shipped_list_says_that_it_is_invented_and_a_users_list_does_not()
    {
        Assert.Contains("Do not buy from it", Asked.Of(s_asked).Out, StringComparison.Ordinal);
        Assert.DoesNotContain("invented", Asked.Of([.. s_asked, "--springs", _list]).Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Uncertainty_comes_first_then_bind_and_fit_then_rates()
    {
        string text = Asked.Of([.. s_asked, "--tenders", "invented"]).Out;
        int[] at = [.. new[] { "How sure", "Bind and fit", "Rates and preload", "Around the first set", "Ranked:" }.Select(h => text.IndexOf(h, StringComparison.Ordinal))];
        Assert.DoesNotContain(-1, at);
        Assert.Equal(at.Order(), at);
        Assert.All(text.Split('\n'), line => Assert.True(line.Length <= 80, line));
    }

    // 20/45 N/mm under 3500 N: 252.8 mm, 82.8 of them preload; at full bump the lower is in by 382.8·20/65 = 117.8 mm, where 400 mm of spring on 50 mm of coil bow from 79.3 on.
    [Fact]
    public void A_set_that_bows_passes_with_a_but()
    {
        string list = _scratch.Write("slim.csv", "rate_N_mm,free_length_mm,solid_length_mm,mean_diameter_mm\n20,400,120,100\n45,400,120,50\n");
        string page = Asked.Of([.. s_asked, "--springs", list]).Out, text = Words(page);
        Assert.StartsWith("20.0/45.0 N/mm with 82.8 mm of preload stands at 130.0 mm, ", text, StringComparison.Ordinal);
        Assert.Contains("clear of coil bind at full bump, but its lower spring bows sideways. 2 of 3 sets pass every check that could be made, but 1 bows sideways.", text, StringComparison.Ordinal);
        Assert.Equal(("passes, but bows, fit not checked", "passes, fit not checked"), (Checks(page, "20.0/45.0"), Checks(page, "20.0/20.0")));
    }

    // A tender of 10 N/mm has 400 mm of travel, 350 of them used at 3500 N: at work. Over six pairs, all of which pass with it. No diameter says whether the lower bows.
    [Fact]
    public void A_tender_at_work_and_bowing_that_was_not_checked_are_said()
    {
        string tenders = _scratch.Write("tenders.csv", "rate_N_mm,free_length_mm,solid_length_mm\n10,500,100\n");
        string page = Asked.Of([.. s_asked, "--springs", _list, "--tenders", tenders]).Out, text = Words(page);
        Assert.Equal("passes, tender not solid, fit and bowing not checked", Checks(page, "10.0/45.0/45.0"));
        Assert.Equal("passes, fit and bowing not checked", Checks(page, "30.0/45.0"));
        Assert.Contains("that could be made, but 6 have a tender that still works at ride height.", text, StringComparison.Ordinal);
        Assert.Contains("bowing of the lower spring (the list's mean_diameter", text, StringComparison.Ordinal);
    }

    [Theory, InlineData("us"), InlineData("si")]
    public void The_rates_of_a_set_are_never_broken(string units)
    {
        string text = Asked.Of("pick", "--load", "740 lbf", "--stroke", "12 in", "--ride-height", "5 in", "--tenders", "invented", "--diameter", "2.0 in", "--units", units).Out;
        string[] lines = [.. text.Split("Bind and fit")[1].Split("Required primary")[0].Split('\n').Where(l => l.Length > 0 && char.IsAsciiDigit(l[0]))];
        Assert.Equal(24, lines.Length); // ten sets twice and four neighbours; every line that begins with figures begins with two or three whole rates
        Assert.All(lines, l => Assert.Contains(l.Trim().Split(' ')[0].Split('/').Length, new[] { 2, 3 }));
        Assert.All(text.Split('\n'), l => Assert.True(l.Length <= 80, l));
    }

    [Fact]
    public void Failed_checks_wrap_by_words_beside_a_whole_set()
    {
        string list = _scratch.Write("short.csv", "rate_N_mm,free_length_mm,solid_length_mm,inner_diameter_mm\n130.5,200,150,60\n145.5,200,150,60\n");
        string text = Asked.Of([.. s_asked, "--springs", list, "--tenders", list, "--seat-length", "300 mm", "--thread", "20 mm", "--slider", "20 mm", "--diameter", "63 mm"]).Out;
        Assert.Equal("negative preload, binds, too long for body, not over body", Checks(text, "130.5/130.5/145.5"));
        Assert.All(text.Split('\n'), l => Assert.True(l.Length <= 80, l));
    }

    [Theory]
    [InlineData("60", "60", "The upper spring (60.0 mm inside) and the lower spring (60.0 mm inside) do not go over the body of 63.0 mm")]
    [InlineData("60", "70", "The upper spring (60.0 mm inside) does not go over the body of 63.0 mm")]
    public void Springs_that_do_not_go_over_the_body_are_named(string inner30, string inner45, string said)
    {
        string list = _scratch.Write("narrow.csv", $"rate_N_mm,free_length_mm,solid_length_mm,inner_diameter_mm\n30,350,150,{inner30}\n45,350,150,{inner45}\n");
        var sets = Asked.Of([.. s_asked, "--springs", list, "--diameter", "63 mm", "--json"]).Json().GetProperty("sets");
        string[] messages = [.. sets.EnumerateArray().SelectMany(s => s.GetProperty("warnings").EnumerateArray()).Select(w => w.GetProperty("message").GetString()!.Replace('\u00a0', ' '))];
        Assert.Contains(messages, m => m.StartsWith(said, StringComparison.Ordinal));
    }

    [Fact]
    public void Where_no_set_passes_the_limit_in_the_way_and_the_nearest_set_are_named()
    {
        string list = _scratch.Write("short.csv", "rate_N_mm,free_length_mm,solid_length_mm\n30,200,150\n45,200,150\n");
        Asked asked = Asked.Of([.. s_asked, "--springs", list]);
        Assert.StartsWith("None of 3 sets passes: ", asked.Out, StringComparison.Ordinal);
        Assert.Contains("3 binds", asked.Out, StringComparison.Ordinal);
        Assert.Contains("lacks least", asked.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_mistake_on_the_command_line_is_said_at_once()
    {
        Asked asked = Asked.Of("pick", "--load", "760", "--stroke", "0 in", "--ride-height", "-1 in", "--gas-pressure", "100 psi", "--springs", _scratch.At("none.csv"));
        Assert.Equal(ExitCode.BadInput, asked.Code);
        Assert.Empty(asked.Out);
        foreach (string said in new[] { "--load: found '760'", "--stroke: found '0 in'", "--ride-height: found '-1 in'", "--gas-volume: found nothing", "--rod-diameter: found nothing", "no such file" })
            Assert.Contains(said, asked.Messages, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--ride-height", "300 mm", "below the stroke of 300 mm")]
    [InlineData("--load", "100 N", "no pair is possible")]
    [InlineData("--gas-volume", "50 cm^3", "wanted more than")]
    [InlineData("--gap", "-1 mm", "--gap")]
    public void Bad_input_says_what_is_wanted(string flag, string value, string said)
    {
        string[] args = [.. s_asked, "--gas-pressure", "10 bar", "--gas-volume", "400 cm^3", "--rod-diameter", "20 mm", "--gap", "10 mm"];
        args[Array.IndexOf(args, flag) + 1] = value;
        Asked asked = Asked.Of(args);
        Assert.Equal(ExitCode.BadInput, asked.Code);
        Assert.Contains(said, asked.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void A_list_with_more_sets_than_can_be_ranked_is_refused_with_the_number_that_can()
    {
        string list = _scratch.Write("long.csv", "rate_N_mm,free_length_mm,solid_length_mm\n" + string.Concat(Enumerable.Range(1, 2000).Select(i => FormattableString.Invariant($"{i},400,120\n"))));
        Asked asked = Asked.Of([.. s_asked, "--springs", list]);
        Assert.Equal(ExitCode.BadInput, asked.Code);
        Assert.Contains("2,001,000 sets; wanted at most 1,000,000 sets", asked.Messages, StringComparison.Ordinal);
    }

    private static string Words(string text) => string.Join(' ', text.Split([' ', '\u00a0', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries));

    // The last cell of a set's row, put together from the lines that it takes.
    private static string Checks(string text, string set)
    {
        string[] lines = text.Split("Bind and fit")[1].Split("Rates and preload")[0].Split('\n');
        int column = lines.Single(l => l.TrimEnd().EndsWith("checks", StringComparison.Ordinal)).IndexOf("checks", StringComparison.Ordinal);
        var row = lines.SkipWhile(l => !l.StartsWith(set + " ", StringComparison.Ordinal)).TakeWhile((l, i) => i == 0 || l.StartsWith(' '));
        return Words(string.Join('\n', row.Select(l => l[column..])));
    }

    private static string Names(JsonElement element) => string.Join(',', element.EnumerateObject().Select(p => p.Name));
}
