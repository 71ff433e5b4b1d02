using System.Collections.Immutable;

using QuarterCar.Scenarios.Reading;
using QuarterCar.Studies.Setups;

namespace QuarterCar.Studies.Spreads;

/// <summary>What a spread study keeps of its samples: their figures as bare numbers, so that a million fit into memory. Filled in order, then only read.</summary>
/// <param name="plan">The setups.</param>
public sealed class SpreadSamples(SetupPlan plan)
{
    private readonly List<(long Index, NutRule? Nut, bool Ran)> _rows = [];
    private readonly List<double[]> _figures = [];
    private readonly Dictionary<int, string> _notes = [];

    /// <summary>The setups.</summary>
    public SetupPlan Plan => plan;

    /// <summary>Samples so far.</summary>
    public int Count => _rows.Count;

    /// <summary>Samples that could not be run.</summary>
    public int Failed { get; private set; }

    /// <summary>Takes the next row.</summary>
    public void Add(StudyRow row)
    {
        if (row.Note.Length > 0) _notes[_rows.Count] = row.Note;
        _rows.Add((row.Index, row.Nut, row.Figures is not null));
        if (row.Figures is { } figures) _figures.Add([.. figures.Select(f => f ?? double.NaN)]);
        else Failed++;
    }

    /// <summary>The rows again, in order, for the tables.</summary>
    public IEnumerable<StudyRow> Rows()
    {
        int ran = 0;
        for (int i = 0; i < _rows.Count; i++)
        {
            var (index, nut, isRun) = _rows[i];
            ImmutableArray<double?>? figures = isRun ? [.. _figures[ran++].Select(f => double.IsNaN(f) ? (double?)null : f)] : null;
            yield return new StudyRow(index, plan.At(index), nut, _notes.GetValueOrDefault(i, ""), figures, null);
        }
    }

    /// <summary>A figure of every sample that ran, in order; NaN: does not apply.</summary>
    public double[] Figure(string name)
    {
        int place = FigureTable.Names.IndexOf(name);
        ArgumentOutOfRangeException.ThrowIfNegative(place, nameof(name));
        return [.. _figures.Select(f => f[place])];
    }

    /// <summary>The varied values of every sample that ran, a column a path, SI.</summary>
    public double[][] Inputs()
    {
        double[][] columns = [.. plan.Paths.Select(_ => new double[_figures.Count])];
        int ran = 0;
        foreach (var (index, _, _) in _rows.Where(r => r.Ran))
        {
            ImmutableArray<SetupValue> values = plan.At(index).Values;
            for (int d = 0; d < columns.Length; d++)
                columns[d][ran] = values[d].Si ?? double.NaN;
            ran++;
        }

        return columns;
    }
}
