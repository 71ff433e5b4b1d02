using System.Text.RegularExpressions;

using QuarterCar.Reports.Html;
using QuarterCar.Reports.Plots;
using QuarterCar.Reports.Tests.Reference;
using QuarterCar.Studies;

namespace QuarterCar.Reports.Tests;

public sealed class RunReportTests
{
    [Fact]
    public void The_page_needs_nothing_outside_itself_and_no_script()
    {
        string page = Page(ReferenceRun.Read("quarry_ledge"));
        Assert.Empty(Regex.Matches(page, "(src|href)=\"(?!#)").Select(m => m.Value));
        Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("@import", page, StringComparison.Ordinal);
        Assert.All(Regex.Matches(page, "https?://[^\"' <]+").Select(m => m.Value), u => Assert.StartsWith("http://www.w3.org/", u, StringComparison.Ordinal));
        Assert.All(Regex.Matches(page, "url\\(([^)]*)\\)").Select(m => m.Groups[1].Value), u => Assert.StartsWith("#", u, StringComparison.Ordinal));
    }

    [Fact]
    public void Text_from_the_scenario_is_encoded()
    {
        var run = ReferenceRun.Read("quarry_ledge");
        const string bad = "<script>alert(1)</script> & \"co\"";
        run = run with { Scenario = run.Scenario with { Title = bad, File = bad }, Warnings = [new("not_checked", bad)] };
        string page = Page(run);
        Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(4, Regex.Count(page, "&lt;script&gt;alert\\(1\\)&lt;/script&gt; &amp; &quot;co&quot;"));
    }

    [Fact]
    public void The_verdict_comes_before_every_figure()
    {
        string page = Page(ReferenceRun.Read("quarry_ledge"));
        Assert.InRange(page.IndexOf("class=\"verdict\"", StringComparison.Ordinal), 0, page.IndexOf("<table", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("hard_bottom", true)]
    [InlineData("coil_bind", true)]
    [InlineData("quarry_ledge", false)]
    public void Metal_or_bound_coils_make_it_a_setup_not_to_drive(string name, bool met) =>
        Assert.Equal(met, Page(ReferenceRun.Read(name)).Contains("not one to drive", StringComparison.Ordinal));

    [Fact]
    public void Peaks_on_an_assumed_stiffness_are_no_strength_figures_and_peaks_of_a_measured_stop_are()
    {
        var run = ReferenceRun.Read("hard_bottom");
        Assert.Equal(5, Regex.Count(Page(run), ">not a strength figure<"));
        var stop = new Model.StopData(6e6, 0.1);
        var coilover = run.Scenario.Corner.Coilover with { BottomOut = stop, TopOut = stop };
        run = run with { Scenario = run.Scenario with { Corner = run.Scenario.Corner with { Coilover = coilover } } };
        Assert.DoesNotContain("not a strength figure", Page(run), StringComparison.Ordinal);
    }

    [Fact]
    public void The_caution_on_springs_and_gas_stands_once() =>
        Assert.Single(Regex.Matches(Page(ReferenceRun.Read("quarry_ledge")), "spring compressor"));

    [Fact]
    public void Ids_are_unique_over_all_pictures_of_the_page()
    {
        string[] ids = [.. Regex.Matches(Page(ReferenceRun.Read("quarry_ledge")), "\\bid=\"([^\"]+)\"").Select(m => m.Groups[1].Value)];
        Assert.NotEmpty(ids);
        Assert.Equal(ids.Length, ids.Distinct().Count());
    }

    private static string Page(RunResult run) => RunReport.Write(run, RunPlots.Of(run).Select(s => (s.Svg(), s.Caption)));
}
