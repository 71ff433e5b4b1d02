using QuarterCar.Reports.Units;
using QuarterCar.Studies;

namespace QuarterCar.Reports.Words;

/// <summary>What `run` prints: the verdict first, then figures, then warnings.</summary>
public static class RunText
{
    /// <summary>Writes it.</summary>
    /// <param name="result">The run.</param>
    /// <param name="writer">Where it goes.</param>
    /// <param name="colour">True where the writer is a terminal that shows colour.</param>
    public static void Write(RunResult result, TextWriter writer, bool colour = false)
    {
        var read = new Readable(result.Scenario.Units);
        var page = new TextPage(writer, colour);
        page.Paragraph(result.Scenario.Title).Paragraph(Verdict.Of(result), "bold");
        if (Verdict.MeetsMetal(result)) page.Paragraph(Cautions.Metal, "bold red");
        page.Group(FigureWords.Moving(result, read)).Group(FigureWords.Standing(result.Standing.Figures, read));
        Contacts(page, result, read);
        Limits(page, result, read);
        page.Warnings(result.Warnings).Gap().Paragraph(Cautions.Springs).Flush();
    }

    private static void Contacts(TextPage page, RunResult result, Readable read)
    {
        const int most = 12;
        var contacts = result.Events.Where(e => e.Contact is not null).ToList();
        if (contacts.Count == 0) return;
        var hardest = contacts.OrderByDescending(e => e.Contact!.PeakForce).Take(most).Select(e => e.Time).ToHashSet();
        string[][] rows =
        [
            .. contacts.Where(e => hardest.Contains(e.Time)).Select(e => new[]
            {
                EventWords.Of(e.Event), read.Number(Dimension.Time, e.Time), read.Number(Dimension.Velocity, Math.Abs(e.ShaftVelocity)),
                read.Number(Dimension.Force, e.Contact!.PeakForce), read.Number(Dimension.Length, e.Contact.Penetration), read.Number(Dimension.Energy, e.Contact.Energy),
            }),
        ];
        string heading = contacts.Count > most ? $"Contacts, the {most} hardest of {contacts.Count}" : "Contacts";
        page.Rows(heading, rows, [1, 2, 3, 4, 5],
        [
            "", "at, s", "speed, " + read.Unit(Dimension.Velocity).Name, "force, " + read.Unit(Dimension.Force).Name,
            "depth, " + read.Unit(Dimension.Length).Name, "energy, " + read.Unit(Dimension.Energy).Name,
        ]);
        if (StopWords.Below(contacts, result.Scenario.Corner.Coilover) is { } below) page.Paragraph(below);
    }

    private static void Limits(TextPage page, RunResult result, Readable read)
    {
        if (result.Limits.IsEmpty) return;
        page.Rows("Limits", [
            .. result.Limits.Select(l =>
            {
                var (value, limit) = FigureWords.OfLimit(l, read);
                return new[] { value.Words, value.Number, "of " + limit.Number, limit.Unit, FigureWords.StateOf(l) };
            }),
        ], [1]);
    }
}
