using System.Collections.Immutable;
using System.Diagnostics;
using System.Text.Json;

using QuarterCar.Model;
using QuarterCar.Reports.Plots;
using QuarterCar.Reports.Units;
using QuarterCar.Reports.Words;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Studies;
using QuarterCar.Web.Form;
using QuarterCar.Web.State;

namespace QuarterCar.Web.Answers;

/// <summary>The answer to one turn of something: the changes, the form, the mistakes or the run.</summary>
internal sealed class CornerAnswer(Library library, Runs runs)
{
    // Nothing to draw, and every figure a dash: the page says why instead.
    private static readonly Problem s_outOfRange = new(Library.Uploaded, 0, "", "numbers that leave their range as the run begins", "values in proportion (gas volume and exponent, rates, weights)");

    /// <summary>Works it out and writes it.</summary>
    public void Write(Stream stream, CornerRequest request, CancellationToken cancel)
    {
        long start = Stopwatch.GetTimestamp();
        UnitSystem? asked = UnitWords.Of(request.Units);
        UnitSystem units = asked ?? UnitWords.Own(library, request.Setup);
        SetupState setup = new Turn(library, units).Apply(request.Setup, request.Edits ?? [], request.Steps ?? [], cancel);
        SetupState typed = setup;
        Problem? held = null;
        try
        {
            setup = Holds.Apply(library, setup, request.Hold, [.. request.Base ?? []], cancel);
        }
        catch (CornerException e)
        {
            held = OfCorner(e);
        }

        ReadSetup read = library.Read(setup, units);
        (RunResult? run, ImmutableArray<Problem> problems) = held is null ? Run(read, units, cancel) : (null, [held]);
        TimeSpan computed = Stopwatch.GetElapsedTime(start);
        using var json = new Utf8JsonWriter(stream);
        json.WriteStartObject();
        Head(json, setup, units);
        Form(json, read, units, request.Form, setup.LoadCase, GivenWay(request, typed, setup));
        Mistakes(json, problems);
        if (run is not null) Result(json, run);
        json.Short("computedMs", computed.TotalMilliseconds);
        json.Short("answeredMs", Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        json.WriteEndObject();
    }

    private (RunResult? Run, ImmutableArray<Problem> Problems) Run(ReadSetup read, UnitSystem units, CancellationToken cancel)
    {
        if (read.Scenario is not { } scenario) return (null, read.Problems);
        if (PageLimits.Of(scenario) is { } tooMuch) return (null, [tooMuch]);
        try
        {
            RunResult run = runs.Of(units, scenario, cancel);
            return RunSamples.HasAny(run) ? (run, []) : (null, [s_outOfRange]);
        }
        catch (CornerException e)
        {
            return (null, [OfCorner(e)]);
        }
    }

    private static Problem OfCorner(CornerException e) =>
        new(Library.Uploaded, 0, e.Key.StartsWith("--", StringComparison.Ordinal) ? "" : e.Key, e.Found, e.Wanted.Replace(", or --nut reset", "", StringComparison.Ordinal).Replace("--nut reset, or ", "", StringComparison.Ordinal));

    private static void Head(Utf8JsonWriter json, SetupState setup, UnitSystem units)
    {
        json.WriteString("units", units == UnitSystem.Us ? "us" : "si");
        json.List("changes", setup.Changes, c =>
        {
            json.WriteString("path", c.Path);
            json.WriteString("text", c.Text);
        });
        var read = new Readable(units);
        json.WriteStartObject("scale");
        foreach (Dimension dimension in (Dimension[])[Dimension.Length, Dimension.Distance, Dimension.Velocity, Dimension.Acceleration, Dimension.Force, Dimension.Time])
        {
            ReadableUnit unit = read.Unit(dimension);
            json.WriteStartObject(dimension.ToString().ToLowerInvariant());
            json.WriteString("name", unit.Name);
            json.WriteNumber("perSi", unit.PerSi);
            json.WriteNumber("decimals", unit.Decimals);
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    // What was typed or pressed just now where something held has the last word.
    private static Change[] GivenWay(CornerRequest request, SetupState typed, SetupState held) =>
    [
        .. (request.Edits ?? []).Select(e => e.Path).Concat((request.Steps ?? []).Select(s => s.Path)).Distinct()
            .Select(p => Holds.GivenWay(typed, held, p)).OfType<Change>(),
    ];

    private static void Form(Utf8JsonWriter json, ReadSetup read, UnitSystem units, string? shown, string? loadCase, Change[] givenWay)
    {
        if (read.Edited is null) return;
        ImmutableArray<FieldGroup> groups = new FieldList(read.Edited, units).Groups();
        string key = FormHtml.Key(groups);
        json.WriteStartObject("form");
        json.WriteString("key", key);
        if (key != shown) json.WriteString("html", FormHtml.Write(groups));
        json.WriteStartObject("values");
        foreach (Field field in groups.SelectMany(g => g.Fields)) json.WriteString(field.Path, field.Shown);
        json.WriteEndObject();
        json.WriteStartArray("cases");
        foreach (LoadCase one in read.Scenario?.Cases ?? []) json.WriteStringValue(one.Name);
        json.WriteEndArray();
        json.List("notes", givenWay, c =>
        {
            string now = groups.SelectMany(g => g.Fields).FirstOrDefault(f => f.Path == c.Path)?.Shown ?? "";
            json.WriteString("path", c.Path);
            json.WriteString("words", $"What is held sets this{(now.Length > 0 ? $": {now} in place of {c.Text}" : "")}. Hold nothing to set it yourself.");
        });
        json.WriteString("caseWords", read.Scenario?.Cases.FirstOrDefault(c => c.Name == loadCase) is { } taken ? OnTop(taken) : "");
        json.WriteEndObject();
    }

    private static string OnTop(LoadCase taken) =>
        $"On top of the values below: {string.Join(", ", taken.Changes.Select(c => $"{FieldWords.Of(c.Key).ToLowerInvariant()} {c.Value}"))}.";

    private static void Mistakes(Utf8JsonWriter json, IEnumerable<Problem> problems) => json.List("problems", problems, p =>
    {
        json.WriteString("path", p.Key);
        json.WriteNumber("line", p.File == Library.Uploaded ? p.Line : 0);
        json.WriteString("words", $"Found {p.Found}; wanted {p.Wanted}.");
    });

    private static void Result(Utf8JsonWriter json, RunResult run)
    {
        json.WriteStartObject("result");
        json.WriteString("title", run.Scenario.Title);
        json.WriteString("hash", run.Scenario.Hash);
        json.WriteString("verdict", Verdict.Of(run));
        json.WriteString("figures", FiguresHtml.Deciding(run));
        json.WriteString("allFigures", FiguresHtml.All(run));
        json.WriteString("warnings", FiguresHtml.Warnings(run));
        json.WriteString("events", FiguresHtml.Events(run));
        Pictures.Write(json, run);
        json.WriteEndObject();
    }
}

/// <summary>Unit systems by the words of the page.</summary>
internal static class UnitWords
{
    /// <summary>Null for anything but us and si.</summary>
    public static UnitSystem? Of(string? word) => word switch { "us" => UnitSystem.Us, "si" => UnitSystem.Si, _ => null };

    /// <summary>The scenario's own.</summary>
    public static UnitSystem Own(Library library, SetupState setup) => library.Read(setup, null) is { Document: { } document } ? FirstUnit.Of(document.Root) : UnitSystem.Si;
}
