using System.Collections.Immutable;

using QuarterCar.Reports.Units;
using QuarterCar.Reports.Words;
using QuarterCar.Studies;
using QuarterCar.Studies.Spreads;

namespace QuarterCar.Reports.Studies;

/// <summary>A spread study in words: shared by screen, report and pictures.</summary>
internal static class SpreadWords
{
    private static readonly ImmutableArray<string> s_contacts = ["bottom_out", "coil_bind", "bump_stop", "top_out", "liftoff"];

    /// <summary>What is counted over the samples: those that stand on metal where there are any, then the contacts, hardest first.</summary>
    /// <returns>In words, its share of the samples that ran, and whether it is a contact that takes a hit.</returns>
    public static IEnumerable<(string Words, double Share, bool Contact)> Touched(SpreadResult result)
    {
        SpreadSamples samples = result.Samples;
        if (samples.AtRestOnMetal > 0)
            yield return (AtRest.Either, (double)samples.AtRestOnMetal / samples.Ran, true);
        if (samples.AtRestOnStop > 0)
            yield return ("stands on its bump stop or top-out from the start", (double)samples.AtRestOnStop / samples.Ran, true);
        foreach (string contact in s_contacts)
            yield return (EventWords.Of(contact), result.Share(contact) ?? 0, EventWords.IsContact(contact));
    }

    // Ends that round to one number say nothing about the spread between them.
    private static string Between(double from, double to) => Words.Verdict.Percent(from) is var a && Words.Verdict.Percent(to) is var b && a != b
        ? $"{a} to {b}"
        : FormattableString.Invariant($"{100 * from:F1}\u00a0% to {100 * to:F1}\u00a0%");

    /// <summary>How the shares of variance are to be read.</summary>
    public const string SharesHelp =
        "Shares of the variance by regression over the samples (relative weights); what no straight line explains, such as contacts and tolerances acting together, is the rest. Halve the largest first.";

    private static readonly ImmutableArray<(string Name, string Words)> s_figures =
    [
        ("static.ride_height_m", "Ride height (shaft showing)"),
        ("travel.up_travel_used", "Up-travel used, from ride height"),
        ("travel.droop_used", "Droop used, from ride height"),
        ("travel.travel_use", "Stroke used"),
        ("acceleration.peak_g", "Peak acceleration, sprung"),
        ("tyre.peak_N", "Peak tyre load"),
        ("tyre.airborne_s", "Time in the air"),
        ("static.crossover_shaft_showing_m", "Crossover at shaft showing"),
        ("static.ride_frequency_hz", "Ride frequency"),
    ];

    /// <summary>The figures that are shown, those that apply; the words say of how many samples where it is not all of them.</summary>
    public static IEnumerable<(string Words, FigureSpread Spread)> Figures(SpreadResult result) =>
        s_figures.Select(f => (f.Words, Spread: result.Figure(f.Name)!)).Where(f => f.Spread is not null)
            .Select(f => (f.Spread.Samples == result.Samples.Ran ? f.Words : $"{f.Words} {Of(f.Spread, result)}", f.Spread));

    private static string Of(FigureSpread spread, SpreadResult result) => FormattableString.Invariant($"({spread.Samples} of {result.Samples.Ran} samples)");

    /// <summary>The answer in one or two sentences.</summary>
    public static string Verdict(SpreadResult result)
    {
        if (result.Samples.Ran + result.Samples.Failed == 0) return StudyHead.NoSetups;
        if (result.Samples.Ran == 0) return "No sample could be run: see the notes in the table, and narrow the tolerances.";
        var up = result.Figure("travel.up_travel_used") ?? result.Figure("travel.travel_use")!;
        string of = up.Name == "travel.up_travel_used" ? "up-travel" : "stroke";
        int ran = result.Samples.Ran, standing = result.Samples.AtRestOnMetal;
        double metal = (double)result.Samples.OnMetal / ran;
        string failed = result.Samples.Failed == 0 ? "" : FormattableString.Invariant($" {result.Samples.Failed} of {result.Samples.Failed + result.Samples.Ran} samples could not be run.");
        string meets = metal == 0 ? "none meets metal or binds its coils" : metal == 1 ? "all meet metal or bind their coils" : $"{Share(metal)} meet metal or bind their coils";
        string use = $"{Between(up.P05, up.P95)} of the {of}; {meets}.{failed}";
        string rest = standing == 0 ? "" : FormattableString.Invariant($"{standing} of {ran} samples {(standing == 1 ? AtRest.Either : AtRest.EitherOfMany)}. ");
        return rest + (up.Samples == ran ? $"Nine of ten samples use {use}" : FormattableString.Invariant($"Of the {up.Samples} samples that have an up-travel nine of ten use {use}"));
    }

    /// <summary>A share in percent; small ones are never shown as none, large ones never as all.</summary>
    public static string Share(double? share) => share switch
    {
        > 0 and < 0.005 => "below 1\u00a0%",
        > 0.995 and < 1 => "above 99\u00a0%",
        _ => Words.Verdict.Percent(share),
    };

    /// <summary>Numbers of a figure for people: p05, median, p95, mean, and the unit.</summary>
    public static string[] Cells(FigureSpread spread, Readable read)
    {
        var (dimension, toSi) = Readable.OfKey(spread.Name);
        var unit = read.Unit(dimension);
        if (dimension == Dimension.Share) unit = unit with { Decimals = 1 }; // whole percents would hide a narrow spread
        double[] values = [spread.P05, spread.P50, spread.P95, spread.Mean];
        return [.. values.Select(v => Readable.Number(unit, v * toSi)), unit.Name];
    }

    /// <summary>A traced figure's name at the head of a sentence, with its samples where it does not apply to all of them.</summary>
    public static string Traced(string figure, SpreadResult result)
    {
        string words = figure == "static.ride_height_m" ? "Ride height" : "Up-travel used";
        return result.Figure(figure) is { } spread && spread.Samples < result.Samples.Ran ? $"{words} {Of(spread, result)}" : words;
    }
}
