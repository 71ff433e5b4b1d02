using QuarterCar.Reports.Words;
using QuarterCar.Studies.Sweeps;

namespace QuarterCar.Reports.Studies;

/// <summary>What `tweak` prints: which step helps most, then every step with its side effects, then what appears or vanishes.</summary>
public static class TweakText
{
    /// <summary>Says what the changes are not.</summary>
    internal const string NotAdded = "Each step is run alone from the setup as written; two steps together need a run of their own.";

    /// <summary>Writes it.</summary>
    /// <param name="result">The answer.</param>
    /// <param name="writer">Where it goes.</param>
    /// <param name="colour">True where the writer is a terminal that shows colour.</param>
    public static void Write(TweakResult result, TextWriter writer, bool colour = false)
    {
        var words = new TweakWords(result);
        var page = new TextPage(writer, colour);
        page.Paragraph(result.Scenario.Title).Paragraph(words.Verdict() + ".", "bold");
        if (words.MeetsMetal) page.Paragraph(Cautions.Metal, "bold red");
        page.Paragraph(NotAdded);
        page.Rows(words.Heading(), words.Rows(), [1, 2, 3, 4], words.Heads());
        string[] remarks = [.. words.Remarks()];
        if (remarks.Length > 0)
            page.Gap().Paragraph(TweakWords.RemarksHead, "bold");
        foreach (string remark in remarks)
            page.Paragraph("  " + remark);
        foreach (string mark in words.Marks(Cautions.Springs))
            page.Gap().Paragraph(mark);
        page.Flush();
    }
}
