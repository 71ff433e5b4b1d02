using System.Collections.Immutable;

using QuarterCar.Reports.Json;
using QuarterCar.Studies.Setups;

namespace QuarterCar.Reports.Studies;

/// <summary>All parts of one study, put together in the order of its setups.</summary>
public sealed class StudyParts
{
    // Missing parts that a message names.
    private const int MostNamed = 20;

    private readonly ImmutableArray<StudyPart> _parts;

    private StudyParts(ImmutableArray<StudyPart> parts) => _parts = parts;

    /// <summary>The head of the whole study.</summary>
    public StudyHead Head => _parts[0].Head with { Part = 1, Parts = 1 };

    /// <summary>What every part was asked.</summary>
    public PartAsked Asked => _parts[0].Asked;

    /// <summary>The folder that holds a setup.</summary>
    /// <param name="index">Of the whole study, from 0.</param>
    public string FolderOf(long index) => _parts[(int)(index % _parts.Length)].Folder;

    /// <summary>The parts, in order.</summary>
    public ImmutableArray<StudyPart> Parts => _parts;

    /// <summary>Puts parts together, in any order.</summary>
    /// <param name="parts">The parts.</param>
    /// <param name="mistakes">What is wrong: parts of different studies, one twice, one missing.</param>
    /// <returns>Null where something is wrong.</returns>
    public static StudyParts? Of(IReadOnlyList<StudyPart> parts, out ImmutableArray<string> mistakes)
    {
        var found = ImmutableArray.CreateBuilder<string>();
        StudyPart first = parts[0];
        foreach (StudyPart part in parts.Where(p => p.Version != SummaryJson.Version))
            found.Add($"{part.Folder}: found a part written by version {part.Version}; wanted one of this program, version {SummaryJson.Version}");
        foreach (StudyPart part in parts.Skip(1).Where(p => !OfOneStudy(first, p)))
            found.Add($"{part.Folder}: found a part of another study than {first.Folder} holds; wanted parts of one study, run with the same scenario and options");
        foreach (var twice in parts.GroupBy(p => p.Head.Part).Where(g => g.Count() > 1))
            found.Add(FormattableString.Invariant($"part {twice.Key}/{first.Head.Parts}: found in {string.Join(" and in ", twice.Select(p => p.Folder))}; wanted it once"));
        HashSet<int> have = [.. parts.Select(p => p.Head.Part)]; // a part may claim to be one of billions
        var missing = Enumerable.Range(1, first.Head.Parts).Where(k => !have.Contains(k)).Take(MostNamed + 1).Select(k => FormattableString.Invariant($"{k}/{first.Head.Parts}")).ToList();
        if (missing.Count > 0) found.Add($"found no part {string.Join(", ", missing.Take(MostNamed))}{(missing.Count > MostNamed ? ", …" : "")}; wanted every part of the study: run it with --part {missing[0]}");
        mistakes = found.ToImmutable();
        return mistakes.IsEmpty ? new([.. parts.OrderBy(p => p.Head.Part)]) : null;
    }

    /// <summary>Hands on every row, in the order of one run.</summary>
    /// <exception cref="FormatException">A part is damaged.</exception>
    public void Produce(Action<StudyRow> take)
    {
        var readers = _parts.Select(p => p.Rows().GetEnumerator()).ToList();
        try
        {
            int open = readers.Count;
            while (open > 0)
            {
                open = 0;
                foreach (IEnumerator<StudyRow> reader in readers)
                {
                    if (!reader.MoveNext()) continue;
                    open++;
                    take(reader.Current);
                }
            }
        }
        finally
        {
            readers.ForEach(r => r.Dispose());
        }
    }

    private static bool OfOneStudy(StudyPart a, StudyPart b) =>
        a.Version == b.Version && a.Asked.Same(b.Asked) && a.Head with { Part = 1, Paths = [] } == b.Head with { Part = 1, Paths = [] } && a.Head.Paths.SequenceEqual(b.Head.Paths);
}
