using System.Globalization;

using QuarterCar.Reports.Studies;
using QuarterCar.Reports.Units;
using QuarterCar.Studies;

namespace QuarterCar.Reports.Words;

/// <summary>The answer of a run or a standing corner in one or two sentences.</summary>
public static class Verdict
{
    /// <summary>Of a run: travel used, contacts, crossover, limits; first of all that it stopped early, where it did.</summary>
    public static string Of(RunResult result)
    {
        var parts = new List<string> { Travel(result) + "." };
        var read = new Readable(result.Scenario.Units);
        int crossovers = Count(result, "crossover");
        if (crossovers > 0 && result.Standing.Figures.CrossoverShaftShowing is { } showing)
            parts.Add($"The slider meets the stop nut {EventWords.Times(crossovers)}, at {read.Text(Dimension.Length, showing)} shaft showing.");
        if (Count(result, "liftoff") + Count(result, "touchdown") > 0)
            parts.Add($"The tyre is in the air for {read.Text(Dimension.Time, result.Figures.Tyre.Airborne)}.");
        parts.Add(LimitSentence(result));
        if (EndSentence(result) is { } end) parts.Insert(0, end);
        return string.Join(" ", parts.Where(p => p.Length > 0));
    }

    /// <summary>Travel used and what was touched, without a full stop: also the title of the travel picture.</summary>
    public static string Travel(RunResult result)
    {
        if (!double.IsFinite(result.Figures.Travel.TravelUse)) return "Nothing moved that could be judged";
        string use = $"Uses {Percent(result.Figures.Travel.TravelUse)} of the stroke";
        var touched = new List<string>();
        if (StartContacts.Of(result) is { } stands) touched.Add(stands);
        Add(touched, Count(result, "bottom_out"), "hits metal at full bump");
        Add(touched, Count(result, "coil_bind"), "binds the coils");
        Add(touched, Count(result, "bump_stop"), "touches the bump stop");
        Add(touched, Count(result, "top_out"), "tops out");
        foreach (var (spring, times) in SolidSprings.Of(result)) Add(touched, times, $"takes the {spring} spring solid");
        return touched.Count switch
        {
            0 => use + ", touches nothing",
            1 => use + ", " + touched[0],
            _ => use + ", " + string.Join(", ", touched.Take(touched.Count - 1)) + " and " + touched[^1],
        };
    }

    /// <summary>Of a standing corner.</summary>
    public static string Of(StandingResult result)
    {
        var read = new Readable(result.Scenario.Units);
        var figures = result.Figures;
        double stroke = result.Scenario.Corner.Coilover.Stroke;
        string at = $"{read.Text(Dimension.Length, figures.RideHeight)} shaft showing";
        string stands = AtRest.Of(result.Corner) is { } rest
            ? $"{char.ToUpperInvariant(rest[0])}{rest[1..]}, at {at}: nothing is left for bump."
            : $"Stands at {at}, {Percent(figures.RideHeight / stroke)} of the stroke left for bump.";
        var rates = StrokeRates.Of(result, read);
        string crossover = rates.Crossover is { } c ? $" Crosses over at {read.Text(Dimension.Length, c.Showing)} from {rates.Rate(c.Before)} to {rates.Rate(c.After)}."
            : rates.IsOne ? $" One rate of {rates.Rate(rates.Only)}, {rates.WithoutCrossover}."
            : $" The rate is {rates.Rate(rates.AtRide)} at ride height, {rates.WithoutCrossover}: {rates.Chain}.";
        string bind = figures.BindClearanceFullBump < 0
            ? $" Springs bind before full bump: {read.Text(Dimension.Length, -figures.BindClearanceFullBump)} short."
            : $" {read.Text(Dimension.Length, figures.BindClearanceFullBump)} clear of coil bind at full bump.";
        return stands + crossover + bind;
    }

    /// <summary>True where metal or bound coils were met in the run, or carry the corner from its start.</summary>
    public static bool MeetsMetal(RunResult result) => Count(result, "bottom_out") + Count(result, "coil_bind") > 0 || StartContacts.OnMetal(result);

    /// <summary>How often an event happened.</summary>
    public static int Count(RunResult result, string name)
    {
        foreach (var (key, value) in result.Figures.Counts)
        {
            if (key == name) return value;
        }

        return 0;
    }

    /// <summary>A share as whole percent; "–" where it does not apply. A little less than none is none.</summary>
    public static string Percent(double? share) =>
        share is { } s && double.IsFinite(s) ? string.Create(CultureInfo.InvariantCulture, $"{Math.Round(100 * s, MidpointRounding.AwayFromZero) + 0.0:F0}\u00a0%") : Readable.None;

    private static string? EndSentence(RunResult result) => result.Figures.Run.End == "finished"
        ? null
        : string.Create(CultureInfo.InvariantCulture, $"The run stopped early, at {result.Figures.Run.Time:F3}\u00a0s ({result.Figures.Run.End.Replace('_', ' ')}): {result.Figures.Run.Message.TrimEnd('.')}.");

    private static string LimitSentence(RunResult result)
    {
        if (result.Limits.IsEmpty) return "";
        string broken = Named(l => l.Broken), missing = Named(l => l.Value is null);
        if (broken.Length > 0) return $"Breaks the {broken}.";
        if (!double.IsFinite(result.Figures.Travel.TravelUse)) return "";
        string? stop = StartContacts.Limited(result);
        if (missing.Length > 0) return $"The {missing} cannot be judged here." + (stop is null ? "" : " A " + stop);
        if (StartContacts.OnMetal(result)) return "No limit is broken, but no contact that holds from the start is counted: the corner stands on metal or bound coils.";
        if (stop is not null) return "No limit is broken, but a " + stop;
        return EndSentence(result) is null ? "Every limit holds." : "No limit was broken until then.";

        string Named(Func<LimitVerdict, bool> which) => LimitWords.On([.. result.Limits.Where(which).Select(l => l.Figure)], new Readable(result.Scenario.Units));
    }

    private static void Add(List<string> list, int count, string what)
    {
        if (count > 0) list.Add($"{what} {EventWords.Times(count)}");
    }
}
