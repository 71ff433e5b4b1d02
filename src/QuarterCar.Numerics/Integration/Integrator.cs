using System.Runtime.Intrinsics;

namespace QuarterCar.Numerics.Integration;

/// <summary>How an integration is carried out.</summary>
/// <param name="Scale">What an error is measured by.</param>
/// <param name="Controller">Step-length control.</param>
/// <param name="FirstStep">Length tried first, s.</param>
/// <param name="LeastStep">Below this a step counts as too small, s.</param>
/// <param name="MostEvents">More crossings than this end the run.</param>
/// <param name="MostSteps">More steps than this end the run.</param>
/// <param name="MostLastTerm">Largest last term of the interpolant, in allowed errors: the interpolant misses by a small part of it, and nothing else watches it between the ends of a step.</param>
public sealed record IntegrationSettings(
    ErrorScale Scale,
    StepController Controller,
    double FirstStep = 1e-3,
    double LeastStep = 1e-13,
    long MostEvents = 1_000_000,
    long MostSteps = 5_000_000,
    double MostLastTerm = 300);

/// <summary>Why an integration ended.</summary>
public enum IntegrationEnd
{
    /// <summary>The end time was reached.</summary>
    Finished,

    /// <summary>No step length, however small, met the allowed error.</summary>
    StepTooSmall,

    /// <summary>More crossings or steps than allowed.</summary>
    TooManyEvents,

    /// <summary>The state left the numbers.</summary>
    NotFinite,
}

/// <summary>How an integration ended, where, and what it took.</summary>
/// <param name="End">The reason.</param>
/// <param name="Time">Time reached, s.</param>
/// <param name="State">State there.</param>
/// <param name="Steps">Accepted steps.</param>
/// <param name="Rejected">Rejected steps.</param>
/// <param name="Events">Guards crossed.</param>
/// <param name="Evaluations">Evaluations of the derivative.</param>
public readonly record struct IntegrationOutcome(
    IntegrationEnd End, double Time, Vector256<double> State, long Steps, long Rejected, long Events, long Evaluations);

/// <summary>
/// Steps a piecewise smooth system from start to end: no step runs across a break time or a crossed guard.
/// Doing (<see cref="Stepper"/>), deciding (<see cref="StepController"/>), noticing (<see cref="EventLocator"/>) and
/// remembering (<see cref="StepLog"/>) are separate parts; only this loop knows all four. One integrator serves one run
/// at a time and can be used again.
/// </summary>
public sealed class Integrator
{
    private const double ShortCut = 0.1, Regrowth = 4, ShortestShare = 1e-3;

    private readonly Stepper _stepper = new();

    /// <summary>The accepted steps of the last run.</summary>
    public StepLog Log { get; } = new();

    /// <summary>Runs a system.</summary>
    /// <param name="system">The equations, on the piece that holds at the start.</param>
    /// <param name="start">Start time, s.</param>
    /// <param name="end">End time, s.</param>
    /// <param name="y">State at the start.</param>
    /// <param name="breaks">Break times, rising; those at or before the start lie behind.</param>
    /// <param name="settings">How.</param>
    /// <param name="cancel">Asked now and then; throws <see cref="OperationCanceledException"/>.</param>
    public IntegrationOutcome Run<TSystem>(
        ref TSystem system, double start, double end, Vector256<double> y, ReadOnlySpan<double> breaks, IntegrationSettings settings, CancellationToken cancel = default)
        where TSystem : struct, IPiecewiseSystem
    {
        Log.Clear();
        _stepper.Evaluations = 1;
        _stepper.First = system.Derivative(start, y);
        ErrorScale scale = settings.Scale;
        double t = start, h = settings.FirstStep;
        long rejected = 0, events = 0;
        bool fresh = true, rejectedLast = false, cutShort = false;
        for (int b = FirstAfter(breaks, start); t < end;)
        {
            double stop = b < breaks.Length ? Math.Min(breaks[b], end) : end;
            if (fresh && system.IsAtRest(y, _stepper.First))
            {
                Log.KeepRest(t, stop, y, system.Piece);
                t = stop;
            }

            fresh = false;
            while (t < stop)
            {
                bool last = t + 1.0001 * h >= stop;
                double length = last ? stop - t : h;
                Vector256<double> y1 = _stepper.Try(ref system, t, length, y, scale, out double error);
                ref DenseStep step = ref Log.Next;
                double excess = error;
                if (error <= 1)
                {
                    _stepper.Complete(ref system, t, length, y, y1, ref step);
                    excess = step.LastTerm(scale.Allowed(y, y1)) / settings.MostLastTerm;
                }

                // A trial is too long for its end or for its interpolant, or has left the numbers.
                if (!(excess <= 1))
                {
                    rejected++;
                    rejectedLast = true;
                    h = length * (double.IsNaN(excess) ? 0.1 : settings.Controller.Factor(excess));
                    if (h < settings.LeastStep)
                        return Outcome(double.IsNaN(excess) ? IntegrationEnd.NotFinite : IntegrationEnd.StepTooSmall);
                    continue;
                }

                double factor = settings.Controller.Factor(error);
                if (rejectedLast)
                    factor = Math.Min(factor, 1);
                rejectedLast = false;
                h = last && factor >= 1 ? Math.Max(h, length * factor) : length * factor;
                int guard = EventLocator.First(ref system, step, system.Suspects(step), out double theta);
                if (guard < 0)
                {
                    t = last ? stop : t + length;
                    y = y1;
                    _stepper.First = _stepper.Last;
                }
                else
                {
                    t = theta < 1 ? t + theta * length : last ? stop : t + length;
                    y = theta < 1 ? step.AtTheta(theta) : y1;
                }

                step.End = t;
                step.Piece = system.Piece;
                if (t > step.Start)
                    Log.Keep();
                cutShort &= guard >= 0;
                if (guard >= 0)
                {
                    system.Cross(guard, t, y);
                    _stepper.First = system.Derivative(t, y);
                    _stepper.Evaluations++;
                    events++;

                    // Cut twice in a row soon after its start, a step is too long for what goes on here (creep near rest,
                    // past the pair's stability): go on from what it came to, not from what was tried.
                    bool shortAgain = theta is > 0 and < ShortCut;
                    if (shortAgain && cutShort)
                        h = Math.Min(h, Math.Max(Regrowth * theta, ShortestShare) * length);
                    cutShort = shortAgain;
                }

                if (events > settings.MostEvents || Log.Count >= settings.MostSteps)
                    return Outcome(IntegrationEnd.TooManyEvents);
                if ((Log.Count & 0xFF) == 0)
                    cancel.ThrowIfCancellationRequested();
            }

            if (b < breaks.Length && stop == breaks[b])
            {
                system.PassBreak(b++, t, y);
                _stepper.First = system.Derivative(t, y);
                _stepper.Evaluations++;
                fresh = true;
            }
        }

        return Outcome(IntegrationEnd.Finished);

        IntegrationOutcome Outcome(IntegrationEnd reason) => new(reason, t, y, Log.Count, rejected, events, _stepper.Evaluations);
    }

    private static int FirstAfter(ReadOnlySpan<double> breaks, double t)
    {
        int i = 0;
        while (i < breaks.Length && breaks[i] <= t)
            i++;
        return i;
    }
}
