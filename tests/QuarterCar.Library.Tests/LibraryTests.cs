using System.Text.Json;

using QuarterCar.Drafts;
using QuarterCar.TestKit;
using QuarterCar.TestKit.Programs;

using UnitsNet;

namespace QuarterCar.LibraryTests;

/// <summary>The library against numbers from outside: tests/data/reference (computed independently, its README) and closed forms.</summary>
public class LibraryTests
{
    private static readonly Tolerance s_rounding = new(1e-9, "closed forms: rounding of a few operations on thousands of newtons");
    private static readonly Tolerance s_reference = new(1e-6, "the reference runs are held to a micrometre at the default tolerance");

    private static Scenario Ledge => Scenario.Load(Checkout.At("scenarios/quarry-ledge.yaml"));

    [Fact]
    public void Ledge_stands_and_moves_as_computed_independently()
    {
        Standing standing = Ledge.Stand();
        s_reference.Holds(0.13523272747824483, standing.RideHeight.Meters);
        s_reference.Holds(0.08090494970046697, standing.CrossoverShaftShowing!.Value.Meters);
        new Tolerance(1e-6, "N/m of 4e4: the closed form of springs in series").Holds(39403.53793045718, standing.SecondaryRate!.Value.NewtonsPerMeter);
        Run run = Ledge.Run();
        Assert.True(run.Finished);
        Assert.Equal(Expected("max_shaft_travel_m"), run.Figures.Number("max_shaft_travel_m"), 1e-6);
    }

    [Fact]
    public void Draft_is_the_same_scenario_as_the_file()
    {
        Scenario draft = Scenario.Build(LedgeDraft.Make() with
        {
            Cases =
            [
                new("two up and fuel", new Dictionary<string, string> { ["corner.sprung_weight"] = "+120 lbf" }),
                new("hot", new Dictionary<string, string> { ["coilover.gas.temperature"] = "90 degC" }),
            ],
        });
        Assert.Equal(Ledge.Hash, draft.Hash);
        Assert.Equal(Ledge.Run().ToJson(), draft.Run().ToJson());
        Assert.Equal(["two up and fuel", "hot"], draft.Cases);
    }

    [Fact]
    public void Trace_has_the_columns_of_the_file_and_its_last_row_is_the_end()
    {
        Series trace = Ledge.Run().Trace;
        Assert.Equal(6001, trace.Count);
        Assert.Equal(6, trace["time_s"][^1]);
        Assert.Equal(["time_s", "distance_m", "ground_m"], trace.Columns.Take(3));
        Assert.Contains("secondary", trace.RateRegion);
        Assert.Throws<KeyNotFoundException>(() => trace["time_h"]);
    }

    [Fact]
    public void Every_mistake_comes_in_the_words_of_the_command_line()
    {
        string file = Checkout.At("scenarios/quarry-ledge.yaml");
        var mistake = Assert.Throws<ScenarioException>(() => Ledge.With("coilover.stop_nut.gap", "1.25"));
        var program = ProgramProcess.Run(Checkout.Root, "check", file, "--set", "coilover.stop_nut.gap=1.25");
        Assert.Equal(2, program.Code);
        Assert.Contains(Assert.Single(mistake.Mistakes).ToString(), program.Messages, StringComparison.Ordinal);

        var bad = Assert.Throws<ScenarioException>(() => Scenario.Parse("title: x\nspeed: 3\n"));
        Assert.Contains("scenario:2: speed: found '3'; wanted a speed with its unit: mph, ft/s, in/s, m/s, km/h", bad.Message, StringComparison.Ordinal);
        Assert.True(bad.Mistakes.Count > 3);
        Assert.Throws<ScenarioException>(() => Scenario.Load("nowhere.yaml"));
        Assert.Throws<ScenarioException>(() => Ledge.With("coilover.preload", Force.FromNewtons(3)));
        Assert.Throws<ScenarioException>(() => Ledge.WithCase("unheard of"));
        Assert.Throws<ScenarioException>(() => Scenario.Build(LedgeDraft.Make() with { Speed = null }));
        Assert.Throws<ScenarioException>(() => Study.Compare(Ledge, [new SetupDraft("far off").With("coilover.spring", "3 in")]));
        Assert.Throws<ScenarioException>(() => Study.Sweep(Ledge, ["coilover.preload=1:2:1 in"]));
        Assert.Throws<ScenarioException>(() => Study.Spread(Ledge));
    }

    [Fact]
    public void What_no_setup_has_for_itself_is_refused()
    {
        SetupDraft one = new("one");
        Assert.Contains("limits that vary", Refused(() => Study.Compare(Ledge, [one.With("limits.travel_use", "0.9")])), StringComparison.Ordinal);
        Assert.Contains("the path of the way itself", Refused(() => Study.Reach(Ledge, "terrain[1].step=-10:-20 in", [one.With("terrain[01].step", "-12 in")])), StringComparison.Ordinal);
    }

