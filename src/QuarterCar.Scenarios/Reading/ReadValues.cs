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

/// <summary>What a document says, by dotted path, defaults filled in. What was mistaken or is missing is not there: its problem is noted.</summary>
public sealed class ReadValues(ImmutableSortedDictionary<string, ReadValue> values)
{
    /// <summary>By path, in ordinal order.</summary>
    public ImmutableSortedDictionary<string, ReadValue> All => values;

    /// <summary>True where something was read at the path, or its default holds.</summary>
    public bool Has(string path) => values.ContainsKey(path);

    /// <summary>The node of a path, or null.</summary>
    public DocumentNode? Node(string path) => values.GetValueOrDefault(path)?.Node;

    /// <summary>Items of a list; 0 where it is not there.</summary>
    public int Count(string path) => values.GetValueOrDefault(path) is PresentValue p ? p.Count : 0;

    /// <summary>SI number; false where it is not there.</summary>
    public bool TryNumber(string path, [NotNullWhen(true)] out NumberValue? value) => (value = values.GetValueOrDefault(path) as NumberValue) is not null;

    /// <summary>SI number, or null where it is not there.</summary>
    public double? NumberOrNull(string path) => values.GetValueOrDefault(path) is NumberValue n ? n.Measured.Si : null;

    /// <summary>SI number that the key table makes sure of.</summary>
    public double Number(string path) => ((NumberValue)values[path]).Measured.Si;

    /// <summary>Whole number that the key table makes sure of.</summary>
    public ulong Whole(string path) => ((WholeValue)values[path]).Number;

    /// <summary>Text or word, or null where it is not there.</summary>
    public string? Text(string path) => (values.GetValueOrDefault(path) as TextValue)?.Text;

    /// <summary>Rows of a table; empty where it is not there.</summary>
    public ImmutableArray<TablePoint> Table(string path) => values.GetValueOrDefault(path) is TableValue t ? t.Points : [];
}
