using System.Collections.Immutable;

using QuarterCar.Model;
using QuarterCar.Model.Terrain;
using QuarterCar.Reports.Units;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Studies;

namespace QuarterCar.Reports.Plots;

/// <summary>The samples that the pictures of one run are drawn from, taken once; and the stretch of it where something happens.</summary>
internal sealed class RunSamples
{
    private const int Most = 6000;

    private const double Finest = 5e-4; // s

    private RunSamples(RunResult run, (double First, double Last) window, int count, bool overTime = false)
    {
        (Run, First, Last) = (run, window.First, window.Last);
        Read = new Readable(run.Scenario.Units);
        OverDistance = run.Scenario.Excitation is Course && !overTime;
        PlaceDimension = OverDistance ? Dimension.Distance : Dimension.Time;
        var events = run.Events.Select(e => e.Time).Where(t => t >= First && t <= Last);
        Shown = [.. Even(First, Last, count).Concat(events).Order().Select(run.Track.At).Where(IsFinite)];
    }

    /// <summary>The run.</summary>
    public RunResult Run { get; }

    /// <summary>Those of the stretch that is drawn: even in time, with the events among them.</summary>
    public ImmutableArray<Sample> Shown { get; }

    /// <summary>Units for people.</summary>
    public Readable Read { get; }

    /// <summary>Drawn over distance; a drop, and what is drawn beside one, over time.</summary>
    public bool OverDistance { get; }

    /// <summary>Of the horizontal axis.</summary>
    public Dimension PlaceDimension { get; }

    /// <summary>The stretch drawn, s.</summary>
    public double First { get; }

    /// <summary>The stretch drawn, s.</summary>
    public double Last { get; }

    /// <summary>True where resting ends were left out.</summary>
    public bool Cropped => CropNote.Length > 0;

    /// <summary>False for a run whose numbers left their range as it began: nothing of it can be drawn.</summary>
    public static bool HasAny(RunResult run) => IsFinite(run.Track.At(0));

    /// <summary>Takes the samples: a look over the whole run for the stretch where something happens, and that stretch anew, so that a short one in a long run is no coarser.</summary>
    public static RunSamples Of(RunResult run)
    {
        var window = Window(run, Count(run.Track.EndTime));
        return new(run, window, Count(window.Last - window.First));
    }

    /// <summary>Takes fewer: as finely as a screen shows them.</summary>
    /// <param name="run">The run.</param>
    /// <param name="coarse">Samples over the whole run.</param>
    /// <param name="fine">Samples over the stretch.</param>
    public static RunSamples Of(RunResult run, int coarse, int fine) => new(run, Window(run, coarse), fine);

    private static int Count(double duration) => (int)Math.Clamp(duration / Finest, 200, Most);

    private static IEnumerable<double> Even(double first, double last, int count) => Enumerable.Range(0, count + 1).Select(i => i == count ? last : first + ((last - first) * i / count));

    /// <summary>The same run, drawn over another stretch, s.</summary>
    /// <param name="first">Its beginning, s.</param>
    /// <param name="last">Its end, s.</param>
    /// <param name="overTime">True for a course drawn over time.</param>
    public RunSamples Within(double first, double last, bool overTime = false)
    {
        (double from, double to) = (Math.Max(0, first), Math.Min(Run.Track.EndTime, last));
        return new(Run, (from, to), Count(to - from), overTime);
    }

    /// <summary>Place on the horizontal axis.</summary>
    public double Place(Sample sample) => Place(sample.Time, sample.Distance);

    /// <summary>Place on the horizontal axis.</summary>
    public double Place(double time, double distance) => OverDistance ? distance * Read.Unit(Dimension.Distance).PerSi : time;

    /// <summary>The horizontal axis's words.</summary>
    public string PlaceLabel => OverDistance ? "distance, " + Read.Unit(Dimension.Distance).Name : "time, s";

    /// <summary>The horizontal axis's limits.</summary>
    public (double From, double To) PlaceRange => (Place(Shown[0]), Math.Max(Place(Shown[^1]), Place(Shown[0]) + 1e-3));

    /// <summary>Says that resting ends are left out.</summary>
    public string CropNote => (First > 0, Last < Run.Track.EndTime - 1e-9) switch
    {
        (true, true) => " Before and after the stretch shown the corner is at rest or settling on level ground.",
        (true, false) => " Before the stretch shown the corner is at rest on level ground.",
        (false, true) => " After the stretch shown the corner is at rest or settling on level ground.",
        _ => "",
    };

    /// <summary>A run that ended for lack of numbers still has its picture up to there.</summary>
    private static bool IsFinite(Sample s) =>
        double.IsFinite(s.ShaftShowing + s.ShaftForce + s.TyreForce + s.SprungAcceleration + s.UnsprungAcceleration + s.DamperForce + s.ShaftVelocity);

    /// <summary>From a little before the shaft first moves by a hundredth of the stroke to a little after it last does, and never less than the stretch on which the road changes.</summary>
    private static (double First, double Last) Window(RunResult run, int count)
    {
        double still = 0.012 * run.Scenario.Corner.Coilover.Stroke;
        double rest = run.Standing.Figures.RideHeight;
        var moving = Even(0, run.Track.EndTime, count).Select(run.Track.At).Where(IsFinite).Where(s => Math.Abs(s.ShaftShowing - rest) > still).Select(s => s.Time).ToList();
        if (moving.Count == 0) return (0, run.Track.EndTime);
        double pad = Math.Max(0.1, 0.08 * (moving[^1] - moving[0]));
        (double from, double to) = Uneven(run.Scenario);
        return (Math.Max(0, Math.Min(moving[0] - pad, from)), Math.Min(run.Track.EndTime, Math.Max(moving[^1] + pad, to)));
    }

    /// <summary>From when to when the road may change under the wheel, s: between the first and the last piece that is not level, as far as the tyre reaches around its centre. An empty stretch for a drop and for level ground.</summary>
    private static (double From, double To) Uneven(Scenario scenario)
    {
        double first = double.PositiveInfinity, last = double.NegativeInfinity, at = 0;
        if (scenario.Excitation is not Course course) return (first, last);
        TyreData tyre = scenario.Corner.Tyre;
        double reach = tyre.Contact switch { TyreContact.RollingCircle => tyre.Radius ?? 0, TyreContact.Footprint => 0.5 * (tyre.Footprint ?? 0), _ => 0 };
        foreach (TerrainPiece piece in course.Pieces)
        {
            double end = at + TraceRows.Length(piece);
            if (piece is not FlatPiece) (first, last) = (Math.Min(first, at), end);
            at = end;
        }

        return ((first - reach) / course.Speed, (last + reach) / course.Speed);
    }
}
