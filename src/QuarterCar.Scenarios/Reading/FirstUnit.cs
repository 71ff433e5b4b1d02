using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Quantities;

namespace QuarterCar.Scenarios.Reading;

/// <summary>The output units that a scenario speaks: those of its first length, force or rate in file order.</summary>
public static class FirstUnit
{
    private static readonly string[] _silent = ["title", "limits", "cases", "tolerances"];

    /// <summary>SI where it has none.</summary>
    public static UnitSystem Of(DocumentNode root) => Find(root, top: true) ?? UnitSystem.Si;

    private static UnitSystem? Find(DocumentNode node, bool top) => node switch
    {
        ScalarNode s => Measured.TryParse(s.Text, out var m) ? m.Unit?.System : null,
        ListNode l => l.Items.Select(i => Find(i, top: false)).FirstOrDefault(u => u is not null),
        MapNode m => m.Entries.Where(e => !top || !_silent.Contains(e.Name)).Select(e => Find(e.Value, top: false)).FirstOrDefault(u => u is not null),
        _ => null,
    };
}
