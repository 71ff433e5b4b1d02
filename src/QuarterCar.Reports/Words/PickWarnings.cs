using QuarterCar.Model;
using QuarterCar.Model.Selection;
using QuarterCar.Model.Statics;
using QuarterCar.Reports.Units;
using QuarterCar.Scenarios;

namespace QuarterCar.Reports.Words;

/// <summary>Remarks on one set of springs, each with the stable code that `check` uses for the same and one sentence that says what to do.</summary>
internal static class PickWarnings
{
    /// <summary>The remarks.</summary>
    public static IEnumerable<Warning> Of(PickSet set, PickData data, UnitSystem units)
    {
        var read = new Readable(units);
        string Length(double metres) => read.Text(Dimension.Length, metres);
        if (set.Failed.HasFlag(PickChecks.Loose))
            yield return new("loose_at_full_droop", $"The wanted ride height needs {Length(set.Preload)} of preload, springs loose at full droop: take softer springs or a higher ride height, or add a tender.");
        if (set.UpperClearance < 0) yield return Binds("upper", set.UpperClearance);
        if (set.LowerClearance < 0) yield return Binds("lower", set.LowerClearance);
        if (set.Failed.HasFlag(PickChecks.BelowLeastPreload))
            yield return new("below_least_preload", $"The springs go on the body only with at least {Length(FitWork.LeastPreload(set.Springs, data.Body!)!.Value)} of preload, not {Length(set.Preload)}: take shorter or softer springs, or a higher ride height.");
        if (set.Failed.HasFlag(PickChecks.BeyondThread))
            yield return new("beyond_thread", $"The coil nut would stand {Length(set.Preload - ThreadEnd(set, data.Body!))} past the end of its thread: take longer or stiffer springs.");
        if (set.Failed.HasFlag(PickChecks.OverBody))
            yield return new("spring_over_body", $"{Tight(set, data, Length)} not go over the body of {Length(data.Body!.Diameter!.Value)}: take springs with a larger inner diameter.");
        if (set.TenderSolid == false)
            yield return new("tender_near_ride_height", "The tender is still working at ride height, so the rate changes as the corner moves: take a softer or shorter tender.");
        if (set.ReachesStopNut == false)
            yield return new("crossover_never", "The slider does not meet the stop nut within the stroke: take a smaller gap if a crossover is wanted.");
        if (set.BowsFrom is { } bows)
            yield return new("bows", $"The lower spring bows sideways from {Length(bows)} of compression on, less than it has at full bump (EN 13906-1, ends guided parallel): take a shorter, stiffer or wider spring, or a guide.");
        if (NotChecked(set, data) is { Length: > 0 } missing)
            yield return new("not_checked", $"Not checked, because it was not given: {string.Join("; ", missing)}.");

        Warning Binds(string place, double clearance) => new(
            "binds_before_full_bump", $"The {place} spring binds before full bump, short by {Length(-clearance)}: take one with more travel, less preload{(data.Gap is null ? "" : " or another gap")}.");
    }

    /// <summary>What the given lengths do not allow to be checked, with the flags or columns that it wants.</summary>
    public static string[] NotChecked(PickSet set, PickData data) => [.. FitNotChecked(set, data), .. BowingNotChecked(set)];

    /// <summary>The same in a few words; empty where everything was checked.</summary>
    public static string NotCheckedShort(PickSet set, PickData data) => (FitNotChecked(set, data).Any(), BowingNotChecked(set).Any()) switch
    {
        (true, true) => "fit and bowing not checked",
        (true, false) => "fit not checked",
        (false, true) => "bowing not checked",
        _ => "",
    };

    private static IEnumerable<string> FitNotChecked(PickSet set, PickData data)
    {
        string[] lengths = [.. Missing((data.Body?.SeatLength, "--seat-length"), (data.Body?.Slider, "--slider"))];
        string[] thread = [.. Missing((data.Body?.Thread, "--thread"))];
        string[] over = [.. Missing((data.Body?.Diameter, "--diameter")), .. set.Springs.All.Any(s => s.CoilInner is null) ? ["the list's inner_diameter"] : Array.Empty<string>()];
        return
        [
            .. Line("least preload on the body", lengths),
            .. Line("thread for the coil nut", [.. thread, .. thread.Length == 0 ? lengths : []]),
            .. Line("springs over the body", over),
        ];
    }

    private static IEnumerable<string> BowingNotChecked(PickSet set) =>
        set.Springs.Lower.CoilMean is null ? ["bowing of the lower spring (the list's mean_diameter, or inner_diameter and wire_diameter)"] : [];

    /// <summary>What a set fails, in a few words; empty where it passes.</summary>
    public static string Short(PickChecks failed) => string.Join(", ", Enum.GetValues<PickChecks>().Where(c => c != PickChecks.None && failed.HasFlag(c)).Select(Words));

    /// <summary>One check in a few words.</summary>
    public static string Words(PickChecks check) => check switch
    {
        PickChecks.Loose => "negative preload",
        PickChecks.Binds => "binds",
        PickChecks.BelowLeastPreload => "too long for body",
        PickChecks.BeyondThread => "past the thread",
        PickChecks.OverBody => "not over body",
        _ => "",
    };

    private static IEnumerable<string> Missing(params (double? Value, string Flag)[] wanted) => wanted.Where(w => w.Value is null).Select(w => w.Flag);

    private static IEnumerable<string> Line(string what, string[] missing) => missing.Length == 0 ? [] : [$"{what} ({string.Join(", ", missing)})"];

    private static double ThreadEnd(PickSet set, BodyData body) => (FitWork.StackFree(set.Springs, body) - body.SeatLength + body.Thread)!.Value;

    private static string Tight(PickSet set, PickData data, Func<double, string> length)
    {
        string[] tight =
        [
            .. new[] { ("The tender", set.Springs.Tender), ("The upper spring", set.Springs.Upper), ("The lower spring", set.Springs.Lower) }
                .Where(p => p.Item2?.CoilInner <= data.Body!.Diameter)
                .Select((p, i) => $"{(i == 0 ? p.Item1 : char.ToLowerInvariant(p.Item1[0]) + p.Item1[1..])} ({length(p.Item2!.CoilInner!.Value)} inside)"),
        ];
        return string.Join(" and ", tight) + (tight.Length == 1 ? " does" : " do");
    }
}
