using QuarterCar.Model;
using QuarterCar.Scenarios;

namespace QuarterCar.Studies;

/// <summary>Remarks on figures outside common practice. The bands are the trade's habits and have no source: they question an input, they judge no setup.</summary>
internal static class PracticeWarnings
{
    // Off-road desert 0.8 to 1.3 Hz and road 1.0 to 1.5 Hz, as one band.
    private const double LeastFrequency = 0.8, MostFrequency = 1.5;

    // Of sprung and unsprung together: 10 to 20 %, a solid axle up to 30 %.
    private const double LeastUnsprung = 0.1, MostUnsprung = 0.3;

    // Sag of 30 to 50 % and droop of 40 to 60 % of the stroke are both habits.
    private const double LeastDroop = 0.3, MostDroop = 0.6;

    private const double MuchVariation = 0.1;

    // Keeps 0.3 of a sum that rounds to just below it inside its band.
    private const double Slack = 1e-9;

    /// <summary>The remarks.</summary>
    public static IEnumerable<Warning> Of(StandingWarnings.Subject s)
    {
        (double least, double most) = Ratios(s.Corner);
        if (most > 1 + Slack)
            yield return new("motion_ratio_above_1", FormattableString.Invariant($"The motion ratio reaches {Words.Apart(most, 2, 1)} of shaft travel per wheel travel, above the 1 of a shock that moves with the wheel: check that it is not upside down (wheel per shaft)."));
        if (most > (1 + MuchVariation) * least + Slack)
            yield return new("motion_ratio_varies", FormattableString.Invariant($"The motion ratio changes from {least:0.00} to {most:0.00} over the stroke, by more than a tenth, so rates at the wheel change with it: read rates and frequencies as those at ride height alone, and check the table against the linkage."));
        if (s.Figures.RideFrequency is { } ride && Outside(ride, LeastFrequency, MostFrequency))
            yield return new("frequency_unusual", FormattableString.Invariant($"The ride frequency of {Words.Apart(ride, 2, LeastFrequency, MostFrequency)} Hz is outside the common {LeastFrequency:0.0} to {MostFrequency:0.0} Hz (common practice): check weight, rates and motion ratio if that is not meant."));
        double share = s.Corner.UnsprungMass / (s.Corner.UnsprungMass + s.Corner.SprungMass);
        if (Outside(share, LeastUnsprung, MostUnsprung))
            yield return new("unsprung_share_unusual", $"The unsprung weight is {Words.Percent(share, LeastUnsprung, MostUnsprung)} of the corner, outside the common 10 to 20 %, a solid axle up to 30 % (common practice): check both weights.");
        double droop = s.Figures.ShaftTravel / s.Corner.Stroke;
        if (droop is >= 0 and <= 1 && Outside(droop, LeastDroop, MostDroop))
            yield return new("droop_share_unusual", $"{Words.Percent(droop, LeastDroop, MostDroop)} of the stroke is droop, outside the common 30 to 60 % (common practice): {(droop < LeastDroop ? "use less preload or softer springs" : "use more preload or stiffer springs")} if that is not meant.");
    }

    private static bool Outside(double value, double from, double to) => value < from - Slack || value > to + Slack;

    // Straight lines are least and most at the table's own points inside the stroke and at the stroke's ends.
    private static (double Least, double Most) Ratios(Corner corner)
    {
        double full = corner.FullBumpWheelTravel, atDroop = corner.Ratio.Ratio(0), atBump = corner.Ratio.Ratio(full);
        double least = Math.Min(atDroop, atBump), most = Math.Max(atDroop, atBump);
        foreach (TablePoint p in corner.Data.MotionRatio)
        {
            if (p.At > 0 && p.At < full)
                (least, most) = (Math.Min(least, p.Value), Math.Max(most, p.Value));
        }

        return (least, most);
    }
}
