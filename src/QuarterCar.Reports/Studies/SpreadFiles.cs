using System.Text;

using QuarterCar.Reports.Files;
using QuarterCar.Studies.Setups;
using QuarterCar.Studies.Spreads;

namespace QuarterCar.Reports.Studies;

/// <summary>The result files of a spread study: spread.csv, spread.json, report.html and plots, whole or not at all.</summary>
public static class SpreadFiles
{
    /// <summary>Runs the study into a folder.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="head">The study.</param>
    /// <param name="produce">Runs it and hands on its rows, in order; or reads them from its parts.</param>
    /// <param name="also">Writes further files of ours before the commit.</param>
    /// <param name="cancel">Stops it; earlier results are unchanged.</param>
    /// <exception cref="ResultFolderException">The folder cannot be written to; earlier results are unchanged.</exception>
    public static SpreadResult Write(string folder, StudyHead head, Action<Action<StudyRow>> produce, Action<ResultFolder>? also = null, CancellationToken cancel = default)
    {
        using var files = ResultFolder.Open(folder);
        var (result, watched) = Watch(head, produce);
        StudyFiles.Write(files, head, watched, () => SpreadJson.Of(result()));
        var pictures = PlotFiles.Write(SpreadPlots.Of(head.Units, result()), files, cancel);
        files.Write("report.html", s => s.Write(Encoding.UTF8.GetBytes(SpreadReport.Write(head, result(), pictures))));
        also?.Invoke(files);
        cancel.ThrowIfCancellationRequested();
        files.Commit();
        return result();
    }

    /// <summary>Runs the study and writes its JSON alone, once it is whole.</summary>
    public static SpreadResult WriteJson(Stream stream, StudyHead head, Action<Action<StudyRow>> produce)
    {
        var (result, watched) = Watch(head, produce);
        StudyFiles.WriteWhole(stream, head, watched, () => SpreadJson.Of(result()));
        return result();
    }

    /// <summary>Runs the study without files.</summary>
    public static SpreadResult None(StudyHead head, Action<Action<StudyRow>> produce)
    {
        var (result, watched) = Watch(head, produce);
        watched(_ => { });
        return result();
    }

    private static (Func<SpreadResult> Result, Action<Action<StudyRow>> Produce) Watch(StudyHead head, Action<Action<StudyRow>> produce)
    {
        var samples = new SpreadSamples(head.Paths);
        var result = new Lazy<SpreadResult>(() => SpreadStudy.Of(samples));
        return (() => result.Value, take => produce(row =>
        {
            take(row);
            samples.Add(row);
        }));
    }
}
