using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace QuarterCar.Numerics.Integration;

/// <summary>A guard that is linear in the state: Offset + PerSecond·τ + PerSecondSquared·τ² + Weights·y, τ = t − step start.</summary>
/// <param name="Weights">One a component of the state.</param>
/// <param name="Offset">At the step's start.</param>
/// <param name="PerSecond">1/s.</param>
/// <param name="PerSecondSquared">1/s².</param>
public readonly record struct LinearGuard(Vector256<double> Weights, double Offset, double PerSecond, double PerSecondSquared = 0);

/// <summary>A guard's value along a step, θ from 0 to 1.</summary>
internal interface IGuardFunction
{
    /// <summary>Positive inside the piece.</summary>
    double Value(double theta);
}

/// <summary>Any guard: the interpolant's state handed to the system.</summary>
internal readonly ref struct GuardFunction<TSystem>(ref TSystem system, ref readonly DenseStep step, int guard) : IGuardFunction
    where TSystem : struct, IPiecewiseSystem
{
    private readonly ref TSystem _system = ref system;
    private readonly ref readonly DenseStep _step = ref step;

    public double Value(double theta) => _system.Guard(guard, _step.Start + theta * _step.Length, _step.AtTheta(theta));
}

/// <summary>A linear guard: along the step it is a polynomial of one variable, eight numbers that are looked up in registers instead of a state.</summary>
internal readonly struct LinearGuardFunction : IGuardFunction
{
    private readonly double _c0, _c1, _c2, _c3, _c4, _c5, _c6, _c7;

    public LinearGuardFunction(in LinearGuard guard, in DenseStep step)
    {
        Vector256<double> w = guard.Weights;
        _c0 = guard.Offset + Vector256.Dot(w, step.C0);
        double square = guard.PerSecondSquared * step.Length * step.Length; // θ² = θ(1 − (1 − θ))
        _c1 = guard.PerSecond * step.Length + square + Vector256.Dot(w, step.C1);
        _c2 = Vector256.Dot(w, step.C2) - square;
        _c3 = Vector256.Dot(w, step.C3);
        _c4 = Vector256.Dot(w, step.C4);
        _c5 = Vector256.Dot(w, step.C5);
        _c6 = Vector256.Dot(w, step.C6);
        _c7 = Vector256.Dot(w, step.C7);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double Value(double theta)
    {
        double a = theta, b = 1 - theta;
        double p = Math.FusedMultiplyAdd(_c7, a, _c6);
        p = Math.FusedMultiplyAdd(p, b, _c5);
        p = Math.FusedMultiplyAdd(p, a, _c4);
        p = Math.FusedMultiplyAdd(p, b, _c3);
        p = Math.FusedMultiplyAdd(p, a, _c2);
        p = Math.FusedMultiplyAdd(p, b, _c1);
        return Math.FusedMultiplyAdd(p, a, _c0);
    }

    /// <summary>
    /// The same polynomial by its eight Bernstein coefficients on [0, 1]: it lies between the least and the largest of them and changes
    /// its sign at most as often as they do (Farouki and Rajan, Computer Aided Geometric Design 4, 1987, 191–216).
    /// </summary>
    /// <remarks>A term θᵃ(1 − θ)ᵇ of the nested form, times (θ + 1 − θ)⁷⁻ᵃ⁻ᵇ: binomials of 7 − a − b over those of 7.</remarks>
    public (Vector256<double> First, Vector256<double> Last) Bernstein()
    {
        Vector256<double> first = Vector256.Create(_c0), last = first;
        first = Vector256.FusedMultiplyAdd(Vector256.Create(_c1), Vector256.Create(0, 1.0 / 7, 6.0 / 21, 15.0 / 35), first);
        last = Vector256.FusedMultiplyAdd(Vector256.Create(_c1), Vector256.Create(20.0 / 35, 15.0 / 21, 6.0 / 7, 1), last);
        first = Vector256.FusedMultiplyAdd(Vector256.Create(_c2), Vector256.Create(0, 1.0 / 7, 5.0 / 21, 10.0 / 35), first);
        last = Vector256.FusedMultiplyAdd(Vector256.Create(_c2), Vector256.Create(10.0 / 35, 5.0 / 21, 1.0 / 7, 0), last);
        first = Vector256.FusedMultiplyAdd(Vector256.Create(_c3), Vector256.Create(0, 0, 1.0 / 21, 4.0 / 35), first);
        last = Vector256.FusedMultiplyAdd(Vector256.Create(_c3), Vector256.Create(6.0 / 35, 4.0 / 21, 1.0 / 7, 0), last);
        first = Vector256.FusedMultiplyAdd(Vector256.Create(_c4), Vector256.Create(0, 0, 1.0 / 21, 3.0 / 35), first);
        last = Vector256.FusedMultiplyAdd(Vector256.Create(_c4), Vector256.Create(3.0 / 35, 1.0 / 21, 0, 0), last);
        first = Vector256.FusedMultiplyAdd(Vector256.Create(_c5), Vector256.Create(0, 0, 0, 1.0 / 35), first);
        last = Vector256.FusedMultiplyAdd(Vector256.Create(_c5), Vector256.Create(2.0 / 35, 1.0 / 21, 0, 0), last);
        first = Vector256.FusedMultiplyAdd(Vector256.Create(_c6), Vector256.Create(0, 0, 0, 1.0 / 35), first);
        last = Vector256.FusedMultiplyAdd(Vector256.Create(_c6), Vector256.Create(1.0 / 35, 0, 0, 0), last);
        last = Vector256.FusedMultiplyAdd(Vector256.Create(_c7), Vector256.Create(1.0 / 35, 0, 0, 0), last);
        return (first, last);
    }
}
