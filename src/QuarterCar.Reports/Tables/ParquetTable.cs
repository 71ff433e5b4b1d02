using Parquet;
using Parquet.Schema;

namespace QuarterCar.Reports.Tables;

/// <summary>Writes a table as Apache Parquet: numbers as doubles that may be null, words as strings, group after group of rows, so that memory does not grow with the table.</summary>
public static class ParquetTable
{
    /// <summary>Rows in a group.</summary>
    public const int GroupRows = 16_384;

    private static readonly ParquetOptions s_options = new() { CompressionMethod = CompressionMethod.Snappy };

    /// <summary>Writes it.</summary>
    /// <exception cref="OperationCanceledException">Cancelled between groups.</exception>
    public static void Write(Stream stream, TypedTable table, CancellationToken cancel = default) => WriteAsync(stream, table, cancel).GetAwaiter().GetResult();

    private static async Task WriteAsync(Stream stream, TypedTable table, CancellationToken cancel)
    {
        DataField[] fields = [.. table.Columns.Select(c => c.IsText ? new DataField(c.Name, typeof(string), false, null, null) : new DataField(c.Name, typeof(double), true, null, null))];
        await using var writer = await ParquetWriter.CreateAsync(new ParquetSchema(fields), stream, s_options, false, cancel).ConfigureAwait(false);
        foreach (object?[][] rows in table.Rows.Chunk(GroupRows))
        {
            cancel.ThrowIfCancellationRequested();
            using var group = writer.CreateRowGroup();
            for (int i = 0; i < fields.Length; i++)
            {
                if (table.Columns[i].IsText)
                {
                    string[] words = [.. rows.Select(r => (string)r[i]!)];
                    await group.WriteAsync(fields[i], words, null).ConfigureAwait(false);
                }
                else
                {
                    double?[] numbers = [.. rows.Select(r => (double?)r[i])];
                    await group.WriteAsync<double>(fields[i], numbers, null, null, cancel).ConfigureAwait(false);
                }
            }

            group.CompleteValidate();
        }
    }
}
