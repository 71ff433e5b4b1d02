using QuarterCar.Reports.Units;
using QuarterCar.Reports.Words;
using QuarterCar.Studies.Spreads;

namespace QuarterCar.Reports.Studies;

/// <summary>What `spread` prints: the verdict first, then figures, contacts, what contributes.</summary>
public static class SpreadText
{
    /// <summary>Writes it.</summary>
    /// <param name="head">The study.</param>
    /// <param name="result">What came out.</param>
    /// <param name="writer">Where it goes.</param>
    /// <param name="colour">True where the writer is a terminal that shows colour.</param>
    public static void Write(StudyHead head, SpreadResult result, TextWriter writer, bool colour = false)
    {
        var read = new Readable(head.Units);
        var page = new TextPage(writer, colour);
        page.Paragraph(head.Title).Paragraph(SpreadWords.Verdict(result), "bold");
        if (head.PartWords.Length > 0) page.Paragraph(head.PartWords);
        var figures = SpreadWords.Figures(result).Select(f => new[] { f.Words }.Concat(SpreadWords.Cells(f.Spread, read)).ToArray()).ToList();
        if (figures.Count > 0)
            page.Rows("Spread over the samples", figures, [1, 2, 3, 4], ["", "5 %", "median", "95 %", "mean", ""]);
        if (result.Samples.Ran > 0)
            page.Rows("Share of the samples", [.. SpreadWords.Touched(result).Select(t => new[] { t.Words, SpreadWords.Share(t.Share) })], []);
        foreach (VarianceShare traced in result.VarianceShare.Where(v => v.Rest is not null))
        {
            page.Rows(SpreadWords.Traced(traced.Figure, result) + ": what its variance comes from",
            [
                .. traced.Shares.OrderByDescending(s => s.Value).Select(s => new[] { s.Key, SpreadWords.Share(s.Value) }),
                ["the rest", SpreadWords.Share(traced.Rest)],
            ], []);
        }

        page.Flush();
    }
}
