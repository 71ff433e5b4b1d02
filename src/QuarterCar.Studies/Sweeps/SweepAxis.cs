using System.Collections.Immutable;
using System.Globalization;

using QuarterCar.Scenarios.Quantities;
using QuarterCar.Studies.Setups;

namespace QuarterCar.Studies.Sweeps;

/// <summary>A path's way from one value to another: points are made when asked for, both ends exactly as written.</summary>
/// <param name="Path">Dotted path into the scenario.</param>
/// <param name="From">First value with its unit; empty unit for a plain number.</param>
/// <param name="To">Last value.</param>
public sealed record SweepAxis(string Path, Measured From, Measured To)
{
    // Digits of a value in a title.
    private const int TitleDigits = 6;

    /// <summary>First value, SI.</summary>
    public double FromSi => From.Si;

    /// <summary>Last value, SI.</summary>
    public double ToSi => To.Si;

    /// <summary>Length of the way, SI, positive.</summary>
    public double Range => Math.Abs(ToSi - FromSi);

    /// <summary>Point i of n equal pieces, in the last value's unit.</summary>
    /// <param name="i">0 at the first value, n at the last.</param>
    /// <param name="n">Pieces.</param>
    public SetupValue At(long i, long n)
    {
        if (i == 0 || i == n)
        {
            Measured end = i == 0 ? From : To;
            return new SetupValue(Path, end.ToString(), end.Si);
        }

        // Product before quotient, so that whole numbers stay whole.
        double start = To.Unit is { } unit && unit.Name != From.Unit?.Name ? unit.FromSi(From.Si) : From.Number;
        var value = To with { Number = start + ((To.Number - start) * i / n) };
        return new SetupValue(Path, value.ToString(), value.Si);
    }

    /// <summary>A setup at some values, its title with rounded numbers.</summary>
    public static SetupRequest Request(ImmutableArray<SetupValue> values) =>
        new(SetupRequest.Of([.. values.Select(v => v with { Text = Rounded(v.Text) })]).Title, values);

    /// <summary>A value's text with few digits, for people.</summary>
    public static string Rounded(string text)
    {
        if (!Measured.TryParse(text, out Measured m) || m.Number == 0 || !double.IsFinite(m.Number))
            return text;
        double scale = Math.Pow(10, TitleDigits - 1 - Math.Floor(Math.Log10(Math.Abs(m.Number))));
        double rounded = double.IsFinite(scale) ? Math.Round(m.Number * scale) / scale : m.Number;
        return Measured.Write(double.IsFinite(rounded) ? rounded : m.Number, m.UnitName);
    }
}

/// <summary>One direction of a grid: points made when asked for, from a way cut into equal pieces or from a list of setups.</summary>
/// <param name="Paths">What it changes.</param>
/// <param name="Count">Points.</param>
/// <param name="At">The point of an index from 0: its title and a value a path.</param>
public sealed record SweepGridAxis(ImmutableArray<string> Paths, int Count, Func<int, SetupRequest> At)
{
    /// <summary>True where its points are numbers along one path, no two the same, so that it can be an axis of a picture.</summary>
    public bool Numeric { get; private init; }

    // Points kept once made: in a grid each is asked for again and again, and its title takes longer than the rest of it.
    private const int MostKept = 4096;

    /// <summary>A way cut into equal pieces, both ends among its points.</summary>
    public static SweepGridAxis Of(SweepAxis way, int count)
    {
        var kept = new SetupRequest?[count <= MostKept ? count : 0];
        return new([way.Path], count, i => i < kept.Length ? kept[i] ??= Point(i) : Point(i)) { Numeric = count > 1 };

        SetupRequest Point(int i) => SweepAxis.Request([way.At(i, count - 1)]);
    }

    /// <summary>A list of setups.</summary>
    public static SweepGridAxis Of(ImmutableArray<string> paths, ImmutableArray<SetupRequest> points) => new(paths, points.Length, i => points[i])
    {
        Numeric = paths.Length == 1 && points.Length > 1 && points.All(p => p.Values[0].Si is { } si && double.IsFinite(si)) && points.DistinctBy(p => p.Values[0].Si).Count() == points.Length,
    };

    /// <summary>Where a point stands on a picture's axis: SI value, or its index.</summary>
    public double Position(int i) => Numeric ? At(i).Values[0].Si ?? double.NaN : i;
}

/// <summary>The grid of a sweep: every combination of its axes' points, the last axis fastest.</summary>
/// <param name="Axes">One or more.</param>
public sealed record SweepGrid(ImmutableArray<SweepGridAxis> Axes)
{
    /// <summary>Largest grid that is run.</summary>
    public const long MostPoints = 10_000_000;

    /// <summary>Points in all; a count that no integer holds comes out as a large one all the same.</summary>
    public double Points => Axes.Aggregate(1.0, (n, a) => n * a.Count);

    /// <summary>What is wrong with a grid above <see cref="MostPoints"/>; null for one that can be run.</summary>
    public string? TooLarge => Points <= MostPoints
        ? null
        : string.Create(CultureInfo.InvariantCulture, $"found a grid of {Points:#,0} points; wanted at most {MostPoints:#,0}: fewer points or paths");

    /// <summary>Every path, in the order of the axes.</summary>
    public ImmutableArray<string> Paths => [.. Axes.SelectMany(a => a.Paths)];

    /// <summary>Where a setup stands in the grid: an index an axis.</summary>
    public int[] Place(long index)
    {
        int[] at = new int[Axes.Length];
        for (int k = Axes.Length - 1; k >= 0; k--)
        {
            at[k] = (int)(index % Axes[k].Count);
            index /= Axes[k].Count;
        }

        return at;
    }

    /// <summary>The setups of the grid.</summary>
    public SetupPlan Plan() => new(Paths, (long)Points, index =>
    {
        SetupRequest[] points = [.. Place(index).Select((at, k) => Axes[k].At(at))];
        return new SetupRequest(string.Join(", ", points.Select(p => p.Title)), [.. points.SelectMany(p => p.Values)]);
    });
}
