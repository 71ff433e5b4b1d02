using System.Collections.Immutable;

namespace QuarterCar.Fuzzing;

/// <summary>What a reader made of an input.</summary>
/// <param name="Accepted">True where there is something to go on with.</param>
/// <param name="Lines">What a person is told: a line a mistake.</param>
/// <param name="Unplaced">A line that names no place; null where all do.</param>
internal sealed record Verdict(bool Accepted, ImmutableArray<string> Lines, string? Unplaced = null)
{
    /// <summary>Taken without a word.</summary>
    public static readonly Verdict Good = new(true, []);
}

/// <summary>A door through which strangers' bytes come in.</summary>
/// <param name="Name">One word, also the folder of its found inputs.</param>
/// <param name="Seeds">Good and bad inputs that mutations start from.</param>
/// <param name="Words">What its inputs are made of, beside what every input may hold.</param>
/// <param name="Read">Reads an input, and lives with what it accepts.</param>
internal sealed record Reader(string Name, ImmutableArray<byte[]> Seeds, ImmutableArray<string> Words, Func<byte[], Verdict> Read)
{
    /// <summary>Most that one input may allocate beside <see cref="EachByte"/>, bytes: a small file must not be a large cost.</summary>
    public long MostAllocated { get; init; } = 64_000_000;

    /// <summary>Most that each of its bytes may add, bytes: a row of a few bytes makes a value that is read as YAML.</summary>
    public const long EachByte = 4096;

    /// <summary>Its name, for the names of tests.</summary>
    public override string ToString() => Name;
}
