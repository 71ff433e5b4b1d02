using QuarterCar.Model;
using QuarterCar.Scenarios;
using QuarterCar.Studies;

namespace QuarterCar.Reports.Words;

/// <summary>What the corner stands on as a run begins. What holds at t = 0 is no event (physics.md section 5), but it is a touch.</summary>
internal static class StartContacts
{
    private const double Touch = 1e-9; // m: the balance is found to the last bits, and a corner just short of a stop does not stand on it

    /// <summary>As the rest of a sentence, "stands on … from the start"; null where it stands clear. A drop begins topped out by its nature: that is not said.</summary>
    public static string? Of(RunResult run)
    {
        var start = run.Track.At(0);
        Corner corner = run.Standing.Corner;
        var on = new List<string>();
        if (AtRest.IsOnMetal(corner, start.ShaftTravel)) on.Add("metal");
        if (AtRest.AreCoilsBound(corner, start.ShaftTravel)) on.Add("bound coils");
        if (corner.BumpStopCompression(start.WheelTravel) > Touch) on.Add("its bump stop");
        if (start.ShaftTravel < -Touch && run.Scenario.Excitation is not Drop) on.Add("its top-out");
        return on.Count == 0 ? null : $"stands on {string.Join(" and ", on)} from the start";
    }

    /// <summary>A stop that it leans on from the start though a limit is set on its touches; null without one.</summary>
    public static string? Limited(RunResult run)
    {
        var start = run.Track.At(0);
        bool Set(string figure) => run.Limits.Any(l => l.Figure == figure);
        return Set("counts.bump_stop") && run.Standing.Corner.BumpStopCompression(start.WheelTravel) > Touch ? "its bump stop"
            : Set("counts.top_out") && start.ShaftTravel < -Touch && run.Scenario.Excitation is not Drop ? "its top-out"
            : null;
    }

    /// <summary>True where it stands on metal or bound coils.</summary>
    public static bool OnMetal(RunResult run)
    {
        double start = run.Track.At(0).ShaftTravel;
        return AtRest.IsOnMetal(run.Standing.Corner, start) || AtRest.AreCoilsBound(run.Standing.Corner, start);
    }
}
