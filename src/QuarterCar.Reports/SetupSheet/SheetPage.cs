using System.Globalization;

using QuarterCar.Reports.Html;
using QuarterCar.Reports.Json;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Reading;

namespace QuarterCar.Reports.SetupSheet;

/// <summary>The setup sheet for the person with the wrench: one page on A4 and on Letter, in both unit systems; one file that needs nothing beside it, no script, no network.</summary>
public static class SheetPage
{
    /// <summary>Stands in every sheet that we write: only a file that has it is ours to replace.</summary>
    public const string Mark = "<meta name=\"generator\" content=\"QuarterCar setup sheet\">";

    /// <summary>Writes the page.</summary>
    public static string Write(SheetSubject subject)
    {
        Scenario scenario = subject.Result.Scenario;
        SetupStep[] steps = [.. SetupSteps.Of(subject)];
        string facts = Facts(subject);
        var room = new PageRoom(subject.Result.Warnings, steps, SheetTables.AfterDriveRows(subject), facts.Length);
        var html = new HtmlText();
        html.Raw("<!doctype html>").Raw("<html lang=\"en\"><head><meta charset=\"utf-8\">").Raw(Mark);
        html.Raw("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">").Element("title", "Setup sheet: " + scenario.Title);
        html.Raw($"<style>\n{SheetStyle.Text}</style></head><body><main>");
        html.Element("h1", scenario.Title).Element("p", facts, "facts");
        if (room.Warnings.Length > 0) html.Raw("<div class=\"warnings\">").List(room.Warnings).Raw("</div>");
        html.Raw("<div class=\"top\"><figure>");
        (string svg, string note) = CoiloverDrawing.Of(subject, room.Drawing);
        html.Raw(svg).Element("figcaption", note).Raw("</figure><div class=\"tables\">");
        SheetTables.Write(html, subject);
        html.Raw("</div></div>");
        Steps(html, subject, steps);
        SheetTables.AfterDrive(html, subject);
        html.Raw($"<footer>{HtmlText.Encode(SheetCautions.Defer)} QuarterCar {SummaryJson.Version}, content {HtmlText.Encode(scenario.Hash)}</footer>");
        return html.Raw("</main></body></html>").ToString();
    }

    private static string Facts(SheetSubject subject)
    {
        Scenario scenario = subject.Result.Scenario;
        string date = subject.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        string load = $"load case: {subject.Case ?? "as written"}", changes = subject.Changes.IsEmpty ? "" : $"changed: {string.Join(", ", subject.Changes)}";

        // Where both set one key the later has it: the order says which.
        string setup = changes.Length == 0 ? load
            : subject.Case is null ? $"{load} · {changes}"
            : subject.CaseComesLast ? $"{changes}, then {load}"
            : $"{load}, then {changes}";
        if (subject.Nut is { } nut) setup += nut == NutRule.Stays ? " · stop nut stays on the body" : " · stop-nut gap set anew";
        return $"Setup sheet · {date} · {setup} · {Path.GetFileName(scenario.File)}, content {scenario.Hash[..Math.Min(12, scenario.Hash.Length)]}";
    }

    private static void Steps(HtmlText html, SheetSubject subject, SetupStep[] steps)
    {
        (string first, string second) = subject.Units.Heads;
        html.Raw($"<table class=\"steps\"><caption>Order of work</caption><thead><tr><th></th><th>do</th><th class=\"n\">{first}</th><th class=\"n\">{second}</th><th class=\"mind\">caution</th></tr></thead><tbody>");
        int number = 0;
        foreach (SetupStep step in steps)
        {
            html.Raw(string.Create(CultureInfo.InvariantCulture, $"<tr><td class=\"no\">{++number}</td><td><b>{HtmlText.Encode(step.Head)}.</b> {HtmlText.Encode(step.Do)}</td>"));
            html.Raw("<td class=\"n set\">" + string.Concat(step.Numbers.Select(n => $"<div>{Letter(n)}{HtmlText.Encode(n.First)}</div>")) + "</td>");
            html.Raw("<td class=\"n set\">" + string.Concat(step.Numbers.Select(n => $"<div>{(n.Second.Length == 0 ? "&nbsp;" : HtmlText.Encode(n.Second))}</div>")) + "</td>");
            html.Raw($"<td class=\"mind\">{HtmlText.Encode(step.Caution)}</td></tr>");
        }

        html.Raw("</tbody></table>");
    }

    private static string Letter(StepNumber number) => number.Letter.Length == 0 ? "" : $"<span class=\"letter\">{number.Letter}</span> ";
}

/// <summary>The sheet's own look.</summary>
internal static class SheetStyle
{
    /// <summary>CSS.</summary>
    public static string Text { get; } = Read();

    private static string Read()
    {
        using var stream = typeof(SheetStyle).Assembly.GetManifestResourceStream("sheet.css")!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
