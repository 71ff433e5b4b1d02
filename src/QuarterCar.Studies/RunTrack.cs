using System.Runtime.Intrinsics;

using QuarterCar.Model;
using QuarterCar.Model.Motion;
using QuarterCar.Model.Springs;
using QuarterCar.Numerics.Integration;

namespace QuarterCar.Studies;

/// <summary>The motion of one run as its steps and events, to be sampled at any time from the steps' interpolants; sampling never changes a step. Immutable, unless it was lent the memory of its run.</summary>
public sealed class RunTrack : Track
{
    private readonly ReadOnlyMemory<DenseStep> _steps;
    private readonly ReadOnlyMemory<NotedEvent> _events;

    /// <summary>What a run left behind.</summary>
    /// <param name="corner">The corner that moved.</param>
    /// <param name="course">Ground, road and speed.</param>
    /// <param name="run">The run, not yet used for another.</param>
    /// <param name="outcome">How it ended.</param>
    /// <param name="duration">Asked for, s.</param>
    /// <param name="sample">s between rows.</param>
    /// <param name="keep">True for a copy; false where it is asked for figures at once and then forgotten: it holds only until the run is used again.</param>
    public RunTrack(Corner corner, CourseModel course, MotionRun run, IntegrationOutcome outcome, double duration, double sample, bool keep = true)
    {
        (Corner, Course, Outcome, Duration, SampleStep) = (corner, course, outcome, duration, sample);
        _steps = keep ? run.Steps.Memory.ToArray() : run.Steps.Memory;
        _events = keep ? run.Events.Memory.ToArray() : run.Events.Memory;
        GasStart = run.GasStart;
    }

    /// <summary>The corner that moved.</summary>
    public Corner Corner { get; }

    /// <summary>Ground, road and speed.</summary>
    public CourseModel Course { get; }

    /// <summary>How the integration ended.</summary>
    public IntegrationOutcome Outcome { get; }

    /// <summary>Asked for, s.</summary>
    public double Duration { get; }

    /// <summary>Between rows, s.</summary>
    public double SampleStep { get; }

    /// <summary>Shaft travel at which the moving gas left its standing state, m.</summary>
    public double GasStart { get; }

    /// <summary>The steps, in order of time.</summary>
    public ReadOnlySpan<DenseStep> Steps => _steps.Span;

    /// <summary>The events, in order of time.</summary>
    public ReadOnlySpan<NotedEvent> Events => _events.Span;

    /// <inheritdoc/>
    public override double EndTime => Outcome.Time;

    /// <inheritdoc/>
    public override long RowCount => (long)Math.Floor(EndTime / SampleStep * (1 + 1e-12)) + 1;

    /// <summary>State at a time: see <see cref="CornerState"/>.</summary>
    public Vector256<double> StateAt(double time) => _steps.Length == 0 ? Outcome.State : Steps[IndexAt(time, 0)].At(time);

    /// <inheritdoc/>
    public override Sample At(double time) => SampleOf(time, StateAt(time));

    /// <inheritdoc/>
    public override IEnumerable<Sample> Rows()
    {
        int step = 0;
        long rows = RowCount;
        for (long k = 0; k < rows; k++)
        {
            double time = Math.Min(k * SampleStep, EndTime);
            step = IndexAt(time, step);
            yield return SampleOf(time, _steps.Length == 0 ? Outcome.State : Steps[step].At(time));
        }
    }

    // The later step at a boundary: a row on an event has the values after it. Rows come in order, so the next step is near the last.
    private int IndexAt(double time, int from)
    {
        ReadOnlySpan<DenseStep> steps = Steps;
        if (from == 0 && steps.Length >= 64)
            return StepLog.IndexAt(steps, time);
        while (from + 1 < steps.Length && steps[from + 1].Start <= time)
            from++;
        return from;
    }

    private Sample SampleOf(double time, Vector256<double> y)
    {
        double s = Course.DistanceAt(time), zu = CornerState.Unsprung(y), vu = CornerState.UnsprungVelocity(y);
        Course.Road.Evaluate(s, out double h, out double slope);
        CornerForces f = CornerForces.At(Corner, CornerState.WheelTravel(y), CornerState.WheelVelocity(y), GasStart);
        double deflection = h - zu, tyre = Corner.Tyre.Force(deflection, Course.Speed * slope - vu);
        SpringStack stack = Corner.Stack;
        double stackTravel = f.ShaftTravel + Corner.Preload, group = stack.GroupCompression(f.Spring);
        (double coilNut, double stopNut) = stack.NutForces(f.Spring);
        return new Sample
        {
            Time = time,
            Distance = s,
            Ground = Course.Ground.Height(s),
            Road = h,
            Sprung = CornerState.Sprung(y),
            SprungVelocity = CornerState.SprungVelocity(y),
            Unsprung = zu,
            UnsprungVelocity = vu,
            WheelTravel = f.WheelTravel,
            WheelVelocity = f.WheelVelocity,
            ShaftTravel = f.ShaftTravel,
            ShaftVelocity = f.ShaftVelocity,
            ShaftShowing = Corner.Stroke - f.ShaftTravel,
            SprungAcceleration = f.Wheel / Corner.SprungMass - Corner.Gravity,
            UnsprungAcceleration = (tyre - f.Wheel) / Corner.UnsprungMass - Corner.Gravity,
            SpringForce = f.Spring,
            DamperForce = f.Damper,
            GasForce = f.Gas,
            BumpStopForce = f.BumpStop,
            FrictionForce = f.Friction,
            BottomOutForce = f.BottomOut,
            TopOutForce = f.TopOut,
            ShaftForce = f.Shaft,
            TyreForce = tyre,
            TyreDeflection = deflection,
            SliderGap = stack.HeldTravel is not { } held ? null : stack.OnStopNut(stackTravel) ? 0 : Math.Max(0, held - group),
            LowerSpringCompression = stack.LowerCompression(f.Spring),
            UpperGroupCompression = group,
            CoilNutForce = coilNut,
            StopNutForce = stopNut,
            Region = stack.Region(stackTravel),
        };
    }
}
