using QuarterCar.Reports.Html;
using QuarterCar.Reports.Json;
using QuarterCar.Reports.Words;
using QuarterCar.Scenarios;
using QuarterCar.Studies.Sweeps;

namespace QuarterCar.Reports.Studies;

/// <summary>report.html of sweep, reach and tweak: one file that needs nothing beside it.</summary>
internal static class StudyPage
{
    /// <summary>Of a sweep.</summary>
    public static string Of(StudyHead head, SweepResult result, IEnumerable<(string Svg, string Caption)> pictures)
    {
        var words = new SweepWords(result);
        HtmlText html = Begin(result.Scenario, words.Verdict() + ".", [head.PartWords, words.Nearest(), words.Nut(), words.NotJudged(), words.Count(), SweepWords.Caution, SweepWords.NotFitted]);
        Pictures(html, pictures);
        if (words.Leaders() is { Count: > 0 } leaders)
            html.Element("h2", "Best inside the limits").Table("Best first", [.. words.LeaderHeads().Select((h, i) => (h, i < leaders[0].Length - 1))], leaders);
        html.Element("h2", "What broke where");
        if (words.Breaks() is { Count: > 0 } breaks)
            html.Table("Limits that broke", [("Limit", false), ("points", true), ("worst", false), ("where", false)], breaks);
        else
            html.Element("p", result.Rows == result.Failed ? "No point was run." : "Every point that ran holds every limit.");
        return End(html, result.Scenario);
    }

    /// <summary>Of a reach.</summary>
    public static string Of(ReachResult result, IEnumerable<(string Svg, string Caption)> pictures)
    {
        var words = new ReachWords(result);
        string[] sentences = result.Setups is [var one] ? [words.Resolution(one), words.Again(one), words.Nut(one), words.NotJudged(one)] : [words.Resolution()];
        HtmlText html = Begin(result.Scenario, (result.Setups is [var alone] ? words.Verdict(alone) : ReachPlot.Title(result)) + ".", [.. sentences, SweepWords.Caution, SweepWords.NotFitted]);
        Pictures(html, pictures);
        html.Element("h2", "Largest that holds").Table("Setup by setup", [("Setup", false), (words.Path.Label, true), ("breaks first", false), ("", false)], words.Rows());
        return End(html, result.Scenario);
    }

    /// <summary>Of a tweak.</summary>
    public static string Of(TweakResult result)
    {
        var words = new TweakWords(result);
        HtmlText html = Begin(result.Scenario, words.Verdict() + ".", [TweakText.NotAdded], words.MeetsMetal ? Cautions.Metal : null);
        html.Element("h2", "Steps").Table(words.Heading(), [.. words.Heads().Select((h, i) => (h, i > 0))], words.Rows());
        string[] remarks = [.. words.Remarks()];
        if (remarks.Length > 0)
            html.Element("h2", TweakWords.RemarksHead).List(remarks);
        foreach (string mark in words.Marks("read “Springs and gas” below first."))
            html.Element("p", mark);
        return End(html, result.Scenario);
    }

    private static HtmlText Begin(Scenario scenario, string verdict, IEnumerable<string> sentences, string? alarm = null)
    {
        var html = new HtmlText();
        RunReport.Head(html, scenario.Title);
        html.Element("h1", scenario.Title).Element("p", verdict, "verdict");
        if (alarm is not null)
            html.Raw($"<p class=\"alarm\"><strong>{HtmlText.Encode(alarm)}</strong></p>");
        foreach (string sentence in sentences.Where(s => s.Length > 0))
            html.Element("p", sentence);
        return html;
    }

    private static void Pictures(HtmlText html, IEnumerable<(string Svg, string Caption)> pictures)
    {
        foreach (var (svg, caption) in pictures)
            html.Raw($"<figure>{svg}<figcaption>{HtmlText.Encode(caption)}</figcaption></figure>");
    }

    private static string End(HtmlText html, Scenario scenario)
    {
        html.Element("h2", "What was asked").Facts(ScenarioFacts.Of(scenario));
        html.Element("h2", "What a quarter-car cannot know").Element("p", "One corner stands for the vehicle here. Look at these yourself:").List(Cautions.Unknown);
        html.Element("h2", "Springs and gas").Element("p", Cautions.Springs);
        return html.Raw($"<footer><p>QuarterCar {SummaryJson.Version}.</p></footer></main></body></html>").ToString();
    }
}
