using System.Collections.Immutable;

using QuarterCar.Model.Springs;

namespace QuarterCar.Model.Statics;

/// <summary>The standing force over travel from full droop to full bump: evenly spaced rows and every break.</summary>
public static class StandingCurve
{
    private const int EvenRows = 240;

    // Two wheel travels nearer than this are one, m.
    private const double Same = 1e-9;

    /// <summary>The rows, rising in wheel travel.</summary>
    public static ImmutableArray<CurveRow> Of(Corner corner)
    {
        double full = corner.FullBumpWheelTravel;
        var travels = new SortedSet<double> { 0, full };
        foreach (double w in Balance.Breaks(corner, withBumpStop: true))
        {
            if (w >= 0 && w <= full)
                Add(w);
        }

        for (int i = 1; i < EvenRows; i++)
            Add(full * i / EvenRows);
        return [.. travels.Select(w => Row(corner, w))];

        // One that falls on another but for rounding would be its row once more.
        void Add(double w)
        {
            if (travels.GetViewBetween(w - Same, w + Same).Count == 0)
                travels.Add(w);
        }
    }

    private static CurveRow Row(Corner corner, double w)
    {
        double x = corner.Ratio.Travel(w), y = x + corner.Preload, r = corner.Ratio.Ratio(w);
        SpringStack stack = corner.Stack;
        double spring = stack.Force(y), gas = corner.Gas?.Standing(x) ?? 0, bump = corner.BumpStop?.Force(corner.BumpStopCompression(w), 0) ?? 0;
        bool onAxle = corner.BumpStop is { OnAxle: true };
        double shaft = spring + gas + (onAxle ? 0 : bump);
        (double coilNut, double stopNut) = stack.NutForces(spring);
        return new CurveRow(
            w, x, corner.Stroke - x, r, spring, gas, bump, shaft, r * shaft + (onAxle ? bump : 0),
            stack.RateTowardDroop(y, 1e-12), StandingWork.WheelRate(corner, w, movingGas: false), coilNut, stopNut, stack.Region(y));
    }
}
