using QuarterCar.Reports.Words;
using QuarterCar.Studies.Sweeps;

namespace QuarterCar.Reports.Studies;

/// <summary>What `reach` prints: how far, what breaks first, how closely that is known.</summary>
public static class ReachText
{
    /// <summary>Writes it.</summary>
    /// <param name="result">The answer.</param>
    /// <param name="writer">Where it goes.</param>
    /// <param name="colour">True where the writer is a terminal that shows colour.</param>
    public static void Write(ReachResult result, TextWriter writer, bool colour = false)
    {
        var words = new ReachWords(result);
        var page = new TextPage(writer, colour);
        page.Paragraph(result.Scenario.Title);
        if (result.Setups is [var one])
        {
            page.Paragraph(words.Verdict(one) + ".", "bold").Paragraph(words.Resolution(one));
            if (words.Again(one) is { Length: > 0 } again)
                page.Paragraph(again);
            if (words.Nut(one) is { Length: > 0 } nut) page.Paragraph(nut);
            if (words.NotJudged(one) is { Length: > 0 } open) page.Paragraph(open);
            page.Gap().Paragraph(SweepWords.Caution).Paragraph(SweepWords.NotFitted);
        }
        else
        {
            page.Paragraph(ReachPlot.Title(result) + ".", "bold").Paragraph(words.Resolution());
            page.Gap().Paragraph(SweepWords.Caution).Paragraph(SweepWords.NotFitted);
            page.Rows("Largest that holds, setup by setup", words.Rows(), [1], ["", words.Path.Label, "breaks first", ""], gives: [0, 2, 3]);
        }

        if (words.Wrenched)
            page.Gap().Paragraph(Cautions.Springs);
        page.Flush();
    }
}
