using QuarterCar.Reports.Units;
using QuarterCar.Reports.Words;
using QuarterCar.Studies.Setups;

namespace QuarterCar.Reports.Studies;

/// <summary>What `compare` prints: the verdict, the setups by letter, their figures beside each other, what could not be run.</summary>
public static class CompareText
{
    /// <summary>Setups that are shown; the files have them all.</summary>
    public const int Most = 40;

    private const int Beside = 9; // more columns than these nobody reads

    /// <summary>Writes it.</summary>
    /// <param name="head">The study.</param>
    /// <param name="tally">Fed from every row.</param>
    /// <param name="writer">Where it goes.</param>
    /// <param name="colour">True where the writer is a terminal that shows colour.</param>
    public static void Write(StudyHead head, CompareTally tally, TextWriter writer, bool colour = false)
    {
        var read = new Readable(head.Units);
        var page = new TextPage(writer, colour);
        IReadOnlyList<StudyRow> rows = tally.First;
        page.Paragraph(head.Title).Paragraph(tally.Verdict(head.OneObstacle), "bold");
        if (head.PartWords.Length > 0) page.Paragraph(head.PartWords);
        page.Rows(rows.Count < head.Setups && head.Parts == 1 ? FormattableString.Invariant($"Setups, the first {rows.Count} of {head.Setups}") : "Setups", [.. rows.Select(r => new[] { CompareTable.Mark(r.Index), r.Request.Title, r.NutWord.Length > 0 ? "stop nut " + r.NutWord : "", r.Figures is null ? "" : r.Note })], [], gives: [1, 3]);
        var ran = rows.Where(r => r.Figures is not null).ToList();
        string legend = CompareTable.Caution;
        if (ran.Count is > 0 and <= Beside) legend = Figures(page, ran, read);
        else if (ran.Count > 0) Short(page, ran, read);
        foreach (StudyRow row in tally.Failures) page.Gap().Paragraph($"{CompareTable.Mark(row.Index)} could not be run: {row.Note}.");
        if (tally.Failed > tally.Failures.Count) page.Gap().Paragraph(FormattableString.Invariant($"{tally.Failed - tally.Failures.Count} more could not be run; compare.csv says why."));
        if (tally.Ran > 1) page.Gap().Paragraph(legend);
        if (tally.Ran > 0 && head.Wrenched)
        {
            if (tally.Ran == 1) page.Gap();
            page.Paragraph(SweepWords.NotFitted).Gap().Paragraph(Cautions.Springs);
        }

        page.Flush();
    }

    // Gives what stands below it.
    private static string Figures(TextPage page, List<StudyRow> ran, Readable read)
    {
        var lines = CompareTable.Of(ran, read);
        string[][] cells = [.. ran.Select((_, i) => CompareTable.Column(lines, i))];
        for (int from = 0; from < ran.Count;)
        {
            // The first column has no differences, so that three fit at first and two below.
            int[] shown = [.. Enumerable.Range(from, Math.Min(from == 0 ? 3 : 2, ran.Count - from))];
            page.Rows(
                from == 0 ? $"Figures, in brackets the difference to {CompareTable.Mark(ran[0].Index)}" : "Figures, continued",
                [.. lines.Select((l, k) => shown.Select(i => cells[i][k]).Prepend(l.Words).ToArray())],
                [],
                ["", .. shown.Select(i => CompareTable.Mark(ran[i].Index))]);
            from += shown.Length;
        }

        return CompareTable.Legend(lines);
    }

    private static void Short(TextPage page, List<StudyRow> ran, Readable read)
    {
        string[] names = ["travel.up_travel_used", "acceleration.peak_g", "tyre.least_N", "counts.bump_stop", "counts.bottom_out", "counts.coil_bind"];
        page.Rows(
            "Figures",
            [.. ran.Select(r => new[] { CompareTable.Mark(r.Index) }.Concat(names.Select(n => CompareTable.Text(n, r, read))).ToArray())],
            [],
            ["", "up-travel", "peak", "least tyre", "bump stop", "metal", "bind"]);
    }
}
