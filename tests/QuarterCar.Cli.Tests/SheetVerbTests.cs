using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;

using QuarterCar.Reports.SetupSheet;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Studies;
using QuarterCar.TestKit.Programs;

namespace QuarterCar.Cli.Tests;

/// <summary>`sheet`: one page, nothing from outside, both unit systems, the same numbers as check, and a file that comes whole or not at all.</summary>
public sealed partial class SheetVerbTests : IDisposable
{
    private const string Body = "coilover.body={ seat_length: 27.8 in, thread: 6 in, thread_pitch: 2 mm, slider: 1.2 in, diameter: 2.5 in }";
    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public void Nothing_on_the_sheet_comes_from_outside_and_nothing_runs()
    {
        string page = Sheet(Scenarios.QuarryLedge);
        Assert.DoesNotMatch(FromOutside(), page);
        Assert.StartsWith("<!doctype html>", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Titles_cases_and_file_names_are_text_and_never_markup()
    {
        const string bad = "<script>alert(1)</script> & \"quotes\"";
        string file = _scratch.Write("bad.yaml", Scenarios.Plain().Replace("title: Plain corner", $"title: '{bad}'", StringComparison.Ordinal)
            .Replace("name: loaded", "name: '<b>loaded</b>'", StringComparison.Ordinal));
        string page = Sheet(file, "--case", "<b>loaded</b>");
        Assert.DoesNotContain("<script", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<b>loaded", page, StringComparison.Ordinal);
        Assert.Contains("&lt;script&gt;alert(1)&lt;/script&gt; &amp; &quot;quotes&quot;", page, StringComparison.Ordinal);
        Assert.Contains("load case: &lt;b&gt;loaded&lt;/b&gt;", page, StringComparison.Ordinal);
    }

    // Quarry ledge: p = 1.4 in; the preload is 17.78 turns of 2 mm; 27.2 − 1.4 in from nut to plate; q at ride height as written.
    [Theory]
    [InlineData("1.40 in"), InlineData("35.6 mm"), InlineData("17.8 turns"), InlineData("25.80 in"), InlineData("655.3 mm")]
    [InlineData("1.25 in"), InlineData("31.7 mm"), InlineData("180 psi"), InlineData("12.4 bar"), InlineData("160 lbf/in"), InlineData("28.0 N/mm")]
    public void Both_unit_systems_stand_side_by_side(string number) =>
        Assert.Contains(number, Plain(Sheet(Scenarios.QuarryLedge, "--set", Body)), StringComparison.Ordinal);

    // Stack 12 + 14 + 1.2 in on a seat of 26.2: at the top of its thread the nut presses them by 1.0 in. To 1.4 in it goes down 0.4 in, 10.16 mm, 5.08 turns of 2 mm.
    [Theory]
    [InlineData("1.4 in", "from there run it down by 0.40 in (10.2 mm). A is the whole preload. Check B", "5.1 turns", "1.40 in", "25.80 in")]
    [InlineData("1 in", "The springs are pressed by A with the coil nut at the top of its thread: leave it there. Check B", "0.0 turns", "1.00 in", "26.20 in")]
    [InlineData("0.6 in", "A cannot be set: the coil nut would stand 0.40 in (10.2 mm) above its thread. The top of the thread gives 1.00 in (25.4 mm) of preload.", "0.60 in", "26.60 in")]
    public void Where_the_springs_are_pressed_at_the_top_of_the_thread_the_coil_nut_is_counted_from_there(string preload, params string[] said)
    {
        string page = Plain(Sheet(Scenarios.QuarryLedge, "--set", Body.Replace("27.8 in", "26.2 in", StringComparison.Ordinal), "--set", "coilover.preload=" + preload));
        Assert.All(said, words => Assert.Contains(words, page, StringComparison.Ordinal));
        Assert.DoesNotContain("just touch", page, StringComparison.Ordinal);
        Assert.Equal(preload != "0.6 in", page.Contains("The nut now carries", StringComparison.Ordinal));
    }

    // Stack 27.2 in on a seat of 27.8: at the top of its thread the nut leaves the springs 0.6 in of slack. 0.6 in of preload below zero is what the top gives, 1 in lies 0.4 in above it.
    [Theory]
    [InlineData("-0.6 in", true)]
    [InlineData("-1 in", false)]
    public void Slack_that_the_thread_cannot_give_is_not_told_as_work(string preload, bool possible)
    {
        string page = Plain(Sheet(Scenarios.QuarryLedge, "--set", Body, "--set", "coilover.preload=" + preload));
        const string not = "A cannot be set: the coil nut would stand 0.40 in (10.2 mm) above its thread. The top of the thread gives −0.60 in (−15.2 mm) of preload.";
        Assert.Equal(!possible, page.Contains(not, StringComparison.Ordinal));
        Assert.Equal(possible, page.Contains("just touch, then back up by 0.60 in (15.2 mm)", StringComparison.Ordinal));
        Assert.Equal(possible, page.Contains("−7.6 turns", StringComparison.Ordinal)); // 15.24 mm of 2 mm a turn
        Assert.Equal(possible, page.Contains(" turns<", StringComparison.Ordinal));
    }

    // Loose by 0.6 in the slider hangs by as much below where it touches without force, which is where the gap of check is measured from.
    [Fact]
    public void Loose_springs_have_their_slack_in_the_distance_to_the_stop_nut()
    {
        const string loose = "coilover.preload=-0.6 in";
        double gap = Asked.Of("check", Scenarios.QuarryLedge, "--set", loose, "--json").Json().GetProperty("static").GetProperty("stop_nut_gap_full_droop_m").GetDouble();
        string page = Plain(Sheet(Scenarios.QuarryLedge, "--set", loose));
        Assert.Contains("the slider resting on the loose lower spring: C has the slack of 0.60 in (15.2 mm) in it", page, StringComparison.Ordinal);
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"<span class=\"letter\">C</span> {gap / 0.0254 + 0.6:F2} in"), page, StringComparison.Ordinal);
        Assert.DoesNotContain("slack", Sheet(Scenarios.QuarryLedge), StringComparison.Ordinal);
    }

    // 1400 psi on 0.875 in carry all of the corner with the springs 11 in loose: at ride height the slack is 11 in less the shaft travel.
    [Fact]
    public void Springs_that_are_loose_at_ride_height_too_have_their_slack_in_D()
    {
        string[] sets = ["--set", "coilover.preload=-11 in", "--set", "coilover.gas.pressure=1400 psi"];
        double showing = Asked.Of(["check", Scenarios.QuarryLedge, .. sets, "--json"]).Json().GetProperty("static").GetProperty("ride_height_m").GetDouble() / 0.0254;
        Assert.Contains(
            string.Create(CultureInfo.InvariantCulture, $"<span class=\"letter\">D</span> {1.25 + 11 - (12 - showing):F2} in"), Plain(Sheet(Scenarios.QuarryLedge, sets)), StringComparison.Ordinal);
    }

    // Both nuts are on the body: the upper spring's 12 in less C* lie between them, in either picture and with loose springs too, where C* is check's gap at full droop.
    [Theory, InlineData("1.4 in"), InlineData("-0.6 in")]
    public void The_stop_nut_stands_as_far_below_the_coil_nut_in_both_pictures(string preload)
    {
        string set = "coilover.preload=" + preload, page = Sheet(Scenarios.QuarryLedge, "--set", set);
        double[] nuts = [.. Nuts().Matches(page).Select(m => double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture))];
        Assert.Equal(4, nuts.Length); // stop nut and coil nut, fully extended and at ride height
        Assert.Equal(nuts[0] - nuts[1], nuts[2] - nuts[3], 0.021); // four numbers rounded to 0.01 mm
        double gap = Asked.Of("check", Scenarios.QuarryLedge, "--set", set, "--json").Json().GetProperty("static").GetProperty("stop_nut_gap_full_droop_m").GetDouble();
        double ratio = double.Parse(Ratio().Match(page).Groups[1].Value, CultureInfo.InvariantCulture), pressed = preload == "1.4 in" ? 1.4 * 225 / 385 : 0; // the upper spring's share
        Assert.Equal((12 - pressed) * 25.4 - 1000 * gap, ratio * (nuts[0] - nuts[1]), 1.0); // 1 : 10.1 is rounded to 0.05, 0.5 % of 154 mm, and 0.01 mm of paper is 0.1 mm
    }

