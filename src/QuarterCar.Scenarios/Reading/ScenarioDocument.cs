using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Text;

using QuarterCar.Model;
using QuarterCar.Scenarios.Documents;

namespace QuarterCar.Scenarios.Reading;

/// <summary>A scenario file as written, parsed once: studies read it again from the top with other overrides, without touching the disk.</summary>
public sealed class ScenarioDocument
{
    private readonly ConcurrentDictionary<string, (ImmutableArray<TablePoint>? Points, ImmutableArray<Problem> Problems, string Text)> _profiles = new(StringComparer.Ordinal);
    private readonly Lazy<ImmutableArray<Problem>> _caseProblems;

    private readonly bool _keeps;

    // Names of the profiles that may be read; null for any beside the file.
    private readonly ImmutableHashSet<string>? _readable;

    private ScenarioDocument(string file, string? folder, string text, DocumentNode root, bool isWhole, bool keeps = false, ImmutableHashSet<string>? readable = null)
    {
        (File, Folder, Text, Root, IsWhole, _keeps, _readable) = (file, folder, text, root, isWhole, keeps, readable);
        _caseProblems = new(() => FindCaseProblems(Root));
    }

    /// <summary>Name as given.</summary>
    public string File { get; }

    /// <summary>Where profile files are looked for; null for a text without a folder.</summary>
    public string? Folder { get; }

    /// <summary>The text that was read; empty for a document made without one.</summary>
    public string Text { get; }

    /// <summary>The document.</summary>
    public DocumentNode Root { get; }

    /// <summary>False where the text had mistakes as YAML: then stand-ins are in the document, and no scenario can be made of it.</summary>
    public bool IsWhole { get; }

    /// <summary>Mistakes in the load cases as written.</summary>
    public ImmutableArray<Problem> CaseProblems => _caseProblems.Value;

    /// <summary>The files beside the scenario that it, or what was asked of it, named as profiles so far, by name, with the text that was read. Empty is the text of one that is no profile: who names a file does not hand it on. For a document that keeps them.</summary>
    public ImmutableArray<(string Name, string Text)> KeptProfiles => [.. _profiles.Select(p => (p.Key, p.Value.Text)).OrderBy(p => p.Key, StringComparer.Ordinal)];

    /// <summary>Reads a file; null where nothing can be made of it.</summary>
    /// <param name="path">The file.</param>
    /// <param name="problems">Takes the mistakes.</param>
    /// <param name="keepProfiles">True where <see cref="KeptProfiles"/> will be asked for.</param>
    public static ScenarioDocument? Load(string path, ProblemList problems, bool keepProfiles = false) =>
        TextFiles.Read(path, path, Texts.ScenarioFile, problems) is { } text
            ? Parse(path, text, Path.GetDirectoryName(Path.GetFullPath(path)), problems, keepProfiles)
            : null;

    /// <summary>Parses a text; null where nothing can be made of it.</summary>
    public static ScenarioDocument? Parse(string name, string text, string? folder, ProblemList problems, bool keepProfiles = false)
    {
        var before = problems.Count;
        var root = YamlReader.Read(name, text, problems);
        if (root is null or ScalarNode { IsNothing: true } && problems.Count == before)
        {
            problems.Note(new Place(name, 0, 0), "", Texts.EmptyFile, Texts.ScenarioFile);
            return null;
        }

        return root is null ? null : new ScenarioDocument(name, folder, text, root, problems.Count == before, keepProfiles);
    }

    /// <summary>A document made without a text.</summary>
    /// <param name="name">Named in every problem.</param>
    /// <param name="root">The document.</param>
    /// <param name="folder">Where profile files are looked for; null for nowhere.</param>
    public static ScenarioDocument Of(string name, DocumentNode root, string? folder) => new(name, folder, "", root, isWhole: true);

    /// <summary>
    /// The same document, but whatever is edited in it, in its load cases too, no profiles of its folder are read but those that it names as written, alone
    /// or with one of its cases: for edits by others than whoever chose the file.
    /// </summary>
    public ScenarioDocument KeptToItsProfiles() => new(File, Folder, Text, Root, IsWhole, _keeps, [.. CaseBlock.Applied(Root).Prepend(Root).SelectMany(ProfileNames)]);

