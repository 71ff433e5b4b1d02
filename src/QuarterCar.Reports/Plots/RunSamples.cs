using System.Collections.Immutable;

using QuarterCar.Reports.Units;
using QuarterCar.Scenarios;
using QuarterCar.Studies;

namespace QuarterCar.Reports.Plots;

/// <summary>The samples that the pictures of one run are drawn from, taken once; and the stretch of it where something happens.</summary>
internal sealed class RunSamples
{
    private const int Most = 6000;

    private const double Finest = 5e-4; // s

    private RunSamples(RunResult run, ImmutableArray<Sample> all, (double First, double Last)? window = null)
    {
        (Run, All) = (run, all);
        Read = new Readable(run.Scenario.Units);
        OverDistance = run.Scenario.Excitation is Course;
        PlaceDimension = OverDistance ? Dimension.Distance : Dimension.Time;
        (First, Last) = window ?? Window(run, all);
        Shown = [.. all.Where(s => s.Time >= First && s.Time <= Last)];
    }

    /// <summary>The run.</summary>
    public RunResult Run { get; }

    /// <summary>Even in time, with the events among them.</summary>
    public ImmutableArray<Sample> All { get; }

    /// <summary>Those in the stretch that is drawn.</summary>
    public ImmutableArray<Sample> Shown { get; }

    /// <summary>Units for people.</summary>
    public Readable Read { get; }

    /// <summary>Drawn over distance; a drop over time.</summary>
    public bool OverDistance { get; }

    /// <summary>Of the horizontal axis.</summary>
    public Dimension PlaceDimension { get; }

    /// <summary>The stretch drawn, s.</summary>
    public double First { get; }

    /// <summary>The stretch drawn, s.</summary>
    public double Last { get; }

    /// <summary>True where resting ends were left out.</summary>
    public bool Cropped => First > 0 || Last < Run.Track.EndTime - 1e-9;

    /// <summary>False for a run whose numbers left their range as it began: nothing of it can be drawn.</summary>
    public static bool HasAny(RunResult run) => IsFinite(run.Track.At(0));

    /// <summary>Takes the samples.</summary>
    public static RunSamples Of(RunResult run)
    {
        double end = run.Track.EndTime;
        int count = (int)Math.Clamp(end / Finest, 200, Most);
        var times = Enumerable.Range(0, count + 1).Select(i => end * i / count).Concat(run.Events.Select(e => e.Time)).Order();
        return new(run, [.. times.Select(run.Track.At).Where(IsFinite)]);
    }

    /// <summary>Takes fewer: a coarse look for the stretch where something happens, and that stretch as finely as a screen shows it.</summary>
    /// <param name="run">The run.</param>
    /// <param name="coarse">Samples over the whole run.</param>
    /// <param name="fine">Samples over the stretch.</param>
    public static RunSamples Of(RunResult run, int coarse, int fine)
    {
        double end = run.Track.EndTime;
        (double first, double last) = Window(run, [.. Even(0, end, coarse).Select(run.Track.At).Where(IsFinite)]);
        var times = Even(first, last, fine).Concat(run.Events.Select(e => e.Time).Where(t => t >= first && t <= last)).Order();
        return new(run, [.. times.Select(run.Track.At).Where(IsFinite)], (first, last));
    }

    private static IEnumerable<double> Even(double first, double last, int count) => Enumerable.Range(0, count + 1).Select(i => i == count ? last : first + ((last - first) * i / count));

    /// <summary>The same samples, drawn over another stretch, s.</summary>
    public RunSamples Within(double first, double last) => new(Run, All, (Math.Max(0, first), Math.Min(Run.Track.EndTime, last)));

    /// <summary>Place on the horizontal axis.</summary>
    public double Place(Sample sample) => Place(sample.Time, sample.Distance);

    /// <summary>Place on the horizontal axis.</summary>
    public double Place(double time, double distance) => OverDistance ? distance * Read.Unit(Dimension.Distance).PerSi : time;

    /// <summary>The horizontal axis's words.</summary>
    public string PlaceLabel => OverDistance ? "distance, " + Read.Unit(Dimension.Distance).Name : "time, s";

    /// <summary>The horizontal axis's limits.</summary>
    public (double From, double To) PlaceRange => (Place(Shown[0]), Math.Max(Place(Shown[^1]), Place(Shown[0]) + 1e-3));

    /// <summary>Says that resting ends are left out.</summary>
    public string CropNote => Cropped ? " Before and after the stretch shown the corner is at rest or settling." : "";

    /// <summary>A run that ended for lack of numbers still has its picture up to there.</summary>
    private static bool IsFinite(Sample s) =>
        double.IsFinite(s.ShaftShowing + s.ShaftForce + s.TyreForce + s.SprungAcceleration + s.UnsprungAcceleration + s.DamperForce + s.ShaftVelocity);

    /// <summary>From a little before the shaft first moves by a hundredth of the stroke to a little after it last does.</summary>
    private static (double First, double Last) Window(RunResult run, ImmutableArray<Sample> all)
    {
        double still = 0.012 * run.Scenario.Corner.Coilover.Stroke;
        double rest = run.Standing.Figures.RideHeight;
        var moving = all.Where(s => Math.Abs(s.ShaftShowing - rest) > still).Select(s => s.Time).ToList();
        if (moving.Count == 0) return (0, run.Track.EndTime);
        double pad = Math.Max(0.1, 0.08 * (moving[^1] - moving[0]));
        return (Math.Max(0, moving[0] - pad), Math.Min(run.Track.EndTime, moving[^1] + pad));
    }
}
