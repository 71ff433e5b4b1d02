using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;

using QuarterCar.Reports.Files;
using QuarterCar.Reports.Tables;

namespace QuarterCar.Cli.Options;

/// <summary>Further formats of the result tables: --also xlsx,parquet.</summary>
internal sealed class AlsoOptions
{
    private readonly Option<string?> _also = new("--also") { HelpName = "xlsx,parquet", Description = "With --out: writes each CSV as an XLSX workbook or Parquet file beside it, too." };

    /// <summary>Adds it to a verb.</summary>
    public AlsoOptions(Command command) => command.Add(_also);

    /// <summary>The formats asked for.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="folder">Where results go.</param>
    /// <param name="rows">Of the longest table.</param>
    /// <param name="gathering">Asks for further ones; null where nothing is gathered.</param>
    /// <param name="traceRows">Of the longest trace, asked only where it matters; null where no traces are written.</param>
    /// <exception cref="BadInputException">Another word, no folder to write into, or more rows than a sheet holds.</exception>
    public ImmutableArray<AlsoFormat> Formats(ParseResult parsed, string? folder, double rows, Gathering? gathering = null, Func<double>? traceRows = null)
    {
        string? text = parsed.GetValue(_also);
        string[] words = text?.Split(',', StringSplitOptions.TrimEntries) ?? [];
        if (words.Any(w => w is not ("xlsx" or "parquet"))) throw new BadInputException($"--also: found '{text}'; wanted xlsx, parquet, or xlsx,parquet");
        if (text is not null && folder is null) throw new BadInputException("--also: found no --out; wanted a folder for the files");
        ImmutableArray<AlsoFormat> formats = [.. words.Select(w => w == "xlsx" ? AlsoFormat.Xlsx : AlsoFormat.Parquet).Concat(gathering?.Also ?? []).Distinct()];
        if (formats.Contains(AlsoFormat.Xlsx) && Math.Max(rows, traceRows?.Invoke() ?? 0) is var longest and > XlsxBook.MostRows)
            throw new BadInputException(string.Create(CultureInfo.InvariantCulture, $"--also xlsx: found a table of {longest:#,0} rows; wanted at most {XlsxBook.MostRows:#,0}, for a sheet holds no more: --also parquet does"));
        return formats;
    }
}
