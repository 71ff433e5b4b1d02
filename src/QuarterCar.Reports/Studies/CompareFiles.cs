using System.Collections.Immutable;
using System.Globalization;
using System.Text;

using QuarterCar.Reports.Files;
using QuarterCar.Reports.Plots.Compare;
using QuarterCar.Reports.Tables;
using QuarterCar.Studies;
using QuarterCar.Studies.Setups;

namespace QuarterCar.Reports.Studies;

/// <summary>The result files of a comparison: compare.csv, compare.json, report.html, overlaid plots, and with traces each setup's own tables; whole or not at all.</summary>
public static class CompareFiles
{
    private const string Setups = "setups";

    private static readonly ImmutableArray<string> s_traces = ["trace.csv", "events.csv"];

    /// <summary>Setups that the pictures show: the first that ran.</summary>
    public static int MostDrawn => SetupStyles.Most;

    /// <summary>Runs the comparison into a folder.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="head">The study.</param>
    /// <param name="tally">What is said of the setups; whoever produces their rows feeds it.</param>
    /// <param name="traces">True for each setup's trace.csv and events.csv.</param>
    /// <param name="produce">Runs it and hands on its rows, with their runs where they have one.</param>
    /// <param name="also">Writes further files of ours before the commit.</param>
    /// <param name="cancel">Stops it; earlier results are unchanged.</param>
    /// <exception cref="ResultFolderException">The folder cannot be written to; earlier results are unchanged.</exception>
    public static void Write(string folder, StudyHead head, CompareTally tally, bool traces, Action<Action<StudyRow>> produce, Action<ResultFolder>? also = null, CancellationToken cancel = default)
    {
        using var files = ResultFolder.Open(folder);
        var drawn = new List<(string Mark, string Title, RunResult Run)>();
        StudyFiles.Write(files, head, take => produce(row =>
        {
            take(row);
            if (traces && row.Run is { } run) Traces(files, row.Index, run, head, cancel);
            if (row.Run is not null && drawn.Count < MostDrawn) drawn.Add((CompareTable.Mark(row.Index), row.Request.Title, row.Run));
        }));
        ImmutableArray<(string Svg, string Caption)> pictures = drawn.Count == 0 ? [] : PlotFiles.Write(ComparePlots.Of(drawn, head.Units), files, cancel);
        files.Write("report.html", s => s.Write(Encoding.UTF8.GetBytes(CompareReport.Write(head, tally, pictures))));
        also?.Invoke(files);
        cancel.ThrowIfCancellationRequested();
        files.Commit();
    }

    /// <summary>Puts the traces of all parts into the folder of the whole study; other formats are made of them as in one run.</summary>
    /// <param name="files">The folder.</param>
    /// <param name="parts">The parts.</param>
    /// <param name="ran">Places of the setups that ran, from 0.</param>
    /// <exception cref="FormatException">A part lacks a trace of a setup of its own that ran, or holds another one's.</exception>
    public static void CopyTraces(ResultFolder files, StudyParts parts, IReadOnlyCollection<long> ran)
    {
        foreach (long index in ran)
        {
            foreach (string name in s_traces)
            {
                using FileStream source = Trace(parts.FolderOf(index), index, name);
                files.Write(Place(index) + name, s => source.CopyTo(s));
            }
        }

        HashSet<(string Folder, string Place)> own = [.. ran.Select(i => (parts.FolderOf(i), Place(i)))];
        foreach (string folder in parts.Parts.Select(p => p.Folder).Where(f => Directory.Exists(Path.Combine(f, Setups))))
        {
            foreach (string name in Directory.EnumerateDirectories(Path.Combine(folder, Setups)).Select(d => Path.GetFileName(d)).Order(StringComparer.Ordinal))
            {
                if (s_traces.Select(t => $"{Setups}/{name}/{t}").FirstOrDefault(t => OurFiles.Contains(t) && File.Exists(Path.Combine(folder, t))) is { } stray && !own.Contains((folder, $"{Setups}/{name}/")))
                    throw new FormatException($"{Path.Combine(folder, stray)}: found a trace of a setup that did not run in this part; wanted those of its own");
            }
        }
    }

    // A part may come from a stranger: links and pipes in it are not followed.
    private static FileStream Trace(string part, long index, string name)
    {
        string wanted = FormattableString.Invariant($"the {name} of setup {index + 1}, for the study was asked with --traces"), folder = Path.Combine(part, Place(index));
        foreach (string on in (string[])[Path.Combine(part, Setups), folder.TrimEnd('/')])
        {
            if (new DirectoryInfo(on).LinkTarget is not null) throw new FormatException($"{on}: found a link; wanted a folder with {wanted}");
        }

        return PartText.Open(Path.Combine(folder, name), wanted);
    }

    private static string Place(long index) => string.Create(CultureInfo.InvariantCulture, $"{Setups}/{index + 1:00}/");

    private static void Traces(ResultFolder files, long index, RunResult run, StudyHead head, CancellationToken cancel)
    {
        string place = Place(index);
        files.Write(place + "trace.csv", s => CsvTable.Write(s, Columns.Trace, run.Track.Rows(), head.Units, cancel));
        files.Write(place + "events.csv", s => CsvTable.Write(s, Columns.Events, run.Events, head.Units, cancel));
    }
}