    [Fact]
    public void Check_run_and_sheet_give_the_same_ride_height_crossover_and_bind_clearance()
    {
        var check = Asked.Of("check", Scenarios.QuarryLedge, "--json").Json().GetProperty("static");
        var run = Asked.Of("run", Scenarios.QuarryLedge, "--set", "run.duration=10 ms", "--json").Json().GetProperty("static");
        string sheet = Plain(Sheet(Scenarios.QuarryLedge));
        foreach ((string key, string words) in new[]
        {
            ("ride_height_m", "Ride height, shaft showing"), ("crossover_shaft_showing_m", "Slider meets stop nut at showing"), ("bind_clearance_full_bump_m", "Clear of coil bind at full bump"),
        })
        {
            double value = check.GetProperty(key).GetDouble();
            Assert.Equal(value, run.GetProperty(key).GetDouble());
            string row = string.Create(CultureInfo.InvariantCulture, $"<td>{words}</td><td class=\"n\">{value / 0.0254:F2} in</td><td class=\"n\">{value * 1000:F1} mm</td>");
            Assert.Contains(row, sheet, StringComparison.Ordinal);
        }
    }

    // Gap 2.6 in with 0.4 in of preload: met 0.09 in beyond full bump. Gap 0 in at full droop: met before the shaft moves.
    [Theory]
    [InlineData("not in the stroke", "coilover.stop_nut.gap=2.6 in", "coilover.preload=0.4 in")]
    [InlineData("from full droop", "coilover.stop_nut={ gap: 0 in, at: full_droop }", "run.duration=1 s")]
    public void A_stop_nut_that_the_stroke_does_not_meet_has_no_showing(string word, string first, string second) =>
        Assert.Contains($"<td>Slider meets stop nut at showing</td><td class=\"n\">{word}</td>", Plain(Sheet(Scenarios.QuarryLedge, "--set", first, "--set", second)), StringComparison.Ordinal);

