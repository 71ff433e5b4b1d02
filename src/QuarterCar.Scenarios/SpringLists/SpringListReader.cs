using System.Collections.Immutable;
using System.Globalization;

using CsvHelper;

using QuarterCar.Model;
using QuarterCar.Scenarios.Reading;

namespace QuarterCar.Scenarios.SpringLists;

/// <summary>
/// Reads a list of springs: CSV with a header, columns rate_&lt;unit&gt;, free_length_&lt;unit&gt;, solid_length_&lt;unit&gt; and optional ones
/// (<see cref="SpringColumns"/>); lines that begin with # are remarks.
/// </summary>
public static class SpringListReader
{
    /// <summary>Springs allowed in one list.</summary>
    public const int MostRows = 10_000;

    private static readonly CsvReaderOptions _settings = new()
    {
        TrimWhitespace = true,
        TrackLineNumbers = true,
        MaxRecordSize = ProfileReader.LongestRow,
        CommentPrefix = '#',
    };

    /// <summary>The springs of a file; null where a problem was noted.</summary>
    /// <param name="path">The file.</param>
    /// <param name="problems">Takes the mistakes, each with its line and column.</param>
    /// <param name="copy">Takes what was read of the file; null for no copy.</param>
    public static SpringList? Read(string path, ProblemList problems, Stream? copy = null)
    {
        try
        {
            using var file = CopyingStream.Open(path, copy);
            return Read(file, path, problems);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            problems.Note(new Place(path, 0, 0), "", TextFiles.Why(path, e), SpringListTexts.ListFile);
            return null;
        }
    }

    /// <summary>The springs of a stream; null where a problem was noted.</summary>
    /// <param name="stream">CSV in UTF-8.</param>
    /// <param name="name">Named in problems.</param>
    /// <param name="problems">Takes the mistakes.</param>
    public static SpringList? Read(Stream stream, string name, ProblemList problems)
    {
        using var csv = CsvReader.Create(stream, _settings, leaveOpen: true);
        var before = problems.Count;
        try
        {
            var header = csv.Headers.ToArray();
            if (header.Length == 0)
            {
                problems.Note(new Place(name, 0, 0), "", Texts.EmptyFile, SpringListTexts.ListFile);
                return null;
            }

            if (SpringColumns.Find(header, name, problems) is not { } columns)
            {
                return null;
            }

            var rows = Rows(csv, columns, name, problems);
            return problems.Count > before ? null : new SpringList(name, rows);
        }
        catch (Exception e) when (e is CsvFormatException or InvalidOperationException)
        {
            problems.Note(CsvPlace.Of(name, csv, e), "", Texts.NotCsv(e.Message), SpringListTexts.ListFile);
            return null;
        }
    }

    private static ImmutableArray<ListedSpring> Rows(CsvReader csv, SpringColumns columns, string name, ProblemList problems)
    {
        var rows = ImmutableArray.CreateBuilder<ListedSpring>();
        var first = new Dictionary<(string?, SpringData), int>();
        while (csv.Read() && !problems.IsFull)
        {
            var line = (int)csv.LineNumber;
            if (rows.Count == MostRows)
            {
                problems.Note(new Place(name, line, 0), "", SpringListTexts.TooManyRows(MostRows), SpringListTexts.FewerRows(MostRows));
                break;
            }

            if (!RowCells.Fit(csv, name, problems) || new SpringRow(csv, columns, name, problems).Spring() is not { } spring)
            {
                rows.Add(new ListedSpring(line, null, new SpringData(1, 1, 0))); // stands in, so that the count of rows is right
                continue;
            }

            var called = columns.Name is { } c && csv.GetString(c.Index) is { Length: > 0 } text ? text : null;
            if (called is not null && !ValueReader.IsShortLine(called))
            {
                problems.Note(new Place(name, line, 0), columns.Name!.Name, Texts.Quote(called), Texts.PlainCell);
            }

            if (!first.TryAdd((called, spring), line))
            {
                problems.Note(new Place(name, line, 0), "", SpringListTexts.SameAs(first[(called, spring)]), SpringListTexts.EachOnce);
            }

            rows.Add(new ListedSpring(line, called, spring));
        }

        if (rows.Count == 0 && !problems.IsFull)
        {
            problems.Note(new Place(name, 0, 0), "", SpringListTexts.NoRows, SpringListTexts.OneRow);
        }

        return rows.ToImmutable();
    }

    /// <summary>One row, read cell by cell so that every mistake in it is noted.</summary>
    private readonly struct SpringRow(CsvReader csv, SpringColumns columns, string name, ProblemList problems)
    {
        public SpringData? Spring()
        {
            var before = problems.Count;
            double? rate = Cell(columns.Rate), free = Cell(columns.FreeLength), solid = Cell(columns.SolidLength);
            double? inner = Optional(columns.InnerDiameter), wire = Optional(columns.WireDiameter), mean = Optional(columns.MeanDiameter);
            if (solid >= free)
            {
                Note(columns.SolidLength, Texts.SolidBelowFree);
            }

            if (wire >= mean)
            {
                Note(columns.WireDiameter!, Texts.WireBelowMean);
            }

            if (inner >= mean)
            {
                Note(columns.InnerDiameter!, SpringListTexts.InnerBelowMean);
            }

            return problems.Count > before ? null : new SpringData(rate!.Value, free!.Value, solid!.Value, wire, mean, inner);
        }

        private double? Optional(SpringColumn? column) => column is null || csv.GetString(column.Index).Length == 0 ? null : Cell(column);

        private double? Cell(SpringColumn column)
        {
            if (double.TryParse(csv.GetString(column.Index), NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
                && column.ToSi * number is > 0 and < double.PositiveInfinity and var si)
            {
                return si;
            }

            Note(column, SpringListTexts.NumberAboveZero);
            return null;
        }

        private void Note(SpringColumn column, string wanted)
        {
            var raw = csv.GetString(column.Index);
            problems.Note(new Place(name, (int)csv.LineNumber, 0), column.Name, raw.Length == 0 ? Texts.Nothing : Texts.Quote(raw), wanted);
        }
    }
}
