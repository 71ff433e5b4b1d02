using System.Globalization;
using System.Security.Cryptography;

using QuarterCar.TestKit.Programs;

namespace QuarterCar.Cli.Tests;

/// <summary>`run`: files, exit codes, and what becomes of earlier results.</summary>
public sealed class RunVerbTests : IDisposable
{
    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    // The wheel of 17.5 in radius meets a wall of 30 in after 10 ft.
    [Fact]
    public void A_wall_that_stops_the_hub_is_told_in_the_scenario_s_units()
    {
        Asked asked = Asked.Of("run", Scenarios.QuarryLedge, "--set", "terrain[1].step=30 in");
        Assert.Equal(ExitCode.BadInput, asked.Code);
        Assert.Contains("a vertical rise at 10.0 ft that would stop the wheel at its hub (top edge 30.00 in, hub 17.50 in)", asked.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_result_file_is_written_and_no_other()
    {
        string file = _scratch.Write("in/plain.yaml", Scenarios.Plain(limit: 2));
        Assert.Equal(ExitCode.Done, Asked.Of("run", file, "--out", _scratch.At("out")).Code);
        string[] plots = ["acceleration", "damper", "force_travel", "shaft_travel", "travel_use", "tyre_load"];
        string[] wanted = ["events.csv", "report.html", "summary.json", "trace.csv", .. plots.SelectMany(p => new[] { p + ".png", p + ".svg" })];
        Assert.Equal(wanted.Order(StringComparer.Ordinal), Names("out"));
    }

    [Fact]
    public void Json_on_the_terminal_is_the_summary_file()
    {
        Asked asked = Asked.Of("run", Scenarios.QuarryLedge, "--json", "--out", _scratch.At("out"));
        Assert.Equal(File.ReadAllText(_scratch.At("out/summary.json")), asked.Out);
    }

    [Fact]
    public void A_broken_limit_is_exit_code_1_with_all_results()
    {
        string file = _scratch.Write("plain.yaml", Scenarios.Plain(limit: 0.01));
        Asked asked = Asked.Of("run", file, "--out", _scratch.At("out"));
        Assert.Equal(ExitCode.Broken, asked.Code);
        Assert.Contains("Breaks the limit on stroke used", asked.Out.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.Contains("report.html", Names("out"));
    }

    [Fact]
    public void A_run_that_does_not_finish_is_exit_code_3_and_leaves_earlier_results_alone()
    {
        string earlier = _scratch.Write("out/summary.json", "earlier");
        string file = _scratch.Write("stuck.yaml", Scenarios.Plain(limit: 2));
        Asked asked = Asked.Of("run", file, "--set", "corner.unsprung_weight=1e-6 N", "--set", "drop.height=2 m", "--out", _scratch.At("out"));
        Assert.Equal(ExitCode.Failed, asked.Code);
        Assert.Contains("The run stopped at t =", asked.Messages, StringComparison.Ordinal);
        Assert.Contains("no results were written", asked.Messages, StringComparison.Ordinal);
        Assert.Equal("earlier", File.ReadAllText(earlier));
        Assert.Equal(["summary.json"], Names("out"));
    }

    [Fact]
    public void An_interrupted_run_is_exit_code_130_and_writes_nothing()
    {
        string file = _scratch.Write("plain.yaml", Scenarios.Plain());
        Asked asked = Asked.Of(new CancellationToken(canceled: true), "run", file, "--out", _scratch.At("out"));
        Assert.Equal(ExitCode.Interrupted, asked.Code);
        Assert.Equal(["plain.yaml"], _scratch.Files());
    }

    [Fact]
    public void A_wrong_place_for_results_is_found_before_anything_is_computed()
    {
        string taken = _scratch.Write("taken", "mine");
        Asked asked = Asked.Of("run", Scenarios.QuarryLedge, "--out", taken);
        Assert.Equal((ExitCode.BadInput, ""), (asked.Code, asked.Out));
        Assert.Contains("found a file; wanted a folder", asked.Messages, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(taken));
    }

    [Fact]
    public void Ground_that_would_stop_the_wheel_is_bad_input_with_file_line_and_key()
    {
        Asked asked = Asked.Of("run", Scenarios.QuarryLedge, "--set", "terrain[1].step=40 in");
        int line = Array.FindIndex(File.ReadAllLines(Scenarios.QuarryLedge), l => l.Contains("- step", StringComparison.Ordinal)) + 1;
        Assert.Equal(ExitCode.BadInput, asked.Code);
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"quarry-ledge.yaml:{line}: terrain[1]: found a vertical rise"), asked.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void All_result_files_are_the_same_bytes_in_every_culture()
    {
        string[] prints = [.. ((string[])["en-US", "de-DE", "tr-TR"]).Select(c => Print(c))];
        Assert.Equal(prints[0], prints[1]);
        Assert.Equal(prints[0], prints[2]);
    }

    private string Print(string culture)
    {
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(culture);
        try
        {
            Assert.Equal(culture == "en-US" ? "1.5" : "1,5", 1.5.ToString(CultureInfo.CurrentCulture));
            string folder = _scratch.At(culture);
            Asked run = Asked.Of("run", Scenarios.QuarryLedge, "--out", folder), check = Asked.Of("check", Scenarios.QuarryLedge, "--out", folder + "-check");
            var files = Names(culture).Select(n => $"{culture}/{n}").Concat(Names(culture + "-check").Select(n => $"{culture}-check/{n}"));
            var lines = files.Select(f => f.Replace(culture, "", StringComparison.Ordinal) + " " + Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(_scratch.At(f)))));
            return run.Out + check.Out + string.Join('\n', lines);
        }
        finally
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = before;
        }
    }

    private string[] Names(string folder) =>
        [.. _scratch.Files().Where(f => f.StartsWith(folder + "/", StringComparison.Ordinal)).Select(f => f[(folder.Length + 1)..])];
}
