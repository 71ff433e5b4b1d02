using System.Collections.Immutable;
using System.Globalization;

using CsvHelper;

using QuarterCar.Studies;
using QuarterCar.Studies.Setups;

namespace QuarterCar.Reports.Studies;

/// <summary>
/// Writes the rows of a study as CSV, one by one as they come: title, a column a varied path, stop_nut, note, every figure; SI.
/// Text that a spreadsheet would take for a formula (it begins with = + - @ or a control character) gets an apostrophe before it; numbers stay numbers.
/// </summary>
public sealed class StudyCsv : IDisposable
{
    private static readonly CsvWriterOptions s_rfc4180 = new() { FormatProvider = CultureInfo.InvariantCulture, WriteByteOrderMark = false };

    private readonly CsvWriter _csv;
    private readonly ImmutableArray<string> _paths;

    /// <summary>Writes the header.</summary>
    public StudyCsv(Stream stream, ImmutableArray<string> paths)
    {
        _csv = CsvWriter.Create(stream, s_rfc4180, leaveOpen: true);
        _paths = paths;
        _csv.WriteHeader([.. Headers(paths)]);
    }

    /// <summary>The columns' names.</summary>
    public static ImmutableArray<string> Headers(ImmutableArray<string> paths) =>
        ["title", .. paths.Select(PathUnits.Column), "stop_nut", "note", .. FigureTable.Names];

    /// <summary>Writes one row; without figures their cells stay empty.</summary>
    public void Row(StudyRow row)
    {
        _csv.WriteField(Safe(row.Request.Title));
        foreach (string path in _paths) Value(row.Request.Values.FirstOrDefault(v => v.Path == path));
        _csv.WriteField(row.NutWord);
        _csv.WriteField(Safe(row.Note));
        for (int i = 0; i < FigureTable.Names.Length; i++) Number(row.Figures is { } figures ? figures[i] : null);
        _csv.EndRecord();
    }

    /// <summary>Writes out what is left; the stream stays open.</summary>
    public void Dispose() => _csv.Dispose();

    /// <summary>A text that no spreadsheet takes for a formula.</summary>
    public static string Safe(string text) => text.Length > 0 && (text[0] is '=' or '+' or '-' or '@' || char.IsControl(text[0])) ? "'" + text : text;

    private void Value(SetupValue? value)
    {
        if (value is null or { Si: not null }) Number(value?.Si);
        else _csv.WriteField(Safe(value.Text));
    }

    private void Number(double? value)
    {
        Span<byte> digits = stackalloc byte[32];
        int length = 0;
        if (value is { } v && double.IsFinite(v)) (v + 0.0).TryFormat(digits, out length, default, CultureInfo.InvariantCulture); // + 0.0 turns -0 into 0
        _csv.WriteField(digits[..length]);
    }
}
