using System.Text;

using QuarterCar.Reports.Files;
using QuarterCar.Studies.Sweeps;

namespace QuarterCar.Reports.Studies;

/// <summary>Report, pictures and JSON of sweep, reach and tweak, whole or not at all.</summary>
public static class SweepFiles
{
    /// <summary>Report and picture of a sweep, beside its table in an open folder that the caller commits.</summary>
    public static void Write(StudyHead head, SweepResult result, ResultFolder folder, CancellationToken cancel)
    {
        var drawn = PlotFiles.Write(SweepPlot.Draw(result) is { } sheet ? [sheet] : [], folder, cancel);
        Page(folder, StudyPage.Of(head, result, drawn));
    }

    /// <summary>reach.json, report and picture.</summary>
    public static void Write(ReachResult result, string folder, CancellationToken cancel)
    {
        using var files = ResultFolder.Open(folder);
        files.Write("reach.json", s => SweepJson.Write(result, s));
        var drawn = PlotFiles.Write(ReachPlot.Draw(result) is { } sheet ? [sheet] : [], files, cancel);
        Page(files, StudyPage.Of(result, drawn));
        cancel.ThrowIfCancellationRequested();
        files.Commit();
    }

    /// <summary>tweak.json and report.</summary>
    public static void Write(TweakResult result, string folder, CancellationToken cancel)
    {
        using var files = ResultFolder.Open(folder);
        files.Write("tweak.json", s => SweepJson.Write(result, s));
        Page(files, StudyPage.Of(result));
        cancel.ThrowIfCancellationRequested();
        files.Commit();
    }

    private static void Page(ResultFolder folder, string html) => folder.Write("report.html", s => s.Write(Encoding.UTF8.GetBytes(html)));
}
