using System.Text;
using System.Text.Json;

using QuarterCar.Model;
using QuarterCar.Reports.SetupSheet;
using QuarterCar.Reports.Tables;
using QuarterCar.Scenarios;
using QuarterCar.Studies;
using QuarterCar.Web.State;

namespace QuarterCar.Web.Answers;

/// <summary>Files of a setup to take away: the scenario, the setup sheet, the traces.</summary>
internal sealed class FileAnswer(Library library, Runs runs)
{
    private const long MostRows = 200_000;

    /// <summary>Writes name, type and text, or why there is none.</summary>
    public void Write(Stream stream, FileRequest request, CancellationToken cancel)
    {
        UnitSystem units = UnitWords.Of(request.Units) ?? UnitWords.Own(library, request.Setup);
        SetupState setup = request.Kind == "scenario" ? request.Setup.Own : request.Setup;
        ReadSetup read = library.Read(setup, units);
        using var json = new Utf8JsonWriter(stream);
        json.WriteStartObject();
        try
        {
            (string name, string type, string text) = read.Scenario is { } scenario && (request.Kind == "scenario" || PageLimits.Of(scenario) is null) ? Of(request.Kind, setup, read, units, cancel) : ("", "", "");
            if (name.Length == 0) json.WriteString("problem", "Correct the mistakes first.");
            json.WriteString("name", name);
            json.WriteString("type", type);
            json.WriteString("text", text);
        }
        catch (CornerException e)
        {
            json.WriteString("problem", e.Message);
        }

        json.WriteEndObject();
    }

    private (string Name, string Type, string Text) Of(string kind, SetupState setup, ReadSetup read, UnitSystem units, CancellationToken cancel) => kind switch
    {
        "scenario" => ("scenario.yaml", "application/yaml", Saving.Of(setup, read)),
        "sheet" => ("setup-sheet.html", "text/html", Sheet(setup, read)),
        "trace" => ("trace.csv", "text/csv", Csv(s => CsvTable.Write(s, Columns.Trace, Rows(runs.Of(units, read.Scenario!, cancel)), units, cancel))),
        "events" => ("events.csv", "text/csv", Csv(s => CsvTable.Write(s, Columns.Events, runs.Of(units, read.Scenario!, cancel).Events, units, cancel))),
        _ => ("", "", ""),
    };

    private static IEnumerable<Sample> Rows(RunResult run) => run.Track.RowCount <= MostRows ? run.Track.Rows() : throw new CornerException("run.sample", "more rows than the page hands out", "a longer sample time, or the command line");

    private string Sheet(SetupState setup, ReadSetup read)
    {
        var cases = read.Scenario!.Cases.Select(c => (c.Name, Loaded(setup with { Case = c.Name }, read.Scenario.Units)));
        StandingResult standing = StandingStudy.Of(read.Scenario with { File = Path.GetFileName(read.Scenario.File) }, cases);
        var today = DateOnly.FromDateTime(TimeProvider.System.GetLocalNow().DateTime);
        return SheetPage.Write(new SheetSubject(standing, today, setup.LoadCase, setup.Sets, CaseComesLast: true));
    }

    // A row that is not there would look like a case that is not there.
    private Scenario Loaded(SetupState setup, UnitSystem units)
    {
        ReadSetup read = library.Read(setup, units);
        return read.Scenario ?? throw new CornerException($"load case {setup.Case}, {read.Problems[0].Key}", read.Problems[0].Found, read.Problems[0].Wanted);
    }

    private static string Csv(Action<Stream> write)
    {
        using var bytes = new MemoryStream();
        write(bytes);
        return Encoding.UTF8.GetString(bytes.GetBuffer(), 0, (int)bytes.Length);
    }
}
