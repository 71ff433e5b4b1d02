using System.Collections.Immutable;

using QuarterCar.Scenarios.Keys;

namespace QuarterCar.Studies.Sweeps;

/// <summary>What a study looks for: the least or the most of one figure.</summary>
/// <param name="Figure">Full dotted name.</param>
/// <param name="Most">True for the most, false for the least.</param>
public sealed record Goal(string Figure, bool Most)
{
    /// <summary>The gentlest ride: least peak acceleration of the sprung mass.</summary>
    public static readonly Goal Default = new("acceleration.peak_g", false);

    private static readonly ImmutableArray<string> Words = ["least", "most"];

    private int Place { get; } = FigureTable.Names.IndexOf(Figure);

    /// <summary>The goal of a text FIGURE:least|most; a figure's last part will do where it is unambiguous.</summary>
    /// <param name="text">As written.</param>
    /// <param name="found">What is wrong with it; empty for a goal.</param>
    /// <param name="wanted">What would be right.</param>
    /// <returns>Null where it is none.</returns>
    public static Goal? Parse(string text, out string found, out string wanted)
    {
        string[] parts = text.Split(':');
        (found, wanted) = ($"'{text}'", "FIGURE:least or FIGURE:most, like acceleration.peak_g:least");
        if (parts.Length != 2 || !Words.Contains(parts[1].Trim()))
            return null;
        string name = parts[0].Trim();
        if (FigureNames.TryResolve(name, out string figure, out ImmutableArray<string> near))
        {
            found = "";
            return new Goal(figure, parts[1].Trim() == "most");
        }

        found = near.Length > 1 ? $"'{name}', which is {string.Join(" and ", near)}" : $"the unknown figure '{name}'";
        wanted = near.Length switch { 0 => "a dotted figure of summary.json, or its last part", 1 => $"'{near[0]}'", _ => "one of them" };
        return null;
    }

    /// <summary>As it is written: figure and direction.</summary>
    public override string ToString() => Figure + (Most ? ":most" : ":least");

    /// <summary>The goal's figure of a row; null where the row has none.</summary>
    /// <param name="figures">In the order of <see cref="FigureTable.Names"/>.</param>
    public double? Of(ImmutableArray<double?>? figures) => figures is { } f && f[Place] is { } value && double.IsFinite(value) ? value : null;

    /// <summary>True where a is strictly better than b.</summary>
    public bool Better(double a, double b) => Most ? a > b : a < b;
}
