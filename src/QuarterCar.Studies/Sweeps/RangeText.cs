using System.Globalization;

using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Keys;
using QuarterCar.Scenarios.Quantities;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Studies.Setups;

namespace QuarterCar.Studies.Sweeps;

/// <summary>Reads PATH=FROM:TO:COUNT (sweep) and PATH=FROM:TO (reach): one unit at the end may serve both ends. Mistakes are noted with what is wanted.</summary>
/// <param name="document">The scenario that the paths lead into.</param>
/// <param name="sets">Overrides that come before.</param>
/// <param name="problems">Where mistakes go.</param>
public sealed class RangeText(ScenarioDocument document, IEnumerable<string> sets, ProblemList problems)
{
    private const string SweepForm = "PATH=FROM:TO:COUNT, like speed=2:10:9 mph or coilover.preload=1:2:11 in";
    private const string ReachForm = "PATH=FROM:TO, like speed=2:10 mph";

    private readonly DocumentNode _root = Overrides.Edited(document.Root, sets);

    /// <summary>True for a text that is a range; a list of values, a map or a quoted text is none.</summary>
    public static bool IsRange(string text) =>
        text.IndexOf('=', StringComparison.Ordinal) is > 0 and var at && text[at..].Contains(':', StringComparison.Ordinal) && text.AsSpan(at).IndexOfAny("{['\"") < 0;

    /// <summary>A sweep's grid; null where a mistake was noted.</summary>
    public SweepGrid? Sweep(IReadOnlyList<string> texts)
    {
        int before = problems.Count;
        SweepGridAxis?[] axes = [.. texts.Select(GridAxis)];
        foreach (IGrouping<string, string> path in texts.GroupBy(t => VariedPaths.Canonical(Overrides.PathOf(t))).Where(g => g.Count() > 1))
            Note(path.Last(), path.Key, "the path a second time", "each path once");
        return problems.Count > before ? null : new SweepGrid([.. axes.Select(a => a!)]);
    }

    /// <summary>One axis of a sweep; null where a mistake was noted.</summary>
    public SweepGridAxis? GridAxis(string text)
    {
        if (Ends(text, SweepForm, 3, out string[] parts, out string unit) is not { } path)
            return null;
        bool counted = int.TryParse(parts[2], NumberStyles.None, CultureInfo.InvariantCulture, out int count);
        if (!counted || count < 2)
            Note(text, path, counted ? $"a count of {count}" : $"the count '{parts[2]}'", "a whole number of points, 2 or more: both ends are run");
        if (Kind(text, path) is not { } kind || Axis(text, path, kind, parts, unit) is not { } axis || count < 2)
            return null;
        if (kind is WholeKind && Math.Abs(axis.ToSi - axis.FromSi) % (count - 1) != 0)
        {
            Note(text, path, "points between whole numbers", "a count that meets whole numbers only, for this path takes no others");
            return null;
        }

        return SweepGridAxis.Of(axis, count);
    }

    /// <summary>A reach's way; null where a mistake was noted.</summary>
    public SweepAxis? Reach(string text)
    {
        if (Ends(text, ReachForm, 2, out string[] parts, out string unit) is not { } path)
            return null;
        if (Kind(text, path) is not { } kind)
            return null;
        if (kind is WholeKind)
        {
            Note(text, path, "a path to a whole number", "a path to a value that can be halved again and again");
            return null;
        }

        return Axis(text, path, kind, parts, unit);
    }

    // Path, pieces between colons, and the unit behind the last piece.
    private string? Ends(string text, string form, int pieces, out string[] parts, out string unit)
    {
        int equals = text.IndexOf('=', StringComparison.Ordinal);
        parts = equals > 0 ? [.. text[(equals + 1)..].Split(':').Select(p => p.Trim())] : [];
        unit = "";
        if (parts.Length != pieces || parts.Any(p => p.Length == 0))
        {
            Note(text, "", $"'{text}'", form);
            return null;
        }

        if (pieces == 3 && Measured.TryParse(parts[2], out Measured last))
        {
            unit = last.UnitName;
            parts[2] = unit.Length == 0 ? parts[2] : parts[2][..^unit.Length].Trim();
        }

        return text[..equals].Trim();
    }

    private KeyKind? Kind(string text, string path)
    {
        if (KeyPaths.Resolve(ScenarioKeys.Root, path, out string? near) is not { } known)
        {
            Note(text, path, Texts.UnknownPath, near is null ? Texts.KnownPathWanted : Texts.Suggest(near));
            return null;
        }

        if (VariedPaths.Refusal(known) is { } refusal)
        {
            Note(text, path, refusal.Found, refusal.Wanted);
            return null;
        }

        if (!Overrides.Fits(_root, known, path, Where(text), problems))
            return null;
        DocumentNode? node = _root.Find(known.Steps.AsSpan());
        KeyKind? kind = known.Kind is WholeKind ? known.Kind : SideBlocks.KindOfNumber(known.Kind, node);
        if (kind is null)
            Note(text, path, "a path to what is no single number", "a path to a number in the scenario");
        return kind;
    }

    private SweepAxis? Axis(string text, string path, KeyKind kind, string[] parts, string unit)
    {
        string to = WithUnit(parts[1], unit), from = WithUnit(parts[0], Measured.TryParse(to, out Measured m) ? m.UnitName : unit);
        var number = kind as QuantityKind ?? new QuantityKind(Dimension.Number, RangeOf((WholeKind)kind));
        var reader = new QuantityReader(problems);
        Measured? first = reader.Read(path, number, Scalar(text, from)), last = reader.Read(path, number, Scalar(text, to));
        if (first is not { } a || last is not { } b)
            return null;
        if (kind is WholeKind && (a.Number % 1 != 0 || b.Number % 1 != 0))
        {
            Note(text, path, $"'{parts[0]}' and '{parts[1]}'", "whole numbers");
            return null;
        }

        if (a.Si != b.Si)
            return new SweepAxis(path, a, b);
        Note(text, path, "two equal ends", "a way from one value to another");
        return null;
    }

    private static string WithUnit(string number, string unit) =>
        unit.Length > 0 && Measured.TryParse(number, out Measured m) && m.UnitName.Length == 0 ? number + " " + unit : number;

    private static ValueRange RangeOf(WholeKind kind) => new(kind.Least, true, kind.Most);

    private static ScalarNode Scalar(string text, string value) => new(Where(text), value, false);

    private static Place Where(string text) => new(text == "--vary" ? text : "--vary " + text, 0, 0);

    private void Note(string text, string key, string found, string wanted) => problems.Note(Where(text), key, found, wanted);
}
