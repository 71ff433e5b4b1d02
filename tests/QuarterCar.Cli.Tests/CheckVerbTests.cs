using System.Text.Json;

using QuarterCar.TestKit;
using QuarterCar.TestKit.Programs;

namespace QuarterCar.Cli.Tests;

/// <summary>`check`: the standing figures, load cases, and what a stop nut does when something else changes.</summary>
public sealed class CheckVerbTests : IDisposable
{
    private static readonly Tolerance s_byHand = new(1e-12, "straight springs: the balance is solved to rounding");
    private readonly Scratch _scratch = new();
    private readonly string _plain;

    public CheckVerbTests() => _plain = _scratch.Write("plain.yaml", Scenarios.Plain());

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public void The_standing_figures_are_those_of_the_independent_reference()
    {
        var expected = JsonDocument.Parse(File.ReadAllText(Checkout.At("tests", "data", "reference", "quarry_ledge.expected.json"))).RootElement.GetProperty("static");
        var actual = Asked.Of("check", Scenarios.QuarryLedge, "--json").Json().GetProperty("static");
        var tolerance = Tolerance.Share(1e-8, "the reserve energy of the reference is a sum over small steps; the other figures agree to rounding");
        foreach (var figure in expected.EnumerateObject())
            tolerance.Holds(figure.Value.GetDouble(), actual.GetProperty(figure.Name).GetDouble(), figure.Name);
    }

    [Fact]
    public void A_load_case_without_gas_settles_by_its_weight_over_the_rates_in_series()
    {
        // The gap is 20 mm and 500 N squeeze the upper spring by 16.7 mm: the corner stays on the primary rate.
        var check = Asked.Of("check", _plain, "--json").Json();
        double primary = 30e3 * 40e3 / 70e3, ride = RideHeight(check.GetProperty("static"));
        var loaded = Assert.Single(check.GetProperty("cases").EnumerateArray());
        Assert.Equal("loaded", loaded.GetProperty("name").GetString());
        s_byHand.Holds(ride - 500 / primary, RideHeight(loaded.GetProperty("static")));
    }

    [Fact]
    public void A_load_case_leaves_the_stop_nut_where_it_is_on_the_body()
    {
        var check = Asked.Of("check", _plain, "--json").Json();
        var loaded = check.GetProperty("cases")[0].GetProperty("static");
        s_byHand.Holds(Gap(check.GetProperty("static"), "full_droop"), Gap(loaded, "full_droop"));
        s_byHand.Holds(0.020 - 500 / 30e3, Gap(loaded, "ride_height"));
    }

    [Fact]
    public void The_case_asked_for_and_the_case_listed_are_the_same()
    {
        var listed = Asked.Of("check", _plain, "--json").Json().GetProperty("cases")[0].GetProperty("static");
        var asked = Asked.Of("check", _plain, "--case", "loaded", "--json").Json().GetProperty("static");
        Assert.Equal(listed.GetRawText().ReplaceLineEndings("").Replace(" ", ""), asked.GetRawText().ReplaceLineEndings("").Replace(" ", ""));
    }

    [Fact]
    public void A_nut_that_stays_gains_the_added_preload_as_gap_at_ride_height()
    {
        Asked asked = Asked.Of("check", _plain, "--set", "coilover.preload=42 mm", "--nut", "stays", "--json");
        s_byHand.Holds(0.020 + 0.012, Gap(asked.Json().GetProperty("static"), "ride_height"));
    }

    [Fact]
    public void A_nut_that_is_reset_keeps_its_gap_and_the_program_says_so()
    {
        Asked asked = Asked.Of("check", _plain, "--set", "coilover.preload=42 mm", "--json");
        s_byHand.Holds(0.020, Gap(asked.Json().GetProperty("static"), "ride_height"));
        Assert.Contains("set anew", asked.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void Overrides_hold_for_the_load_cases_too()
    {
        // Straight springs: 12 mm more preload lift the corner by 12 mm under any load.
        var check = Asked.Of("check", _plain, "--json").Json();
        var lifted = Asked.Of("check", _plain, "--set", "coilover.preload=42 mm", "--json").Json();
        s_byHand.Holds(RideHeight(check.GetProperty("cases")[0].GetProperty("static")) + 0.012, RideHeight(lifted.GetProperty("cases")[0].GetProperty("static")));
    }

    [Fact]
    public void An_override_comes_after_the_case_and_wins()
    {
        var check = Asked.Of("check", _plain, "--case", "loaded", "--set", "corner.sprung_weight=3500 N", "--json").Json();
        s_byHand.Holds(RideHeight(Asked.Of("check", _plain, "--json").Json().GetProperty("static")), RideHeight(check.GetProperty("static")));
    }

    [Fact]
    public void A_load_on_the_springs_becomes_a_weight_before_a_case_changes_it()
    {
        // Without gas and at ratio 1 the load on the springs is the sprung weight.
        string byLoad = _scratch.Write("load.yaml", Scenarios.Plain().Replace("sprung_weight: 3500 N, un", "spring_load: 3500 N, un", StringComparison.Ordinal));
        var cases = Asked.Of("check", byLoad, "--json").Json().GetProperty("cases");
        var expected = Asked.Of("check", _plain, "--json").Json().GetProperty("cases");
        s_byHand.Holds(RideHeight(expected[0].GetProperty("static")), RideHeight(cases[0].GetProperty("static")));
    }

    [Fact]
    public void A_case_that_no_corner_can_carry_is_named()
    {
        string file = _scratch.Write("heavy.yaml", Scenarios.Plain().Replace("corner.sprung_weight: +500 N", "coilover.springs.lower.free_length: =600 mm", StringComparison.Ordinal));
        Asked asked = Asked.Of("check", file);
        Assert.Equal(ExitCode.BadInput, asked.Code);
        Assert.Contains("stop_nut", asked.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void The_first_line_is_the_title_and_the_second_the_verdict()
    {
        string[] lines = Asked.Of("check", _plain).Out.Split('\n');
        Assert.Equal("Plain corner", lines[0]);
        Assert.StartsWith("Stands at", lines[1], StringComparison.Ordinal);
    }

    [Fact]
    public void With_a_folder_the_curve_and_plots_come()
    {
        Assert.Equal(ExitCode.Done, Asked.Of("check", _plain, "--out", _scratch.At("deep/out")).Code);
        string[] files = _scratch.Files();
        Assert.Contains("deep/out/curve.csv", files);
        Assert.Contains(files, f => f.EndsWith(".png", StringComparison.Ordinal));
        Assert.DoesNotContain(files, f => f.Contains("/.", StringComparison.Ordinal));
    }

    private static double RideHeight(JsonElement standing) => standing.GetProperty("ride_height_m").GetDouble();

    private static double Gap(JsonElement standing, string at) => standing.GetProperty($"stop_nut_gap_{at}_m").GetDouble();
}
