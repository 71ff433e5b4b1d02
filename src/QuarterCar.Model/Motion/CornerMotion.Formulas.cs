using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

using QuarterCar.Model.Shaft;
using QuarterCar.Numerics;

namespace QuarterCar.Model.Motion;

/// <content>The equations of motion on the present piece: the innermost loop of everything.</content>
internal sealed partial class CornerMotion
{
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
}
