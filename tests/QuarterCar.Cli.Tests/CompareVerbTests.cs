using System.Globalization;
using System.Text.Json;

using QuarterCar.Model.Motion;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Studies;
using QuarterCar.Studies.Setups;
using QuarterCar.TestKit.Programs;

namespace QuarterCar.Cli.Tests;

/// <summary>`compare` and `gather`: rows, holds, exit codes, and that neither threads, parts nor culture change a byte.</summary>
public sealed class CompareVerbTests : IDisposable
{
    private const double LbfIn = 4.4482216152605 / 0.0254; // N/m

    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public void A_row_has_the_figures_of_a_run_with_the_same_values()
    {
        string file = Plain();
        JsonElement setup = Asked.Of("compare", file, "--vary", "coilover.springs.upper.rate=25,35 N/mm", "--json").Json().GetProperty("setups")[1];
        JsonElement run = Asked.Of("run", file, "--set", "coilover.springs.upper.rate=35 N/mm", "--json").Json();
        foreach (string name in FigureTable.Names)
        {
            string[] keys = name.Split('.');
            Assert.Equal(run.GetProperty(keys[0]).GetProperty(keys[1]).GetRawText(), setup.GetProperty("figures").GetProperty(name).GetRawText());
        }
    }

    // A drop stands only where the row takes the course away.
    [Fact]
    public void A_list_may_hold_a_course_in_one_row_and_a_drop_in_the_next()
    {
        const string ground = "[{ flat: 10 ft }, { step: -18 in }, { flat: 60 ft }]";
        string list = _scratch.At("list.csv");
        File.WriteAllText(list, $$"""
            title,terrain,speed,drop
            over the ledge,"{{ground}}",5 mph,none
            dropped,none,none,{ height: 3 ft }

            """);
        string[] peaks = [.. Asked.Of("compare", Scenarios.QuarryLedge, "--setups", list, "--json").Json().GetProperty("setups").EnumerateArray().Select(s => s.GetProperty("figures").GetProperty("acceleration.peak_g").GetRawText())];
        Assert.Equal([Peak("terrain=" + ground, "speed=5 mph"), Peak("terrain=none", "speed=none", "drop={ height: 3 ft }")], peaks);

        static string Peak(params string[] sets) => Asked.Of(["run", Scenarios.QuarryLedge, "--json", .. sets.SelectMany(s => new[] { "--set", s })]).Json().GetProperty("acceleration").GetProperty("peak_g").GetRawText();
    }

    [Fact]
    public void The_last_vary_runs_fastest_and_one_unit_serves_all_values()
    {
        JsonElement json = Asked.Of("compare", Plain(), "--vary", "coilover.stop_nut.gap=10,20 mm", "--vary", "coilover.preload=1,2,3 cm", "--json").Json();
        double[][] values = [.. json.GetProperty("setups").EnumerateArray().Select(s => s.GetProperty("values").EnumerateObject().Select(v => v.Value.GetDouble()).ToArray())];
        Assert.Equal([[0.01, 0.01], [0.01, 0.02], [0.01, 0.03], [0.02, 0.01], [0.02, 0.02], [0.02, 0.03]], values.Select(v => v.Select(x => Math.Round(x, 12)).ToArray()));
    }

    [Fact]
    public void A_split_sets_both_rates_even_where_the_shell_split_its_unit_off()
    {
        JsonElement setup = Asked.Of("compare", Scenarios.QuarryLedge, "--split", "140/250,180/200", "lbf/in", "--json").Json().GetProperty("setups")[1];
        double primary = setup.GetProperty("figures").GetProperty("static.primary_rate_N_m").GetDouble();
        Assert.Equal(180.0 * 200 / (180 + 200) * LbfIn, primary, 180 * LbfIn * 1e-9); // springs in series; the unit's size has 15 digits
        Assert.Equal("reset", setup.GetProperty("stop_nut").GetString());
    }

