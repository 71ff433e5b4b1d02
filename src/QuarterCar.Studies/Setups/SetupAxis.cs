using System.Collections.Immutable;

namespace QuarterCar.Studies.Setups;

/// <summary>One way in which the setups of a study differ: the values of a --vary, the pairs of a --split, the rows of a list.</summary>
/// <param name="Paths">What it changes.</param>
/// <param name="Points">Its settings, each with a value a path.</param>
public sealed record SetupAxis(ImmutableArray<string> Paths, ImmutableArray<SetupRequest> Points)
{
    /// <summary>Setups allowed in one study.</summary>
    public const long Most = 10_000_000;

    /// <summary>The values of one path.</summary>
    public static SetupAxis Of(string path, IEnumerable<SetupValue> values) => new([path], [.. values.Select(v => SetupRequest.Of([v]))]);

    /// <summary>How many setups a grid of these has; a count that no integer holds comes out as a large one all the same.</summary>
    public static double Count(ImmutableArray<SetupAxis> axes) => axes.Aggregate(1.0, (n, a) => n * a.Points.Length);

    /// <summary>Every combination, the last axis fastest.</summary>
    public static SetupPlan Product(ImmutableArray<SetupAxis> axes)
    {
        if (axes is [var alone]) return SetupPlan.List(alone.Paths, alone.Points);
        long count = axes.Aggregate(1L, (n, a) => checked(n * a.Points.Length));
        return new SetupPlan([.. axes.SelectMany(a => a.Paths)], count, i =>
        {
            var points = new SetupRequest[axes.Length];
            for (int k = axes.Length - 1; k >= 0; k--)
            {
                points[k] = axes[k].Points[(int)(i % axes[k].Points.Length)];
                i /= axes[k].Points.Length;
            }

            return new SetupRequest(string.Join(", ", points.Select(p => p.Title)), [.. points.SelectMany(p => p.Values)]);
        });
    }
}
