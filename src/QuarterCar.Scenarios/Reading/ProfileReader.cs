using System.Collections.Immutable;
using System.Globalization;

using CsvHelper;

using QuarterCar.Model;
using QuarterCar.Scenarios.Quantities;

namespace QuarterCar.Scenarios.Reading;

/// <summary>Reads a terrain profile: CSV with a header, columns distance_&lt;unit&gt; and height_&lt;unit&gt;; other columns are left alone.</summary>
public static class ProfileReader
{
    /// <summary>Rows allowed: a 100 km course every 20 mm.</summary>
    public const int MostRows = 5_000_000;

    /// <summary>Longest row, bytes: what is longer is no row of numbers.</summary>
    public const int LongestRow = 1 << 20;

    private static readonly CsvReaderOptions _settings = new() { TrimWhitespace = true, TrackLineNumbers = true, MaxRecordSize = LongestRow };

    /// <summary>True for the plain name of a file: nothing that leads out of the scenario's folder.</summary>
    public static bool IsBeside(string name) =>
        name is not ("" or "." or "..") && name.AsSpan().IndexOfAny("/\\:\0") < 0 && Path.GetFileName(name) == name;

    /// <summary>The points, SI, as in the file; null where a problem was noted.</summary>
    /// <param name="path">The file.</param>
    /// <param name="name">Named in problems.</param>
    /// <param name="problems">Takes the mistakes, each with its line.</param>
    /// <param name="copy">Takes what was read of the file; null for no copy.</param>
    public static ImmutableArray<TablePoint>? Read(string path, string name, ProblemList problems, Stream? copy = null) => ReadFile(path, name, problems, copy)?.Points;

    /// <summary>The points and the units that the file speaks; null where a problem was noted.</summary>
    public static ProfileFile? ReadFile(string path, string name, ProblemList problems, Stream? copy = null)
    {
        try
        {
            using var file = CopyingStream.Open(path, copy);
            return Read(file, name, problems);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            problems.Note(new Place(name, 0, 0), "", TextFiles.Why(path, e), Texts.ProfileFile);
            return null;
        }
    }

    /// <summary>The points of a stream and the units that it speaks.</summary>
    public static ProfileFile? Read(Stream stream, string name, ProblemList problems)
    {
        using var csv = CsvReader.Create(stream, _settings, leaveOpen: true);
        var before = problems.Count;
        try
        {
            if (Columns(csv, name, problems) is not { } columns)
            {
                return null;
            }

            var points = Rows(csv, columns, name, problems);
            return problems.Count > before ? null : new ProfileFile(points, columns.Distance.Unit.System ?? UnitSystem.Si);
        }
        catch (Exception e) when (e is CsvFormatException or InvalidOperationException)
        {
            problems.Note(CsvPlace.Of(name, csv, e), "", Texts.NotCsv(e.Message), Texts.ProfileFile);
            return null;
        }
    }

    private static (Column Distance, Column Height)? Columns(CsvReader csv, string name, ProblemList problems)
    {
        var header = csv.Headers.ToArray();
        if (header.Length == 0)
        {
            problems.Note(new Place(name, 0, 0), "", Texts.EmptyFile, Texts.ProfileFile);
            return null;
        }

        if (Find(header, "distance_", name, problems) is { } distance && Find(header, "height_", name, problems) is { } height)
        {
            return (distance, height);
        }

        problems.Note(new Place(name, 1, 0), "", Texts.Header(string.Join(",", header)), Texts.ProfileHeader);
        return null;
    }

    private static Column? Find(string[] header, string prefix, string name, ProblemList problems)
    {
        Column? found = null;
        for (var i = 0; i < header.Length; i++)
        {
            if (header[i].StartsWith(prefix, StringComparison.Ordinal)
                && UnitTable.Find(header[i][prefix.Length..]) is { Dimension: Dimension.Length } unit)
            {
                if (found is { } first)
                {
                    problems.Note(new Place(name, 1, 0), header[i], Texts.Beside(first.Name), Texts.OneColumn(prefix[..^1]));
                    continue;
                }

                found = new Column(i, header[i], unit);
            }
        }

        return found;
    }

    private static ImmutableArray<TablePoint> Rows(CsvReader csv, (Column Distance, Column Height) columns, string name, ProblemList problems)
    {
        var points = ImmutableArray.CreateBuilder<TablePoint>();
        var before = problems.Count;
        while (csv.Read() && problems.Count <= ProblemList.Most)
        {
            if (points.Count == MostRows)
            {
                problems.Note(new Place(name, (int)csv.LineNumber, 0), "", Texts.ProfileTooLong(MostRows), Texts.AtMostRows(MostRows));
                return [];
            }

            if (!RowCells.Fit(csv, name, problems))
            {
                continue;
            }

            var at = Cell(csv, columns.Distance, name, problems);
            var height = Cell(csv, columns.Height, name, problems);
            if (points.Count > 0 && at < points[^1].At)
            {
                problems.Note(new Place(name, (int)csv.LineNumber, 0), columns.Distance.Name, Texts.Quote(Raw(csv, columns.Distance)), Texts.DistanceNotFalling);
            }

            points.Add(new TablePoint(at ?? (points.Count > 0 ? points[^1].At : 0), height ?? 0));
        }

        if (problems.Count > before)
        {
            return []; // what the rows together say is judged where each was read
        }

        if (points.Count < 2)
        {
            problems.Note(new Place(name, 0, 0), "", Texts.Rows(points.Count), Texts.TwoRows);
        }
        else if (points[^1].At <= points[0].At)
        {
            problems.Note(new Place(name, 0, 0), columns.Distance.Name, Texts.AllAtOnePlace, Texts.SpreadOut);
        }

        return points.ToImmutable();
    }

    private static double? Cell(CsvReader csv, Column column, string name, ProblemList problems)
    {
        var raw = Raw(csv, column);
        if (double.TryParse(raw, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(column.Unit.ToSi(number)))
        {
            return column.Unit.ToSi(number);
        }

        problems.Note(new Place(name, (int)csv.LineNumber, 0), column.Name, raw.Length == 0 ? Texts.Nothing : Texts.Quote(raw), Texts.CellNumber);
        return null;
    }

    private static string Raw(CsvReader csv, Column column) => csv.GetString(column.Index);

    private readonly record struct Column(int Index, string Name, Unit Unit);
}

/// <summary>A profile that was read.</summary>
/// <param name="Points">Distance and height, m, as in the file.</param>
/// <param name="Units">Those of its distances.</param>
public sealed record ProfileFile(ImmutableArray<TablePoint> Points, UnitSystem Units);
