using System.Collections.Immutable;

using QuarterCar.Reports.Units;
using QuarterCar.Scenarios;

namespace QuarterCar.Reports.Tables;

/// <summary>One column of a result table: name, dimension and getter, shared by every writer and by the axis labels, so that they can't drift apart.</summary>
/// <typeparam name="T">A row.</typeparam>
/// <param name="Name">Without unit.</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="Value">SI; NaN: empty.</param>
/// <param name="Word">The text of a <see cref="Dimension.Word"/> column.</param>
public sealed record Column<T>(string Name, Dimension Dimension, Func<T, double> Value, Func<T, string>? Word = null)
{
    /// <summary>The column's name with its unit.</summary>
    public string Header(UnitSystem system) => Name + UnitTable.Of(Dimension, system).Suffix;

    /// <summary>The value in the unit of the header; NaN: empty.</summary>
    public double In(UnitSystem system, T row) => Value(row) * UnitTable.Of(Dimension, system).PerSi;
}

/// <summary>A table of the result files: its columns in order.</summary>
/// <typeparam name="T">A row.</typeparam>
/// <param name="Columns">In order.</param>
public sealed record Table<T>(ImmutableArray<Column<T>> Columns)
{
    /// <summary>The header row.</summary>
    public ImmutableArray<string> Headers(UnitSystem system) => [.. Columns.Select(c => c.Header(system))];
}
