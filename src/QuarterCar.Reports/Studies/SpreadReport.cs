using QuarterCar.Reports.Html;
using QuarterCar.Reports.Json;
using QuarterCar.Reports.Units;
using QuarterCar.Reports.Words;
using QuarterCar.Studies.Spreads;

namespace QuarterCar.Reports.Studies;

/// <summary>report.html of a spread study: one file that needs nothing beside it, no script, no network.</summary>
internal static class SpreadReport
{
    /// <summary>Writes the page.</summary>
    /// <param name="head">The study.</param>
    /// <param name="result">What came out.</param>
    /// <param name="pictures">SVG and caption of each plot.</param>
    public static string Write(StudyHead head, SpreadResult result, IReadOnlyList<(string Svg, string Caption)> pictures)
    {
        var read = new Readable(head.Units);
        var html = new HtmlText();
        RunReport.Head(html, head.Title);
        html.Element("h1", head.Title).Element("p", SpreadWords.Verdict(result), "verdict");
        if (result.Samples.OnMetal > 0) html.Raw($"<p class=\"alarm\"><strong>{HtmlText.Encode(Cautions.Metal)}</strong></p>");
        if (head.Parts > 1) html.Element("p", head.PartWords, "help");
        html.Element("h2", "Pictures");
        foreach (var (svg, caption) in pictures) html.Raw($"<figure>{svg}<figcaption>{HtmlText.Encode(caption)}</figcaption></figure>");
        html.Element("h2", "Figures");
        html.Table(
            "Spread over the samples",
            [("Figure", false), ("5 %", true), ("Median", true), ("95 %", true), ("Mean", true), ("Unit", false)],
            [.. SpreadWords.Figures(result).Select(f => new[] { f.Words }.Concat(SpreadWords.Cells(f.Spread, read)).ToArray())]);
        html.Table("Share of the samples with it", [("Event", false), ("Share", false)], [.. SpreadWords.Touched(result).Select(t => new[] { t.Words, SpreadWords.Share(t.Share) })]);
        Shares(html, result);
        html.Element("h2", "How it was asked");
        html.Element("p", FormattableString.Invariant($"{head.Setups} samples by a Latin hypercube over {head.Paths.Length} tolerances: {string.Join(", ", head.Paths)}. Normal tolerances are 95 % half-widths, uniform ones bounds. Percentiles lie on straight lines between the sorted samples. spread.csv has every sample."));
        html.Element("h2", "What a quarter-car cannot know");
        html.Element("p", "One corner stands for the vehicle here. Look at these yourself:").List(Cautions.Unknown);
        html.Element("h2", "Springs and gas").Element("p", Cautions.Springs);
        html.Raw($"<footer><p>QuarterCar {SummaryJson.Version}.</p></footer>");
        return html.Raw("</main></body></html>").ToString();
    }

    private static void Shares(HtmlText html, SpreadResult result)
    {
        var told = result.VarianceShare.Where(v => v.Rest is not null).ToList();
        if (told.Count == 0) return;
        html.Table(
            "What the variance comes from",
            [("Tolerance", false), .. told.Select(t => (SpreadWords.Traced(t.Figure, result), false))],
            [
                .. result.Samples.Paths.Select((path, i) => told.Select(t => SpreadWords.Share(t.Shares[i].Value)).Prepend(path).ToArray()),
                [.. told.Select(t => SpreadWords.Share(t.Rest)).Prepend("the rest")],
            ]);
        html.Element("p", SpreadWords.SharesHelp, "help");
    }
}
