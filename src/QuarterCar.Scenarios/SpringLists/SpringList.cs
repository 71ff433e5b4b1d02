using System.Collections.Immutable;

using QuarterCar.Model;

namespace QuarterCar.Scenarios.SpringLists;

/// <summary>Springs to choose from, in list order.</summary>
/// <param name="File">As named in messages.</param>
/// <param name="Rows">At least one.</param>
public sealed record SpringList(string File, ImmutableArray<ListedSpring> Rows)
{
    /// <summary>The springs alone.</summary>
    public ImmutableArray<SpringData> Springs => [.. Rows.Select(r => r.Spring)];

    /// <summary>The list's name of one of its springs; null where it has none.</summary>
    public string? NameOf(SpringData spring) => Rows.FirstOrDefault(r => ReferenceEquals(r.Spring, spring))?.Name;

    /// <summary>The springs of one inner diameter.</summary>
    /// <param name="inner">m, to 0.1 mm.</param>
    public SpringList OfInnerDiameter(double inner) => this with { Rows = [.. Rows.Where(r => Math.Abs((r.Spring.CoilInner ?? double.NaN) - inner) < 1e-4)] };
}

/// <summary>One row of a spring list.</summary>
/// <param name="Line">In the file, from 1.</param>
/// <param name="Name">Null without one.</param>
/// <param name="Spring">SI.</param>
public sealed record ListedSpring(int Line, string? Name, SpringData Spring);
