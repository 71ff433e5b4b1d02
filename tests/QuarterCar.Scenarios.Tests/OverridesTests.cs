using System.Collections.Immutable;

using QuarterCar.Model;
using QuarterCar.Model.Terrain;
using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Keys;
using QuarterCar.Scenarios.Reading;

using static QuarterCar.Scenarios.Tests.Readings;

namespace QuarterCar.Scenarios.Tests;

/// <summary>--set and --case edit the document, and everything is read again from the top.</summary>
public class OverridesTests
{
    private const double _poundForce = 4.4482216152605;

    [Fact]
    public void Set_replaces_a_value() => Assert.Equal(0.05, Read(Bench, "coilover.preload=50 mm").Good().Corner.Coilover.Preload, 1e-16);

    [Fact]
    public void Later_set_wins() => Assert.Equal(0.06, Read(Bench, "coilover.preload=50 mm", "coilover.preload=60 mm").Good().Corner.Coilover.Preload, 1e-16);

    [Fact]
    public void Set_takes_a_map()
    {
        var top = Read(Bench, "coilover.top_out={ rate: 2 kN/m }").Good().Corner.Coilover.TopOut;
        Assert.Equal(new StopData(2000, 0.5), top);
    }

    [Fact]
    public void Set_reaches_into_lists_and_tables()
    {
        Assert.Equal(-0.1, Pieces(Read(Bench, "terrain[1].step=-100 mm").Good()).OfType<StepPiece>().Single().Height, 1e-16);
        var table = Read(Bench, "corner.motion_ratio=[[0 m, 0.8], [1 m, 0.9]]", "corner.motion_ratio[1][1]=0.95").Good().Corner.MotionRatio;
        Assert.Equal([new TablePoint(0, 0.8), new TablePoint(1, 0.95)], table.ToArray());
    }

    [Fact]
    public void None_removes_a_key()
    {
        Assert.Null(Read(Bench, "coilover.gas=none", "cases=none").Good().Corner.Coilover.Gas);
        Assert.Null(Read(Bench, "coilover.stop_nut=none").Good().Corner.Coilover.StopNut);
        Assert.Single(Pieces(Read(Bench, "terrain[1]=none", "cases=none").Good()));
    }

    [Fact]
    public void Removing_what_is_not_there_changes_nothing() => Assert.Equal(Read(Bench).Good().Hash, Read(Bench, "coilover.body.thread=none").Good().Hash);

    [Fact]
    public void A_course_becomes_a_drop() =>
        Assert.Equal(new Drop(1), Read(Bench, "terrain=none", "speed=none", "drop.height=1 m", "cases=none").Good().Excitation);

    [Fact]
    public void Set_on_a_missing_block_makes_the_block_and_asks_for_the_rest()
    {
        var text = Bench.Replace("  stop_nut: { gap: 1.2 in, at: ride_height }\n", "", StringComparison.Ordinal);
        Assert.Equal(
            ["--set coilover.stop_nut.gap=1 in: coilover.stop_nut.at: found nothing; wanted one of: ride_height, full_droop"],
            Read(text, "coilover.stop_nut.gap=1 in").Lines());
    }

    [Theory]
    [InlineData("coilover.prelod=1 in", "--set coilover.prelod=1 in: coilover.prelod: found an unknown path; wanted 'coilover.preload'")]
    [InlineData("preload=1 in", "--set preload=1 in: preload: found an unknown path; wanted 'coilover.preload'")]
    [InlineData("coilover.preload=1", "--set coilover.preload=1: coilover.preload: found '1'; wanted a length with its unit: in, ft, mm, cm, m")]
    [InlineData("coilover.preload", "--set coilover.preload: found 'coilover.preload'; wanted PATH=VALUE, like coilover.preload=1.4 in")]
    [InlineData("coilover.preload=", "--set coilover.preload=: coilover.preload: found nothing; wanted PATH=VALUE, like coilover.preload=1.4 in")]
    [InlineData("=1 in", "--set =1 in: found '=1 in'; wanted PATH=VALUE, like coilover.preload=1.4 in")]
    [InlineData("coilover..preload=1 in", "--set coilover..preload=1 in: coilover..preload: found an unknown path; wanted a dotted path into the scenario, lists counted from 0, like coilover.stop_nut.gap or terrain[1].step")]
    [InlineData("terrain[2].step=1 in", "--set terrain[2].step=1 in: terrain[2].step: found an index outside a list of 2, or a name where an index belongs; wanted a dotted path into the scenario, lists counted from 0, like coilover.stop_nut.gap or terrain[1].step")]
    [InlineData("terrain[0].step=1 in", "--set terrain[0].step=1 in: terrain[0]: found flat and step; wanted one key, one of: flat, step, ramp, bump, whoops, random, profile")]
    public void Wrong_set_is_named_by_its_own_text(string set, string line)
    {
        // An added second key stands in a piece of the file: that line names the file.
        var expected = set.StartsWith("terrain[0]", StringComparison.Ordinal) ? "bench.yaml:19" + line[line.IndexOf(": terrain[0]", StringComparison.Ordinal)..] : line;
        Assert.Equal([expected], Read(Bench, set).Lines());
    }

