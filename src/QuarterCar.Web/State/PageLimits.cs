using QuarterCar.Model.Terrain;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Reading;

namespace QuarterCar.Web.State;

/// <summary>What the page computes at a turn of something; longer things are for the command line.</summary>
internal static class PageLimits
{
    /// <summary>Longest random course, m.</summary>
    public const double LongestRandom = 1000;

    /// <summary>Longest run, s.</summary>
    public const double LongestRun = 120;

    /// <summary>Finest accuracy.</summary>
    public const double LeastTolerance = 1e-10;

    /// <summary>A whole request, from its first byte to its answer.</summary>
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(15);

    /// <summary>What is too much of a scenario; null for one that the page computes.</summary>
    public static Problem? Of(Scenario scenario)
    {
        static Problem Note(string key, string found, string wanted) => new(Library.Uploaded, 0, key, found, wanted + " on this page; the command line computes it");
        if (scenario.Run.Tolerance < LeastTolerance) return Note("run.tolerance", "an accuracy finer than the page computes", "1e-10 or more");
        if (scenario.Run.Duration > LongestRun) return Note("run.duration", "a longer run than the page computes", "120 s or less");
        if (scenario.Excitation is not Course course) return null;
        for (int i = 0; i < course.Pieces.Length; i++)
        {
            if (course.Pieces[i] is RandomPiece { Length: > LongestRandom }) return Note(FormattableString.Invariant($"terrain[{i}].random.length"), "a longer random road than the page computes", "1000 m or less");
        }

        double length = course.Pieces.Sum(TraceRows.Length);
        return scenario.Run.Duration is null && length / course.Speed > LongestRun ? Note("speed", "a course that takes longer than the page computes", "120 s of driving or less") : null;
    }
}
