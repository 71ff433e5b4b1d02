using QuarterCar.Reports.Words;
using QuarterCar.Studies.Sweeps;

namespace QuarterCar.Reports.Studies;

/// <summary>What `sweep` prints: the best point first, how near it is to a limit, then the runners-up and what broke where.</summary>
public static class SweepText
{
    /// <summary>Writes it.</summary>
    /// <param name="head">The study.</param>
    /// <param name="result">The sweep.</param>
    /// <param name="writer">Where it goes.</param>
    /// <param name="colour">True where the writer is a terminal that shows colour.</param>
    public static void Write(StudyHead head, SweepResult result, TextWriter writer, bool colour = false)
    {
        var words = new SweepWords(result);
        var page = new TextPage(writer, colour);
        page.Paragraph(result.Scenario.Title).Paragraph(words.Verdict() + ".", "bold");
        foreach (string sentence in (string[])[head.PartWords, words.Nearest(), words.Nut(), words.NotJudged()])
        {
            if (sentence.Length > 0)
                page.Paragraph(sentence);
        }

        page.Paragraph(words.Count()).Gap().Paragraph(SweepWords.Caution).Paragraph(SweepWords.NotFitted);
        if (words.Leaders() is { Count: > 0 } leaders)
            page.Rows("Best inside the limits", leaders, [.. Enumerable.Range(0, leaders[0].Length - 1)], words.LeaderHeads(), gives: [leaders[0].Length - 1]);
        if (words.Breaks() is { Count: > 0 } breaks)
        {
            page.Gap().Paragraph("What broke where", "bold");
            foreach (string[] b in breaks)
                page.Paragraph($"  {b[0]}: {b[1]} points, {(b[2].Length > 0 ? $"worst {b[2]}, " : "")}{b[3]}");
        }

        if (head.Wrenched)
            page.Gap().Paragraph(Cautions.Springs);
        page.Flush();
    }
}
