using System.Collections.Immutable;

using QuarterCar.Model;
using QuarterCar.Scenarios;

namespace QuarterCar.Studies;

/// <summary>Remarks on the damper's tables of force over shaft speed.</summary>
internal static class DamperWarnings
{
    /// <summary>The remarks.</summary>
    public static IEnumerable<Warning> Of(StandingWarnings.Subject s)
    {
        if (s.Coilover.Damper is not { } damper)
            yield break;
        foreach ((string direction, ImmutableArray<TablePoint> table) in new[] { ("compression", damper.Compression), ("rebound", damper.Rebound) })
        {
            if (Nothing(table) is { } speed)
                yield return new("damper_falls", $"The damper's {direction} force falls to its table's end; carried on, it is gone at {Words.ShaftSpeed(speed, s.Units)} and drives the shaft beyond: check the last two points, or add one at the highest speed that was measured.");
        }
    }

    // The last slope is carried on (physics.md section 4): where a falling one reaches nothing, m/s.
    private static double? Nothing(ImmutableArray<TablePoint> table) =>
        table is [.., var before, var last] && last.Value < before.Value ? last.At + last.Value * (last.At - before.At) / (before.Value - last.Value) : null;
}
