using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;

using QuarterCar.Model;
using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Quantities;

namespace QuarterCar.Scenarios.Reading;

/// <summary>One value that was read, with the node that it came from.</summary>
/// <param name="Node">Where it stands; for a default the map that lacks it.</param>
public abstract record ReadValue(DocumentNode Node);

/// <summary>A number, SI.</summary>
/// <param name="Node">Where it stands.</param>
/// <param name="Measured">As written.</param>
public sealed record NumberValue(DocumentNode Node, Measured Measured) : ReadValue(Node);

/// <summary>A whole number.</summary>
/// <param name="Node">Where it stands.</param>
/// <param name="Number">The number.</param>
public sealed record WholeValue(DocumentNode Node, ulong Number) : ReadValue(Node);

/// <summary>A word or a text.</summary>
/// <param name="Node">Where it stands.</param>
/// <param name="Text">The text.</param>
public sealed record TextValue(DocumentNode Node, string Text) : ReadValue(Node);

/// <summary>A table, SI.</summary>
/// <param name="Node">Where it stands.</param>
/// <param name="Points">Its rows.</param>
public sealed record TableValue(DocumentNode Node, ImmutableArray<TablePoint> Points) : ReadValue(Node);

/// <summary>A map or list that is there.</summary>
/// <param name="Node">The node.</param>
/// <param name="Count">Items of a list; 0 for a map.</param>
public sealed record PresentValue(DocumentNode Node, int Count) : ReadValue(Node);

/// <summary>What a document says, by dotted path, defaults filled in. What was mistaken or is missing is not there: its problem is noted. Immutable.</summary>
public sealed class ReadValues
{
    private readonly ImmutableSortedDictionary<string, ReadValue> _read;
    private readonly IReadOnlyDictionary<string, ReadValue> _index;
    private readonly ImmutableArray<KeyValuePair<string, ReadValue>> _set;

    /// <summary>Values as read.</summary>
    public ReadValues(ImmutableSortedDictionary<string, ReadValue> values)
        : this(values, values, [])
    {
    }

    private ReadValues(ImmutableSortedDictionary<string, ReadValue> read, IReadOnlyDictionary<string, ReadValue> index, ImmutableArray<KeyValuePair<string, ReadValue>> set) =>
        (_read, _index, _set) = (read, index, set);

    /// <summary>By path, in ordinal order.</summary>
    public ImmutableSortedDictionary<string, ReadValue> All => _read.SetItems(_set);

    /// <summary>The same, found faster: worth its making where many sets of values are made from these.</summary>
    public ReadValues Indexed() => new(_read, _read.ToFrozenDictionary(StringComparer.Ordinal), _set);

    /// <summary>The same with other values at some paths; of two at one path the later one counts.</summary>
    public ReadValues With(ImmutableArray<KeyValuePair<string, ReadValue>> set) => new(_read, _index, _set.AddRange(set));

    /// <summary>What was read at a path, or its default; null where it is not there.</summary>
    public ReadValue? Find(string path)
    {
        for (var i = _set.Length - 1; i >= 0; i--)
        {
            if (_set[i].Key == path)
            {
                return _set[i].Value;
            }
        }

        return _index.GetValueOrDefault(path);
    }

    /// <summary>True where something was read at the path, or its default holds.</summary>
    public bool Has(string path) => Find(path) is not null;

    /// <summary>The node of a path, or null.</summary>
    public DocumentNode? Node(string path) => Find(path)?.Node;

    /// <summary>Items of a list; 0 where it is not there.</summary>
    public int Count(string path) => Find(path) is PresentValue p ? p.Count : 0;

    /// <summary>SI number; false where it is not there.</summary>
    public bool TryNumber(string path, [NotNullWhen(true)] out NumberValue? value) => (value = Find(path) as NumberValue) is not null;

    /// <summary>SI number, or null where it is not there.</summary>
    public double? NumberOrNull(string path) => Find(path) is NumberValue n ? n.Measured.Si : null;

    /// <summary>SI number that the key table makes sure of.</summary>
    public double Number(string path) => ((NumberValue)Find(path)!).Measured.Si;

    /// <summary>Whole number that the key table makes sure of.</summary>
    public ulong Whole(string path) => ((WholeValue)Find(path)!).Number;

    /// <summary>Text or word, or null where it is not there.</summary>
    public string? Text(string path) => (Find(path) as TextValue)?.Text;

    /// <summary>Rows of a table; empty where it is not there.</summary>
    public ImmutableArray<TablePoint> Table(string path) => Find(path) is TableValue t ? t.Points : [];
}
