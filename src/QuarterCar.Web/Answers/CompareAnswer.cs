using System.Text.Json;

using QuarterCar.Model;
using QuarterCar.Reports.Html;
using QuarterCar.Reports.Studies;
using QuarterCar.Reports.Units;
using QuarterCar.Scenarios;
using QuarterCar.Studies;
using QuarterCar.Studies.Setups;
using QuarterCar.Web.State;

namespace QuarterCar.Web.Answers;

/// <summary>Setups beside each other: the table of differences, and what was changed in each.</summary>
internal sealed class CompareAnswer(Library library, Runs runs)
{
    /// <summary>Works it out and writes it.</summary>
    public void Write(Stream stream, CompareRequest request, CancellationToken cancel)
    {
        UnitSystem units = UnitWords.Of(request.Units) ?? UnitWords.Own(library, request.Setups[0]);
        Scenario?[] scenarios = [.. request.Setups.Select(s => library.Read(s, units).Scenario)];
        StudyRow[] rows = [.. scenarios.Select((s, i) => Row(s, i, units, cancel))];
        Excitation[] driven = [.. scenarios.Where((_, i) => rows[i].Figures is not null).Select(s => s!.Excitation)];
        using var json = new Utf8JsonWriter(stream);
        json.WriteStartObject();
        json.WriteString("table", Table(rows, new Readable(units), driven.All(d => Obstacle.IsSame(d, driven[0]))));
        json.WriteEndObject();
    }

    private StudyRow Row(Scenario? scenario, int index, UnitSystem units, CancellationToken cancel)
    {
        var request = new SetupRequest(index == 0 ? "now" : ((char)('A' + index - 1)).ToString(), []);
        if (scenario is null || PageLimits.Of(scenario) is not null) return new(index, request, null, "this setup has mistakes", null, null);
        try
        {
            return StudyRow.Of(index, request, null, "", runs.Of(units, scenario, cancel), keepRun: false);
        }
        catch (CornerException e)
        {
            return new(index, request, null, e.Message, null, null);
        }
    }

    // The star stands at the number; the difference has a cell of its own, so that both stand in line.
    private static string Cell(CompareCell cell, int setup)
    {
        bool best = cell.Rest.StartsWith('*');
        string number = HtmlText.Encode(cell.Number + (best ? "*" : "")), difference = HtmlText.Encode((best ? cell.Rest[1..] : cell.Rest).Trim());
        return $"<td class=\"n\">{number}</td>{(setup == 0 ? "" : $"<td class=\"n less\">{difference}</td>")}";
    }

    private static string Table(StudyRow[] rows, Readable read, bool oneObstacle)
    {
        StudyRow[] ran = [.. rows.Where(r => r.Figures is not null)];
        var html = new HtmlText();
        if (ran.Length > 0)
        {
            var lines = CompareTable.Of(ran, read);
            html.Raw("<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-label=\"Setups beside each other\"><table class=\"differences\"><caption>Setups beside each other; in brackets the difference to the first</caption><thead><tr><th scope=\"col\">figure</th>");
            foreach (StudyRow row in ran) html.Raw($"<th scope=\"col\" class=\"n\"{(row.Index == ran[0].Index ? "" : " colspan=\"2\"")}><span class=\"mark\" data-setup=\"{row.Index}\"></span>{HtmlText.Encode(row.Request.Title)}</th>");
            html.Raw("</tr></thead><tbody>");
            for (int i = 0; i < lines.Length; i++)
                html.Raw($"<tr data-figure=\"{lines[i].Name}\"><th scope=\"row\">{HtmlText.Encode(lines[i].Words)}</th>{string.Concat(lines[i].Cells.Select(Cell))}</tr>");
            html.Raw("</tbody></table></div>").Element("p", CompareTable.Legend(lines), "hint-line");
            if (!oneObstacle) html.Element("p", CompareTally.Unlike, "hint-line");
        }

        foreach (StudyRow row in rows.Where(r => r.Figures is null || r.Rest is not null)) html.Raw($"<p class=\"alarm\"><span class=\"mark\" data-setup=\"{row.Index}\"></span><span>{HtmlText.Encode(row.Request.Title)}</span>: {HtmlText.Encode(row.Note)}</p>");
        foreach (StudyRow row in rows.Where(r => r.Stop is not null)) html.Raw($"<p class=\"hint-line\"><span class=\"mark\" data-setup=\"{row.Index}\"></span><span>{HtmlText.Encode(row.Request.Title)}</span>: {HtmlText.Encode(row.Note)} from the start, which counts as no touch</p>");
        return html.ToString();
    }
}
