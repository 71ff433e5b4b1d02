using System.Buffers;
using System.Collections.Immutable;
using System.Runtime.Intrinsics;

using MathNet.Numerics.Integration;

using QuarterCar.Model;
using QuarterCar.Model.Motion;
using QuarterCar.Model.Terrain;
using QuarterCar.Numerics.Integration;
using QuarterCar.Numerics.Signals;

namespace QuarterCar.Studies;

/// <summary>Works out the figures of a run by one walk through its steps: integrals by Gauss's rule on each step's interpolant, peaks on the interpolant, no samples.</summary>
internal sealed class FigureWork
{
    // Eight points integrate the product of two seventh-degree interpolants exactly.
    private const int Points = 8;

    /// <summary>Sampling step of the weighting filter, s: its error stays well below 0.5 %.</summary>
    private const double WeightingStep = 1e-3;

    private static readonly double[] s_nodes = new GaussLegendreRule(0, 1, Points).Abscissas;
    private static readonly double[] s_weights = new GaussLegendreRule(0, 1, Points).Weights;

    /// <summary>Gauss's places and weights on [0, 1].</summary>
    internal static ReadOnlySpan<double> Nodes => s_nodes;

    /// <inheritdoc cref="Nodes"/>
    internal static ReadOnlySpan<double> Weights => s_weights;

    /// <summary>Both ends of a step and Gauss's places between.</summary>
    internal const int Places = Points + 2;

    private static readonly FigureQuantity s_acceleration = (in FigureNode n) => Math.Abs(n.SprungAcceleration), s_tyre = (in FigureNode n) => n.TyreForce, s_tyreLess = (in FigureNode n) => -n.TyreForce;
    private static readonly FigureQuantity s_in = (in FigureNode n) => n.ShaftVelocity, s_out = (in FigureNode n) => -n.ShaftVelocity;

    private readonly RunTrack _track;
    private readonly ContactWork _contacts;
    private readonly EnergyWork _energy;
    private readonly double _staticLoad;
    private Peak _acceleration = new(), _tyreMost = new(), _tyreLeast = new(), _in = new(), _out = new();
    private double _most = double.NegativeInfinity, _least = double.PositiveInfinity;
    private double _travel, _accelerationSquared, _loadSquared, _secondary, _airborne;

    private FigureWork(RunTrack track)
    {
        _track = track;
        _contacts = new ContactWork(track);
        _energy = new EnergyWork(track);
        _staticLoad = (track.Corner.SprungMass + track.Corner.UnsprungMass) * Corner.Gravity;
    }

    /// <summary>The figures of a run.</summary>
    public static (RunFigures Figures, ImmutableArray<EventRow> Events) Of(RunTrack track)
    {
        var work = new FigureWork(track);
        work.Walk();
        return (work.Figures(), work.Rows());
    }

    private void Walk()
    {
        ReadOnlySpan<DenseStep> steps = _track.Steps;
        ReadOnlySpan<NotedEvent> events = _track.Events;
        int e = 0;
        for (int i = 0; i < steps.Length; i++)
        {
            ref readonly DenseStep step = ref steps[i];
            for (; e < events.Length && events[e].Time <= step.Start; e++)
                _contacts.Take(e, events[e]);
            Step(step);
        }

        for (; e < events.Length; e++)
            _contacts.Take(e, events[e]);
        _contacts.Finish(_track.EndTime);
        End();
    }

    // A step of the road exactly at the end lies in none of the motion's steps: the last state stands on the road after it.
    private void End()
    {
        Road road = _track.Course.Road;
        int at = road.Breaks.BinarySearch(_track.Course.DistanceAt(_track.EndTime));
        if (at < 0 || _track.Course.Speed <= 0 || !road.Jumps(at))
            return;
        double load = _track.At(_track.EndTime).TyreForce;
        _tyreMost.Take(load);
        _tyreLeast.Take(-load);
    }

    private void Step(in DenseStep step)
    {
        double length = step.End - step.Start, end = length / step.Length;
        _secondary += (step.Piece & PieceTag.OnStopNut) != 0 ? length : 0;
        _airborne += (step.Piece & PieceTag.Airborne) != 0 ? length : 0;
        _energy.Begin(step);
        Span<double> places = stackalloc double[Places], acceleration = stackalloc double[Places], tyre = stackalloc double[Places], velocity = stackalloc double[Places];
        for (int k = 0; k < Places; k++)
        {
            bool inside = k > 0 && k <= Points;
            double theta = inside ? end * s_nodes[k - 1] : k == 0 ? 0 : end, weight = inside ? length * s_weights[k - 1] : 0, x;
            var node = new FigureNode(_track, step, theta);
            (places[k], x, velocity[k], acceleration[k], tyre[k]) = (theta, node.ShaftTravel, node.ShaftVelocity, Math.Abs(node.SprungAcceleration), node.TyreForce);
            _most = Math.Max(_most, x);
            _least = Math.Min(_least, x);
            if (_contacts.Any)
                _contacts.Take(node, weight, k);
            if (inside)
                Integrals(node, weight);
        }

        if (_contacts.Any)
            _contacts.Take(step, places);
        _acceleration.Take(_track, step, places, acceleration, s_acceleration);
        _tyreMost.Take(_track, step, places, tyre, s_tyre);
        _in.Take(_track, step, places, velocity, s_in);
        for (int k = 0; k < Places; k++)
            (tyre[k], velocity[k]) = (-tyre[k], -velocity[k]);
        _tyreLeast.Take(_track, step, places, tyre, s_tyreLess);
        _out.Take(_track, step, places, velocity, s_out);
    }

