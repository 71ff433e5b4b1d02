using System.Text.Json;

using QuarterCar.TestKit.Programs;

namespace QuarterCar.Cli.Tests;

/// <summary>`sweep`, `reach` and `tweak` from the outside: files, JSON keys, exit codes, mistakes.</summary>
public sealed class SweepVerbsTests : IDisposable
{
    private readonly Scratch _scratch = new();

    private string Plain(double limit = 2) => _scratch.Write("plain.yaml", Scenarios.Plain(limit));

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public void A_sweep_writes_table_json_report_and_picture_and_no_other()
    {
        Asked asked = Asked.Of("sweep", Plain(), "--vary", "coilover.preload=0:40:5 mm", "--out", _scratch.At("out"), "--json");
        Assert.Equal(ExitCode.Done, asked.Code);
        Assert.Equal(["report.html", "sweep.csv", "sweep.json", "sweep.png", "sweep.svg"], Directory.EnumerateFiles(_scratch.At("out")).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal));
        Assert.Equal(File.ReadAllText(_scratch.At("out/sweep.json")), asked.Out);
        string[] lines = File.ReadAllLines(_scratch.At("out/sweep.csv"));
        Assert.Equal(6, lines.Length);
        Assert.StartsWith("title,coilover.preload_m,stop_nut,note,static.ride_height_m", lines[0], StringComparison.Ordinal);
        Assert.Contains(",0.04,", lines[5], StringComparison.Ordinal);
    }

    // The second setup is vermilion and dashed; the limit's line must not be. Seven splits have one line more than can be told apart.
    [Theory]
    [InlineData("30/40,40/30 N/mm", true)]
    [InlineData("30/40,31/40,32/40,33/40,34/40,35/40,36/40 N/mm", false)]
    public void A_limit_looks_like_no_setup_and_lines_left_out_are_said(string splits, bool all)
    {
        Asked.Of("sweep", Plain(), "--split", splits, "--vary", "coilover.preload=0:40:2 mm", "--out", _scratch.At("out"));
        string svg = File.ReadAllText(_scratch.At("out/sweep.svg"));
        string text = string.Join(' ', System.Text.RegularExpressions.Regex.Matches(svg, ">([^<]+)</text>").Select(m => m.Groups[1].Value.Trim()));
        Assert.Contains("limit 200", text, StringComparison.Ordinal);
        Assert.Equal(2, System.Text.RegularExpressions.Regex.Count(svg, "#D55E00", System.Text.RegularExpressions.RegexOptions.IgnoreCase));
        Assert.Equal(!all, text.Contains("Drawn are the first 6 of 7 lines; sweep.csv has every point.", StringComparison.Ordinal));
    }

    [Fact]
    public void The_best_of_a_sweep_is_the_best_row_of_its_table()
    {
        JsonElement json = Asked.Of("sweep", Plain(), "--vary", "coilover.preload=0:40:5 mm", "--goal", "rms_g:most", "--json").Json();
        Assert.Equal("acceleration.rms_g:most", json.GetProperty("goal").GetString());
        JsonElement[] rows = [.. json.GetProperty("setups").EnumerateArray()];
        static double Goal(JsonElement row) => row.GetProperty("figures").GetProperty("acceleration.rms_g").GetDouble();
        JsonElement holding = rows.Where(r => r.GetProperty("figures").GetProperty("counts.bottom_out").GetDouble() == 0 && r.GetProperty("figures").GetProperty("counts.coil_bind").GetDouble() == 0).MaxBy(Goal);
        JsonElement best = json.GetProperty("best");
        Assert.Equal(Goal(holding), Goal(best));
        Assert.Equal(holding.GetProperty("values").GetRawText(), best.GetProperty("values").GetRawText());
        Assert.Equal("travel.travel_use", best.GetProperty("nearest_limit").GetProperty("figure").GetString());
        Assert.Equal(2, best.GetProperty("nearest_limit").GetProperty("limit").GetDouble());
    }

    [Fact]
    public void A_sweep_without_a_point_inside_the_limits_has_no_best_and_is_an_answer()
    {
        Asked asked = Asked.Of("sweep", Plain(0.01), "--vary", "coilover.preload=0:40:3 mm", "--json");
        Assert.Equal(ExitCode.Done, asked.Code);
        Assert.Equal(JsonValueKind.Null, asked.Json().GetProperty("best").ValueKind);
    }

    [Fact]
    public void A_list_and_a_range_make_one_grid_the_last_fastest()
    {
        JsonElement json = Asked.Of("sweep", Plain(), "--vary", "drop.height=0.1,0.2 m", "--vary", "coilover.preload=0:40:3 mm", "--json").Json();
        var values = json.GetProperty("setups").EnumerateArray().Select(r => (r.GetProperty("values").GetProperty("drop.height").GetDouble(), r.GetProperty("values").GetProperty("coilover.preload").GetDouble()));
        Assert.Equal([(0.1, 0), (0.1, 0.02), (0.1, 0.04), (0.2, 0), (0.2, 0.02), (0.2, 0.04)], values);
    }

    [Fact]
    public void A_point_that_cannot_be_run_keeps_its_row_and_is_exit_code_1()
    {
        Asked asked = Asked.Of("sweep", Plain(), "--vary", "coilover.springs.lower.solid_length=130:360:3 mm", "--json");
        Assert.Equal(ExitCode.Broken, asked.Code);
        JsonElement last = asked.Json().GetProperty("setups")[2];
        Assert.Equal(JsonValueKind.Null, last.GetProperty("figures").ValueKind);
        Assert.Contains("solid_length", last.GetProperty("note").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Best_and_largest_stand_beside_the_caution()
    {
        foreach (string[] args in new[] { new[] { "sweep", Plain(), "--vary", "coilover.preload=0:40:2 mm" }, ["reach", Plain(), "--vary", "drop.height=0.1:0.5 m"] })
            Assert.Contains("no safe speed and no safe height", Asked.Of(args).Out.ReplaceLineEndings(" "), StringComparison.Ordinal);
    }

    [Fact]
    public void A_reach_gives_what_the_contract_names()
    {
        JsonElement json = Asked.Of("reach", Plain(0.85), "--vary", "drop.height=1:60 cm", "--json").Json();
        Assert.Equal("drop.height", json.GetProperty("path").GetString());
        double largest = json.GetProperty("largest").GetDouble(), resolution = json.GetProperty("resolution").GetDouble();
        Assert.True(resolution <= 0.59e-3);
        JsonElement first = json.GetProperty("first_broken");
        Assert.Equal(["figure", "limit", "value", "at"], first.EnumerateObject().Select(p => p.Name));
        Assert.Equal(largest + resolution, first.GetProperty("at").GetDouble(), 12);
        Assert.True(first.GetProperty("value").GetDouble() > first.GetProperty("limit").GetDouble());
        Assert.Equal(33, json.GetProperty("scan").GetArrayLength());
    }

    [Fact]
    public void A_reach_that_breaks_at_once_has_no_largest()
    {
        Asked asked = Asked.Of("reach", Plain(0.01), "--vary", "drop.height=10:60 cm", "--json");
        Assert.Equal(ExitCode.Done, asked.Code);
        Assert.Equal(JsonValueKind.Null, asked.Json().GetProperty("largest").ValueKind);
    }

    [Fact]
    public void A_reach_over_values_lists_its_setups()
    {
        Asked asked = Asked.Of("reach", Plain(0.85), "--vary", "drop.height=1:60 cm", "--vary", "coilover.preload=20,40 mm", "--out", _scratch.At("out"), "--json");
        JsonElement[] setups = [.. asked.Json().GetProperty("setups").EnumerateArray()];
        Assert.Equal(["preload 20 mm", "preload 40 mm"], setups.Select(s => s.GetProperty("title").GetString()));
        Assert.All(setups, s => Assert.Equal(33, s.GetProperty("scan").GetArrayLength()));
        Assert.Equal(["reach.json", "reach.png", "reach.svg", "report.html"], Directory.EnumerateFiles(_scratch.At("out")).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_tweak_gives_what_the_contract_names_best_first()
    {
        Asked asked = Asked.Of("tweak", Plain(), "--json");
        Assert.Equal(ExitCode.Done, asked.Code);
        JsonElement json = asked.Json();
        double written = json.GetProperty("base").GetDouble();
        JsonElement[] steps = [.. json.GetProperty("steps").EnumerateArray()];
        foreach (string key in new[] { "path", "from", "to", "goal", "change", "side_effects", "feasible", "event_changes" })
            Assert.All(steps, s => Assert.True(s.TryGetProperty(key, out _), key));
        double[] goals = [.. steps.Select(s => s.GetProperty("goal").GetDouble())];
        Assert.Equal(goals.Order(), goals);
        Assert.All(steps, s => Assert.Equal(s.GetProperty("goal").GetDouble() - written, s.GetProperty("change").GetDouble(), 12));
    }

    [Fact]
    public void The_caution_about_springs_stands_once_below_the_steps()
    {
        string text = Asked.Of("tweak", Plain()).Out.ReplaceLineEndings(" ");
        Assert.Equal(2, text.Split("Springs under compression").Length);
    }

    // Once an answer, where it leads to springs and nuts.
    [Theory]
    [InlineData(1, "sweep --vary coilover.preload=20:30:2~mm")]
    [InlineData(0, "sweep --vary drop.height=0.1:0.2:2~m")]
    [InlineData(1, "reach --vary coilover.preload=20:30~mm")]
    [InlineData(0, "reach --vary drop.height=0.1:0.2~m")]
    [InlineData(1, "reach --vary drop.height=0.1:0.2~m --vary coilover.preload=20,30~mm")]
    [InlineData(1, "compare --vary coilover.preload=20,30~mm")]
    [InlineData(0, "compare --vary drop.height=0.1,0.2~m")]
    [InlineData(1, "compare --vary corner.sprung_weight=3400,3600~N --hold ride_height")]
    [InlineData(1, "reach --vary corner.sprung_weight=3400:3600~N --hold ride_height")]
    [InlineData(1, "run")]
    public void The_caution_about_springs_stands_where_a_wrench_follows(int times, string command)
    {
        string[] words = [.. command.Split(' ').Select(w => w.Replace('~', ' '))];
        Asked asked = Asked.Of([words[0], Plain(), .. words[1..]]);
        Assert.Equal(ExitCode.Done, asked.Code);
        Assert.Equal(times + 1, asked.Out.ReplaceLineEndings(" ").Split("Springs under compression").Length);
    }

    // At full bump the springs carry 30·40/70·(300 + 30) = 5657 N where no nut holds the upper one: 6000 N stand on metal, 5650 only with the nut a turn up.
    [Theory]
    [InlineData("6000 N", true)]
    [InlineData("5650 N", false)]
    public void Metal_that_the_corner_stands_on_is_said_before_any_step_is_recommended(string weight, bool written)
    {
        const string caution = "This setup meets metal or binds its coils on this course: it is not one to drive as it stands.", rest = "As written the corner stands on metal at full bump. ";
        string[] sets = ["--set", "coilover.stop_nut=none", "--set", "coilover.bump_stop=none", "--set", "corner.sprung_weight=" + weight];
        string text = Asked.Of(["tweak", Plain(), .. sets, "--out", _scratch.At("out")]).Out.ReplaceLineEndings(" "), page = File.ReadAllText(_scratch.At("out/report.html"));
        Assert.Equal(written, text.StartsWith("Plain corner " + rest, StringComparison.Ordinal));
        Assert.Contains(caution, text, StringComparison.Ordinal); // at 5650 N the drop goes into it
        Assert.Contains($"<p class=\"alarm\"><strong>{caution}</strong></p>", page, StringComparison.Ordinal);
        Assert.Equal(written, page.Contains(rest, StringComparison.Ordinal));
        Assert.Equal(!written, text.Contains("* cannot be done as it stands: with it the corner stands on metal at full bump.", StringComparison.Ordinal));
    }

    // A turn of 2 mm is worth 17.1·2 = 34 N: 5680 N it lifts off metal, and so does a lower spring of 43.8 N/mm (17.8·330 = 5875 N); neither does it to 6000 N.
    [Theory]
    [InlineData("6000 N", "No single step that lifts it off betters peak acceleration,", "No step lifts the corner off.")]
    [InlineData("5680 N", "Next stiffer lower spring, 43.8 N/mm helps most:", "The corner is lifted off by next stiffer lower spring, 43.8 N/mm; coil nut one turn down, 2.0 mm (a usual pitch); next stiffer upper spring, 30.6 N/mm; by no other step.")]
    public void A_step_that_leaves_the_corner_on_metal_is_not_the_one_that_helps(string weight, string answer, string lifting)
    {
        string[] sets = ["--set", "coilover.stop_nut=none", "--set", "coilover.bump_stop=none", "--set", "corner.sprung_weight=" + weight];
        string text = Asked.Of(["tweak", Plain(), .. sets]).Out.ReplaceLineEndings(" ");
        Assert.Contains("As written the corner stands on metal at full bump. " + answer, text, StringComparison.Ordinal);
        Assert.Contains(lifting, text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("sweep", "--vary", "coilover.preload=0:40:1 mm", "a count of 1")]
    [InlineData("sweep", "--vary", "coilover.preload=0,40 mm", "found no range")]
    [InlineData("sweep", "--vary", "coilover.preload=0:40:3 lbf", "'0 lbf'")]
    [InlineData("sweep", "--vary", "coilover.preload=0:40:20000000 mm", "a grid of 20,000,000 points")]
    [InlineData("reach", "--vary", "drop.height=1:1 m", "two equal ends")]
    [InlineData("reach", "--vary", "coilover.stop_nut.at=1:2", "no single number")]
    [InlineData("reach", "--vary", "drop.height=0.1,0.2 m", "found no range")]
    [InlineData("tweak", "--goal", "wk_rms_m_s3:least", "'wk_rms_m_s2'")]
    [InlineData("tweak", "--goal", "peak_g", "FIGURE:least")]
    public void Bad_input_is_exit_code_2_with_what_was_found(string verb, string option, string value, string words)
    {
        Asked asked = Asked.Of(verb, Plain(), option, value);
        Assert.Equal(ExitCode.BadInput, asked.Code);
        Assert.Contains(words, asked.Messages, StringComparison.Ordinal);
        Assert.Empty(asked.Out);
    }

    [Fact]
    public void Mistakes_in_goal_and_range_are_told_at_once()
    {
        Asked asked = Asked.Of("sweep", Plain(), "--goal", "speedy:least", "--vary", "coilover.preload=0:40:1 mm");
        Assert.Contains("speedy", asked.Messages, StringComparison.Ordinal);
        Assert.Contains("a count of 1", asked.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void Tweak_takes_the_next_spring_of_a_list_with_its_lengths()
    {
        string list = _scratch.Write("springs.csv", "rate_N_mm,free_length_mm,solid_length_mm\n25,310,95\n36,320,110\n50,340,150\n");
        JsonElement json = Asked.Of("tweak", _scratch.Write("plain.yaml", Scenarios.Plain(limit: 2)), "--springs", list, "--json").Json();
        var upper = json.GetProperty("steps").EnumerateArray().Where(s => s.GetProperty("path").GetString() == "coilover.springs.upper.rate").OrderBy(s => s.GetProperty("to").GetDouble()).ToList();
        Assert.Equal([25e3, 36e3], upper.Select(s => Math.Round(s.GetProperty("to").GetDouble(), 6)));
        Assert.Equal([0.31, 0.32], upper.Select(s => s.GetProperty("spring").GetProperty("free_length_m").GetDouble()));
    }

    [Fact]
    public void Tweak_names_every_mistake_of_list_and_goal_at_once()
    {
        string list = _scratch.Write("springs.csv", "rate_N_mm,free_length_mm,solid_length_mm\n25,310,x\n");
        Asked asked = Asked.Of("tweak", _scratch.Write("plain.yaml", Scenarios.Plain(limit: 2)), "--springs", list, "--goal", "up_travel_usedd:least");
        Assert.Equal((ExitCode.BadInput, ""), (asked.Code, asked.Out));
        foreach (string part in (string[])["springs.csv:2", "up_travel_usedd"]) Assert.Contains(part, asked.Messages, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("sweep", "--vary", "coilover.preload=1:2:1048576 cm")]
    [InlineData("spread", "--samples", "1048576")]
    [InlineData("run", "--set", "run.sample=0.001 ms")]
    [InlineData("compare", "--set", "run.sample=0.001 ms", "--vary", "coilover.preload=1,2 cm", "--traces")]
    [InlineData("compare", "--vary", "run.sample=1,0.001 ms", "--traces")]
    [InlineData("compare", "--vary", "run.duration=2,2000 s", "--traces")]
    public void A_table_longer_than_a_sheet_is_refused_before_anything_runs(string verb, params string[] options)
    {
        string scenario = _scratch.Write("plain.yaml", Scenarios.Plain(limit: 2) + "\ntolerances: { coilover.preload: 5 mm }\n");
        Asked asked = Asked.Of([verb, scenario, .. options, "--also", "xlsx", "--out", _scratch.At("out")]);
        Assert.Equal(ExitCode.BadInput, asked.Code);
        Assert.Contains("wanted at most 1,048,575", asked.Messages, StringComparison.Ordinal);
        Assert.False(Directory.Exists(_scratch.At("out")));
    }
}
