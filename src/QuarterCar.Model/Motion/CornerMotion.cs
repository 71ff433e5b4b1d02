using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

using QuarterCar.Model.Shaft;
using QuarterCar.Model.Terrain;
using QuarterCar.Numerics;
using QuarterCar.Numerics.Integration;

namespace QuarterCar.Model.Motion;

/// <summary>
/// The equations of motion of one corner on one smooth piece at a time (physics.md sections 1 to 4). State: see
/// <see cref="CornerState"/>. Mutable, with one owner: a run; reused by the next.
/// </summary>
internal sealed class CornerMotion
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

    /// <summary>True where <see cref="DerivativePlain"/> serves: a constant motion ratio, gas that the polynomial stands for, a road that its tables stand for.</summary>
    public bool IsPlain => _corner.Ratio.IsConstant && (!_hasGas || _gasFit is not null) && _road.IsTabulated;

    /// <summary>dy/dt on the present piece, for any motion ratio and gas.</summary>
    public Vector256<double> Derivative(double t, Vector256<double> y)
    {
        double wDot = y.GetElement(1), dw = y.ToScalar() - _wheel;
        double r = Math.FusedMultiplyAdd(_ratioSlope, dw, _ratio);
        double x = Math.FusedMultiplyAdd(dw, Math.FusedMultiplyAdd(0.5 * _ratioSlope, dw, _ratio), _shaft);
        double v = r * wDot;
        double f = Math.FusedMultiplyAdd(_rate, x, Math.FusedMultiplyAdd(_damping, v, _force));
        f = Math.FusedMultiplyAdd(_friction, TanhTable.Tanh(v * (1 / FrictionLaw.ReferenceVelocity)), f);
        if (_hasGas)
            f += _gas.Moving(x, _gasStart);
        if (_touches)
        {
            f += Math.FusedMultiplyAdd(_bumpRate, x, _bump) * Math.FusedMultiplyAdd(_bumpLoss, v, 1)
                + Math.FusedMultiplyAdd(_stopRate, x, _stop) * Math.FusedMultiplyAdd(_stopLoss, v, 1);
        }

        double wheel = r * f;
        if (_axleTouches)
            wheel += Math.FusedMultiplyAdd(_axleRate, dw + _wheel, _axle) * Math.FusedMultiplyAdd(_axleLoss, wDot, 1);
        double h = 0, slope = 0;
        if (_pushes)
            _segment.Evaluate(_speed * t, out h, out slope);
        return Accelerations(y, wheel, h, slope);
    }

    /// <summary>
    /// dy/dt on the present piece with a constant motion ratio: the same laws with the ratio multiplied in beforehand, all
    /// over wheel travel and its velocity, and the gas as a polynomial. Outside the polynomial's travel it is not a number.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector256<double> DerivativePlain(double t, Vector256<double> y)
    {
        double w = y.ToScalar(), wDot = y.GetElement(1);
        double wheel = Math.FusedMultiplyAdd(_plainRate, w, Math.FusedMultiplyAdd(_plainDamping, wDot, _plainForce));
        double u = wDot * _plainFrictionScale;
        wheel = Math.FusedMultiplyAdd(Math.CopySign(_plainFriction, u), TanhTable.TanhOfMagnitude(Math.Abs(u)), wheel);
        if (_touches || _axleTouches)
        {
            wheel += Math.FusedMultiplyAdd(_plainBumpRate, w, _plainBump) * Math.FusedMultiplyAdd(_plainBumpLoss, wDot, 1)
                + Math.FusedMultiplyAdd(_plainStopRate, w, _plainStop) * Math.FusedMultiplyAdd(_plainStopLoss, wDot, 1);
        }

        if (_hasGas)
        {
            double g = Math.FusedMultiplyAdd(_plainGasScale, w, _plainGasShift);
            wheel = FifteenthDegree.AddValue(ref MemoryMarshal.GetArrayDataReference(_plainGas), g, wheel);
            if (Math.Abs(g) > 1)
                wheel = double.NaN;
        }

        double h = 0, slope = 0;
        if (_pushes)
            _segment.EvaluateTabulated(_speed * t, out h, out slope);
        return Accelerations(y, wheel, h, slope);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Vector256<double> Accelerations(Vector256<double> y, double wheel, double h, double slope)
    {
        // ẅ = (F_t − F_w)/m_u − F_w/m_s: gravity pulls both masses alike.
        Vector128<double> unsprung = y.GetUpper();
        double tyre = 0, vu = unsprung.GetElement(1);
        if (_pushes)
        {
            tyre = _inverseUnsprung * Math.FusedMultiplyAdd(_tyreRate, h - unsprung.ToScalar(), Math.FusedMultiplyAdd(_tyreDamping, Math.FusedMultiplyAdd(_speed, slope, -vu), _tyreForce));
        }

        return Vector256.Create(
            Vector128.Create(y.GetElement(1), Math.FusedMultiplyAdd(wheel, -_inverseBoth, tyre)),
            Vector128.Create(vu, Math.FusedMultiplyAdd(wheel, -_inverseUnsprung, tyre - Corner.Gravity)));
    }

    /// <summary>Guards that a step may cross (see <see cref="CornerGuard"/>).</summary>
    public uint Suspects(in DenseStep step)
    {
        Vector128<double> from = step.C0.GetLower(), to = from + step.C1.GetLower(), bulge = DenseStep.Bulge(
            step.C2.GetLower(), step.C3.GetLower(), step.C4.GetLower(), step.C5.GetLower(), step.C6.GetLower(), step.C7.GetLower());
        Vector128<double> low = Vector128.Min(from, to) - bulge, high = Vector128.Max(from, to) + bulge;
        uint suspects = 0;
        if (low.ToScalar() < LowTravel - LengthSlack)
            suspects |= 1u << CornerGuard.TravelLow;
        if (high.ToScalar() > HighTravel + LengthSlack)
            suspects |= 1u << CornerGuard.TravelHigh;
        double r0 = Math.FusedMultiplyAdd(_ratioSlope, low.ToScalar() - _wheel, _ratio), r1 = Math.FusedMultiplyAdd(_ratioSlope, high.ToScalar() - _wheel, _ratio);
        double vLow = Math.Min(r0 * low.GetElement(1), r1 * low.GetElement(1)), vHigh = Math.Max(r0 * high.GetElement(1), r1 * high.GetElement(1));
        if (vLow < LowVelocity - VelocitySlack)
            suspects |= 1u << CornerGuard.VelocityLow;
        if (vHigh > HighVelocity + VelocitySlack)
            suspects |= 1u << CornerGuard.VelocityHigh;
        if (_axleTouches && _axleLoss > 0 && 1 + _axleLoss * low.GetElement(1) < 0)
            suspects |= 1u << CornerGuard.AxleLoss;
        if (!_axlePushes)
            suspects |= 1u << CornerGuard.AxleLoss;
        return suspects | TyreSuspects(step);
    }

    /// <summary>Positive inside the present piece.</summary>
    public double Guard(int guard, double t, Vector256<double> y)
    {
        switch (guard)
        {
            case CornerGuard.TravelLow:
                return y.ToScalar() - LowTravel + LengthSlack;
            case CornerGuard.TravelHigh:
                return HighTravel - y.ToScalar() + LengthSlack;
            case CornerGuard.VelocityLow:
                return ShaftVelocity(y) - LowVelocity + VelocitySlack;
            case CornerGuard.VelocityHigh:
                return HighVelocity - ShaftVelocity(y) + VelocitySlack;
            case CornerGuard.AxleLoss:
                double open = 1 + _corner.BumpStop!.Loss * y.GetElement(1);
                return (_axlePushes ? open : -open) + VelocitySlack;
        }

        _segment.Evaluate(_speed * t, out double h, out double slope);
        double deflection = h - y.GetElement(2);
        return guard switch
        {
            CornerGuard.DeflectionLow => deflection - LowDeflection + LengthSlack,
            CornerGuard.DeflectionHigh => HighDeflection - deflection + LengthSlack,
            _ => (_pushes ? 1 : -1) * TyreFormula(deflection, Math.FusedMultiplyAdd(_speed, slope, -y.GetElement(3))) + ForceSlack,
        };
    }

    /// <summary>The guards that are linear on the present piece: travel always, velocity at a constant ratio, the tyre's on a straight road.</summary>
    public bool TryLinear(int guard, double start, out LinearGuard linear)
    {
        linear = default;
        switch (guard)
        {
            case CornerGuard.TravelLow:
                linear = new LinearGuard(Vector256.Create(1.0, 0, 0, 0), LengthSlack - LowTravel, 0);
                return true;
            case CornerGuard.TravelHigh:
                linear = new LinearGuard(Vector256.Create(-1.0, 0, 0, 0), LengthSlack + HighTravel, 0);
                return true;
            case CornerGuard.VelocityLow when _ratioSlope == 0:
                linear = new LinearGuard(Vector256.Create(0, _ratio, 0, 0), VelocitySlack - LowVelocity, 0);
                return true;
            case CornerGuard.VelocityHigh when _ratioSlope == 0:
                linear = new LinearGuard(Vector256.Create(0, -_ratio, 0, 0), VelocitySlack + HighVelocity, 0);
                return true;
        }

        if (guard > CornerGuard.TyreForce || !_segment.IsStraight)
            return false;
        _segment.Evaluate(_speed * start, out double h, out double slope);
        double climb = _speed * slope;
        linear = guard switch
        {
            CornerGuard.DeflectionLow => new LinearGuard(Vector256.Create(0, 0, -1.0, 0), h - LowDeflection + LengthSlack, climb),
            CornerGuard.DeflectionHigh => new LinearGuard(Vector256.Create(0, 0, 1.0, 0), HighDeflection - h + LengthSlack, -climb),
            CornerGuard.TyreForce when _pushes => new LinearGuard(Vector256.Create(0, 0, -_tyreRate, -_tyreDamping), TyreFormula(h, climb) + ForceSlack, _tyreRate * climb),
            _ => new LinearGuard(Vector256.Create(0, 0, _tyreRate, _tyreDamping), ForceSlack - TyreFormula(h, climb), -_tyreRate * climb),
        };
        return guard is CornerGuard.DeflectionLow or CornerGuard.DeflectionHigh or CornerGuard.TyreForce;
    }

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

    private double LowTravel => _travelCell == 0 ? double.NegativeInfinity : _grid.TravelBreaks[_travelCell - 1].At;

    private double HighTravel => _travelCell == _grid.TravelBreaks.Length ? double.PositiveInfinity : _grid.TravelBreaks[_travelCell].At;

    private double LowVelocity => _velocityCell == 0 ? double.NegativeInfinity : _grid.VelocityBreaks[_velocityCell - 1];

    private double HighVelocity => _velocityCell == _grid.VelocityBreaks.Length ? double.PositiveInfinity : _grid.VelocityBreaks[_velocityCell];

    private double LowDeflection => _tyre switch { TyrePhase.Air => double.NegativeInfinity, TyrePhase.Rolling => 0, _ => _corner.Tyre.Sidewall };

    private double HighDeflection => _tyre switch { TyrePhase.Air => 0, TyrePhase.Rolling => _corner.Tyre.Sidewall, _ => double.PositiveInfinity };

    private double ShaftVelocity(Vector256<double> y) => Math.FusedMultiplyAdd(_ratioSlope, y.ToScalar() - _wheel, _ratio) * y.GetElement(1);

    private double TyreFormula(double deflection, double speed) => _tyreRate * deflection + _tyreDamping * speed + _tyreForce;

    // The deflection and the force at both ends, and how far they can bend between: by the interpolant's own bound and the
    // road's where there is one, else by a look at the middle (twice the second difference is more than a parabola bends).
    private uint TyreSuspects(in DenseStep step)
    {
        Look(step, 0, step.C0, out double d0, out double f0);
        Look(step, 1, step.C0 + step.C1, out double d1, out double f1);
        double bend, forceBend;
        if (!double.IsNaN(_segmentBend))
        {
            Vector128<double> bulge = DenseStep.Bulge(
                step.C2.GetUpper(), step.C3.GetUpper(), step.C4.GetUpper(), step.C5.GetUpper(), step.C6.GetUpper(), step.C7.GetUpper());
            double run = _speed * step.Length, roadBend = 0.125 * _segmentBend * run * run, slopeBend = 0.5 * _segmentBend * run;
            bend = bulge.ToScalar() + roadBend;
            forceBend = _tyreRate * bend + _tyreDamping * (bulge.GetElement(1) + _speed * slopeBend);
        }
        else
        {
            Look(step, 0.5, step.AtTheta(0.5), out double dm, out double fm);
            bend = 2 * Math.Abs(d0 - dm - (dm - d1));
            forceBend = 2 * Math.Abs(f0 - fm - (fm - f1));
        }

        uint suspects = 0;
        if (Math.Min(d0, d1) - bend < LowDeflection - LengthSlack)
            suspects |= 1u << CornerGuard.DeflectionLow;
        if (Math.Max(d0, d1) + bend > HighDeflection + LengthSlack)
            suspects |= 1u << CornerGuard.DeflectionHigh;
        double sign = _pushes ? 1 : -1;
        if (_tyreDamping > 0 && _tyre != TyrePhase.Air && Math.Min(sign * f0, sign * f1) - forceBend < -ForceSlack)
            suspects |= 1u << CornerGuard.TyreForce;
        return suspects;
    }

    private void Look(in DenseStep step, double theta, Vector256<double> y, out double deflection, out double force)
    {
        _segment.Evaluate(_speed * (step.Start + theta * step.Length), out double h, out double slope);
        deflection = h - y.GetElement(2);
        force = TyreFormula(deflection, Math.FusedMultiplyAdd(_speed, slope, -y.GetElement(3)));
    }

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