    [Fact]
    public void Set_with_broken_yaml_names_no_line() =>
        Assert.StartsWith("--set coilover.gas={: found text that is not YAML", Assert.Single(Read(Bench, "coilover.gas={").Lines()), StringComparison.Ordinal);

    [Fact]
    public void Set_can_mend_what_the_file_has_wrong() =>
        Assert.Equal(0.05, Read(Bench.Replace("preload: 1.5 in", "preload: 1.5", StringComparison.Ordinal), "coilover.preload=50 mm").Good().Corner.Coilover.Preload, 1e-16);

    [Fact]
    public void Limits_and_cases_can_be_set()
    {
        Assert.Equal([new Limit("travel.up_travel_used", 0.9)], Read(Bench, "limits.travel.up_travel_used=0.9").Good().Limits.ToArray());
        Assert.Equal("+130 lbf", Read(Bench, "cases[0].corner.sprung_weight=+130 lbf").Good().Cases[0].Changes[0].Value);
    }

    [Fact]
    public void Sign_in_a_case_makes_a_change() =>
        Assert.Equal(920 * _poundForce, Case("heavy").Good().Corner.SprungWeight!.Value, 1e-11);

    [Fact]
    public void Value_in_a_case_replaces() => Assert.Equal(363.15, Case("hot").Good().Corner.Coilover.Gas!.Temperature, 1e-12);

    [Fact]
    public void Signed_value_behind_an_equals_sign_replaces()
    {
        Assert.Equal(-0.254, Step(Case("shallow").Good()), 1e-15);
        Assert.Equal(-0.6096, Step(Case("deeper").Good()), 1e-15);
    }

    [Fact]
    public void Change_of_temperature_counts_degrees_not_their_zero()
    {
        var text = Bench.Replace("coilover.gas.temperature: 90 degC", "coilover.gas.temperature: +18 degF", StringComparison.Ordinal);
        Assert.Equal(303.15, With(text, Options("hot")).Good().Corner.Coilover.Gas!.Temperature, 1e-12); // 20 °C and 10 K
    }

    [Fact]
    public void Set_comes_after_the_case() =>
        Assert.Equal(4000, With(Bench, Options("heavy") with { Sets = ["corner.sprung_weight=4 kN"] }).Good().Corner.SprungWeight!.Value);

    [Fact]
    public void Unknown_case_is_answered_with_the_names() =>
        Assert.Equal(["--case havy: cases: found no case named 'havy'; wanted one of: heavy, hot, shallow, deeper"], Case("havy").Lines());

    [Fact]
    public void Output_units_are_those_of_the_file_whatever_is_set()
    {
        Assert.Equal(UnitSystem.Us, Read(Bench, "corner.sprung_weight=400 kg").Good().Units);
        Assert.Equal(UnitSystem.Si, With(Bench, ReadOptions.Plain with { Units = UnitSystem.Si }).Good().Units);
    }

    [Theory]
    [InlineData("coilover.stop_nut.gap", "coilover.stop_nut.gap")]
    [InlineData("terrain[1].step", "terrain[1].step")]
    [InlineData("corner.motion_ratio[0][1]", "corner.motion_ratio[0][1]")]
    public void Path_writes_back_as_it_was_read(string text, string wanted)
    {
        Assert.True(DocumentPath.TryParse(text, out var path));
        Assert.Equal(wanted, path.ToString());
    }

    [Theory, InlineData(""), InlineData("."), InlineData("a."), InlineData("a[x]"), InlineData("a[-1]"), InlineData("a[1"), InlineData("a]1["), InlineData("[0]"), InlineData("a[99999999999]")]
    public void What_is_no_path_is_refused(string text) => Assert.False(DocumentPath.TryParse(text, out _));

    [Theory, InlineData("prelod", "preload"), InlineData("preloaded", "preload"), InlineData("wheelbase", null), InlineData("xy", null)]
    public void Nearest_word_is_three_edits_away_at_most(string word, string? near) => Assert.Equal(near, Nearest.Find(word, ["stroke", "preload", "at"]));

    [Fact]
    public void Ties_go_by_name() => Assert.Equal("bar", Nearest.Find("car", ["tar", "bar"]));

    private static ReadResult Case(string name) => With(Bench, Options(name));

    private static ReadOptions Options(string name) => ReadOptions.Plain with { Case = name, Nut = NutRule.Reset };

    private static ImmutableArray<TerrainPiece> Pieces(Scenario scenario) => ((Course)scenario.Excitation).Pieces;

    private static double Step(Scenario scenario) => Pieces(scenario).OfType<StepPiece>().Single().Height;
}