    [Fact]
    public void With_a_list_a_split_takes_the_lengths_nearest_to_the_scenarios_and_a_rate_that_it_lacks_is_bad_input()
    {
        // The ledge's upper spring is 12 in long, its lower 14 in: the middle one of three, then the only one.
        string list = _scratch.Write("list.csv", "rate_lbf_in,free_length_in,solid_length_in\n150,10,4\n150,12.5,5\n150,16,6\n250,16,7\n");
        JsonElement values = Asked.Of("compare", Scenarios.QuarryLedge, "--split", "150/250 lbf/in", "--springs", list, "--json").Json().GetProperty("setups")[0].GetProperty("values");
        Assert.Equal(12.5 * 0.0254, values.GetProperty("coilover.springs.upper.free_length").GetDouble(), 1e-12);
        Assert.Equal(5 * 0.0254, values.GetProperty("coilover.springs.upper.solid_length").GetDouble(), 1e-12);
        Assert.Equal(16 * 0.0254, values.GetProperty("coilover.springs.lower.free_length").GetDouble(), 1e-12);
        Asked lacking = Asked.Of("compare", Scenarios.QuarryLedge, "--split", "150/250,160/240 lbf/in", "--springs", list);
        Assert.Equal(ExitCode.BadInput, lacking.Code);
        Assert.Contains("160 lbf/in, a rate that", lacking.Messages, StringComparison.Ordinal);
        Assert.Contains("240 lbf/in, a rate that", lacking.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void A_list_of_springs_beside_several_scenarios_is_not_left_out_in_silence()
    {
        Asked asked = Asked.Of("compare", Scenarios.QuarryLedge, Scenarios.QuarryLedge, "--springs", "list.csv");
        Assert.Equal(ExitCode.BadInput, asked.Code);
        Assert.Contains("several scenarios together with", asked.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void Held_ride_height_is_the_scenarios_to_a_nanometre_and_the_preload_is_load_over_rate_less_travel()
    {
        double held = Figure(Asked.Of("check", Scenarios.QuarryLedge, "--json").Json(), "static", "ride_height_m");
        JsonElement json = Asked.Of("compare", Scenarios.QuarryLedge, "--split", "140/250,160/225,180/200 lbf/in", "--hold", "ride_height", "--json").Json();
        foreach (JsonElement setup in json.GetProperty("setups").EnumerateArray())
        {
            JsonElement f = setup.GetProperty("figures");
            Assert.Equal(held, f.GetProperty("static.ride_height_m").GetDouble(), 1e-9); // m
            double load = f.GetProperty("static.spring_force_N").GetDouble(), rate = f.GetProperty("static.primary_rate_N_m").GetDouble();
            Assert.Equal((load / rate) - f.GetProperty("static.shaft_travel_m").GetDouble(), f.GetProperty("static.preload_m").GetDouble(), 1e-9); // a free slider: series springs
        }
    }

    [Fact]
    public void Splits_of_one_primary_rate_need_the_same_preload()
    {
        // 150/300 and 200/200 lbf/in are both 100 lbf/in in series.
        JsonElement json = Asked.Of("compare", Scenarios.QuarryLedge, "--split", "150/300,200/200 lbf/in", "--hold", "ride_height", "--json").Json();
        double[] preloads = [.. json.GetProperty("setups").EnumerateArray().Select(s => s.GetProperty("figures").GetProperty("static.preload_m").GetDouble())];
        Assert.Equal(preloads[0], preloads[1], 2e-9); // m: each ride height holds to 1e-9
    }

    [Fact]
    public void A_held_crossover_stays_at_the_scenarios_shaft_showing()
    {
        JsonElement check = Asked.Of("check", Scenarios.QuarryLedge, "--json").Json();
        JsonElement json = Asked.Of("compare", Scenarios.QuarryLedge, "--split", "150/250,170/200 lbf/in", "--hold", "ride_height,crossover", "--json").Json();
        foreach (JsonElement setup in json.GetProperty("setups").EnumerateArray())
        {
            Assert.Equal(Figure(check, "static", "ride_height_m"), setup.GetProperty("figures").GetProperty("static.ride_height_m").GetDouble(), 1e-9);
            Assert.Equal(Figure(check, "static", "crossover_shaft_showing_m"), setup.GetProperty("figures").GetProperty("static.crossover_shaft_showing_m").GetDouble(), 1e-8); // two solves of 1e-9 each
        }
    }

    [Fact]
    public void A_setup_that_cannot_be_keeps_its_row_with_the_reason_and_the_exit_code_is_1()
    {
        Asked asked = Asked.Of("compare", Plain(), "--vary", "coilover.springs.upper.solid_length=100,400 mm", "--json");
        JsonElement row = asked.Json().GetProperty("setups")[1];
        Assert.Equal(ExitCode.Broken, asked.Code);
        Assert.Equal(JsonValueKind.Null, row.GetProperty("figures").ValueKind);
        Assert.Contains("solid_length", row.GetProperty("note").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_crossover_cannot_be_held_where_there_is_no_stop_nut()
    {
        Asked asked = Asked.Of("compare", Plain(), "--vary", "coilover.stop_nut=none,{gap: 25 mm, at: ride_height}", "--hold", "ride_height,crossover", "--json");
        JsonElement row = asked.Json().GetProperty("setups")[0];
        Assert.Equal(ExitCode.Broken, asked.Code);
        Assert.Equal(JsonValueKind.Null, row.GetProperty("figures").ValueKind);
        Assert.Contains("no stop nut to hold a crossover with", row.GetProperty("note").GetString(), StringComparison.Ordinal);
    }

    // The ledge's upper spring is in by 755.2 lbf / 160 = 4.72 in at ride height and by 1.25 in more at its crossover: one of 12 - 6.4 = 5.6 in is solid before.
    [Fact]
    public void A_crossover_cannot_be_held_where_the_upper_spring_goes_solid_before_it()
    {
        Asked asked = Asked.Of("compare", Scenarios.QuarryLedge, "--vary", "coilover.springs.upper.solid_length=4.6,6.4 in", "--hold", "ride_height,crossover", "--json");
        JsonElement rows = asked.Json().GetProperty("setups");
        Assert.Equal(ExitCode.Broken, asked.Code);
        Assert.NotEqual(JsonValueKind.Null, rows[0].GetProperty("figures").ValueKind);
        Assert.Equal(JsonValueKind.Null, rows[1].GetProperty("figures").ValueKind);
        Assert.Contains("upper springs that go solid before this crossover", rows[1].GetProperty("note").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_setup_behind_the_fortieth_that_cannot_be_run_is_named_on_screen_and_page()
    {
        string list = _scratch.Write("many.csv", "title,coilover.springs.upper.solid_length\n" + string.Concat(Enumerable.Range(1, 43).Select(i => $"s{i},{(i == 42 ? 400 : 100)} mm\n")));
        Asked asked = Asked.Of("compare", Plain(), "--setups", list, "--set", "run.duration=0.1 s", "--out", _scratch.At("out"));
        Assert.Equal(ExitCode.Broken, asked.Code);
        Assert.Contains("1 of 43 setups could not be run: 42.", asked.Out.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.Contains("42 could not be run: coilover.springs.upper.solid_length", asked.Out.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.Contains("42, s42, could not be run: coilover.springs.upper.solid_length", File.ReadAllText(_scratch.At("out/report.html")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("title=a,b", "found a title that varies; wanted the column 'title' of a --setups file")]
    [InlineData("limits.travel_use=1,2", "found limits that vary; wanted the same limits for every setup")]
    public void Titles_and_limits_are_not_what_setups_differ_in(string vary, string words)
    {
        Asked asked = Asked.Of("compare", Plain(), "--vary", vary);
        Assert.Equal(ExitCode.BadInput, asked.Code);
        Assert.Contains(words, asked.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void One_path_in_two_spellings_is_varied_twice()
    {
        Asked asked = Asked.Of("compare", Scenarios.QuarryLedge, "--vary", "terrain[01].step=-10,-12 in", "--vary", "terrain[1].step=-8,-9 in");
        Assert.Equal(ExitCode.BadInput, asked.Code);
        Assert.Contains("a path that is varied twice", asked.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void One_thread_and_three_give_the_same_bytes()
    {
        string[] asked = ["compare", Plain(), "--vary", "coilover.preload=1,2,3,4,5 cm", "--json", "--jobs"];
        Assert.Equal(Asked.Of([.. asked, "1"]).Out, Asked.Of([.. asked, "3"]).Out);
    }

    [Fact]
    public void One_setup_of_a_study_run_alone_gives_the_same_bits()
    {
        var problems = new ProblemList();
        ScenarioDocument document = ScenarioDocument.Load(Plain(), problems)!;
        ReadOptions options = ReadOptions.Plain with { Base = StandingBase.Instance };
        var study = new StudyBase(document, options, ScenarioReader.Read(document, options).Scenario!);
        SetupPlan plan = SetupAxis.Product([VaryText.Read("coilover.preload=1,2,3 cm", new ValueCheck(document, options, problems))!]);
        var rows = new List<StudyRow>();
        StudyEngine.Run(study, plan, new StudyOptions(2), rows.Add, null, default);
        StudyRow alone = StudyEngine.One(study, plan, 1, new MotionRun(), false, default);
        Assert.Equal(Named(rows[1]), Named(alone));

        static string[] Named(StudyRow row) => [.. FigureTable.Names.Select((n, i) => string.Create(CultureInfo.InvariantCulture, $"{n} {row.Figures!.Value[i]:R}"))];
    }

    [Fact]
    public void Every_wrong_value_and_path_is_named_at_once()
    {
        Asked asked = Asked.Of(
            "compare", Plain(), "--vary", "coilover.stop_nut.gapp=1,2 mm", "--vary", "coilover.preload=1 mm,2 lbf", "--split", "150 lbf/in", "--hold", "height", "--jobs", "0", "--part", "3/2");
        Assert.Equal((ExitCode.BadInput, ""), (asked.Code, asked.Out));
        foreach (string part in (string[])["'coilover.stop_nut.gap'", "'2 lbf'", "--split 150 lbf/in", "--hold: found 'height'", "--jobs: found '0'", "--part: found '3/2'"])
            Assert.Contains(part, asked.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void A_grid_beyond_ten_million_says_how_large_it_is()
    {
        string many = string.Join(',', Enumerable.Range(1, 220)) + " mm";
        Asked asked = Asked.Of("compare", Plain(), "--vary", "coilover.stop_nut.gap=" + many, "--vary", "coilover.preload=" + many, "--vary", "coilover.springs.lower.free_length=" + many);
        Assert.Equal(ExitCode.BadInput, asked.Code);
        Assert.Contains("10,648,000", asked.Messages, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "an empty file")]
    [InlineData("title,coilover.preload\n", "0 rows")]
    [InlineData("title,limits.travel_use\na,1\n", "setups.csv:1: limits.travel_use: found limits that vary")]
    [InlineData("coilover.damper.rebound[0],coilover.damper.rebound[00]\n1,1\n", "setups.csv:1: coilover.damper.rebound[00]: found a second column of this name")]
    [InlineData("title,coilover.preload\na,1 cm\nb\n", "setups.csv:3: coilover.preload: found 1 cell; wanted 2")]
    [InlineData("title,coilover.preload\na,\n", "setups.csv:2: coilover.preload: found nothing")]
    [InlineData("title,coilover.preloat\na,1 cm\n", "'coilover.preload'")]
    [InlineData("coilover.preload\n1 N\n", "setups.csv:2: coilover.preload: found '1 N'")]
    public void A_bad_list_of_setups_is_answered_with_row_and_column(string text, string words)
    {
        string list = _scratch.Write("setups.csv", text);
        Asked asked = Asked.Of("compare", Plain(), "--setups", list);
        Assert.Equal(ExitCode.BadInput, asked.Code);
        Assert.Contains(words, asked.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void A_title_that_a_spreadsheet_would_run_is_defused_and_numbers_stay_numbers()
    {
        string list = _scratch.Write("setups.csv", "title,coilover.preload\n=1+1,2 cm\nplain,-1 mm\n");
        Asked.Of("compare", Plain(), "--setups", list, "--out", _scratch.At("out"));
        string[] lines = File.ReadAllLines(_scratch.At("out/compare.csv"));
        Assert.StartsWith("title,coilover.preload_m,stop_nut,note,static.ride_height_m,", lines[0], StringComparison.Ordinal);
        Assert.StartsWith("'=1+1,0.02,", lines[1], StringComparison.Ordinal);
        Assert.StartsWith("plain,-0.001,", lines[2], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--vary", "terrain[0].profile.file=2024-05-01.csv,1e3.csv")]
    [InlineData("--setups", "days.csv")]
    public void A_varied_file_whose_name_begins_with_a_digit_is_no_number(string option, string value)
    {
        foreach (string name in (string[])["2024-05-01.csv", "1e3.csv"]) _scratch.Write(name, "distance_m,height_m\n0,0\n2,0\n3,0.1\n4,0\n");
        _scratch.Write("days.csv", "terrain[0].profile.file\n2024-05-01.csv\n1e3.csv\n");
        string scenario = _scratch.Write("days.yaml", Scenarios.Plain(limit: 2).Replace("drop: { height: 0.3 m }", "terrain:\n  - profile: { file: 1e3.csv }\nspeed: 2 m/s", StringComparison.Ordinal));
        Asked asked = Asked.Of("compare", scenario, option, option == "--setups" ? _scratch.At(value) : value, "--out", _scratch.At("out"), "--json");
        Assert.True(asked.Code == ExitCode.Done, asked.Messages);
        Assert.Equal(["2024-05-01.csv", "1e3.csv"], asked.Json().GetProperty("setups").EnumerateArray().Select(s => s.GetProperty("values").GetProperty("terrain[0].profile.file").GetString()));
        Assert.Contains(",2024-05-01.csv,", File.ReadAllLines(_scratch.At("out/compare.csv"))[1], StringComparison.Ordinal);
    }

    [Fact]
    public void Two_scenarios_are_two_rows_with_their_own_titles()
    {
        string other = _scratch.Write("other.yaml", Scenarios.Plain(limit: 2, height: 0.5).Replace("Plain corner", "Other corner", StringComparison.Ordinal));
        JsonElement json = Asked.Of("compare", Plain(), other, "--json").Json();
        Assert.Equal(["Plain corner", "Other corner"], json.GetProperty("setups").EnumerateArray().Select(s => s.GetProperty("title").GetString()));
        JsonElement run = Asked.Of("run", other, "--json").Json();
        Assert.Equal(Figure(run, "travel", "max_shaft_travel_m"), json.GetProperty("setups")[1].GetProperty("figures").GetProperty("travel.max_shaft_travel_m").GetDouble());
    }

    [Fact]
    public void Table_and_json_are_the_same_text_in_every_culture()
    {
        string file = Plain();
        string[] texts = [.. ((string[])["en-US", "de-DE", "tr-TR"]).Select(culture =>
        {
            CultureInfo before = CultureInfo.CurrentCulture;
            try
            {
                CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
                Asked asked = Asked.Of("compare", file, "--vary", "coilover.preload=1.5,2.5 cm", "--out", _scratch.At(culture));
                return asked.Out + File.ReadAllText(_scratch.At(culture + "/compare.csv")) + File.ReadAllText(_scratch.At(culture + "/compare.json"));
            }
            finally
            {
                CultureInfo.CurrentCulture = before;
            }
        })];
        Assert.Equal(texts[0], texts[1]);
        Assert.Equal(texts[0], texts[2]);
    }

    private static double Figure(JsonElement json, string block, string key) => json.GetProperty(block).GetProperty(key).GetDouble();

    private string Plain() => _scratch.Write("plain.yaml", Scenarios.Plain(limit: 2));
}
