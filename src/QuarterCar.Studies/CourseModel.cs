using System.Collections.Immutable;

using QuarterCar.Model;
using QuarterCar.Model.Terrain;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Reading;

namespace QuarterCar.Studies;

/// <summary>The ground, the road that the tyre feels and the speed: built once, shared by every setup that drives it.</summary>
/// <param name="Ground">The ground.</param>
/// <param name="Road">What the tyre feels of it.</param>
/// <param name="Speed">m/s; 0 for a drop.</param>
/// <param name="DropHeight">m; null for a course.</param>
public sealed record CourseModel(Ground Ground, Road Road, double Speed, double? DropHeight)
{
    /// <summary>The course of a scenario.</summary>
    /// <param name="scenario">Its words.</param>
    /// <param name="cancel">Stops the laying of a long course with <see cref="OperationCanceledException"/>.</param>
    /// <exception cref="CornerException">The wheel would be stopped at its hub.</exception>
    public static CourseModel Of(Scenario scenario, CancellationToken cancel = default)
    {
        if (scenario.Excitation is Drop drop)
        {
            var level = Ground.Build([], cancel);
            return new CourseModel(level, Road.Build(level, TyreContact.Point, 0, 0, cancel), 0, drop.Height);
        }

        var course = (Course)scenario.Excitation;
        TyreData tyre = scenario.Corner.Tyre;
        var ground = Ground.Build(course.Pieces, cancel);
        cancel.ThrowIfCancellationRequested();
        var road = Road.Build(ground, tyre.Contact, tyre.Radius ?? 0, tyre.Footprint ?? 0, cancel);
        ImmutableArray<HubStop> stops = road.Findings.HubStops;
        if (stops.Length > 0)
        {
            HubStop stop = stops[0];
            string row = stop.Row is { } r ? FormattableString.Invariant($", data row {r + 1},") : "";
            throw new CornerException(
                $"terrain[{stop.Piece}]",
                $"a vertical rise at {Words.Distance(stop.Distance, scenario.Units)}{row} that would stop the wheel at its hub (top edge {Words.Length(stop.Top, scenario.Units)}, hub {Words.Length(stop.Hub, scenario.Units)})",
                "a lower rise, a ramp, a larger tyre.radius, or contact: point");
        }

        return new CourseModel(ground, road, course.Speed, null);
    }

    /// <summary>Where the wheel is at a time, m; one that is a break of the road or a corner of the ground but for rounding is it, so that the values after it hold as they do in the run, which goes by the time of the break.</summary>
    /// <param name="time">s.</param>
    public double DistanceAt(double time)
    {
        double s = Speed * time;
        return Math.Max(Reached(Road.Breaks, s), Reached(Ground.Corners, s));
    }

    private static double Reached(ReadOnlySpan<double> places, double s)
    {
        int at = places.BinarySearch(s);
        int next = at >= 0 ? at : ~at;
        return next < places.Length && Road.IsReached(places[next], s) ? places[next] : s;
    }

    /// <summary>How long a run lasts, s: as asked, else until 3 s after the terrain's end, or 6 s for a drop.</summary>
    public double Duration(RunSettings run) => run.Duration ?? (DropHeight is null ? Ground.Length / Speed + TraceRows.AfterTerrain : TraceRows.DropTest);
}
