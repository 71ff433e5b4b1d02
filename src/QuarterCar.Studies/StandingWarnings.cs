using System.Collections.Immutable;

using QuarterCar.Model;
using QuarterCar.Model.Statics;
using QuarterCar.Scenarios;

namespace QuarterCar.Studies;

/// <summary>Remarks on how a corner stands, each with a stable code and one sentence that says what to do.</summary>
internal static class StandingWarnings
{
    /// <summary>The remarks.</summary>
    public static IEnumerable<Warning> Of(Corner corner, StandingFigures f, ImmutableArray<SpringStanding> springs, UnitSystem units)
    {
        if (corner.Preload < 0)
            yield return new("loose_at_full_droop", $"The springs are loose by {Words.Length(-corner.Preload, units)} at full droop: raise the preload, fit longer springs or add a tender.");
        foreach (SpringStanding s in springs)
        {
            if (s.BindClearanceFullBump < 0 && s.Position != "tender")
                yield return new("binds_before_full_bump", $"The {s.Position} spring goes solid {At(s, units)}, short by {Words.Length(-s.BindClearanceFullBump, units)} at full bump, and {NutUnderLoad(corner, s)} takes the load: fit a spring with more travel.");
        }

        if (corner.Stack.HeldTravel is not null && (f.CrossoverShaftTravel is null || f.CrossoverShaftTravel > corner.Stroke))
            yield return new("crossover_never", "The slider does not meet the stop nut within the stroke: lower the stop nut if a crossover is wanted.");
        if (f.CrossoverShaftTravel is { } cross && f.ShaftTravel > cross + 1e-9)
            yield return new("on_stop_nut_at_ride_height", "The slider stands on the stop nut at ride height, so the corner rides on the secondary rate: raise the stop nut or check the load.");
        if (corner.BumpStopCompression(f.WheelTravel) > 0)
            yield return new("standing_on_bump_stop", "The corner stands on its bump stop: use stiffer springs or more preload.");
        if (f.ShaftTravel < 0)
            yield return new("standing_topped_out", "The shaft stands fully extended against its top-out, so droop figures do not apply: use softer springs or less preload.");
        if (f.ShaftTravel > corner.Stroke)
            yield return new("standing_bottomed_out", "The corner stands on metal at full bump, so travel figures do not apply: use stiffer springs or more preload.");
    }

    private static string At(SpringStanding s, UnitSystem units) =>
        s.BindsAtShaftShowing is { } showing ? $"with {Words.Length(showing, units)} of shaft showing" : "at full bump";

    // Once the slider is on the nut, what a solid lower spring adds goes into the stop nut; else into the coil nut.
    private static string NutUnderLoad(Corner corner, SpringStanding s)
    {
        double y = s.BindsAtShaftShowing is { } showing ? corner.Stroke - showing + corner.Preload : corner.Stroke + corner.Preload;
        return corner.Stack.OnStopNut(y) ? "the stop nut" : "the coil nut";
    }
}
