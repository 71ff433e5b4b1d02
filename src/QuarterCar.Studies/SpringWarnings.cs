using QuarterCar.Model;
using QuarterCar.Model.Springs;
using QuarterCar.Model.Statics;
using QuarterCar.Scenarios;

namespace QuarterCar.Studies;

/// <summary>Remarks on the springs over the stroke: loose, bound, bowing, stop nut never met, tender at work around ride height.</summary>
internal static class SpringWarnings
{
    /// <summary>The lower spring's rate below which the trade sees it bow on a long, slim shock: 150 lbf/in in N/m. Common practice, no source.</summary>
    public const double LightLowerRate = 150 * 0.45359237 * 9.80665 / 0.0254;

    /// <summary>Bodies up to this are 2.0 in shocks, m: halfway to the next common size.</summary>
    public const double SlimBody = 2.25 * 0.0254;

    /// <summary>Strokes from this on are long, m.</summary>
    public const double LongStroke = 10 * 0.0254;

    // A tender that goes solid nearer to ride height than this share of the stroke works back and forth there.
    private const double TenderBand = 0.1;

    /// <summary>The remarks.</summary>
    public static IEnumerable<Warning> Of(StandingWarnings.Subject s)
    {
        if (s.Corner.Preload < 0)
            yield return new("loose_at_full_droop", $"The springs are loose by {s.Length(-s.Corner.Preload)} at full droop: raise the preload, fit longer springs or add a tender.");
        foreach (SpringStanding spring in s.Springs.Where(p => p.BindClearanceFullBump < 0 && p.Position != "tender"))
            yield return Binds(s, spring);
        if (s.Corner.Stack.HeldTravel is not null && (s.Figures.CrossoverShaftTravel is null || s.Figures.CrossoverShaftTravel > s.Corner.Stroke))
            yield return new("crossover_never", "The slider does not meet the stop nut within the stroke: lower the stop nut if a crossover is wanted.");
        if (Tender(s) is { } tender)
            yield return tender;
        if (Bows(s) is { } bows)
            yield return bows;
    }

    private static Warning Binds(StandingWarnings.Subject s, SpringStanding spring)
    {
        string at = spring.BindsAtShaftShowing is { } showing ? $"with {s.Length(showing)} of shaft showing" : "before full bump";
        bool onNut = OnStopNut(s, spring);
        string orElse = !onNut ? "less preload" : spring.Position == "lower" ? "a higher stop nut, which leaves it less to do" : "a lower stop nut, which spares it";
        return new(
            "binds_before_full_bump",
            $"The {spring.Position} spring goes solid {at}, short by {s.Length(-spring.BindClearanceFullBump)} at full bump, and {(onNut ? "the stop nut" : "the coil nut")} takes the load: fit a spring with more travel, or use {orElse}.");
    }

    // Once the slider is on the nut, what a solid lower spring adds goes into the stop nut; else into the coil nut.
    private static bool OnStopNut(StandingWarnings.Subject s, SpringStanding spring) =>
        s.Corner.Stack.OnStopNut(s.Corner.Stroke - (spring.BindsAtShaftShowing ?? 0) + s.Corner.Preload);

    private static Warning? Tender(StandingWarnings.Subject s)
    {
        if (s.Coilover.Springs.Tender is not { } tender)
            return null;
        SpringStack stack = s.Corner.Stack;
        double solidForce = tender.Rate * tender.Travel, ride = s.Figures.ShaftTravel;
        if (solidForce > stack.CrossoverForce)
            return ride < s.Figures.CrossoverShaftTravel ? Warn("is still working at ride height and is never solid before the slider meets the stop nut") : null;
        double solidAt = stack.Compression(solidForce) - s.Corner.Preload;
        return ride < solidAt ? Warn($"is still working at ride height and goes solid {s.Length(solidAt - ride)} of shaft travel further in")
            : ride - solidAt < TenderBand * s.Corner.Stroke ? Warn($"goes solid only {s.Length(ride - solidAt)} of shaft travel before ride height")
            : null;

        // Preload does not help: the force at ride height is the load, whatever the preload, and the tender is solid or not by its force.
        static Warning Warn(string what) => new(
            "tender_near_ride_height",
            $"The tender {what}, so it works back and forth as the corner moves and the rate with it: fit a softer or shorter tender, so that it is solid well before ride height.");
    }

    private static Warning? Bows(StandingWarnings.Subject s)
    {
        SpringData lower = s.Coilover.Springs.Lower;
        SpringStanding standing = s.Springs[^1]; // from the coil nut down
        if (lower.CoilMean is not null)
        {
            return Buckling.Deflection(lower) is { } buckles && standing.CompressionFullBump > buckles
                ? new("bows", $"The lower spring is compressed by {s.Length(standing.CompressionFullBump)} at full bump and bows sideways from {s.Length(buckles)} on (EN 13906-1, ends guided parallel): fit a shorter, stiffer or wider spring, or a guide.")
                : null;
        }

        return IsLightOnSlimShock(s)
            ? new("bows", $"The lower spring of {Words.Rate(lower.Rate, s.Units)} is light for a shock this long and slim, where springs below {Words.Rate(LightLowerRate, s.Units)} are seen to bow (common practice, not calculated): give its mean_diameter to have it calculated, or fit a stiffer one.")
            : null;
    }

    private static bool IsLightOnSlimShock(StandingWarnings.Subject s) =>
        s.Coilover.Springs.Lower.Rate < LightLowerRate && s.Corner.Stroke >= LongStroke && s.Body?.Diameter <= SlimBody;
}
