using System.Collections.Immutable;

namespace QuarterCar.Scenarios.Documents;

/// <summary>
/// A node of a document as written: a map, a list or a scalar, with the place where it stands. Immutable: an edit makes a new tree that shares the rest.
/// </summary>
/// <param name="Place">Where it stands.</param>
public abstract record DocumentNode(Place Place);

/// <summary>One key of a map.</summary>
/// <param name="Name">The key.</param>
/// <param name="Value">What stands behind it.</param>
/// <param name="Place">Where the key stands.</param>
public sealed record MapEntry(string Name, DocumentNode Value, Place Place);

/// <summary>Keys and values in file order, no key twice.</summary>
/// <param name="Place">Where it starts.</param>
/// <param name="Entries">In file order.</param>
public sealed record MapNode(Place Place, ImmutableArray<MapEntry> Entries) : DocumentNode(Place)
{
    /// <summary>The value of a key, or null.</summary>
    public DocumentNode? Find(string name)
    {
        var at = IndexOf(name);
        return at < 0 ? null : Entries[at].Value;
    }

    /// <summary>A map with one key set, added or (value null) removed.</summary>
    public MapNode With(string name, DocumentNode? value)
    {
        var at = IndexOf(name);
        return (at, value) switch
        {
            ( < 0, null) => this,
            ( < 0, _) => this with { Entries = Entries.Add(new MapEntry(name, value, value.Place)) },
            (_, null) => this with { Entries = Entries.RemoveAt(at) },
            _ => this with { Entries = Entries.SetItem(at, Entries[at] with { Value = value, Place = value.Place }) },
        };
    }

    private int IndexOf(string name)
    {
        for (var i = 0; i < Entries.Length; i++)
        {
            if (Entries[i].Name == name)
            {
                return i;
            }
        }

        return -1;
    }
}

/// <summary>Items in file order.</summary>
/// <param name="Place">Where it starts.</param>
/// <param name="Items">In file order.</param>
public sealed record ListNode(Place Place, ImmutableArray<DocumentNode> Items) : DocumentNode(Place);

/// <summary>A text as written, quotes taken off.</summary>
/// <param name="Place">Where it starts.</param>
/// <param name="Text">The text.</param>
/// <param name="Quoted">True where it stood in quotes or as a block: then it is never "nothing" and never a change.</param>
public sealed record ScalarNode(Place Place, string Text, bool Quoted) : DocumentNode(Place)
{
    /// <summary>True for a key with nothing behind it.</summary>
    public bool IsNothing => !Quoted && Text is "" or "~" or "null";
}

/// <summary>A stand-in where a mistake is noted already, so that it is not noted again.</summary>
/// <param name="Place">Where it stands.</param>
public sealed record BrokenNode(Place Place) : DocumentNode(Place);