    private void Integrals(in FigureNode node, double weight)
    {
        double load = node.TyreForce - _staticLoad;
        _travel += weight * node.ShaftTravel;
        _accelerationSquared += weight * node.SprungAcceleration * node.SprungAcceleration;
        _loadSquared += weight * load * load;
        _energy.Take(node, weight);
    }

    private RunFigures Figures()
    {
        Corner corner = _track.Corner;
        double time = _track.EndTime, ride = corner.StandingShaftTravel, stroke = corner.Stroke;
        bool inside = ride > 0 && ride < stroke;
        (double weighted, double dose) = Weighted();
        IntegrationOutcome o = _track.Outcome;
        return new RunFigures(
            new TravelFigures(
                _most,
                _least,
                _most / stroke,
                inside ? (_most - ride) / (stroke - ride) : null,
                inside ? (ride - _least) / ride : null,
                _travel / time,
                Math.Max(0, _in.Value),
                Math.Max(0, _out.Value),
                _secondary),
            Counts(),
            [.. _contacts.Done.Where(c => c.Figures.Kind != EventNames.Of(CornerEvent.TopOut)).OrderBy(c => c.Event).Select(c => c.Figures)],
            new AccelerationFigures(
                _acceleration.Value / Corner.Gravity,
                Math.Sqrt(_accelerationSquared / time) / Corner.Gravity,
                weighted,
                dose),
            new TyreFigures(
                _tyreMost.Value,
                Math.Max(0, -_tyreLeast.Value),
                _airborne,
                Math.Sqrt(_loadSquared / time) / _staticLoad),
            _energy.Account(),
            RunEnds.Account(o));
    }

    private ImmutableArray<KeyValuePair<string, int>> Counts()
    {
        int[] counts = new int[EventNames.All.Length];
        foreach (NotedEvent e in _track.Events)
            counts[(int)e.Event]++;
        return [.. counts.Select((n, i) => KeyValuePair.Create(EventNames.All[i], n))];
    }

    private ImmutableArray<EventRow> Rows()
    {
        var contacts = _contacts.Done.ToDictionary(c => c.Event, c => c.Figures);
        var rows = ImmutableArray.CreateBuilder<EventRow>(_track.Events.Length);
        for (int i = 0; i < _track.Events.Length; i++)
        {
            NotedEvent e = _track.Events[i];
            double w = CornerState.WheelTravel(e.State), v = CornerState.WheelVelocity(e.State);
            rows.Add(new EventRow(
                EventNames.Of(e.Event), e.Time, e.Time * _track.Course.Speed, _track.Corner.Ratio.Travel(w), _track.Corner.Ratio.Ratio(w) * v, contacts.GetValueOrDefault(i)));
        }

        return rows.MoveToImmutable();
    }

    private (double Rms, double Dose) Weighted()
    {
        int count = (int)Math.Min(int.MaxValue / 16, Math.Floor(_track.EndTime / WeightingStep) + 1);
        int room = count + Vector256<double>.Count;
        double[] samples = ArrayPool<double>.Shared.Rent(2 * room);
        Span<double> acceleration = samples.AsSpan(0, room), velocity = samples.AsSpan(room, room);
        Sample(acceleration, velocity);
        var dose = WeightedDose.Of(acceleration[..count], velocity[..count], WeightingStep);
        ArrayPool<double>.Shared.Return(samples);
        return (dose.Rms, dose.DoseValue);
    }

    // Of the sprung mass. Four samples of a step at a time, each with the bits of being asked for alone; those that lie in the next step are written over from there.
    private void Sample(Span<double> acceleration, Span<double> velocity)
    {
        ReadOnlySpan<DenseStep> steps = _track.Steps;
        int lanes = Vector256<double>.Count, count = acceleration.Length - lanes, k = 0;
        Vector256<double> ahead = Vector256.Create(0.0, 1, 2, 3);
        acceleration.Clear();
        velocity.Clear();
        for (int i = 0; i < steps.Length; i++)
        {
            ref readonly DenseStep step = ref steps[i];
            double until = i + 1 < steps.Length ? steps[i + 1].Start : double.PositiveInfinity;
            while (k < count && k * WeightingStep < until)
            {
                Vector256<double> theta = ((Vector256.Create((double)k) + ahead) * WeightingStep - Vector256.Create(step.Start)) / Vector256.Create(step.Length);
                (Vector256<double> unsprung, Vector256<double> unsprungRate) = step.AtThetas(theta, CornerState.UnsprungVelocityPlace);
                (Vector256<double> wheel, Vector256<double> wheelRate) = step.AtThetas(theta, CornerState.WheelVelocityPlace);
                (unsprungRate - wheelRate).CopyTo(acceleration[k..]);
                (unsprung - wheel).CopyTo(velocity[k..]);
                k++;
                for (int n = 1; n < lanes && k < count && k * WeightingStep < until; n++)
                    k++;
            }
        }
    }
}
