using System.Runtime.Intrinsics;

using QuarterCar.Model;
using QuarterCar.Model.Motion;
using QuarterCar.Model.Terrain;
using QuarterCar.Numerics.Integration;

namespace QuarterCar.Studies;

/// <summary>The energy account of a run (physics.md section 6): what was stored, lost and put in must close.</summary>
internal sealed class EnergyWork(RunTrack track)
{
    // Below this all energies count as none, J: a corner that only stands.
    private const double Nothing = 1e-9;

    // And below this share of the most that moved: what no law loses is lost by the tolerance alone, and a share of that says nothing.
    private const double Drift = 1e-5;

    // Share of the tyre's radius beyond which an arc counts as steep: a slope of 0.5 and more.
    private const double Steep = 0.45;

    private readonly Corner _corner = track.Corner;
    private int _segment;
    private bool _roadTaken;
    private double _damper, _friction, _contacts, _tyre, _road, _motion;

    /// <summary>Sets out on a step.</summary>
    public void Begin(in DenseStep step)
    {
        _motion = Math.Max(_motion, Motion(step.C0));
        double speed = track.Course.Speed, from = speed * step.Start, to = speed * step.End;
        ref readonly RoadSegment segment = ref SegmentAt(0.5 * (from + to));
        _roadTaken = segment.TryArc(out double origin, out double radius) && Math.Max(Math.Abs(from - origin), Math.Abs(to - origin)) > Steep * radius;
        if (!_roadTaken)
            return;

        // Towards the end of the tyre's radius the slope runs to infinity as 1/√, which no rule over time follows. Over the
        // angle about the corner that the tyre rolls over, height and time are sine and cosine.
        double start = Angle(from), turn = Angle(to) - start;
        ReadOnlySpan<double> nodes = FigureWork.Nodes, weights = FigureWork.Weights;
        for (int k = 0; k < nodes.Length; k++)
        {
            double angle = start + nodes[k] * turn, s = origin + radius * Math.Sin(angle);
            var node = new FigureNode(track, step, (s / speed - step.Start) / step.Length);
            Road(node, s, weights[k] * turn * radius * Math.Cos(angle) / speed);
        }

        double Angle(double s) => Math.Asin(Math.Clamp((s - origin) / radius, -1, 1));
    }

    /// <summary>Takes a node of a step with its share of time, s.</summary>
    public void Take(in FigureNode n, double weight)
    {
        double x = n.ShaftTravel, v = n.ShaftVelocity;
        if (_corner.Damper is { } damper)
            _damper += weight * damper.Force(x, v) * v;
        _friction += weight * _corner.Friction.At(v) * v;
        if (x - _corner.Stroke is > 0 and var deep)
            _contacts += weight * Lost(_corner.BottomOut.Force(deep, v), _corner.BottomOut.Rate * deep, v);
        if (x < 0)
            _contacts += weight * Lost(_corner.TopOut.Force(-x, -v), -_corner.TopOut.Rate * x, -v);
        if (_corner.BumpStop is { } bump && _corner.BumpStopCompression(n.WheelTravel) is > 0 and var q)
        {
            double speed = bump.OnAxle ? n.WheelVelocity : v;
            _contacts += weight * Lost(bump.Force(q, speed), bump.Lines.At(q), speed);
        }

        if (!_roadTaken)
            Road(n, track.Course.Speed * n.Time, weight);
    }

    private void Road(in FigureNode n, double s, double weight)
    {
        SegmentAt(s).Evaluate(s, out double h, out double slope);
        double rise = track.Course.Speed * slope, deflection = h - n.Unsprung;
        if (_corner.Tyre.Damping > 0)
            _tyre += weight * Lost(n.TyreForce, _corner.Tyre.Elastic(deflection), rise - n.UnsprungVelocity);
        _road += weight * n.TyreForce * rise;
    }

    /// <summary>The account, from the first state to the last.</summary>
    public EnergyFigures Account()
    {
        Road road = track.Course.Road;
        double speed = track.Course.Speed, end = track.Course.DistanceAt(track.EndTime);
        for (int i = 0; i < road.Breaks.Length && speed > 0; i++)
        {
            // One exactly at the end counts: the last state stands on the road after it.
            double time = road.Breaks[i] / speed;
            if (!road.Jumps(i) || time <= 0 || road.Breaks[i] > end)
                continue;

            // The tyre's spring is changed by the road alone: no impulse passes, the energy is road work.
            double zu = CornerState.Unsprung(track.StateAt(time)), after = road.Segments[i + 1].HeightAt(road.Breaks[i]), before = road.Segments[i].HeightAt(road.Breaks[i]);
            _road += _corner.Tyre.Energy(after - zu) - _corner.Tyre.Energy(before - zu);
        }

        double change = Stored(track.EndTime, track.StateAt(track.EndTime)) - Stored(0, track.StateAt(0));
        double lost = _damper + _friction + _contacts + _tyre, residual = change + lost - _road;
        double largest = Math.Max(Math.Abs(lost), Math.Max(Math.Abs(_road), Math.Abs(change)));
        return new EnergyFigures(residual, largest < Math.Max(Nothing, Drift * _motion) ? 0 : residual / largest, _damper, _friction, _contacts, _tyre, _road);
    }

    // The road's segment at a distance, at a break the one after it. The nodes come nearly in order, so it is near the last one's.
    private ref readonly RoadSegment SegmentAt(double s)
    {
        ReadOnlySpan<double> breaks = track.Course.Road.Breaks;
        while (_segment < breaks.Length && breaks[_segment] <= s)
            _segment++;
        while (_segment > 0 && breaks[_segment - 1] > s)
            _segment--;
        return ref track.Course.Road.Segments[_segment];
    }

    // What a force takes beyond what it stores.
    private static double Lost(double force, double elastic, double speed) => (force - elastic) * speed;

    private double Motion(Vector256<double> y)
    {
        double vs = CornerState.SprungVelocity(y), vu = CornerState.UnsprungVelocity(y);
        return 0.5 * (_corner.SprungMass * vs * vs + _corner.UnsprungMass * vu * vu);
    }

    private double Stored(double time, Vector256<double> y)
    {
        double zs = CornerState.Sprung(y), zu = CornerState.Unsprung(y), w = CornerState.WheelTravel(y), x = _corner.Ratio.Travel(w);
        double energy = Motion(y);
        energy += Corner.Gravity * (_corner.SprungMass * zs + _corner.UnsprungMass * zu);
        energy += _corner.Stack.Energy(x + _corner.Preload);
        energy += _corner.Gas is { } gas ? gas.MovingEnergy(x, track.GasStart) : 0;
        energy += _corner.BumpStop?.Energy(_corner.BumpStopCompression(w)) ?? 0;
        energy += _corner.BottomOut.Energy(x - _corner.Stroke) + _corner.TopOut.Energy(-x);
        track.Course.Road.Evaluate(track.Course.DistanceAt(time), out double h, out _);
        return energy + _corner.Tyre.Energy(h - zu);
    }
}
