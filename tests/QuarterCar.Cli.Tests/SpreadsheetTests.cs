using System.Diagnostics;
using System.Globalization;
using System.IO.Compression;
using System.Text;

using QuarterCar.TestKit.Programs;

namespace QuarterCar.Cli.Tests;

/// <summary>A spreadsheet program of other people opens the workbook of a run and reckons with it.</summary>
public sealed class SpreadsheetTests : IDisposable
{
    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    // A formula is put below a column of the trace; the program opens the workbook, reckons it and hands the sheet on as CSV, every digit shown.
    [InstalledFact("soffice")]
    public void A_spreadsheet_program_sums_a_column_of_the_trace_as_we_do()
    {
        string scenario = _scratch.Write("plain.yaml", Scenarios.Plain(limit: 2));
        Assert.Equal(ExitCode.Done, Asked.Of("run", scenario, "--also", "xlsx", "--out", _scratch.At("out")).Code);
        string[] lines = File.ReadAllLines(_scratch.At("out/trace.csv"));
        int column = Array.IndexOf(lines[0].Split(','), "spring_force_N");
        double ours = lines.Skip(1).Sum(l => double.Parse(l.Split(',')[column], CultureInfo.InvariantCulture));
        WithSum(_scratch.At("out/trace.xlsx"), (char)('A' + column), lines.Length);
        Convert(_scratch.At("out/trace.xlsx"));
        string[] sheet = File.ReadAllLines(_scratch.At("trace-Trace.csv"));
        Assert.Equal(lines.Length + 1, sheet.Length);
        Assert.Equal(lines[0], sheet[0].Replace("\"", "", StringComparison.Ordinal));
        double theirs = double.Parse(sheet[^1].Split(',')[column].Trim('"'), CultureInfo.InvariantCulture);
        Assert.Equal(1, theirs / ours, 1e-12); // 2001 numbers added in another order; fifteen digits are handed on
    }

    private static void WithSum(string book, char column, int lastRow)
    {
        using var zip = ZipFile.Open(book, ZipArchiveMode.Update);
        ZipArchiveEntry entry = zip.GetEntry("xl/worksheets/sheet4.xml")!;
        string xml;
        using (var reader = new StreamReader(entry.Open())) xml = reader.ReadToEnd();
        string row = FormattableString.Invariant($"<x:row r=\"{lastRow + 1}\"><x:c r=\"{column}{lastRow + 1}\"><x:f>SUM({column}2:{column}{lastRow})</x:f></x:c></x:row></x:sheetData>");
        Assert.Contains("</x:sheetData>", xml, StringComparison.Ordinal);
        entry.Delete();
        using var writer = new StreamWriter(zip.CreateEntry("xl/worksheets/sheet4.xml").Open(), new UTF8Encoding(false));
        writer.Write(xml.Replace("</x:sheetData>", row, StringComparison.Ordinal));
    }

    // Comma, quote, UTF-8, from line 1; no quoting of all, numbers not as shown, no formulas; the fourth sheet.
    private void Convert(string book)
    {
        const string filter = "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,4";
        var start = new ProcessStartInfo("soffice", ["-env:UserInstallation=file://" + _scratch.At("profile"), "--headless", "--convert-to", filter, "--outdir", _scratch.Folder, book])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        ProcessResult done = ProgramProcess.End(Process.Start(start)!);
        Assert.True(done.Code == 0 && File.Exists(_scratch.At("trace-Trace.csv")), done.Out + done.Messages);
    }
}
