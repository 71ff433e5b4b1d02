using System.Collections.Immutable;

using QuarterCar.Scenarios.Documents;

namespace QuarterCar.Scenarios.Reading;

/// <summary>Which parts of a scenario a reading's case and overrides change, and what that means for the stop nut.</summary>
/// <param name="ByCase">Paths that the case changes.</param>
/// <param name="BySet">Paths that the overrides change.</param>
/// <param name="Rule">As asked; null for the default.</param>
public sealed record Changes(ImmutableArray<string> ByCase, ImmutableArray<string> BySet, NutRule? Rule)
{
    private const string _nut = "coilover.stop_nut";

    /// <summary>The changes of a reading.</summary>
    public static Changes Of(DocumentNode root, ReadOptions options)
    {
        var found = options.Case is null ? null : CaseBlock.Find(root, options.Case);
        ImmutableArray<string> byCase = found is { } f ? [.. CaseBlock.Changes(f.Map).Select(e => e.Name)] : [];
        return new Changes(byCase, [.. options.Sets.Select(Overrides.PathOf)], options.Nut);
    }

    /// <summary>True where weights, springs or shock change: what decides how the corner stands.</summary>
    public bool TouchCorner => Corner(ByCase) || Corner(BySet);

    /// <summary>True where the nut stays on the body: never where it is itself changed.</summary>
    public bool NutStays => !Touch(_nut) && (Rule == NutRule.Stays || (Rule is null && Corner(ByCase))) && TouchCorner
        || (SetsComeFirst && !Within(ByCase, _nut));

    /// <summary>True where the default holds for both: the overrides are a setup of their own, its nut set anew, and then the load comes.</summary>
    public bool SetsComeFirst => Rule is null && Corner(ByCase) && Corner(BySet);

    /// <summary>True where something at, above or below a path changes.</summary>
    public bool Touch(string path) => Within(ByCase, path) || Within(BySet, path);

    /// <summary>True where one of the paths changes weights, springs or shock.</summary>
    public static bool Corner(ImmutableArray<string> paths) => Within(paths, "corner") || Within(paths, "coilover");

    /// <summary>True where one of the paths is at, above or below another.</summary>
    public static bool Within(ImmutableArray<string> paths, string path) =>
        paths.Any(p => p == path || p.StartsWith(path + ".", StringComparison.Ordinal) || path.StartsWith(p + ".", StringComparison.Ordinal));
}
