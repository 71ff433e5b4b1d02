using System.Collections.Immutable;

using QuarterCar.Scenarios.Documents;

namespace QuarterCar.Scenarios.Keys;

/// <summary>A path that means something: its steps in the document and what stands there.</summary>
/// <param name="Steps">Steps; a name in an open map is one step, dots and all.</param>
/// <param name="Kind">What stands there.</param>
/// <param name="Default">What holds where the document has nothing there; null for none.</param>
public sealed record KnownPath(ImmutableArray<PathStep> Steps, KeyKind Kind, string? Default);

/// <summary>Paths against the key table: --set, load cases, tolerances and studies all name values this way.</summary>
public static class KeyPaths
{
    /// <summary>The known path of a text; null where a step is unknown, with <paramref name="near"/> the nearest known path if any.</summary>
    public static KnownPath? Resolve(MapKind root, string text, out string? near)
    {
        near = null;
        if (!DocumentPath.TryParse(text, out var path))
        {
            return null;
        }

        var steps = path.Steps;
        (KeyKind kind, string? standard) = (root, null);
        for (var i = 0; i < steps.Length; i++)
        {
            if (kind is OpenMapKind)
            {
                return new KnownPath([.. steps[..i], PathStep.Key(DocumentPath.Write(steps[i..]))], kind, null);
            }

            if (Below(kind, steps[i], out var known) is not { } key)
            {
                near = Near(steps, i, known) ?? Elsewhere(root, steps[i].Name);
                return null;
            }

            (kind, standard) = (key.Kind, key.Default);
        }

        return new KnownPath(steps, kind, standard);
    }

    /// <summary>Every dotted path of the table without lists' insides, for suggestions.</summary>
    public static IEnumerable<string> All(MapKind map, string prefix = "") =>
        map.Keys.SelectMany(k => k.Kind is MapKind below ? All(below, prefix + k.Name + ".").Prepend(prefix + k.Name) : [prefix + k.Name]);

    /// <summary>The one path whose last part is this name, if there is just one.</summary>
    public static string? Elsewhere(MapKind root, string? name)
    {
        if (name is null)
        {
            return null;
        }

        var fitting = All(root).Where(p => p.EndsWith("." + name, StringComparison.Ordinal)).Take(2).ToArray();
        return fitting.Length == 1 ? fitting[0] : null;
    }

    private static Key? Below(KeyKind kind, PathStep step, out IEnumerable<string> known)
    {
        known = [];
        switch (kind, step.Name)
        {
            case (MapKind map, { } name):
                known = map.Keys.Select(k => k.Name);
                return map.Find(name);
            case (OneOfKind one, { } name):
                known = one.Keys.Select(k => k.Name);
                return one.Find(name);
            case (ListKind list, null):
                return list.Item;
            case (TableKind table, null):
                return new Key("row", new RowKind(table), "");
            case (RowKind row, null) when step.Index < 2:
                return new Key("cell", step.Index == 0 ? row.Table.At : row.Table.Value, "");
            default:
                return null;
        }
    }

    private static string? Near(ImmutableArray<PathStep> steps, int at, IEnumerable<string> known)
    {
        if (steps[at].Name is not { } name || Nearest.Find(name, known) is not { } near)
        {
            return null;
        }

        return DocumentPath.Write([.. steps[..at], PathStep.Key(near), .. steps[(at + 1)..]]);
    }

    /// <summary>One row of a table: never in the key table itself, only on the way of a path into one.</summary>
    private sealed record RowKind(TableKind Table) : KeyKind;
}
