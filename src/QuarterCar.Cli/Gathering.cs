using System.Collections.Immutable;

using QuarterCar.Reports.Files;
using QuarterCar.Reports.Studies;
using QuarterCar.Studies.Setups;

namespace QuarterCar.Cli;

/// <summary>A whole study made of its parts: its rows come from them, and what the parts were asked is asked again of the files that they kept, so that everything else comes about as in one run.</summary>
internal sealed class Gathering : IDisposable
{
    private readonly DirectoryInfo _kept = Temporary();

    /// <summary>Lays the kept files out.</summary>
    /// <param name="parts">The parts.</param>
    /// <param name="folder">Where the whole study goes.</param>
    /// <param name="json">True for JSON on standard output.</param>
    /// <param name="also">Formats wanted beside those that the parts were asked for.</param>
    public Gathering(StudyParts parts, string folder, bool json, ImmutableArray<AlsoFormat> also)
    {
        (Parts, Folder, Json, Also) = (parts, folder, json, also);
        InHand.Keep(this);
        try
        {
            foreach (PartFile file in parts.Asked.Files)
            {
                string path = At(file.Name);
                Directory.CreateDirectory(Path.GetDirectoryName(path)!);
                File.WriteAllText(path, file.Text);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Dispose();
            throw ScratchFile.Refused(e);
        }
    }

    /// <summary>The parts.</summary>
    public StudyParts Parts { get; }

    /// <summary>Where the whole study goes.</summary>
    public string Folder { get; }

    /// <summary>True for JSON on standard output.</summary>
    public bool Json { get; }

    /// <summary>Formats wanted beside those that the parts were asked for.</summary>
    public ImmutableArray<AlsoFormat> Also { get; }

    /// <summary>Where a file lies that the parts read.</summary>
    /// <param name="name">As the parts were given it.</param>
    /// <exception cref="FormatException">The parts keep no such file.</exception>
    public string At(string name)
    {
        if (!Parts.Asked.Files.Any(f => f.Name == name))
            throw new FormatException($"{PartAsked.Name}: found no text of '{name}', which the part was asked about; wanted every file that the part read");
        // Files of one folder stay together: a profile is looked for beside its scenario.
        string[] folders = [.. Parts.Asked.Files.Select(f => Path.GetDirectoryName(f.Name) ?? "").Distinct()];
        int place = Array.IndexOf(folders, Path.GetDirectoryName(name) ?? "");
        return Path.Combine(_kept.FullName, FormattableString.Invariant($"{place}"), Path.GetFileName(name));
    }

    /// <summary>Hands on every row, in the order of one run.</summary>
    /// <param name="plan">The setups, as the parts were asked for them.</param>
    /// <param name="take">Takes the rows.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="FormatException">A part holds other setups.</exception>
    public void Produce(SetupPlan plan, Action<StudyRow> take, CancellationToken cancel)
    {
        if (Parts.Head.Setups != plan.Count) throw new FormatException(FormattableString.Invariant($"{Parts.Parts[0].Folder}: found a study of {Parts.Head.Setups} setups; wanted one of {plan.Count}, as the part was asked for"));
        Parts.Produce(row =>
        {
            cancel.ThrowIfCancellationRequested();
            SetupRequest asked = plan.At(row.Index);
            if (asked.Title != row.Request.Title || !asked.Values.Select(v => (v.Path, v.Si)).SequenceEqual(row.Request.Values.Select(v => (v.Path, v.Si))))
                throw new FormatException(FormattableString.Invariant($"{Parts.FolderOf(row.Index)}: found '{row.Request.Title}' as setup {row.Index + 1}; wanted '{asked.Title}', as the part was asked for"));
            take(row with { Request = asked });
        });
    }

    /// <summary>Removes the kept files.</summary>
    public void Dispose()
    {
        InHand.Release(this);
        try
        {
            _kept.Delete(recursive: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Copies among the temporary files; the outcome must not hang on them.
        }
    }

    private static DirectoryInfo Temporary()
    {
        try
        {
            return Directory.CreateTempSubdirectory("quartercar-gather-");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw ScratchFile.Refused(e);
        }
    }
}
