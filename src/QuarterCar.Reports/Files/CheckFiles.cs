using QuarterCar.Reports.Plots;
using QuarterCar.Reports.Tables;
using QuarterCar.Studies;

namespace QuarterCar.Reports.Files;

/// <summary>The result files of a standing corner: curve.csv and plots, whole or not at all.</summary>
public static class CheckFiles
{
    /// <summary>Writes them all.</summary>
    /// <exception cref="ResultFolderException">The folder cannot be written to; earlier results are unchanged.</exception>
    /// <exception cref="OperationCanceledException">Cancelled; earlier results are unchanged.</exception>
    public static void Write(StandingResult result, string folder, Action<ResultFolder>? also = null, CancellationToken cancel = default)
    {
        using var files = ResultFolder.Open(folder);
        files.Write("curve.csv", s => CsvTable.Write(s, Columns.Curve, result.Curve, result.Scenario.Units, cancel));
        PlotFiles.Write(RunPlots.Of(result), files, cancel);
        also?.Invoke(files);
        cancel.ThrowIfCancellationRequested();
        files.Commit();
    }
}
