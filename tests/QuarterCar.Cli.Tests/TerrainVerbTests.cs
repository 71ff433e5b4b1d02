using System.Globalization;
using System.Text;
using System.Text.Json;

using QuarterCar.TestKit;
using QuarterCar.TestKit.Programs;

namespace QuarterCar.Cli.Tests;

/// <summary>`terrain`: profiles and courses, and what is wrong with them.</summary>
public sealed class TerrainVerbTests : IDisposable
{
    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    // IRI-T2 of check-values section 1.3 (computed independently): a triangle of 20 mm from 20 to 24 m of 100 m.
    [Fact]
    public void A_profile_in_any_unit_has_the_index_of_the_table()
    {
        string metres = _scratch.Write("m.csv", "distance_m,height_mm\n0,0\n20,0\n22,20\n24,0\n100,0\n");
        string centimetres = _scratch.Write("cm.csv", "height_cm,distance_cm\n0,0\n0,2000\n2,2200\n0,2400\n0,10000\n");
        var table = Tolerance.Share(1e-9, "the tolerance that the table states");
        foreach (string file in new[] { metres, centimetres })
        {
            JsonElement json = Asked.Of("terrain", file, "--json").Json();
            table.Holds(0.62550643425, json.GetProperty("iri_m_km").GetDouble());
            new Tolerance(1e-12, "rounding").Holds(100, json.GetProperty("length_m").GetDouble());
            new Tolerance(1e-12, "rounding").Holds(0.01, json.GetProperty("largest_slope").GetDouble());
        }
    }

    // ISO 8608: the geometric mean of D is 1024e-6 m³, its limits half and twice that. Tapered and level ends take a twentieth off.
    [Fact]
    public void A_course_of_class_D_is_found_to_be_of_class_D()
    {
        JsonElement json = Asked.Of("terrain", Checkout.At("scenarios", "gravel-lane.yaml"), "--json").Json();
        Assert.Equal("D", json.GetProperty("iso8608_class").GetString());
        Assert.InRange(json.GetProperty("gd_n0_m3").GetDouble(), 850e-6, 1100e-6);
        Assert.Equal(160, json.GetProperty("length_m").GetDouble(), 1e-9);
        Assert.Empty(json.GetProperty("warnings").EnumerateArray());
        JsonElement rougher = Asked.Of("terrain", Checkout.At("scenarios", "gravel-lane.yaml"), "--set", "terrain[1].random.iso8608=E", "--json").Json();
        Tolerance.Share(1e-9, "twice the height everywhere").Holds(4 * json.GetProperty("gd_n0_m3").GetDouble(), rougher.GetProperty("gd_n0_m3").GetDouble());
        Tolerance.Share(1e-9, "twice the height everywhere").Holds(2 * json.GetProperty("iri_m_km").GetDouble(), rougher.GetProperty("iri_m_km").GetDouble());
    }

    [Fact]
    public void A_short_course_with_a_ledge_has_neither_index_nor_slope_and_says_why()
    {
        Asked asked = Asked.Of("terrain", Scenarios.QuarryLedge, "--json");
        Assert.Equal(ExitCode.Done, asked.Code);
        foreach (string key in new[] { "iri_m_km", "largest_slope" })
            Assert.Equal(JsonValueKind.Null, asked.Json().GetProperty(key).ValueKind);
        string[] codes = [.. asked.Json().GetProperty("warnings").EnumerateArray().Select(w => w.GetProperty("code").GetString()!)];
        Assert.Equal(["too_short_for_iri", "single_obstacles"], codes);
    }

    [Fact]
    public void The_table_holds_a_profiles_own_points_and_no_road()
    {
        string file = _scratch.Write("course.csv", "distance_ft,height_in\n0,0\n1.5,2\n1.5,4\n3,0\n");
        Assert.Equal(ExitCode.Done, Asked.Of("terrain", file, "--out", _scratch.At("out")).Code);
        string[] lines = File.ReadAllLines(_scratch.At("out/terrain.csv"));
        Assert.Equal("distance_in,ground_in", lines[0]);
        double[][] rows = [.. lines.Skip(1).Select(l => l.Split(',').Select(c => Math.Round(double.Parse(c, CultureInfo.InvariantCulture), 9)).ToArray())];
        Assert.Equal([[0, 0], [18, 2], [18, 4], [36, 0]], rows);
        Assert.Equal(["out/terrain.csv", "out/terrain.png", "out/terrain.svg"], _scratch.Files().Where(f => f.StartsWith("out/", StringComparison.Ordinal) && !f.Contains("spectrum", StringComparison.Ordinal)).Order(StringComparer.Ordinal));
    }

