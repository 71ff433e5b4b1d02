using System.Text;

namespace QuarterCar.Reports.Files;

/// <summary>
/// What is written down before results are moved into a folder, so that a run that is killed between two moves can be ended by the next one.
/// <code>
///  FOLDER/trace.csv, …                       earlier results, then the new ones
///  FOLDER/quartercar-unfinished.txt          this journal: says to a person that the files around it are of two runs
///  FOLDER/.quartercar-part-…/new/trace.csv   complete and on the disk before the journal appears
///  FOLDER/.quartercar-part-…/earlier/…       earlier results on their way out
/// </code>
/// While the journal is there, a file still under new/ means that its namesake in the folder is an earlier one or missing; a file gone from new/ means that its namesake is the new one.
/// So each move is decided by what is found, moving may begin again after any of them, forward or back, and a kill during mending does no harm either. Each move is a rename inside one file system, which is done or not done.
/// </summary>
internal sealed class CommitJournal
{
    /// <summary>Its name in the folder: in sight, because it is for people too.</summary>
    public const string Name = "quartercar-unfinished.txt";

    private const string PartWord = "from ", EarlierWord = "earlier ", NewWord = "new ";

    private const string Words = """
        The result files in this folder are of two runs: quartercar was ended while it moved new ones in.
        Nothing is lost. The next quartercar command with --out to this folder mends it before it does anything else;
        what is not in place yet lies in the hidden folder named below. While a run is moving its files in,
        this page is here for a moment and means nothing.

        """;

    // A million setups with their traces are named in a third of that.
    private const long MostLength = 1L << 30;

    private readonly string _folder, _part;
    private readonly IReadOnlyList<string> _earlier, _fresh;
    private readonly Action<string, string> _move;

    private CommitJournal(string folder, string part, IReadOnlyList<string> earlier, IReadOnlyList<string> fresh, Action<string, string> move) =>
        (_folder, _part, _earlier, _fresh, _move) = (folder, part, earlier, fresh, move);

    /// <summary>Where a part folder keeps what it is about to move in.</summary>
    public static string New(string part) => Path.Combine(part, "new");

    private static string Earlier(string part) => Path.Combine(part, "earlier");

    /// <summary>Writes it; from here on the new results are the ones that count.</summary>
    /// <param name="folder">The result folder.</param>
    /// <param name="part">The part folder in it.</param>
    /// <param name="earlier">Names of results that are there.</param>
    /// <param name="fresh">Names of results that come.</param>
    /// <param name="move">Renames a file, over another one where there is one.</param>
    public static CommitJournal Begin(string folder, string part, IReadOnlyList<string> earlier, IReadOnlyList<string> fresh, Action<string, string> move)
    {
        if (fresh.FirstOrDefault(n => !File.Exists(Path.Combine(New(part), n))) is { } lost) throw new IOException($"{lost}, written a moment ago, is gone again");
        var journal = new CommitJournal(folder, part, earlier, fresh, move);
        string beside = Path.Combine(part, Name);
        using (var stream = new FileStream(beside, FileMode.CreateNew, FileAccess.Write, FileShare.None))
        {
            stream.Write(Encoding.UTF8.GetBytes(journal.Text()));
            stream.Flush(flushToDisk: true);
        }

        move(beside, Path.Combine(folder, Name));
        return journal;
    }

    /// <summary>True where one lies in a folder, whether it leads to files or not.</summary>
    public static bool IsIn(string folder) => File.Exists(Path.Combine(folder, Name));

