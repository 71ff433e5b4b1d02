using System.Collections.Immutable;

using QuarterCar.Reports.Tables;
using QuarterCar.Reports.Words;
using QuarterCar.Scenarios;
using QuarterCar.Studies;

namespace QuarterCar.Reports.Files;

/// <summary>A further format of the result tables.</summary>
public enum AlsoFormat
{
    /// <summary>Office Open XML workbook.</summary>
    Xlsx,

    /// <summary>Apache Parquet.</summary>
    Parquet,
}

/// <summary>Writes each CSV of a result folder in further formats beside it, before the folder is committed. They are made from the CSV itself, so that they cannot say anything else.</summary>
public static class AlsoFiles
{
    /// <summary>Beside the tables of a run: the trace's workbook holds Setup, Figures, Events and Trace.</summary>
    public static Action<ResultFolder>? Of(ImmutableArray<AlsoFormat> formats, RunResult result, CancellationToken cancel = default) => formats.IsEmpty ? null : folder =>
        Write(folder, formats, name => name != "trace" ? [] :
        [
            ("Setup", Setup(result.Scenario)),
            ("Figures", Figures([.. FigureTable.Names.Zip(FigureTable.Values(result.Standing.Figures, result.Figures))])),
            ("Events", Csv(folder, "events.csv")),
        ], cancel);

    /// <summary>Beside the tables of a standing corner.</summary>
    public static Action<ResultFolder>? Of(ImmutableArray<AlsoFormat> formats, StandingResult result, CancellationToken cancel = default) => formats.IsEmpty ? null : folder =>
        Write(folder, formats, _ => [("Setup", Setup(result.Scenario)), ("Figures", Figures([.. FigureTable.Standing.Select(f => (f.Name, f.Value(result.Figures)))]))], cancel);

    /// <summary>Beside the tables of a study: the table, and the base's setup where there is one base.</summary>
    public static Action<ResultFolder>? Of(ImmutableArray<AlsoFormat> formats, Scenario? study, CancellationToken cancel = default) => formats.IsEmpty ? null : folder =>
        Write(folder, formats, name => study is null || name.Contains('/', StringComparison.Ordinal) ? [] : [("Setup", Setup(study))], cancel);

    private static void Write(ResultFolder folder, ImmutableArray<AlsoFormat> formats, Func<string, IEnumerable<(string, TypedTable)>> first, CancellationToken cancel)
    {
        foreach (string csv in folder.Written.Where(n => n.EndsWith(".csv", StringComparison.Ordinal)).ToList())
        {
            string name = csv[..^".csv".Length];
            TypedTable table = Csv(folder, csv);
            if (formats.Contains(AlsoFormat.Xlsx)) folder.Write(name + ".xlsx", s => XlsxBook.Write(s, [.. first(name), (SheetName(name), table)], cancel));
            if (formats.Contains(AlsoFormat.Parquet)) folder.Write(name + ".parquet", s => ParquetTable.Write(s, table, cancel));
        }
    }

    private static TypedTable Csv(ResultFolder folder, string name) => TypedTable.OfCsv(() => folder.Read(name));

    private static TypedTable Setup(Scenario scenario) =>
        TypedTable.OfTexts(["what", "as asked"], ScenarioFacts.Of(scenario).Where(f => f.Fact.Length > 0).Select(f => new[] { f.Term, f.Fact }).Prepend(["title", scenario.Title]));

    private static TypedTable Figures(ImmutableArray<(string Name, double? Value)> figures) =>
        new([new("figure (SI, unit at the end)", true), new("value", false)], figures.Select(f => new object?[] { f.Name, f.Value is { } v && double.IsFinite(v) ? v : null }));

    // "setups/03/trace" → "Trace".
    private static string SheetName(string name) => name[(name.LastIndexOf('/') + 1)..] is var last ? char.ToUpperInvariant(last[0]) + last[1..] : name;
}
