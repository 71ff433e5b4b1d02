using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;

namespace QuarterCar.Fuzzing;

/// <summary>A fault and the input that shows it.</summary>
/// <param name="Words">What is wrong.</param>
/// <param name="Input">Shrunk.</param>
internal sealed record Found(string Words, byte[] Input);

/// <summary>Many inputs for one reader: mutations of its seeds, and of those inputs that made it answer in a way not seen before. The same seed gives the same inputs.</summary>
/// <param name="reader">The reader.</param>
/// <param name="seed">Of all choices.</param>
internal sealed class Campaign(Reader reader, int seed)
{
    // Kept inputs beyond the seeds; the oldest of them give way.
    private const int MostKept = 4000;

    private readonly Mutator _mutator = new(new Random(seed), reader.Words);
    private readonly List<byte[]> _kept = [.. reader.Seeds];
    private readonly HashSet<int> _seen = [];
    private readonly HashSet<string> _kinds = [];
    private int _oldest = reader.Seeds.Length;

    /// <summary>Inputs given so far.</summary>
    public long Count { get; private set; }

    /// <summary>Of these, accepted.</summary>
    public long Accepted { get; private set; }

    /// <summary>Inputs that showed something new.</summary>
    public int Kept => _kept.Count - reader.Seeds.Length;

    /// <summary>Time spent.</summary>
    public TimeSpan Spent { get; private set; }

    /// <summary>Goes on until a number of inputs or a time is reached; hands out the faults of kinds not met before.</summary>
    /// <param name="inputs">How many more.</param>
    /// <param name="time">For how long.</param>
    public ImmutableArray<Found> Run(long inputs, TimeSpan time)
    {
        var found = ImmutableArray.CreateBuilder<Found>();
        var watch = Stopwatch.StartNew();
        for (long i = 0; i < inputs && watch.Elapsed < time; i++)
        {
            byte[] input = Count < reader.Seeds.Length ? reader.Seeds[(int)Count] : _mutator.Next(_kept, reader.Seeds.Length);
            Count++;
            Coverage.Clear();
            if (Trial.Fault(reader, input, out Verdict? verdict) is { } fault)
            {
                string kind = Trial.Kind(fault);
                if (_kinds.Add(kind)) found.Add(new(fault, Shrinker.Shrink(reader, input, kind)));
            }

            Accepted += verdict?.Accepted == true ? 1 : 0;
            if (IsNew(verdict)) Keep(input);
        }

        Spent += watch.Elapsed;
        return found.ToImmutable();
    }

    /// <summary>One line on how it went.</summary>
    public string Report() => string.Create(CultureInfo.InvariantCulture, $"{reader.Name,-10} {Count,10:#,0} inputs {Count / Spent.TotalSeconds,8:#,0}/s {100.0 * Accepted / Math.Max(1, Count),5:0.0} % accepted {Kept,6} kept {_kinds.Count} faults");

    private bool IsNew(Verdict? verdict) => Coverage.IsOn ? Coverage.IsNew() : _seen.Add(Answer(verdict));

    // Without counted branches the words of the answer, numbers and quotations left out, stand for the way through the program.
    private static int Answer(Verdict? verdict)
    {
        var hash = new HashCode();
        hash.Add(verdict?.Accepted);
        foreach (string line in (verdict?.Lines ?? []).Take(3))
        {
            bool quoted = false;
            foreach (char c in line.AsSpan(Math.Max(0, line.IndexOf("found ", StringComparison.Ordinal))))
            {
                quoted ^= c == '\'';
                if (!quoted && !char.IsAsciiDigit(c)) hash.Add(c);
            }
        }

        return hash.ToHashCode();
    }

    private void Keep(byte[] input)
    {
        if (Kept < MostKept)
        {
            _kept.Add(input);
            return;
        }

        _kept[_oldest] = input;
        _oldest = _oldest + 1 < _kept.Count ? _oldest + 1 : reader.Seeds.Length;
    }
}