    /// <summary>The one that a killed run left behind; null where there is none, or none that leads to its files.</summary>
    /// <param name="folder">The result folder.</param>
    /// <param name="move">Renames a file.</param>
    public static CommitJournal? Find(string folder, Action<string, string> move)
    {
        string file = Path.Combine(folder, Name);

        // Our own note is a plain file; a pipe in its place, which has no length, would be waited for.
        if (new FileInfo(file) is not { Exists: true, LinkTarget: null, Length: > 0 and < MostLength }) return null;
        string[] lines = File.ReadAllLines(file);
        List<string> Named(string word) => [.. lines.Where(l => l.StartsWith(word, StringComparison.Ordinal)).Select(l => l[word.Length..])];
        List<string> parts = Named(PartWord), earlier = Named(EarlierWord), fresh = Named(NewWord);

        // Anybody can write such a file: no name in it is followed that this program does not give itself.
        if (parts is not [var part] || !ResultFolder.IsPart(part) || !earlier.Concat(fresh).All(OurFiles.Contains)) return null;
        return HoldsFiles(Path.Combine(folder, part)) ? new CommitJournal(folder, Path.Combine(folder, part), earlier, fresh, move) : null;
    }

    // Links may lead out of the folder. A run leaves none but one that somebody had in place of an earlier result, which is itself set aside and put back.
    private static bool HoldsFiles(string part) =>
        new DirectoryInfo(part) is { Exists: true, LinkTarget: null } found
        && !found.EnumerateFileSystemInfos("*", SearchOption.AllDirectories).Any(e => e.LinkTarget is not null && !(e is FileInfo && IsBelow(e.FullName, Earlier(found.FullName))));

    private static bool IsBelow(string path, string folder) => path.StartsWith(folder + Path.DirectorySeparatorChar, StringComparison.Ordinal);

    /// <summary>Brings the new results in; where that fails, the earlier ones back.</summary>
    /// <exception cref="IOException">A file could not be moved in; the earlier results are whole again.</exception>
    /// <exception cref="UnauthorizedAccessException">Likewise.</exception>
    /// <exception cref="ResultFolderException">Nor could they be brought back: the journal stays for the next run.</exception>
    public void Finish()
    {
        try
        {
            Forward();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            BackAfter(e);
            File.Delete(Path.Combine(_folder, Name));
            throw;
        }

        File.Delete(Path.Combine(_folder, Name));
    }

    /// <summary>Ends what a killed run began: forward, else back; either leaves one run's results.</summary>
    /// <exception cref="ResultFolderException">Neither was possible; the journal stays.</exception>
    public void Mend()
    {
        try
        {
            Finish();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // The earlier results are back and whole: nothing is left to mend.
        }
    }

    private void Forward()
    {
        string from = New(_part), aside = Earlier(_part);
        var fresh = _fresh.ToHashSet(StringComparer.Ordinal);
        foreach (string name in _earlier)
        {
            bool isNew = fresh.Contains(name) && !File.Exists(Path.Combine(from, name));
            if (!isNew && File.Exists(Path.Combine(_folder, name))) Move(_folder, aside, name);
        }

        foreach (string name in _fresh)
        {
            if (File.Exists(Path.Combine(from, name))) Move(from, _folder, name);
        }
    }

    private void Back()
    {
        string from = New(_part), aside = Earlier(_part);
        foreach (string name in _fresh)
        {
            if (!File.Exists(Path.Combine(from, name)) && File.Exists(Path.Combine(_folder, name))) Move(_folder, from, name);
        }

        foreach (string name in _earlier)
        {
            if (File.Exists(Path.Combine(aside, name))) Move(aside, _folder, name);
        }
    }

    private void BackAfter(Exception cause)
    {
        try
        {
            Back();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new ResultFolderException(
                $"cannot move results into '{_folder}': {IoWords.Of(cause)}; nor the earlier ones back: {IoWords.Of(e)}. Nothing is lost: what is not in place lies in '{_part}', and the next run with --out to this folder tries again.", e);
        }
    }

    private void Move(string from, string to, string name)
    {
        string target = Path.Combine(to, name);
        Directory.CreateDirectory(Path.GetDirectoryName(target)!);
        _move(Path.Combine(from, name), target);
    }

    private string Text()
    {
        var text = new StringBuilder(Words).Append('\n');
        text.Append(PartWord).Append(Path.GetFileName(_part)).Append('\n');
        foreach (string name in _earlier) text.Append(EarlierWord).Append(name).Append('\n');
        foreach (string name in _fresh) text.Append(NewWord).Append(name).Append('\n');
        return text.ToString();
    }
}
