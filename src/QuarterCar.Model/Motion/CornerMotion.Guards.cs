using System.Runtime.Intrinsics;

using QuarterCar.Model.Terrain;
using QuarterCar.Numerics.Integration;

namespace QuarterCar.Model.Motion;

/// <content>Where the present piece ends.</content>
internal sealed partial class CornerMotion
{
    // A step over more half waves than this is not looked at closer: washboard of millimetres at the speed of an aeroplane.
    private const int MostStretches = 20_000;

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

    /// <summary>The guards that are linear on the present piece: travel always, velocity at a constant ratio, the tyre's on a road without a table or an arc.</summary>
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
            case CornerGuard.AxleLoss:
                double sign = _axlePushes ? 1 : -1;
                linear = new LinearGuard(Vector256.Create(0, sign * _corner.BumpStop!.Loss, 0, 0), sign + VelocitySlack, 0);
                return true;
        }

        if (guard is not (CornerGuard.DeflectionLow or CornerGuard.DeflectionHigh or CornerGuard.TyreForce) || _segment.Form != RoadForm.Polynomial)
            return false;
        _segment.Evaluate(_speed * start, out double h, out double slope);
        double climb = _speed * slope, bend = _speed * _speed * _segment.PolynomialBend;
        linear = guard switch
        {
            CornerGuard.DeflectionLow => new LinearGuard(Vector256.Create(0, 0, -1.0, 0), h - LowDeflection + LengthSlack, climb, 0.5 * bend),
            CornerGuard.DeflectionHigh => new LinearGuard(Vector256.Create(0, 0, 1.0, 0), HighDeflection - h + LengthSlack, -climb, -0.5 * bend),
            _ => TyreForce(h, climb, bend, _pushes ? 1 : -1),
        };
        return true;
    }

    // The rise of the road is a line over time, and so is its climb: the force has a bend of the first and a slope of both.
    private LinearGuard TyreForce(double h, double climb, double bend, int sign) => new(
        Vector256.Create(0, 0, -sign * _tyreRate, -sign * _tyreDamping),
        sign * TyreFormula(h, climb) + ForceSlack,
        sign * (_tyreRate * climb + _tyreDamping * bend),
        sign * 0.5 * _tyreRate * bend);

    /// <summary>Half a wave of the road each, so that a step over many waves in the air misses no crest; a velocity under a ratio that changes follows the state alone, to twice its degree.</summary>
    public int Stretches(int guard, in DenseStep step) =>
        guard is CornerGuard.DeflectionLow or CornerGuard.DeflectionHigh or CornerGuard.TyreForce ? 1 + (int)Math.Min(HalfWaves(step), MostStretches) : 2;

    private double HalfWaves(in DenseStep step) => 2 * _speed * step.Length / _segment.CrestDistance;

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
            bend = HalfWaves(step) > 1 ? double.PositiveInfinity : 2 * Math.Abs(d0 - dm - (dm - d1));
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
}
