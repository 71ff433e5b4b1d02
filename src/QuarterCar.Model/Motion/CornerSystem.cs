using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

using QuarterCar.Numerics.Integration;

namespace QuarterCar.Model.Motion;

/// <summary>The guards of a corner's pieces, by number.</summary>
internal static class CornerGuard
{
    public const int TravelLow = 0, TravelHigh = 1, VelocityLow = 2, VelocityHigh = 3, DeflectionLow = 4, DeflectionHigh = 5, TyreForce = 6, AxleLoss = 7;
}

/// <summary>Bits of a step's tag.</summary>
public static class PieceTag
{
    /// <summary>The slider is on the stop nut.</summary>
    public const int OnStopNut = 1;

    /// <summary>The tyre is in the air.</summary>
    public const int Airborne = 2;

    /// <summary>A stop pushes.</summary>
    public const int Touching = 4;
}

/// <summary>The corner's equations as the integrator wants them: a struct, so that one copy of the stepper is compiled around them.</summary>
internal readonly struct CornerSystem(CornerMotion motion) : IPiecewiseSystem
{
    public int Piece => motion.Piece;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector256<double> Derivative(double t, Vector256<double> y) => motion.Derivative(t, y);

    public uint Suspects(in DenseStep step) => motion.Suspects(step);

    public double Guard(int guard, double t, Vector256<double> y) => motion.Guard(guard, t, y);

    public bool TryLinear(int guard, double start, out LinearGuard linear) => motion.TryLinear(guard, start, out linear);

    public int Stretches(int guard, in DenseStep step) => motion.Stretches(guard, step);

    public void Cross(int guard, double t, Vector256<double> y) => motion.Cross(guard, t, y);

    public void PassBreak(int index, double t, Vector256<double> y) => motion.PassBreak(index, t, y);

    public bool IsAtRest(Vector256<double> y, Vector256<double> dydt) => motion.IsAtRest(y, dydt);
}

/// <summary>The same with a constant motion ratio and the gas as a polynomial (<see cref="CornerMotion.DerivativePlain"/>): the common corner, and the fast one.</summary>
internal readonly struct PlainCornerSystem(CornerMotion motion) : IPiecewiseSystem
{
    public int Piece => motion.Piece;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector256<double> Derivative(double t, Vector256<double> y) => motion.DerivativePlain(t, y);

    public uint Suspects(in DenseStep step) => motion.Suspects(step);

    public double Guard(int guard, double t, Vector256<double> y) => motion.Guard(guard, t, y);

    public bool TryLinear(int guard, double start, out LinearGuard linear) => motion.TryLinear(guard, start, out linear);

    public int Stretches(int guard, in DenseStep step) => motion.Stretches(guard, step);

    public void Cross(int guard, double t, Vector256<double> y) => motion.Cross(guard, t, y);

    public void PassBreak(int index, double t, Vector256<double> y) => motion.PassBreak(index, t, y);

    public bool IsAtRest(Vector256<double> y, Vector256<double> dydt) => motion.IsAtRest(y, dydt);
}
