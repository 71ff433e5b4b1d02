using System.Collections.Immutable;

namespace QuarterCar.Scenarios;

/// <summary>The mistakes of one reading: readers note and go on, so that one reading finds them all (see <see cref="Most"/> for where it stops).</summary>
public sealed class ProblemList
{
    /// <summary>Mistakes kept; the rest are counted. Nobody reads more, and a wrong file of a million rows must not fill the memory.</summary>
    public const int Most = 100;

    private readonly List<Problem> _kept = [];
    private readonly HashSet<Problem> _seen = [];
    private int _more;

    /// <summary>Times that a mistake was noted, the same one twice included: more than before means that something went wrong since.</summary>
    public int Count { get; private set; }

    /// <summary>True where what comes next is only counted.</summary>
    public bool IsFull => _kept.Count >= Most;

    /// <summary>Notes a mistake once.</summary>
    public void Note(Place place, string key, string found, string wanted) => Note(new Problem(place.File, place.Line, key, found, wanted));

    /// <summary>Notes a mistake once.</summary>
    public void Note(Problem problem)
    {
        Count++;
        if (IsFull)
        {
            _more++;
        }
        else if (_seen.Add(problem))
        {
            _kept.Add(problem);
        }
    }

    /// <summary>All kept, by file (in the order of first mention) and line, and a last one that counts the rest.</summary>
    public ImmutableArray<Problem> ToImmutable()
    {
        var files = _kept.Select(p => p.File).Distinct().ToList();
        var sorted = _kept.OrderBy(p => files.IndexOf(p.File)).ThenBy(p => p.Line);
        return _more == 0 ? [.. sorted] : [.. sorted, new Problem(_kept[^1].File, 0, "", Texts.MoreMistakes(_more), Texts.CorrectedFile)];
    }
}
