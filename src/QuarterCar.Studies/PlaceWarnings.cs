using QuarterCar.Model;
using QuarterCar.Model.Statics;
using QuarterCar.Scenarios;

namespace QuarterCar.Studies;

/// <summary>Remarks on where the corner comes to rest, in itself or under a load case: on the stop nut, the bump stop, metal or bound coils, or topped out.</summary>
internal static class PlaceWarnings
{
    // A slider this near to its nut stands on it, m: a gap of 0 comes back from the balance with rounding.
    private const double OnNut = 1e-9;

    /// <summary>The remarks.</summary>
    /// <param name="corner">The corner.</param>
    /// <param name="f">Its standing figures.</param>
    /// <param name="ofCase">The load case; null for the scenario itself.</param>
    public static IEnumerable<Warning> Of(Corner corner, StandingFigures f, string? ofCase = null)
    {
        string inCase = ofCase is null ? "" : $"In the load case '{ofCase}' ", the = ofCase is null ? "The" : "the";
        if (f.CrossoverShaftTravel is { } cross && f.ShaftTravel > cross - OnNut)
            yield return new("on_stop_nut_at_ride_height", $"{inCase}{the} slider stands on the stop nut at ride height, so the corner rides on the secondary rate: raise the stop nut, add preload or check the load.");
        if (corner.BumpStopCompression(f.WheelTravel) > 0)
            yield return new("standing_on_bump_stop", $"{inCase}{the} corner stands on its bump stop: use stiffer springs or more preload.");
        if (f.ShaftTravel < 0)
            yield return new("standing_topped_out", $"{inCase}{the} shaft stands fully extended against its top-out, so droop figures do not apply: use softer springs or less preload.");
        if (f.ShaftTravel > corner.Stroke)
            yield return new("standing_bottomed_out", $"{inCase}{the} corner stands on metal at full bump, so travel figures do not apply: use stiffer springs or more preload.");
        if (AtRest.AreCoilsBound(corner, f.ShaftTravel))
            yield return new("standing_on_bound_coils", $"{inCase}{the} corner stands on bound coils, with nothing left for bump: use springs that are stiffer or have more travel.");
    }
}
