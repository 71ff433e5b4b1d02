using QuarterCar.Reports.Html;
using QuarterCar.Reports.Json;
using QuarterCar.Reports.Units;
using QuarterCar.Reports.Words;
using QuarterCar.Studies.Setups;

namespace QuarterCar.Reports.Studies;

/// <summary>report.html of a comparison: one file that needs nothing beside it, no script, no network.</summary>
internal static class CompareReport
{
    private const int Beside = 4;

    /// <summary>Writes the page.</summary>
    /// <param name="head">The study.</param>
    /// <param name="tally">Fed from every row.</param>
    /// <param name="pictures">SVG and caption of each plot.</param>
    public static string Write(StudyHead head, CompareTally tally, IReadOnlyList<(string Svg, string Caption)> pictures)
    {
        var read = new Readable(head.Units);
        var html = new HtmlText();
        RunReport.Head(html, head.Title);
        html.Element("h1", head.Title).Element("p", tally.Verdict(head.OneObstacle), "verdict");
        if (tally.OnMetal > 0)
            html.Raw("<p class=\"alarm\"><strong>").Element("span", "A setup that meets metal or binds its coils on this course is not one to drive as it stands.").Raw("</strong></p>");
        if (head.Parts > 1) html.Element("p", head.PartWords, "help");
        Setups(html, head, tally);
        var ran = tally.First.Where(r => r.Figures is not null).ToList();
        Figures(html, ran, read);
        if (head.Wrenched) html.Element("p", SweepWords.NotFitted, "help");
        if (pictures.Count > 0) html.Element("h2", "Pictures");
        foreach (var (svg, caption) in pictures) html.Raw($"<figure>{svg}<figcaption>{HtmlText.Encode(caption)}</figcaption></figure>");
        html.Element("h2", "What a quarter-car cannot know");
        html.Element("p", "One corner stands for the vehicle here. Look at these yourself:").List(Cautions.Unknown);
        html.Element("h2", "Springs and gas").Element("p", Cautions.Springs);
        html.Raw($"<footer><p>QuarterCar {SummaryJson.Version}.</p></footer>");
        return html.Raw("</main></body></html>").ToString();
    }

    private static void Setups(HtmlText html, StudyHead head, CompareTally tally)
    {
        IReadOnlyList<StudyRow> rows = tally.First;
        html.Element("h2", "Setups");
        html.Table(
            rows.Count < head.Setups ? FormattableString.Invariant($"The first {rows.Count} of {head.Setups}; compare.csv has them all") : "What differs",
            [("", false), ("Setup", false), ("Stop nut", false), ("Remark", false)],
            [.. rows.Select(r => new[] { CompareTable.Mark(r.Index), r.Request.Title, r.NutWord, r.Figures is null ? "could not be run: " + r.Note : r.Note })]);
        string[] further = [.. tally.Failures.Where(f => f.Index > rows[^1].Index).Select(f => $"{CompareTable.Mark(f.Index)}, {f.Request.Title}, could not be run: {f.Note}.")];
        if (further.Length > 0) html.List(further);
        if (tally.Failed > tally.Failures.Count) html.Element("p", FormattableString.Invariant($"{tally.Failed - tally.Failures.Count} more could not be run; compare.csv says why."));
    }

    private static void Figures(HtmlText html, List<StudyRow> ran, Readable read)
    {
        if (ran.Count == 0) return;
        html.Element("h2", "Figures");
        var lines = CompareTable.Of(ran, read);
        string[][] cells = [.. ran.Select((_, i) => CompareTable.Column(lines, i, '\u2007', '\u2008'))];
        for (int from = 0; from < ran.Count; from += Beside)
        {
            int[] shown = [.. Enumerable.Range(from, Math.Min(Beside, ran.Count - from))];
            html.Table(
                $"In brackets the difference to {CompareTable.Mark(ran[0].Index)}",
                [("", false), .. shown.Select(i => (CompareTable.Mark(ran[i].Index), false))],
                [.. lines.Select((l, k) => shown.Select(i => cells[i][k]).Prepend(l.Words).ToArray())]);
        }

        if (ran.Count > 1) html.Element("p", CompareTable.Legend(lines), "help");
    }
}
