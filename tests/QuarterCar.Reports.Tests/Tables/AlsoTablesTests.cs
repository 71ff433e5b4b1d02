using System.Globalization;
using System.Text;

using MiniExcelLibs;

using Parquet;
using Parquet.Schema;

using QuarterCar.Reports.Tables;

namespace QuarterCar.Reports.Tests.Tables;

public sealed class AlsoTablesTests
{
    private const string Csv =
        "title,note,gap_m,tyre.contact,nothing_m\r\n"
        + "7,\"a, \"\"b\"\"\",0.1,point,\r\n"
        + "'=1+1,,-2.5e-17,8,\r\n"
        + "'-x,'@y,3.141592653589793,,\r\n";

    private static readonly object?[][] s_rows =
    [
        ["7", "a, \"b\"", 0.1, "point", null],
        ["=1+1", "", -2.5e-17, "8", null],
        ["-x", "@y", 3.141592653589793, "", null],
    ];

    private static TypedTable Table(string csv = Csv) => TypedTable.OfCsv(() => new MemoryStream(Encoding.UTF8.GetBytes(csv)));

    [Fact]
    public void Columns_of_numbers_are_numbers_and_words_stay_words()
    {
        Assert.Equal([true, true, false, true, false], Table().Columns.Select(c => c.IsText));
        Assert.Equal(s_rows, Table().Rows);
    }

    [Theory]
    [InlineData("en-US")]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    public void Workbook_reads_back_with_typed_numbers_and_no_formula(string culture)
    {
        using var book = new MemoryStream(Cultures.In(culture, () => Book(("Setup", Table()), ("Trace", Table()))));
        Assert.Equal(["Setup", "Trace"], book.GetSheetNames());
        var read = book.Query(useHeaderRow: true, sheetName: "Trace").Cast<IDictionary<string, object?>>().ToList();
        Assert.Equal(Table().Columns.Select(c => c.Name), read[0].Keys);
        Assert.Equal([0.1, -2.5e-17, 3.141592653589793], read.Select(r => r["gap_m"]));
        Assert.Equal(["7", "=1+1", "-x"], read.Select(r => r["title"]));
        using var zip = new System.IO.Compression.ZipArchive(book);
        foreach (var sheet in zip.Entries.Where(e => e.FullName.Contains("worksheets/sheet", StringComparison.Ordinal)))
        {
            using var reader = new StreamReader(sheet.Open());
            string xml = reader.ReadToEnd();
            Assert.DoesNotContain("<x:f>", xml, StringComparison.Ordinal);
            Assert.DoesNotContain("<f>", xml, StringComparison.Ordinal);
            Assert.Contains("frozen", xml, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_same_tables_give_the_same_bytes()
    {
        byte[] first = Book(("Trace", Table()));
        Thread.Sleep(2100); // times in a zip go in steps of two seconds
        Assert.Equal(first, Book(("Trace", Table())));
    }

    [Fact]
    public void A_table_without_rows_still_has_its_header()
    {
        using var book = new MemoryStream(Book(("Events", Table("event,time_s\r\n"))));
        var header = (IDictionary<string, object>)book.Query(sheetName: "Events").Single();
        Assert.Equal(["event", "time_s"], header.Values);
    }

    [Fact]
    public async Task Parquet_reads_back_equal_to_the_csv_over_several_groups()
    {
        int rows = ParquetTable.GroupRows + 10;
        var csv = new StringBuilder("event,x_m,y_m\r\n");
        for (int i = 0; i < rows; i++) csv.Append(CultureInfo.InvariantCulture, $"w{i % 3},{1.0 / (i + 1):R},{(i % 7 == 0 ? "" : "2")}\r\n");
        using var file = new MemoryStream();
        ParquetTable.Write(file, Table(csv.ToString()));
        file.Position = 0;
        await using var reader = await ParquetReader.CreateAsync(file);
        Assert.Equal(2, reader.RowGroupCount);
        DataField[] fields = reader.Schema.GetDataFields();

        // Parquet.Net 6 names its own type for text.
        Assert.Equal([("event", typeof(ReadOnlyMemory<char>)), ("x_m", typeof(double)), ("y_m", typeof(double))], fields.Select(f => (f.Name, f.ClrType)));
        int at = 0;
        foreach (var group in reader.RowGroups)
        {
            int count = (int)group.RowCount;
            var (words, x, y) = (new string?[count], new double?[count], new double?[count]);
            await group.ReadAsync(fields[0], words);
            await group.ReadAsync<double>(fields[1], x);
            await group.ReadAsync<double>(fields[2], y);
            for (int i = 0; i < count; i++, at++)
                Assert.Equal(($"w{at % 3}", 1.0 / (at + 1), at % 7 == 0 ? null : (double?)2), (words[i], x[i], y[i]));
        }

        Assert.Equal(rows, at);
    }

    private static byte[] Book(params (string Name, TypedTable Table)[] sheets)
    {
        using var stream = new MemoryStream();
        XlsxBook.Write(stream, sheets);
        return stream.ToArray();
    }
}
