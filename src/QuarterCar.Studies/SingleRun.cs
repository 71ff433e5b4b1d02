using System.Collections.Immutable;

using QuarterCar.Model.Motion;
using QuarterCar.Numerics.Integration;
using QuarterCar.Scenarios;

namespace QuarterCar.Studies;

/// <summary>One run of one scenario: read this first, it is the way of everything.</summary>
public static class SingleRun
{
    /// <summary>Builds the corner, lets it stand, drives or drops it, works out the figures.</summary>
    /// <param name="scenario">What is asked.</param>
    /// <param name="cancel">Stops the run with <see cref="OperationCanceledException"/>.</param>
    /// <exception cref="QuarterCar.Model.CornerException">The words describe no corner or course that can be computed.</exception>
    public static RunResult Of(Scenario scenario, CancellationToken cancel = default) => Of(scenario, CourseModel.Of(scenario), new MotionRun(), true, cancel);

    /// <summary>The same over a course built before, in memory used again.</summary>
    /// <param name="scenario">What is asked.</param>
    /// <param name="course">Its course.</param>
    /// <param name="run">Memory to run in.</param>
    /// <param name="keep">False where nobody asks for more than figures: then the standing curve, its remarks and all that is told beside figures are left out, and the track is gone once the run's memory is used again.</param>
    /// <param name="cancel">Stops the run.</param>
    public static RunResult Of(Scenario scenario, CourseModel course, MotionRun run, bool keep, CancellationToken cancel = default)
    {
        StandingResult standing = keep ? StandingStudy.Of(scenario) : StandingStudy.FiguresOf(scenario);
        RunTrack track = Move(standing, course, run, keep, cancel);
        (RunFigures figures, ImmutableArray<EventRow> events) = FigureWork.Of(track);
        ImmutableArray<Warning> warnings = keep ? [.. standing.Warnings, .. RunWarnings.Of(standing, course, figures)] : [];
        return new RunResult(scenario, standing, track, figures, events, Limits.Check(scenario.Limits, standing.Figures, figures), warnings);
    }

    /// <summary>The motion alone.</summary>
    /// <param name="standing">The corner at rest.</param>
    /// <param name="course">The course.</param>
    /// <param name="run">Memory to run in.</param>
    /// <param name="keep">False where the track is asked at once and then forgotten.</param>
    /// <param name="cancel">Stops the run.</param>
    public static RunTrack Move(StandingResult standing, CourseModel course, MotionRun run, bool keep = true, CancellationToken cancel = default)
    {
        RunSettings settings = standing.Scenario.Run;
        double duration = course.Duration(settings);
        IntegrationOutcome outcome = course.DropHeight is { } height
            ? run.Drop(standing.Corner, course.Road, height, duration, settings.Tolerance, cancel)
            : run.Drive(standing.Corner, course.Road, course.Speed, duration, settings.Tolerance, cancel);
        return new RunTrack(standing.Corner, course, run, outcome, duration, settings.Sample, keep);
    }
}
