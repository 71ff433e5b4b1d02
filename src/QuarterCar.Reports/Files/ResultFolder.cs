namespace QuarterCar.Reports.Files;

/// <summary>
/// A folder into which results come whole or not at all: files are written into a hidden part folder inside it and moved in by <see cref="Commit"/>; without a commit nothing changes.
/// One run at a time has it (<see cref="WriteLock"/>); what a killed run left in it is mended when the next one opens it (<see cref="CommitJournal"/>).
/// </summary>
public sealed class ResultFolder : IDisposable
{
    // Folders that vanish while they are opened were made by a run that ended just then; more often than this it is something else.
    private const int MostTries = 100;

    /// <summary>How long a run that has results waits for another one that is writing: longer than files and pictures of any run take to write, so that two runs write in turn.</summary>
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private readonly string _folder;
    private readonly string _part;
    private readonly List<string> _made = [];
    private readonly List<string> _written = [];
    private WriteLock? _lock;
    private readonly Action<string, string> _move;
    private bool _committed, _keepPart;

    private ResultFolder(string folder, string part, Action<string, string> move) => (_folder, _part, _move) = (folder, part, move);

    /// <summary>Names written so far, relative, with forward slashes.</summary>
    public IReadOnlyList<string> Written => _written;

    /// <summary>Opens a folder for results and makes it where it is missing.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="patience">How long to wait for another run that is writing there; null for <see cref="Patience"/>.</param>
    /// <exception cref="ResultFolderException">It cannot be made or written to, or another run is writing there.</exception>
    public static ResultFolder Open(string folder, TimeSpan? patience = null) => Open(folder, patience ?? Patience, (from, to) => File.Move(from, to, overwrite: true));

    /// <summary>Opens it with a rename of the caller's: all that may come between two runs' results is a row of these.</summary>
    internal static ResultFolder Open(string folder, TimeSpan patience, Action<string, string> move)
    {
        string full = Path.GetFullPath(folder);
        var result = new ResultFolder(full, Path.Combine(full, HiddenNames.Part + Guid.NewGuid().ToString("N")), move);
        InHand.Keep(result);
        try
        {
            result.Guarded(() =>
            {
                result._lock = result.Lock(patience);
                result.Mend();
                Directory.CreateDirectory(result._part);
            });
            return result;
        }
        catch
        {
            result.Dispose();
            throw;
        }
    }

