using System.Collections.Immutable;
using System.Globalization;

using CsvHelper;

namespace QuarterCar.Reports.Tables;

/// <summary>A column of a table with types.</summary>
/// <param name="Name">With its unit.</param>
/// <param name="IsText">True for text; false for numbers, where what does not apply is null.</param>
public sealed record TypedColumn(string Name, bool IsText);

/// <summary>A table with types, read row by row as often as it is asked: what other formats than CSV are written from. A cell is a string, a double or null.</summary>
/// <param name="Columns">In order.</param>
/// <param name="Rows">The rows; enumerating again reads again.</param>
public sealed record TypedTable(ImmutableArray<TypedColumn> Columns, IEnumerable<object?[]> Rows)
{
    // Words by their column's name, even where they look like numbers.
    private static readonly ImmutableArray<string> s_texts = ["title", "stop_nut", "note", "event", "rate_region"];

    private static readonly CsvReaderOptions s_ours = new() { TrimWhitespace = false, Separator = ',' };

    /// <summary>A small table of texts.</summary>
    public static TypedTable OfTexts(ImmutableArray<string> names, IEnumerable<string[]> rows) =>
        new([.. names.Select(n => new TypedColumn(n, true))], rows.Select(r => r.ToArray<object?>()));

    /// <summary>A CSV of ours. Columns whose every filled cell is a number are numbers; the apostrophe that keeps spreadsheets from taking a text for a formula is left out.</summary>
    /// <param name="open">Opens the file from its start; it is read once for the types and once for each use.</param>
    public static TypedTable OfCsv(Func<Stream> open)
    {
        bool[] isText;
        string[] names;
        using (var stream = open())
        {
            using var csv = CsvReader.Create(stream, s_ours, leaveOpen: true);
            names = [.. csv.Headers];
            isText = [.. names.Select(n => s_texts.Contains(n))];
            while (csv.Read())
            {
                for (int i = 0; i < names.Length; i++) isText[i] = isText[i] || (!csv.IsEmpty(i) && Number(csv, i) is null);
            }
        }

        return new([.. names.Zip(isText, (n, t) => new TypedColumn(n, t))], Read(open, isText));
    }

    private static IEnumerable<object?[]> Read(Func<Stream> open, bool[] isText)
    {
        using var stream = open();
        using var csv = CsvReader.Create(stream, s_ours, leaveOpen: true);
        while (csv.Read())
        {
            object?[] row = new object?[isText.Length];
            for (int i = 0; i < row.Length; i++) row[i] = isText[i] ? Plain(csv.GetString(i)) : Number(csv, i);
            yield return row;
        }
    }

    private static double? Number(CsvReader csv, int column) =>
        double.TryParse(csv.GetSpan(column), NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value) ? value : null;

    private static string Plain(string text) =>
        text.Length > 1 && text[0] == '\'' && (text[1] is '=' or '+' or '-' or '@' || char.IsControl(text[1])) ? text[1..] : text;
}
