using System.Runtime.Intrinsics;

using QuarterCar.Model.Statics;
using QuarterCar.Model.Terrain;
using QuarterCar.Numerics.Integration;

namespace QuarterCar.Model.Motion;

/// <summary>Drives corners over roads or drops them, one run after another, with memory that is used again. One owner, one thread.</summary>
public sealed class MotionRun
{
    // What the default tolerance is held against: lengths of half a metre, velocities of some metres a second. The share
    // is the margin that keeps events within a microsecond although errors add up over landings (see DEVELOPERS.md).
    private const double Length = 0.3, Velocity = 2, Margin = 0.15;

    private readonly Integrator _integrator = new();
    private readonly CornerMotion _motion = new();
    private double[] _breaks = [];

    /// <summary>The steps of the last run.</summary>
    public StepLog Steps => _integrator.Log;

    /// <summary>The events of the last run.</summary>
    public EventLog Events => _motion.Events;

    /// <summary>Shaft travel at which the gas left its standing state in the last run, m.</summary>
    public double GasStart => _motion.GasStart;

    /// <summary>A run over a course, from rest in static balance at s = 0 (physics.md section 5).</summary>
    /// <param name="corner">The corner.</param>
    /// <param name="road">The road that its tyre feels.</param>
    /// <param name="speed">m/s.</param>
    /// <param name="duration">s.</param>
    /// <param name="tolerance">Relative accuracy asked for.</param>
    /// <param name="cancel">Stops the run.</param>
    public IntegrationOutcome Drive(Corner corner, Road road, double speed, double duration, double tolerance, CancellationToken cancel = default)
    {
        road.Segments[road.IndexAt(0)].Evaluate(0, out double h, out _);
        double zu = h - corner.Tyre.Deflection((corner.SprungMass + corner.UnsprungMass) * Corner.Gravity);
        return Run(corner, road, speed, CornerState.Of(corner.Standing, 0, zu, 0), duration, tolerance, cancel);
    }

    /// <summary>A drop from full droop in free-fall balance (physics.md section 5).</summary>
    /// <param name="corner">The corner.</param>
    /// <param name="level">Level ground of height 0.</param>
    /// <param name="height">Of the unloaded tyre above the ground, m.</param>
    /// <param name="duration">s.</param>
    /// <param name="tolerance">Relative accuracy asked for.</param>
    /// <param name="cancel">Stops the run.</param>
    public IntegrationOutcome Drop(Corner corner, Road level, double height, double duration, double tolerance, CancellationToken cancel = default)
    {
        // Loose springs carry nothing anywhere before they touch: of those places full droop is meant, and rounding must not pass over it.
        double w = Math.Min(0, Balance.Least(corner, 0, withBumpStop: true));
        return Run(corner, level, 0, CornerState.Of(w, 0, height, 0), duration, tolerance, cancel);
    }

    private IntegrationOutcome Run(Corner corner, Road road, double speed, Vector256<double> start, double duration, double tolerance, CancellationToken cancel)
    {
        _motion.Begin(corner, road, speed, start);
        int n = speed > 0 ? road.Breaks.Length : 0;
        if (_breaks.Length < n)
            _breaks = new double[n];
        for (int i = 0; i < n; i++)
            _breaks[i] = Road.IsReached(road.Breaks[i], speed * duration) ? Math.Min(road.Breaks[i] / speed, duration) : road.Breaks[i] / speed; // at the end as the trace's last row sees it
        double length = tolerance * Margin * Length, velocity = tolerance * Margin * Velocity;
        var settings = new IntegrationSettings(new ErrorScale(Vector256.Create(length, velocity, length, velocity), 0), StepController.Default);
        if (_motion.IsPlain)
        {
            var plain = new PlainCornerSystem(_motion);
            IntegrationOutcome outcome = _integrator.Run(ref plain, 0, duration, start, _breaks.AsSpan(0, n), settings, cancel);

            // The polynomial ends a tenth past either end of the stroke; a corner that truly goes there runs on the exact gas.
            if (outcome.End != IntegrationEnd.NotFinite || corner.Gas is null)
                return outcome;
            _motion.Begin(corner, road, speed, start);
        }

        var system = new CornerSystem(_motion);
        return _integrator.Run(ref system, 0, duration, start, _breaks.AsSpan(0, n), settings, cancel);
    }
}