    // EN-1 (computed): 0.25 m before a step of 0.1 m the centre of a circle of 0.47 m stands 0.027994974843 m higher.
    [Fact]
    public void The_table_holds_the_road_of_a_scenarios_tyre()
    {
        string yaml = File.ReadAllText(Checkout.At("scenarios", "farm-track.yaml"));
        string file = _scratch.Write("step.yaml", yaml[..yaml.IndexOf("terrain:", StringComparison.Ordinal)].Replace("370 mm", "470 mm", StringComparison.Ordinal) + "terrain: [flat: 2 m, step: 100 mm, flat: 2 m]\nspeed: 2 m/s\n");
        Asked asked = Asked.Of("terrain", file, "--out", _scratch.At("out"));
        Assert.True(asked.Code == ExitCode.Done, asked.Messages);
        string[] lines = File.ReadAllLines(_scratch.At("out/terrain.csv"));
        Assert.Equal("distance_m,ground_m,road_m", lines[0]);
        string[] row = lines.Single(l => l.StartsWith("1.75,", StringComparison.Ordinal)).Split(',');
        Assert.Equal("0", row[1]);
        new Tolerance(1e-12, "twelve decimals are printed").Holds(0.027994974843, double.Parse(row[2], CultureInfo.InvariantCulture));
    }

