using System.Runtime.Intrinsics;

using QuarterCar.Model.Shaft;
using QuarterCar.Model.Terrain;
using QuarterCar.Numerics;

namespace QuarterCar.Model.Motion;

/// <summary>
/// The equations of motion of one corner on one smooth piece at a time (physics.md sections 1 to 4). State: see
/// <see cref="CornerState"/>. Mutable, with one owner: a run; reused by the next.
/// </summary>
internal sealed partial class CornerMotion
{
    // A guard must be passed by this much before its piece is left, so that rest on a boundary does not chatter.
    private const double LengthSlack = 1e-13;
    private const double VelocitySlack = 1e-10;
    private const double ForceSlack = 1e-7;

    private const double RestVelocity = 1e-13;
    private const double RestAcceleration = 1e-9;

    private Corner _corner = null!;
    private Road _road = null!;
    private PieceGrid _grid = null!;
    private FifteenthDegree? _gasFit;
    private GasLaw? _fittedGas;
    private double _fittedStroke;
    private GasLaw _gas;
    private bool _hasGas;
    private double _gasStart;

    // The present piece.
    private int _travelCell, _velocityCell;
    private TyrePhase _tyre;
    private bool _pushes, _touches, _axleTouches, _axlePushes;
    private RoadSegment _segment;
    private double _segmentBend;

    // Its numbers; forces over shaft travel x and velocity v, the axle's over wheel travel.
    private double _wheel, _shaft, _ratio, _ratioSlope;
    private double _force, _rate, _damping;
    private double _bump, _bumpRate, _bumpLoss, _stop, _stopRate, _stopLoss, _axle, _axleRate, _axleLoss;
    private double _tyreForce, _tyreRate;

    // The same with a constant motion ratio multiplied in, over wheel travel and its velocity.
    private readonly double[] _plainGas = new double[16];
    private double _plainForce, _plainRate, _plainDamping, _plainFriction, _plainFrictionScale, _plainGasScale, _plainGasShift;
    private double _plainBump, _plainBumpRate, _plainBumpLoss, _plainStop, _plainStopRate, _plainStopLoss;

    // What does not change in a run.
    private double _friction, _inverseBoth, _inverseUnsprung, _speed, _tyreDamping;

    /// <summary>Events of the run so far, in order of time.</summary>
    public EventLog Events { get; } = new();

    /// <summary>Sets out on a run.</summary>
    /// <param name="corner">The corner.</param>
    /// <param name="road">The road that its tyre feels.</param>
    /// <param name="speed">m/s; 0 for a drop.</param>
    /// <param name="start">State at t = 0.</param>
    public void Begin(Corner corner, Road road, double speed, Vector256<double> start)
    {
        (_corner, _road, _speed) = (corner, road, speed);
        _grid = PieceGrid.Of(corner);
        Events.Clear();
        _friction = corner.Friction.Force;
        _plainFriction = corner.Ratio.Pieces[0].RatioThere * _friction;
        _plainFrictionScale = corner.Ratio.Pieces[0].RatioThere / FrictionLaw.ReferenceVelocity;
        _inverseUnsprung = 1 / corner.UnsprungMass;
        _inverseBoth = 1 / corner.SprungMass + _inverseUnsprung;
        _tyreDamping = corner.Tyre.Damping;
        double w = CornerState.WheelTravel(start);
        BeginGas(corner.Ratio.Travel(w));
        _travelCell = 0;
        while (_travelCell < _grid.TravelBreaks.Length && w >= _grid.TravelBreaks[_travelCell].At - 0.5 * LengthSlack)
            _travelCell++;
        _velocityCell = 0;
        while (_velocityCell < _grid.VelocityBreaks.Length && _grid.VelocityBreaks[_velocityCell] <= 0)
            _velocityCell++;
        EnterSegment(road.IndexAt(0));
        _axlePushes = true;
        EnterPiece();
        TyreByValue(0, start);
    }

    /// <summary>Tag of the present piece: what the figures ask of a step.</summary>
    public int Piece => (_grid.TravelCells[_travelCell].OnStopNut ? PieceTag.OnStopNut : 0)
        | (_tyre == TyrePhase.Air ? PieceTag.Airborne : 0)
        | (_touches || _axleTouches ? PieceTag.Touching : 0);

