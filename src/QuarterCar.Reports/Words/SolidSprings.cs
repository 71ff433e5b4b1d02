using QuarterCar.Studies;

namespace QuarterCar.Reports.Words;

/// <summary>Springs of a stack that go solid in a run while the others still give: no coil bind of the whole, but a nut takes the load through solid coils.</summary>
internal static class SolidSprings
{
    /// <summary>Which, and how often; empty where the whole stack binds, which says more.</summary>
    public static IEnumerable<(string Spring, int Times)> Of(RunResult run)
    {
        if (Verdict.Count(run, "coil_bind") > 0)
            yield break;
        foreach (string spring in (string[])["upper", "lower"])
        {
            int times = Verdict.Count(run, spring + "_bind");
            if (times > 0) yield return (spring, times);
        }
    }

    /// <summary>A spring that binds as the last to give is the coil bind itself: one mark, one word.</summary>
    public static bool IsCoilBind(RunResult run, EventRow e)
    {
        const double same = 1e-4; // s
        return e.Event is "upper_bind" or "lower_bind" && run.Events.Any(c => c.Event == "coil_bind" && Math.Abs(c.Time - e.Time) < same);
    }
}
