using QuarterCar.Model.Terrain;
using QuarterCar.Scenarios;

namespace QuarterCar.Studies;

/// <summary>Remarks on a run.</summary>
internal static class RunWarnings
{
    // A road that differs by less at the start is level for all that matters, m.
    private const double Level = 1e-9;

    /// <summary>The remarks.</summary>
    public static IEnumerable<Warning> Of(StandingResult standing, CourseModel course, RunFigures figures)
    {
        UnitSystem units = standing.Scenario.Units;
        RoadFindings road = course.Road.Findings;
        if (road.SteepFrom is { } steep && course.DropHeight is null)
            yield return new("steep_rise", $"At {Words.Distance(steep, units)} the wheel has to climb steeper than 45°, where a real vehicle would not hold {Words.Speed(course.Speed, units)}: read the figures from there on with care, or use a lower speed or a larger tyre.");
        if (Math.Abs(road.HeightUnderStart) > Level && course.DropHeight is null)
            yield return new("ground_under_start", "The tyre already stands on the course at the start: put a flat piece at least as long as the tyre's radius or footprint first.");
        if (figures.Travel.UpTravelUsed is null)
            yield return new("ride_height_outside_stroke", "Ride height lies outside the stroke, so up-travel and droop used have no meaning: check load, springs and preload.");
        if (figures.Run.End != RunEnds.Finished)
            yield return new("run_not_finished", figures.Run.Message);
    }
}