    // A drop alone stands beside the ledge's course, and without the course alone nothing moves the wheel: only together can they be.
    [Fact]
    public void Values_that_go_together_are_judged_together()
    {
        SetupDraft drop = new SetupDraft("drop").With("terrain", "none").With("speed", "none").With("drop", "{ height: 3 ft }");
        SetupDraft again = new SetupDraft("drop").With("drop", "{ height: 9 ft }").With("terrain", "none").With("speed", "none").With("drop", "{ height: 3 ft }");
        var program = ProgramProcess.Run(Checkout.Root, "run", "scenarios/quarry-ledge.yaml", "--set", "terrain=none", "--set", "speed=none", "--set", "drop={ height: 3 ft }", "--json");
        using var summary = JsonDocument.Parse(program.Out);
        double? wanted = summary.RootElement.GetProperty("acceleration").GetProperty("peak_g").GetDouble();
        Assert.Equal(wanted, Ledge.With(drop).Run().Figures["acceleration.peak_g"]);
        Assert.Equal([wanted, wanted], Study.Compare(Ledge, [drop, again]).Select(r => r.Figures!["acceleration.peak_g"]));
    }

    private static string Refused(Action study) => Assert.Throws<ScenarioException>(study).Message;

    [Theory]
    [InlineData("travel_usage", "travel_use")]
    [InlineData("up_travel", "travel.up_travel_used")]
    [InlineData("zzzzzzzz", "Names lists them")]
    public void Unknown_figure_names_the_nearest(string name, string told) =>
        Assert.Contains(told, Assert.Throws<KeyNotFoundException>(() => Ledge.Run().Figures[name]).Message, StringComparison.Ordinal);

    [Fact]
    public void Held_ride_height_is_the_base_s_own_whatever_the_split()
    {
        // Statics by hand: equal spring force at equal shaft travel, so k_series·(x + p) is the same for every split.
        IReadOnlyList<SetupRow> rows = Study.Compare(Ledge, [Split(140, 250), Split(160, 225), Split(180, 200)], Hold.RideHeight);
        double force = Ledge.Stand().SpringForce.Newtons, travel = 0.3048 - Ledge.Stand().RideHeight.Meters;
        foreach ((SetupRow row, double upper, double lower) in rows.Zip([140.0, 160, 180], [250.0, 225, 200]))
        {
            double series = upper * lower / (upper + lower) * 4.4482216152605 / 0.0254;
            new Tolerance(1e-9, "a root solve to rounding").Holds(force / series - travel, row.Figures!.Number("static.preload_m"), row.Title);
            new Tolerance(1e-9, "a root solve to rounding").Holds(Ledge.Stand().RideHeight.Meters, row.Figures.Number("static.ride_height_m"), row.Title);
        }
    }

    [Fact]
    public void A_row_of_a_study_is_the_run_alone_bit_for_bit()
    {
        SetupRow row = Assert.Single(Study.Compare(Ledge, [new SetupDraft("gap").With("coilover.stop_nut.gap", Length.FromInches(1.75))], keepRuns: true));
        Run alone = Ledge.With("coilover.stop_nut.gap", Length.FromInches(1.75)).Run();
        Assert.All(alone.Figures.Names, n => Assert.Equal(alone.Figures[n], row.Figures![n]));
        Assert.Equal(alone.Trace["shaft_travel_m"], row.Run!.Trace["shaft_travel_m"]);
        Assert.Equal("reset", row.StopNut);
    }

    [Fact]
    public void Sweep_gives_its_grid_and_the_best_of_it()
    {
        SweepAnswer sweep = Study.Sweep(Ledge, ["coilover.stop_nut.gap=0.75:1.75:3 in"], "travel.travel_use:least");
        Assert.Equal([0.01905, 0.03175, 0.04445], sweep.Rows.Select(r => Math.Round(r.Values["coilover.stop_nut.gap"]!.Value, 12)));
        Assert.Equal(sweep.Rows.Min(r => r.Figures!.Number("travel_use")), sweep.Best!.Figures!.Number("travel_use"));
    }

    [Fact]
    public void Reach_holds_at_its_answer_and_breaks_one_resolution_beyond()
    {
        ReachAnswer reach = Assert.Single(Study.Reach(Ledge, "terrain[1].step=-10:-40 in"));
        Assert.DoesNotContain(Ledge.With("terrain[1].step", Length.FromMeters(reach.Largest!.Value)).Run().Limits, l => l.Broken);
        Assert.Contains(Ledge.With("terrain[1].step", Length.FromMeters(reach.Largest.Value - reach.Resolution * 1.01)).Run().Limits, l => l.Broken);
    }

