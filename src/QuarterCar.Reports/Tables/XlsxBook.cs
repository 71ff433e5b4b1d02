using System.Data;
using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;

using MiniExcelLibs;
using MiniExcelLibs.OpenXml;

using QuarterCar.Reports.Files;

namespace QuarterCar.Reports.Tables;

/// <summary>Writes tables as the sheets of an Office Open XML workbook (ECMA-376): typed numbers, a header that stays in sight, text that is never a formula. The same tables give the same bytes.</summary>
public static partial class XlsxBook
{
    /// <summary>Rows that a sheet can hold, less its header (ECMA-376).</summary>
    public const int MostRows = 1_048_575;

    // Entries of a zip carry a time; this one is the format's first.
    private static readonly DateTimeOffset s_noTime = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    private static readonly OpenXmlConfiguration s_settings = new()
    {
        Culture = CultureInfo.InvariantCulture,
        FreezeRowCount = 1,
        AutoFilter = false,
        TableStyles = TableStyles.None,
        EnableWriteNullValueCell = false,
    };

    /// <summary>Writes them.</summary>
    /// <param name="stream">Where to.</param>
    /// <param name="sheets">Name and table, in order.</param>
    /// <param name="cancel">Stops between rows.</param>
    /// <exception cref="IOException">A table has more rows than a sheet holds.</exception>
    public static void Write(Stream stream, IEnumerable<(string Name, TypedTable Table)> sheets, CancellationToken cancel = default)
    {
        using var made = ScratchFile.Open();
        made.SaveAs(sheets.ToDictionary(s => s.Name, s => Sheet(s.Table, cancel)), configuration: s_settings);
        made.Position = 0;
        using var from = new ZipArchive(made, ZipArchiveMode.Read, leaveOpen: true);
        var names = new Dictionary<string, string>();
        using var to = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true);
        foreach (ZipArchiveEntry entry in from.Entries)
        {
            ZipArchiveEntry copy = to.CreateEntry(entry.FullName, CompressionLevel.Fastest);
            copy.LastWriteTime = s_noTime;
            using Stream read = entry.Open(), write = copy.Open();
            if (entry.FullName is "xl/workbook.xml" or "xl/_rels/workbook.xml.rels") WithSteadyNames(read, write, names);
            else read.CopyTo(write);
        }
    }

    // The library names its sheets' relations at random; here they are numbered as they come.
    private static void WithSteadyNames(Stream read, Stream write, Dictionary<string, string> names)
    {
        using var reader = new StreamReader(read, Encoding.UTF8);
        string text = RandomName().Replace(reader.ReadToEnd(), m =>
        {
            if (!names.TryGetValue(m.Value, out string? name)) names.Add(m.Value, name = "\"sheet" + (names.Count + 1).ToString(CultureInfo.InvariantCulture) + "\"");
            return name;
        });
        write.Write(Encoding.UTF8.GetBytes(text));
    }

    [GeneratedRegex("\"R[0-9a-f]{32}\"", RegexOptions.CultureInvariant)]
    private static partial Regex RandomName();

    private static object Sheet(TypedTable table, CancellationToken cancel)
    {
        if (table.Rows.Any()) return Rows(table, cancel);
        var header = new DataTable { Locale = CultureInfo.InvariantCulture };
        foreach (TypedColumn column in table.Columns) header.Columns.Add(column.Name);
        return header;
    }

    private static IEnumerable<Dictionary<string, object?>> Rows(TypedTable table, CancellationToken cancel)
    {
        int count = 0;
        foreach (object?[] cells in table.Rows)
        {
            cancel.ThrowIfCancellationRequested();
            if (++count > MostRows) throw new IOException($"an XLSX sheet holds at most {MostRows.ToString("#,0", CultureInfo.InvariantCulture)} rows; use --also parquet for this table");
            var row = new Dictionary<string, object?>(cells.Length);
            for (int i = 0; i < cells.Length; i++) row.Add(table.Columns[i].Name, cells[i]);
            yield return row;
        }
    }
}
