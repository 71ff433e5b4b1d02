using System.Collections.Immutable;

using QuarterCar.Model.Statics;
using QuarterCar.Scenarios;

namespace QuarterCar.Studies;

/// <summary>Holds the limits of a scenario against the figures of its run.</summary>
public static class Limits
{
    /// <summary>One verdict a limit, in the scenario's order. A figure that does not apply breaks nothing.</summary>
    public static ImmutableArray<LimitVerdict> Check(ImmutableArray<Limit> limits, StandingFigures standing, RunFigures figures)
    {
        if (limits.IsEmpty)
            return [];
        return
        [
            .. limits.Select(l =>
            {
                double? value = FigureTable.Value(l.Figure, standing, figures);
                return new LimitVerdict(l.Figure, l.Largest, value, value > l.Largest);
            }),
        ];
    }
}
