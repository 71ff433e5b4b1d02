using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Quantities;

namespace QuarterCar.Scenarios.Reading;

/// <summary>A load given as spring_load becomes a sprung weight once, at the scenario as written, so that later changes start from one weight.</summary>
public static class SpringLoads
{
    /// <summary>The load's path.</summary>
    public const string Path = "corner.spring_load";

    /// <summary>The document with sprung_weight in place of spring_load; unchanged without one.</summary>
    /// <param name="root">As written.</param>
    /// <param name="weight">N.</param>
    public static DocumentNode WithWeight(DocumentNode root, double weight) => Replace(root, Measured.Write(weight, UnitTable.SiName(Dimension.Force)));

    /// <summary>The same with the load's own text for the weight: enough to see whether a change of the weight can be read.</summary>
    public static DocumentNode AsWeight(DocumentNode root) => Load(root) is { } load ? Replace(root, load.Text) : root;

    /// <summary>The spring load as written, where it is the only load.</summary>
    public static ScalarNode? Load(DocumentNode root) =>
        (root as MapNode)?.Find("corner") is MapNode corner && corner.Find("sprung_weight") is null ? corner.Find("spring_load") as ScalarNode : null;

    private static MapNode Replace(DocumentNode root, string text)
    {
        var map = (MapNode)root;
        var corner = (MapNode)map.Find("corner")!;
        var load = Load(root)!;
        return map.With("corner", corner.With("spring_load", null).With("sprung_weight", load with { Text = text }));
    }
}
