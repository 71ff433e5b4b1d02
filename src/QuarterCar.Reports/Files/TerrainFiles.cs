using QuarterCar.Reports.Plots.Ground;
using QuarterCar.Reports.Tables;
using QuarterCar.Studies.Terrains;

namespace QuarterCar.Reports.Files;

/// <summary>The result files of a ground: terrain.csv and plots, whole or not at all.</summary>
public static class TerrainFiles
{
    /// <summary>Writes them all.</summary>
    /// <exception cref="ResultFolderException">The folder cannot be written to; earlier results are unchanged.</exception>
    /// <exception cref="OperationCanceledException">Cancelled; earlier results are unchanged.</exception>
    public static void Write(TerrainResult result, string folder, CancellationToken cancel = default)
    {
        using var files = ResultFolder.Open(folder);
        files.Write("terrain.csv", s => CsvTable.Write(s, TerrainColumns.Of(result), result.Rows(), result.Units, cancel));
        PlotFiles.Write(TerrainPlots.Of(result), files, cancel);
        cancel.ThrowIfCancellationRequested();
        files.Commit();
    }
}
