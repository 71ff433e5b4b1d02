using System.Collections.Immutable;

using QuarterCar.Scenarios.Keys;

namespace QuarterCar;

/// <summary>Figures by the dotted names of summary.json, SI, the unit at the end of each name ("travel.max_shaft_travel_m"). Null: does not apply.</summary>
public sealed class FigureSet
{
    private readonly ImmutableArray<string> _names;
    private readonly ImmutableArray<double?> _values;

    internal FigureSet(ImmutableArray<string> names, ImmutableArray<double?> values) => (_names, _values) = (names, values);

    /// <summary>Dotted names in the order of summary.json.</summary>
    public IReadOnlyList<string> Names => _names;

    /// <summary>A figure by its dotted name, or by its last part where that is one figure's alone.</summary>
    /// <param name="name">For example "travel.travel_use" or "travel_use".</param>
    /// <exception cref="KeyNotFoundException">No such figure here; the nearest is named.</exception>
    public double? this[string name]
    {
        get
        {
            bool known = FigureNames.TryResolve(name, out string figure, out ImmutableArray<string> near);
            int at = known ? _names.IndexOf(figure) : -1;
            if (at >= 0) return _values[at];
            if (known) throw new KeyNotFoundException($"no figure '{name}' here");
            if (near.IsEmpty) near = [.. _names.Where(n => name.Length > 0 && n.Contains(name, StringComparison.OrdinalIgnoreCase))]; // cut short, not misspelt
            throw new KeyNotFoundException($"no figure '{name}'; {(near.IsEmpty ? "Names lists them" : "nearest: " + string.Join(", ", near))}");
        }
    }

    /// <summary>A figure that must apply.</summary>
    /// <param name="name">As for the indexer.</param>
    /// <exception cref="KeyNotFoundException">No such figure here.</exception>
    /// <exception cref="InvalidOperationException">It does not apply to this corner.</exception>
    public double Number(string name) => this[name] ?? throw new InvalidOperationException($"{name} does not apply to this corner");
}