    /// <summary>Moves to the piece behind a guard and notes what that means.</summary>
    public void Cross(int guard, double t, Vector256<double> y)
    {
        switch (guard)
        {
            case CornerGuard.TravelLow:
                Note(_grid.TravelBreaks[--_travelCell].Events, inward: false, t, y);
                break;
            case CornerGuard.TravelHigh:
                Note(_grid.TravelBreaks[_travelCell++].Events, inward: true, t, y);
                break;
            case CornerGuard.VelocityLow:
                _velocityCell--;
                break;
            case CornerGuard.VelocityHigh:
                _velocityCell++;
                break;
            case CornerGuard.AxleLoss:
                _axlePushes = !_axlePushes;
                break;
            case CornerGuard.TyreForce:
                _pushes = !_pushes;
                return;
            default:
                CrossTyre(guard, t, y);
                return;
        }

        EnterPiece();
    }

    /// <summary>Moves to the next segment of the road.</summary>
    public void PassBreak(int index, double t, Vector256<double> y)
    {
        EnterSegment(index + 1);
        if (!_road.Jumps(index))
        {
            PushesByValue(t, y);
            return;
        }

        bool air = _tyre == TyrePhase.Air;
        TyreByValue(t, y);
        if (air != (_tyre == TyrePhase.Air))
            Events.Add(air ? CornerEvent.Touchdown : CornerEvent.Liftoff, t, y);
    }

    /// <summary>True for a standstill on level road.</summary>
    public bool IsAtRest(Vector256<double> y, Vector256<double> dydt) =>
        _segment.IsLevel && Math.Abs(y.GetElement(1)) < RestVelocity && Math.Abs(y.GetElement(3)) < RestVelocity
        && Math.Abs(dydt.GetElement(1)) < RestAcceleration && Math.Abs(dydt.GetElement(3)) < RestAcceleration;

    /// <summary>Shaft travel at which the moving gas left its standing state, m.</summary>
    public double GasStart => _gasStart;

    private void CrossTyre(int guard, double t, Vector256<double> y)
    {
        bool up = guard == CornerGuard.DeflectionHigh, air = _tyre == TyrePhase.Air;
        _tyre += up ? 1 : -1;
        if (air)
            Events.Add(CornerEvent.Touchdown, t, y);
        else if (_tyre == TyrePhase.Air)
            Events.Add(CornerEvent.Liftoff, t, y);
        EnterTyre();
        if (air)
            PushesByValue(t, y);
        _pushes &= _tyre != TyrePhase.Air;
    }

    private void TyreByValue(double t, Vector256<double> y)
    {
        _segment.Evaluate(_speed * t, out double h, out _);
        double deflection = h - y.GetElement(2);
        _tyre = deflection <= 0 ? TyrePhase.Air : deflection <= _corner.Tyre.Sidewall ? TyrePhase.Rolling : TyrePhase.Rim;
        EnterTyre();
        PushesByValue(t, y);
    }

    private void PushesByValue(double t, Vector256<double> y)
    {
        _segment.Evaluate(_speed * t, out double h, out double slope);
        _pushes = _tyre != TyrePhase.Air && (_tyreDamping == 0 || TyreFormula(h - y.GetElement(2), Math.FusedMultiplyAdd(_speed, slope, -y.GetElement(3))) >= 0);
    }

    private void EnterSegment(int index)
    {
        _segment = _road.Segments[index];
        _segmentBend = _segment.MostBend;
    }

    private void EnterTyre()
    {
        bool rim = _tyre == TyrePhase.Rim;
        _tyreRate = _corner.Tyre.Rate + (rim ? _corner.Tyre.RimRate : 0);
        _tyreForce = rim ? -_corner.Tyre.RimRate * _corner.Tyre.Sidewall : 0;
    }

