using QuarterCar.Model.Statics;
using QuarterCar.Reports.Html;
using QuarterCar.Reports.Units;
using QuarterCar.Reports.Words;
using QuarterCar.Studies;

namespace QuarterCar.Reports.SetupSheet;

/// <summary>The small tables of the sheet: where it stands and under which load case, springs, gas; and what to measure after the first drive.</summary>
internal static class SheetTables
{
    // More rows than this do not fit on the page; check lists them all.
    private const int MostCases = 3;

    /// <summary>Writes them.</summary>
    public static void Write(HtmlText html, SheetSubject subject)
    {
        Stands(html, subject);
        Springs(html, subject);
        if (subject.Handling.Gas is { } gas) Gas(html, subject, gas);
    }

    private static void Stands(HtmlText html, SheetSubject subject)
    {
        StandingResult result = subject.Result;
        CaseStanding[] others = [.. result.Cases.Where(c => c.Name != subject.Case)];
        Begin(html, "Where it stands" + (others.Length <= MostCases ? "" : FormattableString.Invariant($" ({others.Length - MostCases} more load {(others.Length - MostCases == 1 ? "case" : "cases")}: check)")));
        Row(html, "Ride height, shaft showing", subject.Units.Pair(Dimension.Length, result.Figures.RideHeight));
        foreach (CaseStanding one in others.Take(MostCases))
            Row(html, "Ride height, " + Short(one.Name), subject.Units.Pair(Dimension.Length, one.Static.RideHeight));
        if (StrokeRates.Of(result, new Readable(result.Scenario.Units)) is { Nut: not NutPlace.None } rates)
            Row(html, "Slider meets stop nut at showing", rates.Crossover is { } c ? subject.Units.Pair(Dimension.Length, c.Showing) : (rates.Nut == NutPlace.Never ? "not in the stroke" : "from full droop", ""));
        if (result.Scenario.Corner.Coilover.BumpStop is { OnAxle: false } bump) Row(html, "Bump stop touches at showing", subject.Units.Pair(Dimension.Length, bump.Length));
        Row(html, "Clear of coil bind at full bump", subject.Units.Pair(Dimension.Length, result.Figures.BindClearanceFullBump));
        html.Raw("</tbody></table>");
    }

    private static void Springs(HtmlText html, SheetSubject subject)
    {
        var set = subject.Result.Scenario.Corner.Coilover.Springs;
        html.Raw("<table><caption>Springs</caption><thead><tr><th></th><th class=\"n\">rate</th><th class=\"n\">free length</th><th class=\"n\">at ride height</th></tr></thead><tbody>");
        foreach ((string name, var spring) in set.Placed)
        {
            double loaded = spring.FreeLength - subject.Result.Springs.Single(s => s.Position == name).CompressionRideHeight;
            string cells = string.Concat(new[]
            {
                subject.Units.Pair(Dimension.Rate, spring.Rate), subject.Units.Pair(Dimension.Length, spring.FreeLength), subject.Units.Pair(Dimension.Length, loaded),
            }.Select(p => $"<td class=\"n\">{HtmlText.Encode(p.First)}<br>{HtmlText.Encode(p.Second)}</td>"));
            html.Raw($"<tr><td>{(set.Upper is null ? "spring" : name)}</td>{cells}</tr>");
        }

        html.Raw("</tbody></table>");
    }

    private static void Gas(HtmlText html, SheetSubject subject, GasPressures gas)
    {
        double exponent = subject.Result.Scenario.Corner.Coilover.Gas!.Exponent;
        Begin(html, FormattableString.Invariant($"Gas, gauge (fast: polytropic, exponent {exponent:0.##})"));
        Row(html, "Fully extended, as charged", subject.Units.Pressure(gas.Charge));
        Row(html, "At ride height, at rest", subject.Units.Pressure(gas.RideHeight));
        Row(html, "Full bump, fast from ride height", subject.Units.Pressure(gas.FullBump));
        Row(html, FormattableString.Invariant($"The same from {gas.HotAt - 273.15:0} °C"), subject.Units.Pressure(gas.FullBumpHot));
        html.Raw("</tbody></table>");
    }

    /// <summary>How many rows <see cref="AfterDrive"/> writes.</summary>
    public static int AfterDriveRows(SheetSubject subject) => (Blanks(subject).Count + 1) / 2;

    /// <summary>What to measure after the first drive, with room for what was found.</summary>
    public static void AfterDrive(HtmlText html, SheetSubject subject)
    {
        List<string> blanks = Blanks(subject);
        html.Raw("<table class=\"found\"><caption>After the first drive: measure and write down</caption><tbody>");
        for (int i = 0; i < blanks.Count; i += 2)
            html.Raw($"<tr>{Blank(blanks[i])}{(i + 1 < blanks.Count ? Blank(blanks[i + 1]) : "<td></td><td></td>")}</tr>");
        html.Raw("</tbody></table>");
    }

    private static List<string> Blanks(SheetSubject subject)
    {
        List<string> blanks = ["E, settled from above", "E, settled from below", "Least showing (ring on the shaft)"];
        if (subject.Result.Figures.StopNutGapRideHeight is not null) blanks.Insert(2, "D, slider to stop nut, standing");
        blanks.AddRange(["Nuts moved since set?", "Marks on coils, plate, bump stop?"]);
        if (subject.Handling.Gas is not null) blanks.Add("Gas, extended and cold");
        blanks.Add("Date, driven, by");
        return blanks;
    }

    private static void Begin(HtmlText html, string caption) => html.Raw($"<table><caption>{HtmlText.Encode(caption)}</caption><tbody>");

    private static void Row(HtmlText html, string words, (string First, string Second) pair) =>
        html.Raw($"<tr><td>{HtmlText.Encode(words)}</td><td class=\"n\">{HtmlText.Encode(pair.First)}</td><td class=\"n\">{HtmlText.Encode(pair.Second)}</td></tr>");

    private static string Blank(string words) => $"<td>{HtmlText.Encode(words)}</td><td class=\"blank\"></td>";

    private static string Short(string name) => name.Length <= 24 ? name : name[..23] + "…";
}
