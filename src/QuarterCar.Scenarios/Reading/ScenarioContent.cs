using System.Collections.Immutable;

using QuarterCar.Model;
using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Keys;

namespace QuarterCar.Scenarios.Reading;

/// <summary>What one document says, read from the top and found right.</summary>
/// <param name="Values">By path.</param>
/// <param name="Corner">The corner's words.</param>
/// <param name="Excitation">Course or drop.</param>
/// <param name="Limits">Limits.</param>
/// <param name="Tolerances">Tolerances.</param>
/// <param name="Cases">Load cases.</param>
/// <param name="Profiles">Points of the profiles, by path of their piece.</param>
public sealed record ScenarioContent(
    ReadValues Values,
    CornerData Corner,
    Excitation Excitation,
    ImmutableArray<Limit> Limits,
    ImmutableArray<Tolerance> Tolerances,
    ImmutableArray<LoadCase> Cases,
    IReadOnlyDictionary<string, ImmutableArray<TablePoint>> Profiles)
{
    /// <summary>Reads an edited document of a file; null where a problem was noted.</summary>
    public static ScenarioContent? Read(ScenarioDocument document, DocumentNode root, ProblemList problems)
    {
        var before = problems.Count;
        var values = ValueReader.Read(root, ScenarioKeys.Root, problems);
        CrossRules.Check(values, root, problems);
        var limits = SideBlocks.Limits(values, problems);
        var tolerances = SideBlocks.Tolerances(values, root, document.Root, problems);
        var cases = CaseBlock.Read(root, problems);
        var profiles = Points(document, values, problems);
        if (problems.Count > before || !document.IsWhole)
        {
            return null;
        }

        var excitation = DataMaker.Excitation(values, profiles);
        TraceRows.Check(values, excitation, problems);
        return problems.Count > before ? null : new ScenarioContent(values, DataMaker.Corner(values), excitation, limits, tolerances, cases, profiles);
    }

    private static Dictionary<string, ImmutableArray<TablePoint>> Points(ScenarioDocument document, ReadValues values, ProblemList problems)
    {
        var profiles = new Dictionary<string, ImmutableArray<TablePoint>>(StringComparer.Ordinal);
        for (var i = 0; i < values.Count("terrain"); i++)
        {
            var piece = DataMaker.PathOf("terrain", i);
            var key = piece + ".profile.file";
            if (values.Text(key) is { } name && document.Profile(name, values.Node(key)!.Place, key, problems) is { } points)
            {
                profiles.Add(piece, points);
            }
        }

        return profiles;
    }
}
