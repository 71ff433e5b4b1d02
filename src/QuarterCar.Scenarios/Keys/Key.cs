using System.Collections.Immutable;

using QuarterCar.Scenarios.Quantities;

namespace QuarterCar.Scenarios.Keys;

/// <summary>One key of an input file, as data: the reader, its messages, the template that <c>new</c> writes and the JSON Schema all come from it.</summary>
/// <param name="Name">As written in the file.</param>
/// <param name="Kind">What stands behind it.</param>
/// <param name="Help">One line for the person who fills it in.</param>
public sealed record Key(string Name, KeyKind Kind, string Help)
{
    /// <summary>True where the file is wrong without it.</summary>
    public bool Required { get; init; }

    /// <summary>What holds where it is left out, as it would be written; null for none.</summary>
    public string? Default { get; init; }

    /// <summary>When it is needed or may be left out, where neither <see cref="Required"/> nor <see cref="Default"/> says it.</summary>
    public string? Condition { get; init; }

    /// <summary>A value for the template and the schema, as it would be written.</summary>
    public string? Example { get; init; }

    /// <summary>True where the template shows it behind a comment sign.</summary>
    public bool Aside { get; init; }
}

/// <summary>What may stand behind a key.</summary>
public abstract record KeyKind;

/// <summary>A map of known keys.</summary>
/// <param name="Keys">In the order of the template.</param>
/// <param name="DefaultsHold">True where the defaults of its keys hold although the map is left out.</param>
public sealed record MapKind(ImmutableArray<Key> Keys, bool DefaultsHold = false) : KeyKind
{
    /// <summary>The key of a name, or null.</summary>
    public Key? Find(string name) => Keys.FirstOrDefault(k => k.Name == name);
}

/// <summary>A map with exactly one of these keys.</summary>
/// <param name="Keys">The alternatives.</param>
public sealed record OneOfKind(ImmutableArray<Key> Keys) : KeyKind
{
    /// <summary>The alternative of a name, or null.</summary>
    public Key? Find(string name) => Keys.FirstOrDefault(k => k.Name == name);
}

/// <summary>A map whose keys are names or dotted paths that another reader judges.</summary>
/// <param name="Wanted">What stands in it, for messages.</param>
public sealed record OpenMapKind(string Wanted) : KeyKind;

/// <summary>A list.</summary>
/// <param name="Item">What each item is; its name is not written.</param>
/// <param name="Least">Fewest items.</param>
/// <param name="Most">Most items.</param>
public sealed record ListKind(Key Item, int Least = 0, int Most = int.MaxValue) : KeyKind;

/// <summary>A number with a unit, or a plain number for <see cref="Dimension.Number"/>.</summary>
/// <param name="Dimension">What it measures.</param>
/// <param name="Range">Values allowed, SI.</param>
public sealed record QuantityKind(Dimension Dimension, ValueRange Range) : KeyKind;

/// <summary>A whole number.</summary>
/// <param name="Least">Smallest allowed.</param>
/// <param name="Most">Largest allowed.</param>
public sealed record WholeKind(ulong Least, ulong Most) : KeyKind;

/// <summary>Any text on one line.</summary>
public sealed record TextKind : KeyKind;

/// <summary>One of a few words.</summary>
/// <param name="Words">As written.</param>
public sealed record ChoiceKind(ImmutableArray<string> Words) : KeyKind;

/// <summary>Rows of two values, joined by straight lines.</summary>
/// <param name="At">First of a row; rises from row to row.</param>
/// <param name="Value">Second of a row.</param>
/// <param name="ValueNeverFalls">True where the second may not fall from row to row.</param>
/// <param name="FromOrigin">True where a first row of two zeros says what holds anyway.</param>
/// <param name="OrPlainValue">True where one plain value may stand instead of rows.</param>
public sealed record TableKind(QuantityKind At, QuantityKind Value, bool ValueNeverFalls = false, bool FromOrigin = false, bool OrPlainValue = false) : KeyKind;

/// <summary>Values allowed, SI.</summary>
/// <param name="Least">Lower end.</param>
/// <param name="LeastCounts">True where the lower end is allowed.</param>
/// <param name="Most">Upper end, allowed.</param>
public readonly record struct ValueRange(double Least, bool LeastCounts, double Most)
{
    /// <summary>Every finite value.</summary>
    public static readonly ValueRange Any = new(double.NegativeInfinity, false, double.PositiveInfinity);

    /// <summary>Above 0.</summary>
    public static readonly ValueRange AboveZero = new(0, false, double.PositiveInfinity);

    /// <summary>0 or more.</summary>
    public static readonly ValueRange FromZero = new(0, true, double.PositiveInfinity);

    /// <summary>True for an allowed value.</summary>
    public bool Holds(double value) => (LeastCounts ? value >= Least : value > Least) && value <= Most;
}