    private void EnterPiece()
    {
        ref readonly TravelCell p = ref _grid.TravelCells[_travelCell];
        ref readonly VelocityCell s = ref _grid.VelocityCells[_velocityCell];
        (_wheel, _shaft, _ratio, _ratioSlope) = (p.Ratio.Wheel, p.Ratio.Shaft, p.Ratio.RatioThere, p.Ratio.Slope);
        double zone = s.Compresses ? p.CompressionFactor : p.ReboundFactor;
        _force = p.StackAtZero + zone * s.DamperAtZero;
        _rate = p.StackRate;
        _damping = zone * s.DamperRate;
        Contacts pushing = p.Touches & s.Pushes;
        _touches = pushing != Contacts.None;
        bool bump = (pushing & Contacts.BumpStop) != 0, top = (pushing & Contacts.TopOut) != 0, stop = top || (pushing & Contacts.BottomOut) != 0;
        (_bump, _bumpRate, _bumpLoss) = bump ? (p.BumpAtZero, p.BumpRate, _corner.BumpStop!.Loss) : (0, 0, 0);
        (_stop, _stopRate, _stopLoss) = stop ? (p.StopAtZero, p.StopRate, top ? -_corner.TopOut.Loss : _corner.BottomOut.Loss) : (0, 0, 0);
        bool axle = (p.Touches & Contacts.AxleBumpStop) != 0;
        _axlePushes |= !axle;
        _axleTouches = axle && _axlePushes;
        (_axle, _axleRate, _axleLoss) = _axleTouches ? (p.AxleAtZero, p.AxleRate, _corner.BumpStop!.Loss) : (0, 0, 0);
        EnterPlainPiece();
    }

    // x = r·w: each shaft force times r, each x and ẋ replaced. A bump stop sits on the shaft or on the axle, never on both.
    private void EnterPlainPiece()
    {
        double r = _ratio;
        (_plainForce, _plainRate, _plainDamping) = (r * _force, r * r * _rate, r * r * _damping);
        (_plainBump, _plainBumpRate, _plainBumpLoss) = _axleTouches ? (_axle, _axleRate, _axleLoss) : (r * _bump, r * r * _bumpRate, r * _bumpLoss);
        (_plainStop, _plainStopRate, _plainStopLoss) = (r * _stop, r * r * _stopRate, r * _stopLoss);
    }

    private void BeginGas(double startTravel)
    {
        _hasGas = _corner.Gas is not null;
        if (!_hasGas)
            return;
        GasLaw gas = _corner.Gas!.Value;
        _gas = gas;
        _gasStart = startTravel;
        if (_fittedGas != gas || _fittedStroke != _corner.Stroke)
        {
            double end = gas.Volume / gas.Area, stroke = _corner.Stroke;
            _gasFit = FifteenthDegree.TryFit(x => Math.Pow(gas.Volume - gas.Area * x, -gas.Exponent), -0.1 * stroke, Math.Min(1.1 * stroke, 0.5 * (stroke + end)), 1e-11);
            (_fittedGas, _fittedStroke) = (gas, stroke);
        }

        if (_gasFit is not { } fit)
            return;
        double r = _corner.Ratio.Pieces[0].RatioThere, scale = r * gas.Area * gas.Factor(startTravel);
        for (int i = 0; i < _plainGas.Length; i++)
            _plainGas[i] = scale * fit.Coefficients[i];
        _plainGas[0] -= r * gas.Area * GasLaw.Atmosphere;
        (_plainGasScale, _plainGasShift) = (r * fit.InverseHalf, -fit.Middle * fit.InverseHalf);
    }

    private void Note(TravelEvents events, bool inward, double t, Vector256<double> y)
    {
        for (uint bits = events.Bits; bits != 0; bits &= bits - 1)
        {
            var e = (CornerEvent)System.Numerics.BitOperations.TrailingZeroCount(bits);
            Events.Add(inward ? e : TravelEvents.Opposite(e), t, y);
        }
    }
}

/// <summary>How the tyre meets the road.</summary>
internal enum TyrePhase
{
    /// <summary>δ below 0.</summary>
    Air,

    /// <summary>On its sidewalls.</summary>
    Rolling,

    /// <summary>On the rim as well.</summary>
    Rim,
}
