using System.Collections.Immutable;
using System.Globalization;

using QuarterCar.Reports.Html;
using QuarterCar.Reports.Units;
using QuarterCar.Reports.Words;
using QuarterCar.Studies;

namespace QuarterCar.Web.Answers;

/// <summary>Figures, warnings, limits and events of a run as pieces of the page, in the words of the reports.</summary>
internal static class FiguresHtml
{
    private static readonly ImmutableArray<(string Name, string Words)> s_deciding =
    [
        ("static.ride_height_m", "Ride height, shaft showing"),
        ("static.primary_rate_N_m", "Primary rate"),
        ("static.secondary_rate_N_m", "Secondary rate"),
        ("static.crossover_shaft_showing_m", "Crossover at showing"),
        ("travel.travel_use", "Stroke used"),
        ("travel.up_travel_used", "Up-travel used"),
        ("static.bind_clearance_full_bump_m", "Bind clearance, full bump"),
        ("acceleration.peak_g", "Peak acceleration, sprung"),
    ];

    /// <summary>The figures that decide.</summary>
    public static string Deciding(RunResult run)
    {
        var read = new Readable(run.Scenario.Units);
        var html = new HtmlText();
        html.Raw("<table class=\"figures\"><caption>What decides</caption><tbody>");
        foreach ((string name, string words) in s_deciding)
        {
            double? value = FigureTable.Value(name, run.Standing.Figures, run.Figures);
            FigureLine line = FigureWords.OfName(name, value, read);
            Row(html, words, line.Number, line.Unit, name, value);
        }

        double margin = run.Standing.Corner.EndOfTravel - run.Figures.Travel.MaxShaftTravel;
        Row(html, "Margin to metal, deepest", read.Number(Dimension.Length, margin), read.Unit(Dimension.Length).Name, "margin_to_metal_m", margin);
        html.Raw("</tbody></table>");
        html.Raw($"<p class=\"hardest\"><span>Hardest contact</span> {HtmlText.Encode(Hardest(run, read))}</p>");
        return html.ToString();
    }

    /// <summary>Every figure that people read.</summary>
    public static string All(RunResult run)
    {
        var read = new Readable(run.Scenario.Units);
        var html = new HtmlText();
        foreach (FigureGroup group in new[] { FigureWords.Moving(run, read), FigureWords.Standing(run.Standing.Figures, read), FigureWords.Energy(run, read) })
        {
            html.Raw($"<table class=\"figures\"><caption>{HtmlText.Encode(group.Heading)}</caption><tbody>");
            foreach (FigureLine line in group.Lines) Row(html, line.Words, line.Number, line.Unit, null, null);
            html.Raw("</tbody></table>");
        }

        return html.ToString();
    }

    /// <summary>The verdict in a sentence, what must be said first, warnings and limits.</summary>
    public static string Warnings(RunResult run)
    {
        var html = new HtmlText();
        var read = new Readable(run.Scenario.Units);
        if (Verdict.MeetsMetal(run)) html.Raw($"<p class=\"alarm\"><strong>{HtmlText.Encode(Cautions.Metal)}</strong></p>");
        foreach (LimitVerdict limit in run.Limits.Where(l => l.Broken))
        {
            (FigureLine value, FigureLine most) = FigureWords.OfLimit(limit, read);
            html.Element("p", $"Limit broken: {value.Words} {value.Number} {value.Unit}, allowed {most.Number} {most.Unit}.", "alarm");
        }

        if (run.Warnings.IsEmpty) return html.ToString();
        html.Element("h2", run.Warnings.Length == 1 ? "One warning" : "Warnings").Raw("<ul class=\"warnings\">");
        foreach (var warning in run.Warnings) html.Element("li", warning.Message);
        return html.Raw("</ul>").ToString();
    }

    /// <summary>The events, each a button that takes the cursor there.</summary>
    public static string Events(RunResult run)
    {
        const int most = 200;
        var read = new Readable(run.Scenario.Units);
        var html = new HtmlText();
        if (run.Events.IsEmpty) return html.Element("p", StartContacts.Of(run) is { } stands ? $"No event: the corner {stands}." : "Nothing touches, nothing crosses over: the shaft stays between its stops.", "empty").ToString();
        html.Raw("<ol class=\"events\">");
        EventRow[] shown = [.. run.Events.Where(e => !EventWords.IsRelease(e.Event))];
        foreach (EventRow e in shown.Take(most))
        {
            string hard = e.Contact is { } c ? $", {read.Text(Dimension.Velocity, Math.Abs(c.ShaftVelocity))}, peak {read.Text(Dimension.Force, c.PeakForce)}" : "";
            string css = EventWords.IsMetal(e.Event) ? " class=\"metal\"" : EventWords.IsContact(e.Event) ? " class=\"contact\"" : "";
            html.Raw(string.Create(CultureInfo.InvariantCulture, $"<li{css}><button type=\"button\" data-time=\"{e.Time:R}\"><b>{HtmlText.Encode(EventWords.Of(e.Event))}</b> at {HtmlText.Encode(read.Text(Dimension.Time, e.Time))}{HtmlText.Encode(hard)}</button></li>"));
        }

        html.Raw("</ol>");
        if (shown.Length > most) html.Element("p", string.Create(CultureInfo.InvariantCulture, $"The first {most} of {shown.Length}: the file of events has them all."), "hint-line");
        if (run.Events.Any(e => e.Contact is not null)) html.Element("p", Cautions.AssumedLong, "hint-line");
        return html.ToString();
    }

    private static string Hardest(RunResult run, Readable read)
    {
        EventRow? hardest = run.Events.Where(e => e.Contact is not null).MaxBy(e => e.Contact!.PeakForce);
        if (hardest is null) return StartContacts.Of(run) is { } stands ? $"none begins: the corner {stands}" : "none: nothing touches";
        string assumed = EventWords.IsMetal(hardest.Event) ? $" ({Cautions.Assumed})" : "";
        return $"{EventWords.Of(hardest.Event)}, {read.Text(Dimension.Force, hardest.Contact!.PeakForce)}{assumed} at {read.Text(Dimension.Time, hardest.Time)}";
    }

    private static void Row(HtmlText html, string words, string number, string unit, string? name, double? value)
    {
        string data = name is null ? "" : string.Create(CultureInfo.InvariantCulture, $" data-figure=\"{name}\" data-si=\"{value:R}\"");
        html.Raw($"<tr{data}><th scope=\"row\">{HtmlText.Encode(words)}</th><td class=\"n\">{HtmlText.Encode(number)}</td><td class=\"u\">{HtmlText.Encode(unit)}</td></tr>");
    }
}