    [Theory]
    [InlineData("rated stands"), InlineData("chocks"), InlineData("Nobody under"), InlineData("hands clear of coils"), InlineData("Never straps or improvised clamps")]
    [InlineData("out of the spring’s line"), InlineData("Taking apart releases"), InlineData("whole on its thread"), InlineData("Never loosen the nut under the vehicle’s weight")]
    [InlineData("Dry nitrogen only, through a regulator"), InlineData("Empty it before anything is opened"), InlineData("burns"), InlineData("licensed"), InlineData("Jam the two stop nuts")]
    [InlineData("Local codes")]
    public void Every_caution_stands_on_the_sheet(string words) => Assert.Contains(words, Sheet(Scenarios.QuarryLedge), StringComparison.Ordinal);

    [Fact]
    public void Gas_pressure_at_full_bump_follows_the_polytrope_from_ride_height_and_grows_with_the_heat()
    {
        // By hand for the corner of the reference: P = P1·V/V0·(V0/(V − A·stroke))^1.4 − atmosphere, V0 at its shaft travel.
        const double inch = 0.0254, psi = 0.45359237 * 9.80665 / (inch * inch), atmosphere = 101_325;
        double area = Math.PI / 4 * Math.Pow(0.875 * inch, 2), volume = 28 * Math.Pow(inch, 3), charged = 180 * psi + atmosphere;
        double travel = 12 * inch - Asked.Of("check", Scenarios.QuarryLedge, "--json").Json().GetProperty("static").GetProperty("ride_height_m").GetDouble();
        double rest = volume - area * travel, bump = charged * volume / rest * Math.Pow(rest / (volume - area * 12 * inch), 1.4);
        string sheet = Plain(Sheet(Scenarios.QuarryLedge));
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"Full bump, fast from ride height</td><td class=\"n\">{(bump - atmosphere) / psi:F0} psi"), sheet, StringComparison.Ordinal);
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"The same from 90 °C</td><td class=\"n\">{(bump * 363.15 / 293.15 - atmosphere) / psi:F0} psi"), sheet, StringComparison.Ordinal);
    }

    [Fact]
    public void Title_hash_load_case_and_the_given_date_are_named()
    {
        var scenario = ScenarioReader.Read(Scenarios.QuarryLedge, ReadOptions.Plain).Scenario!;
        string page = SheetPage.Write(new SheetSubject(StandingStudy.Of(scenario), new DateOnly(2031, 2, 3), "two up and fuel", ["coilover.preload=1.6 in"]));
        foreach (string text in new[] { scenario.Title, scenario.Hash, "2031-02-03", "load case: two up and fuel, then changed: coilover.preload=1.6 in" })
            Assert.Contains(text, page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sheet_replaces_a_sheet_and_an_empty_file_but_nothing_else()
    {
        string file = Path.Combine(_scratch.Folder, "deep", "sheet.html");
        Assert.Equal(ExitCode.Done, Asked.Of("sheet", Scenarios.QuarryLedge, "--out", file).Code);
        Assert.Equal(ExitCode.Done, Asked.Of("sheet", Scenarios.QuarryLedge, "--out", file).Code);
        File.WriteAllText(file, "");
        Assert.Equal(ExitCode.Done, Asked.Of("sheet", Scenarios.QuarryLedge, "--out", file).Code);
        File.WriteAllText(file, "my notes");
        Asked asked = Asked.Of("sheet", Scenarios.QuarryLedge, "--out", file);
        Assert.Equal(ExitCode.BadInput, asked.Code);
        Assert.Contains("no setup sheet of ours", asked.Messages, StringComparison.Ordinal);
        Assert.Equal("my notes", File.ReadAllText(file));
        Assert.Equal(["sheet.html"], Directory.GetFileSystemEntries(Path.GetDirectoryName(file)!).Select(Path.GetFileName));
    }

    [Fact]
    public void Bad_input_leaves_no_file_and_no_folder()
    {
        string file = Path.Combine(_scratch.Folder, "none", "sheet.html");
        Assert.Equal(ExitCode.BadInput, Asked.Of("sheet", Scenarios.QuarryLedge, "--out", file, "--set", "coilover.preload=1").Code);
        Assert.Equal(ExitCode.BadInput, Asked.Of("sheet", Scenarios.QuarryLedge, "--out", _scratch.Folder).Code);
        Assert.Equal(ExitCode.BadInput, Asked.Of("sheet", Scenarios.QuarryLedge).Code);
        Assert.False(Directory.Exists(Path.GetDirectoryName(file)));
    }

    [Theory, InlineData("de-DE"), InlineData("tr-TR")]
    public void The_sheet_is_the_same_text_in_every_culture(string culture)
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        string plain = Sheet(Scenarios.QuarryLedge, "--set", Body);
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            Assert.Equal(plain, Sheet(Scenarios.QuarryLedge, "--set", Body));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    // Such a link is a sheet of ours where the system goes, and another file where its text leads.
    [Fact]
    public void A_link_that_goes_up_behind_another_one_costs_nobody_the_file_that_its_text_names()
    {
        string elsewhere = Directory.CreateDirectory(_scratch.At("elsewhere/below")).FullName, here = Directory.CreateDirectory(_scratch.At("here")).FullName;
        Assert.Equal(ExitCode.Done, Asked.Of("sheet", Scenarios.QuarryLedge, "--out", _scratch.At("elsewhere/page.html")).Code);
        File.WriteAllText(Path.Combine(here, "page.html"), "mine");
        Directory.CreateSymbolicLink(Path.Combine(here, "d"), elsewhere);
        File.CreateSymbolicLink(Path.Combine(here, "sheet.html"), "d/../page.html");
        Asked asked = Asked.Of("sheet", Scenarios.QuarryLedge, "--out", Path.Combine(here, "sheet.html"));
        Assert.Equal("mine", File.ReadAllText(Path.Combine(here, "page.html")));
        Assert.Equal(ExitCode.BadInput, asked.Code);
        Assert.Contains("found a file that is no setup sheet of ours", asked.Messages, StringComparison.Ordinal);
    }

    private string Sheet(string scenario, params string[] more)
    {
        string file = Path.Combine(_scratch.Folder, Guid.NewGuid().ToString("N") + ".html");
        Asked asked = Asked.Of(["sheet", scenario, "--out", file, .. more]);
        Assert.True(asked.Code == ExitCode.Done, asked.Messages);
        return File.ReadAllText(file);
    }

    // Numbers keep their unit on the line with a space that does not break.
    private static string Plain(string page) => WebUtility.HtmlDecode(page).Replace("\u00a0", " ", StringComparison.Ordinal);

    [GeneratedRegex(@"<rect class=""nut"" x=""[\d.]+"" y=""([\d.]+)""")]
    private static partial Regex Nuts();

    [GeneratedRegex(@"To scale, 1 : ([\d.]+)")]
    private static partial Regex Ratio();

    [GeneratedRegex(@"https?:|//[a-z]|\bsrc\s*=|\bhref\s*=|@import|url\(|<script|<link|<img|<iframe|\bon[a-z]+\s*=", RegexOptions.IgnoreCase)]
    private static partial Regex FromOutside();
}
