using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Keys;
using QuarterCar.Scenarios.Reading;

namespace QuarterCar.Studies.Setups;

/// <summary>
/// Judges values that a study will set, before anything is computed: an unknown path, a unit that does not fit, a number out of range, a map with a wrong key.
/// Whether a value goes together with the rest of a setup shows only in its row.
/// </summary>
/// <param name="document">The scenario; null where it could not be read: then paths and numbers alone are judged.</param>
/// <param name="options">Overrides that come before.</param>
/// <param name="problems">Takes the mistakes.</param>
public sealed class ValueCheck(ScenarioDocument? document, ReadOptions options, ProblemList problems)
{
    private readonly DocumentNode? _root = document is null ? null : Overrides.Edited(document.Root, options.Sets);

    /// <summary>Takes the mistakes.</summary>
    public ProblemList Problems => problems;

    /// <summary>The path's meaning; null where it has none or cannot vary, noted once.</summary>
    public KnownPath? Path(string path, Place place)
    {
        if (KeyPaths.Resolve(ScenarioKeys.Root, path, out string? near) is { } known)
        {
            if (VariedPaths.Refusal(known) is not { } refusal) return known;
            problems.Note(place, path, refusal.Found, refusal.Wanted);
            return null;
        }

        problems.Note(place, path, Texts.UnknownPath, near is not null ? Texts.Suggest(near) : Texts.KnownPathWanted);
        return null;
    }

    /// <summary>True where a value can stand at its path; else the reason is noted at its place.</summary>
    /// <param name="known">The path's meaning.</param>
    /// <param name="value">The value.</param>
    /// <param name="place">Where it stands.</param>
    /// <param name="setup">Every value of the setup that it is one of: a drop stands where the setup takes the course away.</param>
    public bool Value(KnownPath known, SetupValue value, Place place, IEnumerable<SetupValue>? setup = null)
    {
        int before = problems.Count;
        if (!PlainText.IsLine(value.Text))
        {
            problems.Note(place, value.Path, Texts.Quote(value.Text), Texts.PlainCell);
            return false;
        }

        var own = new ProblemList();
        DocumentNode? edited = _root is null ? null : Overrides.Set(_root, value.AsSet, own);
        bool removed = value.Text.Trim() == Overrides.None;
        if (own.Count == 0 && !removed)
        {
            var node = YamlReader.Read(value.AsSet, value.Text, own, hasLines: false);
            if (own.Count == 0 && node is ScalarNode scalar && known.Kind is QuantityKind kind) new QuantityReader(own).Read(value.Path, kind, scalar);
            else if (own.Count == 0 && document is not null && edited is not null && known.Kind is not QuantityKind) Whole(value, setup, own);
        }

        foreach (Problem problem in own.ToImmutable()) problems.Note(problem with { File = place.File, Line = place.Line });
        return problems.Count == before;
    }

    // Words, lists and maps are judged by the reader itself, alone or else in their setup; only what it finds at the value counts here.
    private void Whole(SetupValue value, IEnumerable<SetupValue>? setup, ProblemList own)
    {
        Problem[] found = At(value, [value.AsSet]);
        if (found.Length > 0 && setup is not null) found = At(value, setup.Select(v => v.AsSet));
        foreach (Problem problem in found) own.Note(problem);
    }

    private Problem[] At(SetupValue value, IEnumerable<string> sets) =>
    [
        .. ScenarioReader.Read(document!, options with { Sets = [.. options.Sets, .. sets], Nut = NutRule.Reset }).Problems.Where(p => p.File == "--set " + value.AsSet),
    ];
}
