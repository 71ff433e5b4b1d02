using System.Collections.Immutable;

using CsvHelper;

using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Keys;
using QuarterCar.Scenarios.Reading;

namespace QuarterCar.Studies.Setups;

/// <summary>Reads a list of setups: CSV with a column a path (values with their unit, as in a scenario), optionally a column title, a row a setup.</summary>
public static class SetupsFile
{
    /// <summary>Setups allowed in one list: they are kept in memory while the study runs.</summary>
    public const int MostRows = 1_000_000;

    private const string Wanted = "CSV with a header: a column a path into the scenario, 'title' optional, and a row a setup";

    private static readonly CsvReaderOptions s_settings = new() { TrimWhitespace = true, TrackLineNumbers = true, MaxRecordSize = ProfileReader.LongestRow };

    /// <summary>The axis of a file; null where problems were noted.</summary>
    /// <param name="file">The file.</param>
    /// <param name="check">Judges the values and takes the mistakes.</param>
    /// <param name="copy">Takes what was read of the file; null for no copy.</param>
    public static SetupAxis? Read(string file, ValueCheck check, Stream? copy = null)
    {
        try
        {
            using var stream = CopyingStream.Open(file, copy);
            return Read(stream, file, check);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            check.Problems.Note(new Place(file, 0, 0), "", TextFiles.Why(file, e), Wanted);
            return null;
        }
    }

    /// <summary>The axis of a stream; null where problems were noted.</summary>
    /// <param name="stream">CSV in UTF-8.</param>
    /// <param name="file">Named in problems.</param>
    /// <param name="check">Judges the values and takes the mistakes.</param>
    public static SetupAxis? Read(Stream stream, string file, ValueCheck check)
    {
        int before = check.Problems.Count;
        using var csv = CsvReader.Create(stream, s_settings, leaveOpen: true);
        try
        {
            SetupAxis? axis = Read(csv, file, check);
            return check.Problems.Count > before ? null : axis;
        }
        catch (Exception e) when (e is CsvFormatException or InvalidOperationException)
        {
            check.Problems.Note(CsvPlace.Of(file, csv, e), "", Texts.NotCsv(e.Message), Wanted);
            return null;
        }
    }

    private static SetupAxis? Read(CsvReader csv, string file, ValueCheck check)
    {
        string[] header = csv.Headers.ToArray();
        if (header.Length == 0 || header.All(h => h is "" or "title"))
        {
            check.Problems.Note(new Place(file, header.Length == 0 ? 0 : 1, 0), "", header.Length == 0 ? Texts.EmptyFile : Texts.Header(string.Join(",", header)), Wanted);
            return null;
        }

        var seen = new HashSet<string>(StringComparer.Ordinal);
        KnownPath?[] known = [.. header.TakeWhile(_ => !check.Problems.IsFull).Select(h => Known(h, seen.Add(VariedPaths.Canonical(h)), file, check))];
        if (check.Problems.IsFull) return null;
        var points = ImmutableArray.CreateBuilder<SetupRequest>();
        while (csv.Read() && !check.Problems.IsFull)
        {
            if (points.Count == MostRows)
            {
                check.Problems.Note(new Place(file, (int)csv.LineNumber, 0), "", Texts.ProfileTooLong(MostRows), FormattableString.Invariant($"at most {MostRows:#,0} setups in one list"));
                break;
            }

            if (Row(csv, header, known, file, check) is { } point) points.Add(point);
        }

        if (points.Count == 0) check.Problems.Note(new Place(file, 0, 0), "", Texts.Rows(0), Wanted);
        return new SetupAxis([.. header.Where(h => h != "title")], points.ToImmutable());
    }

    private static KnownPath? Known(string name, bool first, string file, ValueCheck check)
    {
        var place = new Place(file, 1, 0);
        if (!first) check.Problems.Note(place, name, "a second column of this name", "each path once");
        return name == "title" ? null : check.Path(name, place);
    }

    private static string Title(string cell, Place place, ValueCheck check)
    {
        if (!ValueReader.IsShortLine(cell)) check.Problems.Note(place, "title", Texts.Quote(cell), Texts.OneLineOfText(ValueReader.LongestText));
        return cell;
    }

    private static SetupRequest? Row(CsvReader csv, string[] header, KnownPath?[] known, string file, ValueCheck check)
    {
        var place = new Place(file, (int)csv.LineNumber, 0);
        if (csv.FieldCount != header.Length)
        {
            string at = csv.FieldCount < header.Length ? header[csv.FieldCount] : header[^1];
            check.Problems.Note(place, at, Texts.Cells(csv.FieldCount), FormattableString.Invariant($"{header.Length}, one a column; this is where they part"));
            return null;
        }

        var values = ImmutableArray.CreateBuilder<SetupValue>();
        var meant = new List<KnownPath>();
        string title = "";
        for (int i = 0; i < header.Length; i++)
        {
            string cell = csv.GetString(i);
            if (header[i] == "title") title = Title(cell, place, check);
            else if (cell.Length == 0) check.Problems.Note(place, header[i], Texts.Nothing, "a value with its unit, or none to leave the key out");
            else
            {
                if (known[i] is not { } path) continue; // the header's mistake is noted, and its text may be as long as the file
                values.Add(SetupValue.Of(header[i], cell));
                meant.Add(path);
            }
        }

        for (int i = 0; i < meant.Count; i++) check.Value(meant[i], values[i], place, values);
        var made = SetupRequest.Of(values.ToImmutable());
        return title.Length > 0 ? made with { Title = title } : made;
    }
}