    [Fact]
    public void Load_and_springs_follow_from_a_tape()
    {
        // F = k·c: 40 N/mm · 50 mm = 2000 N; u² = 2·(40·3)² + (2000·0.02)² = 30 400 N².
        WeighedLoad load = Springs.Weigh(
            [new SpringReading(SpringPlace.Lower, ForcePerLength.FromNewtonsPerMillimeter(40), Length.FromMillimeters(350), Length.FromMillimeters(300))],
            Length.FromMillimeters(3));
        s_rounding.Holds(2000, load.SpringLoad.Newtons);
        s_rounding.Holds(Math.Sqrt(30_400), load.Uncertainty.Newtons);

        // The wanted ride height by hand: F = k·(x + p), springs in series.
        SpringSet best = Springs.Pick(Force.FromNewtons(3000), Length.FromMillimeters(300), Length.FromMillimeters(130))[0];
        double series = 1 / ((1 / best.Upper.NewtonsPerMeter) + (1 / best.Lower.NewtonsPerMeter));
        s_rounding.Holds((3000 / series) - 0.17, best.Preload.Meters);
    }

    [Fact]
    public void Each_spring_reads_its_rate_times_its_compression()
    {
        WeighedSpring read = Assert.Single(Springs.Weigh(
            [new SpringReading(SpringPlace.Lower, ForcePerLength.FromNewtonsPerMillimeter(40), Length.FromMillimeters(350), Length.FromMillimeters(302), Length.FromMillimeters(298))],
            Length.FromMillimeters(3)).Springs);
        Assert.Equal(SpringPlace.Lower, read.Place);
        s_rounding.Holds(0.05, read.Compression.Meters);
        s_rounding.Holds(2000, read.Load.Newtons);
        s_rounding.Holds(Math.Sqrt(30_400), read.Uncertainty.Newtons);
    }

    [Fact]
    public void Gas_carries_its_share_and_a_tender_is_a_scale_too()
    {
        // Isothermal, by hand: p = (p0 + atm)·V0/(V0 − A·x) − atm with x = stroke − shaft showing; force p·A (physics.md section 5).
        var gas = new GasCharge(Pressure.FromBars(12), Volume.FromCubicCentimeters(460), Length.FromMillimeters(22));
        double area = Math.PI * 0.022 * 0.022 / 4, x = 0.300 - 0.140, expected = (((12e5 + 101325) * 460e-6 / (460e-6 - area * x)) - 101325) * area;
        SpringReading[] stack =
        [
            new(SpringPlace.Tender, ForcePerLength.FromNewtonsPerMillimeter(20), Length.FromMillimeters(150), Length.FromMillimeters(50)) { SolidLength = Length.FromMillimeters(30) },
            new(SpringPlace.Upper, ForcePerLength.FromNewtonsPerMillimeter(40), Length.FromMillimeters(305), Length.FromMillimeters(255)),
            new(SpringPlace.Lower, ForcePerLength.FromNewtonsPerMillimeter(50), Length.FromMillimeters(356), Length.FromMillimeters(316)),
        ];
        WeighedLoad load = Springs.Weigh(stack, Length.FromMillimeters(3), gas: gas, shaftShowing: Length.FromMillimeters(140), stroke: Length.FromMillimeters(300));
        Assert.Equal([SpringPlace.Tender, SpringPlace.Upper, SpringPlace.Lower], load.Springs.Select(s => s.Place));
        s_rounding.Holds(2000, load.SpringLoad.Newtons); // 20·100 = 40·50 = 50·40
        s_rounding.Holds(expected, load.GasForce!.Value.Newtons);
        s_rounding.Holds(2000 + expected, load.CoiloverLoad.Newtons);
        Assert.Null(load.Friction);
        Assert.Contains("--stroke", Assert.Throws<ScenarioException>(() => Springs.Weigh(stack, Length.FromMillimeters(3), gas: gas)).Message, StringComparison.Ordinal);

        SpringSet best = Springs.Pick(load.CoiloverLoad, Length.FromMillimeters(300), Length.FromMillimeters(140), gas: gas)[0];
        double series = 1 / ((1 / best.Upper.NewtonsPerMeter) + (1 / best.Lower.NewtonsPerMeter));
        s_rounding.Holds((2000 / series) - x, best.Preload.Meters);
    }