    /// <summary>Writes one result file beside the final place.</summary>
    /// <param name="name">Relative to the folder, with forward slashes; one of <see cref="OurFiles"/>.</param>
    /// <param name="write">Writes the content.</param>
    /// <exception cref="ResultFolderException">Writing failed, for example because the disk is full.</exception>
    public void Write(string name, Action<Stream> write)
    {
        if (!OurFiles.Contains(name)) throw new ArgumentException($"'{name}' is not a result file's name", nameof(name));
        Guarded(() =>
        {
            string path = Path.Combine(CommitJournal.New(_part), name);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            using var stream = new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.None, bufferSize: 1 << 16);
            write(stream);
            stream.Flush(flushToDisk: true); // before the journal says that it is there
        });
        _written.Add(name);
    }

    /// <summary>Reads a file that was written before, for another form of it; stays readable after the commit, whatever then becomes of the file.</summary>
    /// <exception cref="ResultFolderException">It could not be opened.</exception>
    public Stream Read(string name)
    {
        Stream? stream = null;
        Guarded(() => stream = new FileStream(Path.Combine(CommitJournal.New(_part), name), FileMode.Open, FileAccess.Read, FileShare.Read | FileShare.Delete));
        return stream!;
    }

    /// <summary>Moves everything in. Earlier results are set aside first and come back if a move fails; results of an earlier, other kind of run are removed, because beside the new ones they would mislead.</summary>
    /// <exception cref="ResultFolderException">A file could not be moved; the earlier results are back, or the message says where they are.</exception>
    public void Commit() => InHand.Whole(() =>
    {
        try
        {
            Guarded(() => CommitJournal.Begin(_folder, _part, Earlier(), _written, _move).Finish());
        }
        catch (ResultFolderException)
        {
            _keepPart = CommitJournal.IsIn(_folder); // the earlier results are still in it
            throw;
        }

        _committed = true;
        InHand.Moved(_folder);
        Dispose();
    });

    /// <summary>Removes the part folder and, without a commit, folders that were made for the results; lets the next run in.</summary>
    public void Dispose() => InHand.Whole(Leave);

    /// <summary>True for the name of a part folder.</summary>
    internal static bool IsPart(string name) => name.StartsWith(HiddenNames.Part, StringComparison.Ordinal) && Path.GetFileName(name) == name;

    private void Leave()
    {
        try
        {
            InHand.Release(this);
            if (!_keepPart && Directory.Exists(_part)) Directory.Delete(_part, recursive: true);
            if (_lock is not null) RemoveIfEmpty(Path.Combine(_folder, "setups"), deep: true);
            _lock?.Dispose();
            _lock = null;
            if (_committed) return;
            for (int i = _made.Count - 1; i >= 0; i--) RemoveIfEmpty(_made[i], deep: false);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // A part folder that stays behind is hidden and goes with the next run; the outcome of this one must not hang on it.
        }
        finally
        {
            _lock?.Dispose();
            _lock = null;
        }
    }

    private WriteLock Lock(TimeSpan patience)
    {
        for (int tries = 1; ; tries++)
        {
            try
            {
                MakeMissing();
                return WriteLock.Take(Path.Combine(_folder, HiddenNames.Lock), patience)
                    ?? throw new ResultFolderException($"cannot write results to '{_folder}': another run of quartercar is writing there; nothing was changed. Let it end, or name another folder.");
            }
            catch (DirectoryNotFoundException) when (tries < MostTries)
            {
                // A run that made the folder, and left nothing in it, took it away between the two.
            }
        }
    }

    /// <summary>Ends what a killed run began here and takes away what it left: while the lock is held no living run has a part folder.</summary>
    private void Mend()
    {
        string[] parts = Directory.GetDirectories(_folder, HiddenNames.Part + "*");
        if (CommitJournal.Find(_folder, _move) is { } journal)
        {
            journal.Mend();
        }
        else if (CommitJournal.IsIn(_folder) && parts.Length > 0)
        {
            // Another version's, or changed by hand. What it leads to may be the only copy of somebody's results.
            throw new ResultFolderException(
                $"cannot write results to '{_folder}': an earlier run was ended while it moved its files in, and its note '{CommitJournal.Name}' cannot be followed; nothing was changed. Move what you need out of the hidden folder {Path.GetFileName(parts[0])}, delete both, or name another folder.");
        }

        foreach (string part in parts) Directory.Delete(part, recursive: true);
    }

    private static void RemoveIfEmpty(string folder, bool deep)
    {
        if (!Directory.Exists(folder)) return;
        if (deep)
        {
            foreach (string inner in Directory.EnumerateDirectories(folder)) RemoveIfEmpty(inner, deep: false);
        }

        if (!Directory.EnumerateFileSystemEntries(folder).Any()) Directory.Delete(folder);
    }

    private List<string> Earlier()
    {
        var top = Directory.EnumerateFiles(_folder);
        string setups = Path.Combine(_folder, "setups");
        var below = Directory.Exists(setups) ? Directory.EnumerateFiles(setups, "*", SearchOption.AllDirectories) : [];
        return top.Concat(below).Select(f => Path.GetRelativePath(_folder, f).Replace('\\', '/')).Where(OurFiles.Contains).ToList();
    }

    private void MakeMissing()
    {
        var missing = new Stack<string>();
        for (string? at = _folder; at is not null && !Directory.Exists(at); at = Path.GetDirectoryName(at)) missing.Push(at);
        foreach (string folder in missing)
        {
            Directory.CreateDirectory(folder);
            if (!_made.Contains(folder)) _made.Add(folder);
        }
    }

    private void Guarded(Action action)
    {
        try
        {
            action();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            InHand.Whole(() => { }); // where the process is being ended, what was in hand is gone: that is no news
            throw new ResultFolderException(
                $"cannot write results to '{_folder}': {IoWords.Of(e)}; earlier results there are unchanged. Free space or name another folder.", e);
        }
    }
}
