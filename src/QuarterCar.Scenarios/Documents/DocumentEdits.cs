namespace QuarterCar.Scenarios.Documents;

/// <summary>Edits of a document: each makes a new tree.</summary>
public static class DocumentEdits
{
    /// <summary>The node at a path, or null where there is none.</summary>
    public static DocumentNode? Find(this DocumentNode root, ReadOnlySpan<PathStep> steps)
    {
        DocumentNode? at = root;
        foreach (var step in steps)
        {
            at = (at, step.Name) switch
            {
                (MapNode map, { } name) => map.Find(name),
                (ListNode list, null) => step.Index < list.Items.Length ? list.Items[step.Index] : null,
                _ => null,
            };
        }

        return at;
    }

    /// <summary>
    /// The document with the node at a path set, or (value null) removed. Maps that are missing on the way are made; lists are not, and an
    /// index must stand for an item that is there. Null where the path does not fit what stands in the document; <paramref name="misfit"/>
    /// is then the node that it does not fit.
    /// </summary>
    public static DocumentNode? With(this DocumentNode root, ReadOnlySpan<PathStep> steps, DocumentNode? value, Place place, out DocumentNode misfit)
    {
        misfit = root;
        if (steps.IsEmpty)
        {
            return value;
        }

        var step = steps[0];
        var rest = steps[1..];
        if (root is MapNode map && step.Name is { } name)
        {
            return InMap(map, name, rest, value, place, out misfit);
        }

        return root is ListNode list && step.Name is null && step.Index < list.Items.Length
            ? InList(list, step.Index, rest, value, place, out misfit)
            : null;
    }

    private static MapNode? InMap(MapNode map, string name, ReadOnlySpan<PathStep> rest, DocumentNode? value, Place place, out DocumentNode misfit)
    {
        misfit = map;
        var old = map.Find(name);
        if (rest.IsEmpty || (old is null && value is null))
        {
            return map.With(name, rest.IsEmpty ? value : old);
        }

        var below = old is null or ScalarNode { IsNothing: true } ? new MapNode(place, []) : old;
        var edited = below.With(rest, value, place, out misfit);
        return edited is null ? null : map.With(name, edited);
    }

    private static ListNode? InList(ListNode list, int index, ReadOnlySpan<PathStep> rest, DocumentNode? value, Place place, out DocumentNode misfit)
    {
        misfit = list;
        if (rest.IsEmpty && value is null)
        {
            return list with { Items = list.Items.RemoveAt(index) };
        }

        var edited = list.Items[index].With(rest, value, place, out misfit);
        return edited is null ? null : list with { Items = list.Items.SetItem(index, edited) };
    }
}