    [Fact]
    public void Sets_with_a_tender_and_a_body_are_those_of_the_command_line()
    {
        string[] command = ["pick", "--load", "3000 N", "--stroke", "300 mm", "--ride-height", "130 mm", "--tenders", "invented", "--seat-length", "700 mm", "--thread", "150 mm", "--slider", "30 mm", "--diameter", "63 mm", "--json"];
        using var json = System.Text.Json.JsonDocument.Parse(ProgramProcess.Run(Checkout.Root, command).Out);
        System.Text.Json.JsonElement first = json.RootElement.GetProperty("sets")[0];
        var body = new BodyDraft { SeatLength = Length.FromMillimeters(700), Thread = Length.FromMillimeters(150), Slider = Length.FromMillimeters(30), Diameter = Length.FromMillimeters(63) };
        SpringSet best = Springs.Pick(Force.FromNewtons(3000), Length.FromMillimeters(300), Length.FromMillimeters(130), tenders: "invented", body: body)[0];
        s_rounding.Holds(first.GetProperty("tender_rate_N_m").GetDouble(), best.Tender!.Value.NewtonsPerMeter);
        s_rounding.Holds(first.GetProperty("preload_m").GetDouble(), best.Preload.Meters);
        s_rounding.Holds(first.GetProperty("ride_height_lowest_m").GetDouble(), best.RideHeightLowest!.Value.Meters);
        s_rounding.Holds(first.GetProperty("ride_height_highest_m").GetDouble(), best.RideHeightHighest!.Value.Meters);
    }

    [Fact]
    public void A_single_tolerance_brings_all_of_the_variance()
    {
        SpreadAnswer spread = Study.Spread(Ledge.With("tolerances", "{ coilover.preload: 0.125 in }"), samples: 40);
        Assert.Equal(1, spread.VarianceShares("static.ride_height_m")["coilover.preload"]!.Value, 1e-3); // its line bends a little with gas
        Assert.Throws<KeyNotFoundException>(() => spread.VarianceShares("static.preload_m"));
        Assert.Contains("spread", spread.Pictures().Select(p => p.Name));
    }

    [Fact]
    public void Pictures_are_those_of_the_command_line()
    {
        using var files = new Scratch();
        ProgramProcess.Run(Checkout.Root, "run", "scenarios/quarry-ledge.yaml", "--out", files.At("run"));
        IReadOnlyList<Picture> pictures = Ledge.Run().Pictures();
        Assert.Equal(["shaft_travel", "travel_use", "force_travel", "damper", "tyre_load", "acceleration"], pictures.Select(p => p.Name));
        Assert.All(pictures, p => Assert.Equal(File.ReadAllText(files.At($"run/{p.Name}.svg")), p.Svg()));
        Assert.Equal([137, 80, 78, 71], pictures[0].Png().Take(4).Select(b => (int)b));
        Assert.Throws<ArgumentOutOfRangeException>(() => pictures[0].Png(0));

        Assert.Equal(["force_travel", "rates"], Ledge.Stand().Pictures().Select(p => p.Name));
        IEnumerable<SetupRow> rows = Study.Compare(Ledge, [Split(140, 250), Split(160, 225)], keepRuns: true);
        Assert.Equal(["shaft_travel", "travel_use", "force_travel"], Study.Pictures(rows).Select(p => p.Name));
        Assert.Empty(Study.Pictures(Study.Compare(Ledge, [Split(140, 250)])));
    }

    [Fact]
    public void A_run_whose_numbers_leave_their_range_at_once_has_the_pictures_of_the_standing_corner()
    {
        // A volume of less than a litre, in m³, to the power of −734 lies beyond the largest double.
        Run run = Ledge.With("coilover.gas.exponent", "734").Run();
        Assert.False(run.Finished);
        Assert.Equal(["force_travel", "rates"], run.Pictures().Select(p => p.Name));
    }

    [Fact]
    public void Files_are_those_of_the_command_line()
    {
        using var ours = new Scratch();
        Ledge.Run().WriteTo(ours.At("ours"), pictures: false);
        ProgramProcess.Run(Checkout.Root, "run", "scenarios/quarry-ledge.yaml", "--out", ours.At("theirs"));
        Assert.All(["trace.csv", "events.csv"], f => Assert.Equal(File.ReadAllBytes(ours.At("theirs/" + f)), File.ReadAllBytes(ours.At("ours/" + f))));
    }

    private static double Expected(string figure)
    {
        using var file = System.Text.Json.JsonDocument.Parse(File.ReadAllText(Checkout.At("tests/data/reference/quarry_ledge.expected.json")));
        return file.RootElement.GetProperty("travel").GetProperty(figure).GetDouble();
    }

    private static SetupDraft Split(double upper, double lower) =>
        SetupDraft.Split(ForcePerLength.FromPoundsForcePerInch(upper), ForcePerLength.FromPoundsForcePerInch(lower));
}
