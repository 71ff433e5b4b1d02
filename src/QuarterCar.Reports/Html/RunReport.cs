using QuarterCar.Reports.Json;
using QuarterCar.Reports.Units;
using QuarterCar.Reports.Words;
using QuarterCar.Studies;

namespace QuarterCar.Reports.Html;

/// <summary>report.html of one run: one file that needs nothing beside it, no script, no network; light and dark, and good on paper.</summary>
internal static class RunReport
{
    private static readonly string Style = ReadStyle();

    /// <summary>Writes the page.</summary>
    /// <param name="result">The run.</param>
    /// <param name="pictures">SVG and caption of each plot, in order.</param>
    public static string Write(RunResult result, IEnumerable<(string Svg, string Caption)> pictures)
    {
        var read = new Readable(result.Scenario.Units);
        var html = new HtmlText();
        Head(html, result.Scenario.Title);
        html.Element("h1", result.Scenario.Title).Element("p", Verdict.Of(result), "verdict");
        if (Verdict.MeetsMetal(result)) html.Raw($"<p class=\"alarm\"><strong>{HtmlText.Encode(Cautions.Metal)}</strong></p>");
        Warnings(html, result);
        Figures(html, result, read);
        Limits(html, result, read);
        Contacts(html, result, read);
        html.Element("h2", "Pictures");
        foreach (var (svg, caption) in pictures) html.Raw($"<figure>{svg}<figcaption>{HtmlText.Encode(caption)}</figcaption></figure>");
        Energy(html, result, read);
        html.Element("h2", "What was asked").Facts(ScenarioFacts.Of(result.Scenario));
        html.Element("h2", "What a quarter-car cannot know");
        html.Element("p", "One corner stands for the vehicle here. Look at these yourself:").List(Cautions.Unknown);
        html.Element("h2", "Springs and gas").Element("p", Cautions.Springs);
        html.Raw($"<footer><p>QuarterCar {SummaryJson.Version}. {HtmlText.Encode(Account(result))}</p></footer>");
        return html.Raw("</main></body></html>").ToString();
    }

    /// <summary>What stands before the first heading of every page.</summary>
    public static void Head(HtmlText html, string title)
    {
        html.Raw("<!doctype html>").Raw("<html lang=\"en\"><head><meta charset=\"utf-8\">");
        html.Raw("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">").Element("title", title);
        html.Raw($"<style>\n{Style}</style></head><body><main>");
    }

    private static void Warnings(HtmlText html, RunResult result)
    {
        if (result.Warnings.IsEmpty) return;
        html.Element("h2", result.Warnings.Length == 1 ? "One warning" : "Warnings").Raw("<ul>");
        foreach (var warning in result.Warnings)
            html.Raw($"<li>{HtmlText.Encode(warning.Message)} <span class=\"help\">({HtmlText.Encode(warning.Code)})</span></li>");
        html.Raw("</ul>");
    }

    private static void Figures(HtmlText html, RunResult result, Readable read)
    {
        html.Element("h2", "Figures").Raw("<div class=\"groups\">");
        Group(html, FigureWords.Moving(result, read));
        Group(html, FigureWords.Standing(result.Standing.Figures, read));
        html.Raw("</div>").Element("p", Cautions.Ride, "help");
    }

    private static void Group(HtmlText html, FigureGroup group)
    {
        string[] numbers = Align.AtPoint([.. group.Lines.Select(l => l.Number)], '\u2007', '\u2008');
        html.Raw($"<table><caption>{HtmlText.Encode(group.Heading)}</caption><tbody>");
        for (int i = 0; i < numbers.Length; i++)
        {
            var line = group.Lines[i];
            html.Raw($"<tr><th scope=\"row\">{HtmlText.Encode(line.Words)}</th><td class=\"n\">{HtmlText.Encode(numbers[i])}</td><td class=\"u\">{HtmlText.Encode(line.Unit)}</td></tr>");
        }

        html.Raw("</tbody></table>");
    }

    private static void Limits(HtmlText html, RunResult result, Readable read)
    {
        html.Element("h2", "Limits");
        if (result.Limits.IsEmpty)
        {
            html.Element("p", "The scenario sets no limits. Set some under “limits” in the scenario file to have a run judged.");
            return;
        }

        var rows = result.Limits.Select(l =>
        {
            var (value, limit) = FigureWords.OfLimit(l, read);
            return new[] { value.Words, limit.Number, value.Number, limit.Unit, FigureWords.StateOf(l) };
        }).ToList();
        html.Table("Largest allowed, and what came out", [("Figure", false), ("Allowed", true), ("Came out", true), ("Unit", false), ("", false)], rows);
    }

    private static void Contacts(HtmlText html, RunResult result, Readable read)
    {
        var contacts = result.Events.Where(e => e.Contact is not null).ToList();
        html.Element("h2", "Contacts");
        string? stands = StartContacts.Of(result);
        if (stands is not null) html.Element("p", $"The corner {stands}: that touch has no beginning in the run and no row here.");
        if (contacts.Count == 0)
        {
            string[] solid = [.. SolidSprings.Of(result).Select(s => $"the {s.Spring} spring goes solid {EventWords.Times(s.Times)}")];
            if (solid.Length > 0) html.Element("p", $"{(stands is null ? "No bump stop, no metal and no top-out is touched" : "No further contact begins")}, but {string.Join(" and ", solid)}: a nut takes the load through its coils.");
            else if (stands is null) html.Element("p", "Nothing touches: no bump stop, no metal, no bound coils, no top-out.");
            return;
        }

        var stops = result.Scenario.Corner.Coilover;
        var rows = contacts.Select(e => Row(e, StopWords.IsAssumed(e, stops), read)).ToList();
        string Unit(Dimension d) => read.Unit(d).Name;
        html.Table(
            "What touched, when and how hard",
            [
                ("Contact", false), ("at, s", true), ("speed, " + Unit(Dimension.Velocity), true), ("depth, " + Unit(Dimension.Length), true), ("for, s", true),
                ("energy, " + Unit(Dimension.Energy), true), ("peak force, " + Unit(Dimension.Force), true), ("", false),
            ],
            rows);
        if (rows.Any(r => r[^1].Length > 0)) html.Element("p", Cautions.AssumedLong, "help");
    }

    private static string[] Row(EventRow e, bool assumed, Readable read)
    {
        var c = e.Contact!;
        return
        [
            EventWords.Of(e.Event), read.Number(Dimension.Time, e.Time), read.Number(Dimension.Velocity, Math.Abs(c.ShaftVelocity)),
            read.Number(Dimension.Length, c.Penetration), read.Number(Dimension.Time, c.Duration), read.Number(Dimension.Energy, c.Energy),
            read.Number(Dimension.Force, c.PeakForce), assumed ? Cautions.Assumed : "",
        ];
    }

    private static void Energy(HtmlText html, RunResult result, Readable read)
    {
        html.Element("h2", "Energy");
        Group(html, FigureWords.Energy(result, read));
        html.Element("p", "Every run keeps account: what the road puts in, less what is lost, must be what is stored. The last line says how nearly that closes.", "help");
    }

    private static string Account(RunResult result)
    {
        var run = result.Figures.Run;
        return FormattableString.Invariant($"{run.End.Replace('_', ' ')} at {run.Time:0.###} s after {run.Steps} steps, {run.Rejected} rejected, {run.Evaluations} evaluations.");
    }

    private static string ReadStyle()
    {
        using var stream = typeof(RunReport).Assembly.GetManifestResourceStream("report.css")!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
