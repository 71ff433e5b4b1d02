using System.Collections.Immutable;

using QuarterCar.Studies.Setups;

namespace QuarterCar.Studies.Spreads;

/// <summary>What a spread study keeps of its samples: values and figures as bare numbers, so that a million fit into memory. Filled in order, then only read.</summary>
/// <param name="paths">Varied paths, in order.</param>
public sealed class SpreadSamples(ImmutableArray<string> paths)
{
    private readonly List<double[]> _figures = [], _values = [];

    /// <summary>Varied paths, in order.</summary>
    public ImmutableArray<string> Paths => paths;

    /// <summary>Samples that ran.</summary>
    public int Ran => _figures.Count;

    /// <summary>Samples that could not be run.</summary>
    public int Failed { get; private set; }

    /// <summary>Samples that stand on metal or bound coils; they count among those that ran, though figures of travel do not apply to them.</summary>
    public int AtRestOnMetal { get; private set; }

    /// <summary>Samples that lean on their bump stop or top-out at rest, which counts as no touch.</summary>
    public int AtRestOnStop { get; private set; }

    /// <summary>Samples that meet metal or bind their coils, or stand so.</summary>
    public int OnMetal { get; private set; }

    /// <summary>Takes the next row.</summary>
    public void Add(StudyRow row)
    {
        if (row.Figures is not { } figures)
        {
            Failed++;
            return;
        }

        AtRestOnMetal += row.Rest is null ? 0 : 1;
        AtRestOnStop += row.Stop is null ? 0 : 1;
        OnMetal += row.MeetsMetal ? 1 : 0;
        _figures.Add([.. figures.Select(f => f ?? double.NaN)]);
        _values.Add([.. paths.Select(p => row.Request.Values.FirstOrDefault(v => v.Path == p)?.Si ?? double.NaN)]);
    }

    /// <summary>A figure of every sample that ran, in order; NaN: does not apply.</summary>
    public double[] Figure(string name)
    {
        int place = FigureTable.Names.IndexOf(name);
        ArgumentOutOfRangeException.ThrowIfNegative(place, nameof(name));
        return [.. _figures.Select(f => f[place])];
    }

    /// <summary>The varied values of every sample that ran, a column a path, SI.</summary>
    public double[][] Inputs() => [.. paths.Select((_, d) => _values.Select(v => v[d]).ToArray())];
}