    /// <summary>The points of a profile beside the file; null where a problem was noted.</summary>
    public ImmutableArray<TablePoint>? Profile(string name, Place place, string key, ProblemList problems)
    {
        if (Folder is not null && _readable?.Contains(name) == false)
        {
            problems.Note(place, key, Texts.OtherProfile(name), Texts.OwnProfile);
            return null;
        }

        if (Folder is null || !ProfileReader.IsBeside(name))
        {
            problems.Note(place, key, Folder is null ? Texts.ProfileNeedsFolder : Texts.Quote(name), Texts.FileBeside);
            return null;
        }

        var reason = WhyNotBeside(Folder, name);
        if (reason is not (null or Texts.EmptyFile))
        {
            problems.Note(place, key, reason, Texts.FileBeside);
            return null;
        }

        var (points, mistakes, _) = _profiles.GetOrAdd(name, reason is null ? ReadProfile : EmptyProfile);
        foreach (var mistake in mistakes)
        {
            problems.Note(mistake);
        }

        return points;
    }

    /// <summary>
    /// Why a file is none to be read beside a scenario; null for one that is. A scenario may come from a stranger, with its folder: a link in it must not
    /// lead to other files of this machine, and what has no length (a pipe, a device) must not be waited for.
    /// </summary>
    /// <param name="folder">The scenario's folder.</param>
    /// <param name="name">The plain name of the file.</param>
    public static string? WhyNotBeside(string folder, string name)
    {
        var file = new FileInfo(Path.Combine(folder, name));
        try
        {
            return !file.Exists ? Texts.NoSuchProfile(name)
                : file.ResolveLinkTarget(returnFinalTarget: true) is FileInfo target && (GoesUp(file) || !IsIn(folder, target)) ? Texts.LinkAway
                : file.Length == 0 && !file.Attributes.HasFlag(FileAttributes.ReparsePoint) ? Texts.EmptyFile
                : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Texts.Unreadable(e.Message);
        }
    }

    // Where a link goes up after it went through another one is for the system to say, while here it would be reckoned from the text alone: no such link is followed.
    private static bool GoesUp(FileInfo link)
    {
        for (var at = link; at.LinkTarget is { } next; at = new FileInfo(Path.GetFullPath(next, at.DirectoryName!)))
        {
            if (next.Split(Path.DirectorySeparatorChar, Path.AltDirectorySeparatorChar).Contains(".."))
            {
                return true;
            }
        }

        return false;
    }

    private static bool IsIn(string folder, FileInfo file)
    {
        var own = new DirectoryInfo(folder);
        return file.Exists && file.Length > 0 && (file.DirectoryName == own.FullName.TrimEnd('/') || file.DirectoryName == own.ResolveLinkTarget(returnFinalTarget: true)?.FullName);
    }

    /// <summary>Mistakes in the load cases of a document edited from this one.</summary>
    public ImmutableArray<Problem> FindCaseProblems(DocumentNode root)
    {
        var problems = new ProblemList();
        CaseBlock.Check(root, (changed, list) => ScenarioContent.Read(this, changed, list), problems);
        return problems.ToImmutable();
    }

    private static IEnumerable<string> ProfileNames(DocumentNode root) => (root as MapNode)?.Find("terrain") is ListNode terrain
        ? terrain.Items.OfType<MapNode>().Select(p => p.Find("profile")).OfType<MapNode>().Select(p => p.Find("file")).OfType<ScalarNode>().Select(f => f.Text)
        : [];

    private static (ImmutableArray<TablePoint>? Points, ImmutableArray<Problem> Problems, string Text) EmptyProfile(string name)
    {
        var problems = new ProblemList();
        problems.Note(new Place(name, 0, 0), "", Texts.EmptyFile, Texts.ProfileFile);
        return (null, problems.ToImmutable(), "");
    }

    private (ImmutableArray<TablePoint>? Points, ImmutableArray<Problem> Problems, string Text) ReadProfile(string name)
    {
        var problems = new ProblemList();
        using var copy = _keeps ? new MemoryStream() : null;
        var points = ProfileReader.Read(Path.Combine(Folder!, name), name, problems, copy);
        return (points, problems.ToImmutable(), points is null || copy is null ? "" : Encoding.UTF8.GetString(copy.GetBuffer(), 0, (int)copy.Length));
    }
}
