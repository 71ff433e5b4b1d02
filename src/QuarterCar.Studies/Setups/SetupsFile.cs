using System.Collections.Immutable;

using CsvHelper;

using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Keys;
using QuarterCar.Scenarios.Reading;

namespace QuarterCar.Studies.Setups;

/// <summary>Reads a list of setups: CSV with a column a path (values with their unit, as in a scenario), optionally a column title, a row a setup.</summary>
public static class SetupsFile
{
    private const string Wanted = "CSV with a header: a column a path into the scenario, 'title' optional, and a row a setup";

    private static readonly CsvReaderOptions s_settings = new() { TrimWhitespace = true, TrackLineNumbers = true, MaxRecordSize = ProfileReader.LongestRow };

    /// <summary>The axis; null where problems were noted.</summary>
    public static SetupAxis? Read(string file, ValueCheck check)
    {
        int before = check.Problems.Count;
        try
        {
            using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.Read);
            using var csv = CsvReader.Create(stream, s_settings, leaveOpen: true);
            SetupAxis? axis = Read(csv, file, check);
            return check.Problems.Count > before ? null : axis;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            check.Problems.Note(new Place(file, 0, 0), "", TextFiles.Why(file, e), Wanted);
        }
        catch (Exception e) when (e is CsvFormatException or InvalidOperationException)
        {
            check.Problems.Note(new Place(file, 0, 0), "", Texts.NotCsv(e.Message), Wanted);
        }

        return null;
    }

    private static SetupAxis? Read(CsvReader csv, string file, ValueCheck check)
    {
        string[] header = csv.Headers.ToArray();
        if (header.Length == 0 || header.All(h => h is "" or "title"))
        {
            check.Problems.Note(new Place(file, header.Length == 0 ? 0 : 1, 0), "", header.Length == 0 ? Texts.EmptyFile : Texts.Header(string.Join(",", header)), Wanted);
            return null;
        }

        KnownPath?[] known = [.. header.Select((h, i) => Known(header, i, file, check))];
        var points = ImmutableArray.CreateBuilder<SetupRequest>();
        while (csv.Read() && !check.Problems.IsFull)
        {
            if (Row(csv, header, known, file, check) is { } point) points.Add(point);
        }

        if (points.Count == 0) check.Problems.Note(new Place(file, 0, 0), "", Texts.Rows(0), Wanted);
        return new SetupAxis([.. header.Where(h => h != "title")], points.ToImmutable());
    }

    private static KnownPath? Known(string[] header, int i, string file, ValueCheck check)
    {
        var place = new Place(file, 1, 0);
        if (Array.IndexOf(header, header[i]) < i) check.Problems.Note(place, header[i], "a second column of this name", "each path once");
        return header[i] == "title" ? null : check.Path(header[i], place);
    }

    private static SetupRequest? Row(CsvReader csv, string[] header, KnownPath?[] known, string file, ValueCheck check)
    {
        var place = new Place(file, (int)csv.LineNumber, 0);
        if (csv.FieldCount != header.Length)
        {
            string found = csv.FieldCount == 1 ? "1 cell" : FormattableString.Invariant($"{csv.FieldCount} cells");
            string at = csv.FieldCount < header.Length ? header[csv.FieldCount] : header[^1];
            check.Problems.Note(place, at, found, FormattableString.Invariant($"{header.Length}, one a column; this is where they part"));
            return null;
        }

        var values = ImmutableArray.CreateBuilder<SetupValue>();
        string title = "";
        for (int i = 0; i < header.Length; i++)
        {
            string cell = csv.GetString(i);
            if (header[i] == "title") title = cell;
            else if (cell.Length == 0) check.Problems.Note(place, header[i], Texts.Nothing, "a value with its unit, or none to leave the key out");
            else
            {
                var value = SetupValue.Of(header[i], cell);
                if (known[i] is { } path) check.Value(path, value, place);
                values.Add(value);
            }
        }

        var made = SetupRequest.Of(values.ToImmutable());
        return title.Length > 0 ? made with { Title = title } : made;
    }
}
