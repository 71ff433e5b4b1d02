using System.Globalization;

using QuarterCar.Model.Selection;
using QuarterCar.Reports.Units;
using QuarterCar.Scenarios.Picking;
using QuarterCar.Scenarios.SpringLists;

namespace QuarterCar.Reports.Words;

/// <summary>What `pick` prints: the choice, how sure it is, bind and fit, then rates and preload, what lies around it, warnings.</summary>
public static class PickText
{
    private const int Shown = 10;

    /// <summary>Writes it.</summary>
    /// <param name="result">The ranked sets.</param>
    /// <param name="input">What was asked.</param>
    /// <param name="writer">Where it goes.</param>
    /// <param name="colour">True where the writer is a terminal that shows colour.</param>
    public static void Write(PickResult result, PickInput input, TextWriter writer, bool colour = false)
    {
        var read = new Readable(input.Units);
        var page = new TextPage(writer, colour);
        page.Paragraph(PickVerdict.Of(result, read), "bold");
        if (input.Invented) page.Paragraph(InventedSprings.Caution);
        PickSet[] shown = [.. result.Sets.DistinctBy(s => (s.Springs.Tender?.Rate, s.Springs.Upper?.Rate, s.Springs.Lower.Rate)).Take(Shown)];
        Loads(page, result, read);
        BindAndFit(page, result, shown, read);
        Rates(page, shown, read);
        Neighbours(page, result, read);
        page.Gap().Paragraph($"Required primary rate: {read.Text(Dimension.Rate, result.RequiredPrimaryRate)}, which is {read.Text(Dimension.Force, result.SpringForce)} on the springs over "
            + $"{read.Text(Dimension.Length, result.Data.Travel)} of travel and {read.Text(Dimension.Length, result.Data.Preload)} of wanted preload.");
        page.Paragraph($"Ranked: {Pick.Ranking}.");
        if (Names(result.Sets[0], input) is { Length: > 0 } names) page.Paragraph($"The first set in the list's words: {names}.");
        page.Warnings([.. PickWarnings.Of(result.Sets[0], result.Data, input.Units)]);
        page.Gap().Paragraph(Cautions.Springs).Flush();
    }

    private static void Loads(TextPage page, PickResult result, Readable read)
    {
        double wanted = result.Data.RideHeight;
        page.Rows(
            "How sure: ride height of the first set if the load is off, nothing turned",
            [
                .. result.Loads.Select(l => new[]
                {
                    Signed(100 * l.Share) + "\u00a0%", read.Number(Dimension.Force, l.Load), read.Number(Dimension.Length, l.RideHeight), read.Number(Dimension.Length, l.RideHeight - wanted),
                }),
            ],
            [1, 2, 3],
            ["load", read.Unit(Dimension.Force).Name, $"ride height, {read.Unit(Dimension.Length).Name}", "change"]);
    }

    private static void BindAndFit(TextPage page, PickResult result, PickSet[] shown, Readable read)
    {
        string Of(double? metres) => read.Number(Dimension.Length, metres);
        page.Rows(
            $"Bind and fit, best first, each pair of rates once ({read.Unit(Dimension.Rate).Name}; {read.Unit(Dimension.Length).Name}): clear of coil bind at full bump, ride heights from least to most preload",
            [
                .. shown.Select(s => new[]
                {
                    PickVerdict.Rates(s.Springs, read), Of(s.UpperClearance), Of(s.LowerClearance), Of(s.Range?.Lowest), Of(s.Range?.Highest), Verdict(s, result.Data),
                }),
            ],
            [1, 2, 3, 4],
            gives: [5],
            heads: ["set", "upper clear", "lower clear", "lowest", "highest", "checks"]);
    }

    private static void Rates(TextPage page, PickSet[] shown, Readable read)
    {
        string Of(double? metres) => read.Number(Dimension.Length, metres);
        bool tenders = shown.Any(s => s.Springs.Tender is not null);
        page.Rows(
            $"Rates and preload, same order ({read.Unit(Dimension.Rate).Name}; {read.Unit(Dimension.Length).Name}): free lengths from the coil nut down",
            [
                .. shown.Select(s => new[]
                {
                    PickVerdict.Rates(s.Springs, read), string.Join('/', s.Springs.All.Select(p => Of(p.FreeLength))), Of(s.Preload), Of(s.Settle),
                    read.Number(Dimension.Rate, s.PrimaryRate), Step(s.RateStep),
                }.Concat(tenders ? [Tender(s)] : Array.Empty<string>()).ToArray()),
            ],
            [2, 3, 4, 5],
            gives: [6],
            heads: ["set", "free", "preload", "settles", "primary", "step", .. tenders ? ["tender"] : Array.Empty<string>()]);
    }

    private static void Neighbours(TextPage page, PickResult result, Readable read)
    {
        if (result.Neighbours.IsEmpty) return;
        string Of(double? metres) => read.Number(Dimension.Length, metres);
        page.Rows(
            $"Around the first set, the list's next rates ({read.Unit(Dimension.Rate).Name}; {read.Unit(Dimension.Length).Name}): ride height if its preload stays, preload if its ride height stays",
            [
                .. result.Neighbours.Select(n => new[]
                {
                    PickVerdict.Rates(n.Set.Springs, read), n.Place, Of(n.RideHeight), Of(n.Set.Preload), Of(n.Set.BindClearance), read.Number(Dimension.Rate, n.Set.PrimaryRate), Step(n.Set.RateStep),
                }),
            ],
            [2, 3, 4, 5, 6],
            gives: [],
            heads: ["set", "changed", "height", "preload", "clear of bind", "primary", "step"]);
    }

    private static string Names(PickSet set, PickInput input) => string.Join(
        ", ",
        new[] { ("tender", set.Springs.Tender, input.Tenders), ("upper", set.Springs.Upper, input.Springs), ("lower", set.Springs.Lower, input.Springs) }
            .Where(p => p.Item2 is not null && p.Item3?.NameOf(p.Item2) is not null)
            .Select(p => $"{p.Item1} '{p.Item3!.NameOf(p.Item2!)}'"));

    private static string Verdict(PickSet set, PickData data) => set.Failed != PickChecks.None ? PickWarnings.Short(set.Failed)
        : string.Join(", ", new[]
        {
            "passes",
            set.Remarks.HasFlag(PickRemarks.Bows) ? "but bows" : "",
            set.Remarks.HasFlag(PickRemarks.TenderWorks) ? "tender not solid" : "",
            PickWarnings.NotCheckedShort(set, data),
        }.Where(p => p.Length > 0));

    private static string Tender(PickSet set) => set.TenderSolid switch { null => "none", true => "solid", false => "not solid" };

    private static string Step(double step) => step.ToString("F2", CultureInfo.InvariantCulture);

    private static string Signed(double percent) =>
        (percent > 0 ? "+" : percent < 0 ? Readable.Minus : "") + Math.Abs(percent).ToString("F0", CultureInfo.InvariantCulture);
}
