using QuarterCar.Model;
using QuarterCar.Scenarios;
using QuarterCar.Studies;

namespace QuarterCar.Reports.Words;

/// <summary>What the corner stands on as a run begins. What holds at t = 0 is no event (physics.md section 5), but it is a touch.</summary>
internal static class StartContacts
{
    /// <summary>As the rest of a sentence, "stands on … from the start"; null where it stands clear. A drop begins topped out by its nature: that is not said.</summary>
    public static string? Of(RunResult run)
    {
        var start = run.Track.At(0);
        Corner corner = run.Standing.Corner;
        var on = new List<string>();
        if (AtRest.IsOnMetal(corner, start.ShaftTravel)) on.Add("metal");
        if (AtRest.AreCoilsBound(corner, start.ShaftTravel)) on.Add("bound coils");
        if (AtRest.IsOnBumpStop(corner, start.WheelTravel)) on.Add("its bump stop");
        if (AtRest.IsToppedOut(start.ShaftTravel) && run.Scenario.Excitation is not Drop) on.Add("its top-out");
        return on.Count == 0 ? null : $"stands on {string.Join(" and ", on)} from the start";
    }

    /// <summary>What it stands on from the start though a limit is set on touches of that, as a sentence about them; null without one.</summary>
    public static string? Limited(RunResult run) => run.Limits.FirstOrDefault(l => AtRest.StandsOn(run, l.Figure)) is { } limit
        ? $"touch that holds from the start is not counted: the corner stands on its {(limit.Figure == "counts.top_out" ? "top-out" : "bump stop")}."
        : null;

    /// <summary>True where it stands on metal or bound coils.</summary>
    public static bool OnMetal(RunResult run)
    {
        double start = run.Track.At(0).ShaftTravel;
        return AtRest.IsOnMetal(run.Standing.Corner, start) || AtRest.AreCoilsBound(run.Standing.Corner, start);
    }
}
