using System.Globalization;

using CsvHelper;

using QuarterCar.Reports.Units;
using QuarterCar.Scenarios;

namespace QuarterCar.Reports.Tables;

/// <summary>Writes a table as CSV by RFC 4180: CRLF, a full stop in any culture, the shortest digits that read back to the same number, empty where nothing applies.</summary>
public static class CsvTable
{
    private static readonly CsvWriterOptions Rfc4180 = new() { FormatProvider = CultureInfo.InvariantCulture, WriteByteOrderMark = false };

    /// <summary>Writes header and rows, row by row as they come.</summary>
    /// <exception cref="OperationCanceledException">Cancelled between rows.</exception>
    public static void Write<T>(Stream stream, Table<T> table, IEnumerable<T> rows, UnitSystem system, CancellationToken cancel = default)
    {
        using var csv = CsvWriter.Create(stream, Rfc4180, leaveOpen: true);
        csv.WriteHeader([.. table.Headers(system)]);
        double[] factors = [.. table.Columns.Select(c => UnitTable.Of(c.Dimension, system).PerSi)];
        foreach (var row in rows)
        {
            cancel.ThrowIfCancellationRequested();
            WriteRow(csv, table, factors, row);
        }
    }

    private static void WriteRow<T>(CsvWriter csv, Table<T> table, double[] factors, T row)
    {
        Span<byte> digits = stackalloc byte[32];
        for (int i = 0; i < factors.Length; i++)
        {
            var column = table.Columns[i];
            if (column.Word is { } word) csv.WriteField(word(row));
            else csv.WriteField(Format(column.Value(row) * factors[i], digits));
        }

        csv.EndRecord();
    }

    private static ReadOnlySpan<byte> Format(double value, Span<byte> digits)
    {
        if (!double.IsFinite(value)) return [];
        (value + 0.0).TryFormat(digits, out int length, default, CultureInfo.InvariantCulture); // + 0.0 turns -0 into 0
        return digits[..length];
    }
}
