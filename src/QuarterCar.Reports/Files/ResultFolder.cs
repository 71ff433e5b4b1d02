namespace QuarterCar.Reports.Files;

/// <summary>A folder into which results come whole or not at all: files are written into a hidden part folder inside it and moved in by <see cref="Commit"/>; without a commit nothing changes.</summary>
public sealed class ResultFolder : IDisposable
{
    private const string PartPrefix = ".quartercar-part-";

    private readonly string _folder;
    private readonly string _part;
    private readonly List<string> _made = [];
    private readonly List<string> _written = [];
    private bool _committed, _keepPart;

    private ResultFolder(string folder, string part) => (_folder, _part) = (folder, part);

    /// <summary>Names written so far, relative, with forward slashes.</summary>
    public IReadOnlyList<string> Written => _written;

    /// <summary>Opens a folder for results and makes it where it is missing.</summary>
    /// <exception cref="ResultFolderException">It cannot be made or written to.</exception>
    public static ResultFolder Open(string folder)
    {
        string full = Path.GetFullPath(folder);
        var result = new ResultFolder(full, Path.Combine(full, PartPrefix + Guid.NewGuid().ToString("N")));
        try
        {
            result.Guarded(() =>
            {
                result.MakeMissing();
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
            string path = Path.Combine(_part, name);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            using var stream = new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.None, bufferSize: 1 << 16);
            write(stream);
        });
        _written.Add(name);
    }

    /// <summary>Reads a file that was written before, for another form of it.</summary>
    /// <exception cref="ResultFolderException">It could not be opened.</exception>
    public Stream Read(string name)
    {
        Stream? stream = null;
        Guarded(() => stream = File.OpenRead(Path.Combine(_part, name)));
        return stream!;
    }

    /// <summary>Moves everything in. Earlier results are set aside first and come back if a move fails; results of an earlier, other kind of run are removed, because beside the new ones they would mislead.</summary>
    /// <exception cref="ResultFolderException">A file could not be moved; the earlier results are back.</exception>
    public void Commit()
    {
        string old = Path.Combine(_part, "earlier");
        var moved = new List<(string From, string To)>();
        try
        {
            Guarded(() =>
            {
                foreach (string name in Earlier()) Move(_folder, old, name, moved);
                foreach (string name in _written) Move(_part, _folder, name, moved);
            });
            _committed = true;
        }
        catch
        {
            _keepPart = true; // until the earlier results are out of it again
            for (int i = moved.Count - 1; i >= 0; i--) File.Move(moved[i].To, moved[i].From);
            _keepPart = false;
            throw;
        }

        Dispose();
    }

    /// <summary>Removes the part folder and, without a commit, folders that were made for the results.</summary>
    public void Dispose()
    {
        try
        {
            if (!_keepPart && Directory.Exists(_part)) Directory.Delete(_part, recursive: true);
            RemoveIfEmpty(Path.Combine(_folder, "setups"), deep: true);
            if (_committed) return;
            for (int i = _made.Count - 1; i >= 0; i--) RemoveIfEmpty(_made[i], deep: false);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // A part folder that stays behind is hidden and harmless; the outcome of the run must not hang on it.
        }
    }

    private static void Move(string from, string to, string name, List<(string From, string To)> moved)
    {
        string source = Path.Combine(from, name), target = Path.Combine(to, name);
        Directory.CreateDirectory(Path.GetDirectoryName(target)!);
        File.Move(source, target);
        moved.Add((source, target));
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
            _made.Add(folder);
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
            throw new ResultFolderException(
                $"cannot write results to '{_folder}': {e.Message.TrimEnd('.')}; earlier results there are unchanged. Free space or name another folder.", e);
        }
    }
}