    [Fact]
    public void The_verdict_comes_second_after_the_name()
    {
        string[] lines = Asked.Of("terrain", Checkout.At("scenarios", "farm-track.csv")).Out.Split('\n');
        Assert.Equal("farm-track.csv", lines[0]);
        Assert.StartsWith("As rough as ISO 8608 class C over 200 m", lines[1].Replace('\u00a0', ' '), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("distance_m,height_mm\n0,0\n", "found 1 row; wanted at least two rows")]
    [InlineData("", "found an empty file; wanted a CSV file with columns distance_<unit> and height_<unit>")]
    [InlineData("distance,height\n0,0\n1,1\n", ":1: found the header 'distance,height'; wanted columns distance_<unit> and height_<unit>, like distance_m,height_mm")]
    [InlineData("distance_kg,height_m\n0,0\n1,1\n", ":1: found the header 'distance_kg,height_m'; wanted columns distance_<unit> and height_<unit>, like distance_m,height_mm")]
    [InlineData("distance_m,height_m\n0,0\n2,0\n1,0\n", ":4: distance_m: found '1'; wanted a distance not below that of the row before")]
    [InlineData("distance_m,height_m\n0,0\n1,\n2,0\n", ":3: height_m: found nothing; wanted a finite number")]
    [InlineData("distance_m,height_m\n0,0\n1,NaN\n2,0\n", ":3: height_m: found 'NaN'; wanted a finite number")]
    [InlineData("distance_m,height_m\n0,0\n1,deep\n2,0\n", ":3: height_m: found 'deep'; wanted a finite number")]
    [InlineData("distance_m,height_m\n3,0\n3,1\n", "distance_m: found every row at one distance; wanted a profile with some length")]
    public void A_bad_profile_is_named_with_its_row_whether_asked_about_or_driven(string text, string message)
    {
        string file = _scratch.Write("course.csv", text);
        Asked asked = Asked.Of("terrain", file, "--out", _scratch.At("out"));
        Assert.Equal(ExitCode.BadInput, asked.Code);
        Assert.Contains(message, asked.Messages, StringComparison.Ordinal);
        Assert.Equal("", asked.Out);
        Asked driven = Asked.Of("run", Track(file));
        Assert.Equal(ExitCode.BadInput, driven.Code);
        Assert.Contains("course.csv" + (message[0] == ':' ? "" : ": ") + message, driven.Messages, StringComparison.Ordinal);
        Assert.DoesNotContain(_scratch.Files(), f => f.StartsWith("out/", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_bad_row_is_named_at_once()
    {
        Asked asked = Asked.Of("terrain", _scratch.Write("course.csv", "distance_m,height_m\n0,x\n1,y\n0.5,0\n"));
        foreach (string line in new[] { ":2: height_m: found 'x'", ":3: height_m: found 'y'", ":4: distance_m: found '0.5'" })
            Assert.Contains(line, asked.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void A_rise_taller_than_the_wheel_is_named_with_its_row()
    {
        _scratch.Write("course.csv", "distance_m,height_m\n0,0\n5,0\n5,0.6\n9,0.6\n");
        Asked asked = Asked.Of("run", Track(_scratch.At("course.csv")));
        Assert.Equal(ExitCode.BadInput, asked.Code);
        Assert.Matches("terrain\\[1\\]: found a vertical rise at (10\\.00 m|32\\.8 ft), data row 3,? that would stop the wheel", asked.Messages);
    }

    [Fact]
    public void Ten_million_rows_are_too_many_and_the_message_says_how_many_are_not()
    {
        var text = new StringBuilder("distance_m,height_m\n0,0\n").Insert(24, "1,0\n", 10_000_000);
        Asked asked = Asked.Of("terrain", _scratch.Write("course.csv", text.ToString()));
        Assert.Equal(ExitCode.BadInput, asked.Code);
        Assert.Contains("wanted at most 5,000,000 rows", asked.Messages, StringComparison.Ordinal);
    }

    [Theory, InlineData("I"), InlineData("d"), InlineData("1")]
    public void A_class_other_than_A_to_H_is_bad_input(string roadClass)
    {
        Asked asked = Asked.Of("terrain", Checkout.At("scenarios", "gravel-lane.yaml"), "--set", "terrain[1].random.iso8608=" + roadClass);
        Assert.Equal(ExitCode.BadInput, asked.Code);
        Assert.Contains("wanted one of: A, B, C, D, E, F, G, H", asked.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void A_drop_and_an_override_of_a_profile_are_bad_input()
    {
        Assert.Contains("drop: found a drop test", Asked.Of("terrain", Checkout.At("scenarios", "drop-test.yaml")).Messages, StringComparison.Ordinal);
        Asked asked = Asked.Of("terrain", Checkout.At("scenarios", "farm-track.csv"), "--set", "speed=3 m/s", "--case", "laden");
        Assert.Equal(ExitCode.BadInput, asked.Code);
        Assert.Contains("--set: found it beside a profile", asked.Messages, StringComparison.Ordinal);
        Assert.Contains("--case: found it beside a profile", asked.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void Twenty_random_kilometres_can_be_interrupted()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Equal(ExitCode.Interrupted, Asked.Of(stop.Token, "terrain", Checkout.At("scenarios", "gravel-lane.yaml"), "--set", "terrain[1].random.length=20000 m").Code);
    }

    [Fact]
    public void The_report_of_a_long_course_shows_spectra_and_says_what_the_weighted_figures_are_not()
    {
        Assert.Equal(ExitCode.Done, Asked.Of("run", Checkout.At("scenarios", "farm-track.yaml"), "--out", _scratch.At("long")).Code);
        Assert.Equal(ExitCode.Done, Asked.Of("run", Scenarios.QuarryLedge, "--out", _scratch.At("short")).Code);
        string[] spectra = ["response_spectra.png", "response_spectra.svg", "spectrum.png", "spectrum.svg"];
        Assert.Equal(spectra.Select(f => "long/" + f), _scratch.Files().Where(f => f.Contains("spectr", StringComparison.Ordinal)).Order(StringComparer.Ordinal));
        foreach (string folder in new[] { "long", "short" })
            Assert.Contains("not on a seat or a person", File.ReadAllText(_scratch.At(folder + "/report.html")), StringComparison.Ordinal);

        // 24 km/h over waves of 0.6 m are 11.1 Hz.
        Assert.Contains("Sprung mass and tyre load both swing most at 11.1 Hz", File.ReadAllText(_scratch.At("long/response_spectra.svg")), StringComparison.Ordinal);
    }

    private string Track(string profile) =>
        _scratch.Write("track.yaml", File.ReadAllText(Checkout.At("scenarios", "farm-track.yaml")).Replace("file: farm-track.csv", "file: " + Path.GetFileName(profile), StringComparison.Ordinal));
}
