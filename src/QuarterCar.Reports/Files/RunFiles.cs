using System.Text;

using QuarterCar.Reports.Html;
using QuarterCar.Reports.Json;
using QuarterCar.Reports.Plots;
using QuarterCar.Reports.Tables;
using QuarterCar.Studies;

namespace QuarterCar.Reports.Files;

/// <summary>How the files of a run are written.</summary>
/// <param name="Pictures">False leaves plots and report out.</param>
/// <param name="Also">Writes further files of ours into the folder before it is committed, for example other table formats.</param>
public sealed record RunFilesOptions(bool Pictures = true, Action<ResultFolder>? Also = null);

/// <summary>The result files of one run: trace.csv, events.csv, summary.json, report.html and plots, whole or not at all.</summary>
public static class RunFiles
{
    /// <summary>Writes them all.</summary>
    /// <exception cref="ResultFolderException">The folder cannot be written to; earlier results are unchanged.</exception>
    /// <exception cref="OperationCanceledException">Cancelled; earlier results are unchanged.</exception>
    public static void Write(RunResult result, string folder, RunFilesOptions? options = null, CancellationToken cancel = default)
    {
        options ??= new RunFilesOptions();
        using var files = ResultFolder.Open(folder);
        var units = result.Scenario.Units;
        files.Write("trace.csv", s => CsvTable.Write(s, Columns.Trace, result.Track.Rows(), units, cancel));
        files.Write("events.csv", s => CsvTable.Write(s, Columns.Events, result.Events, units, cancel));
        files.Write("summary.json", s => SummaryJson.Write(result, s));
        if (options.Pictures) Pictures(result, files, cancel);
        options.Also?.Invoke(files);
        cancel.ThrowIfCancellationRequested();
        files.Commit();
    }

    private static void Pictures(RunResult result, ResultFolder files, CancellationToken cancel)
    {
        var drawn = PlotFiles.Write(RunPlots.Of(result), files, cancel);
        files.Write("report.html", s => s.Write(Encoding.UTF8.GetBytes(RunReport.Write(result, drawn))));
    }
}
