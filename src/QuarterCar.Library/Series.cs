namespace QuarterCar;

/// <summary>Columns of numbers of one length, by the names of the result files, SI ("shaft_travel_m", accelerations in g).</summary>
public sealed class Series
{
    private readonly Dictionary<string, double[]> _columns;
    private readonly string[] _regions;

    internal Series(Dictionary<string, double[]> columns, string[] regions) => (_columns, _regions) = (columns, regions);

    /// <summary>A column; NaN where nothing applies. Each call gives a copy.</summary>
    /// <param name="column">Its name with the SI unit: time_s, shaft_travel_m, tyre_force_N.</param>
    /// <exception cref="KeyNotFoundException">No such column.</exception>
    public double[] this[string column] => _columns.TryGetValue(column, out double[]? values)
        ? [.. values]
        : throw new KeyNotFoundException($"no column '{column}'; there are {string.Join(", ", _columns.Keys)}");

    /// <summary>Names of the columns, in the order of the file.</summary>
    public IReadOnlyList<string> Columns => [.. _columns.Keys];

    /// <summary>Rows.</summary>
    public int Count => _regions.Length;

    /// <summary>The rate region of each row: loose, tender, primary, secondary, bound.</summary>
    public IReadOnlyList<string> RateRegion => _regions;
}
