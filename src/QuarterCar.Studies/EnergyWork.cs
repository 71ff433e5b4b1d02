using System.Runtime.Intrinsics;

using QuarterCar.Model;
using QuarterCar.Model.Motion;
using QuarterCar.Model.Terrain;

namespace QuarterCar.Studies;

/// <summary>The energy account of a run (physics.md section 6): what was stored, lost and put in must close.</summary>
internal sealed class EnergyWork(RunTrack track)
{
    // Below this all energies count as none, J: a corner that only stands.
    private const double Nothing = 1e-9;

    private readonly Corner _corner = track.Corner;
    private double _damper, _friction, _contacts, _tyre, _road;

    /// <summary>Takes a node of a step with its share of time, s.</summary>
    public void Take(in FigureNode n, double weight)
    {
        CornerForces f = n.Forces;
        _damper += weight * f.Damper * f.ShaftVelocity;
        _friction += weight * f.Friction * f.ShaftVelocity;
        if (f.BottomOut != 0 || f.ShaftTravel > _corner.Stroke)
            _contacts += weight * Lost(f.BottomOut, _corner.BottomOut.Rate * (f.ShaftTravel - _corner.Stroke), f.ShaftVelocity);
        if (f.ShaftTravel < 0)
            _contacts += weight * Lost(-f.TopOut, -_corner.TopOut.Rate * f.ShaftTravel, -f.ShaftVelocity);
        if (_corner.BumpStop is { } bump && _corner.BumpStopCompression(f.WheelTravel) is > 0 and var q)
            _contacts += weight * Lost(f.BumpStop, bump.Lines.At(q), bump.OnAxle ? f.WheelVelocity : f.ShaftVelocity);
        track.Course.Road.Evaluate(track.Course.Speed * n.Time, out double h, out double slope);
        double rise = track.Course.Speed * slope, deflection = h - n.Unsprung;
        _tyre += weight * Lost(n.TyreForce, _corner.Tyre.Elastic(deflection), rise - n.UnsprungVelocity);
        _road += weight * n.TyreForce * rise;
    }

    /// <summary>The account, from the first state to the last.</summary>
    public EnergyFigures Account()
    {
        Road road = track.Course.Road;
        double speed = track.Course.Speed;
        for (int i = 0; i < road.Breaks.Length && speed > 0; i++)
        {
            double time = road.Breaks[i] / speed;
            if (!road.Jumps(i) || time <= 0 || time >= track.EndTime)
                continue;

            // The tyre's spring is changed by the road alone: no impulse passes, the energy is road work.
            double zu = CornerState.Unsprung(track.StateAt(time)), after = road.Segments[i + 1].HeightAt(road.Breaks[i]), before = road.Segments[i].HeightAt(road.Breaks[i]);
            _road += _corner.Tyre.Energy(after - zu) - _corner.Tyre.Energy(before - zu);
        }

        double change = Stored(track.EndTime, track.StateAt(track.EndTime)) - Stored(0, track.StateAt(0));
        double lost = _damper + _friction + _contacts + _tyre, residual = change + lost - _road;
        double largest = Math.Max(Math.Abs(lost), Math.Max(Math.Abs(_road), Math.Abs(change)));
        return new EnergyFigures(residual, largest < Nothing ? 0 : residual / largest, _damper, _friction, _contacts, _tyre, _road);
    }

    // What a force takes beyond what it stores.
    private static double Lost(double force, double elastic, double speed) => (force - elastic) * speed;

    private double Stored(double time, Vector256<double> y)
    {
        double zs = CornerState.Sprung(y), vs = CornerState.SprungVelocity(y), zu = CornerState.Unsprung(y), vu = CornerState.UnsprungVelocity(y);
        double w = CornerState.WheelTravel(y), x = _corner.Ratio.Travel(w);
        double energy = 0.5 * (_corner.SprungMass * vs * vs + _corner.UnsprungMass * vu * vu);
        energy += Corner.Gravity * (_corner.SprungMass * zs + _corner.UnsprungMass * zu);
        energy += _corner.Stack.Energy(x + _corner.Preload);
        energy += _corner.Gas is { } gas ? gas.MovingEnergy(x, track.GasStart) : 0;
        energy += _corner.BumpStop?.Energy(_corner.BumpStopCompression(w)) ?? 0;
        energy += _corner.BottomOut.Energy(x - _corner.Stroke) + _corner.TopOut.Energy(-x);
        track.Course.Road.Evaluate(track.Course.Speed * time, out double h, out _);
        return energy + _corner.Tyre.Energy(h - zu);
    }
}
