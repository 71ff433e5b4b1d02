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
    /// The same polynomial by its Bernstein coefficients on [0, 1]: it lies between the least and the largest of them and changes
    /// its sign at most as often as they do (Farouki and Rajan, Computer Aided Geometric Design 4, 1987, 191–216).
    /// </summary>
    /// <param name="b">Eight.</param>
    public void Bernstein(Span<double> b)
    {
        ReadOnlySpan<double> nested = [_c7, _c6, _c5, _c4, _c3, _c2, _c1, _c0];
        b[0] = _c7;
        for (int n = 1; n < nested.Length; n++)
        {
            // Times θ or 1 − θ, by turns, raises the degree to n.
            b[n] = b[n - 1];
            if ((n & 1) == 1)
            {
                for (int i = n - 1; i > 0; i--)
                    b[i] = b[i - 1] * i / n;
                b[0] = 0;
            }
            else
            {
                for (int i = 1; i < n; i++)
                    b[i] = b[i] * (n - i) / n;
                b[n] = 0;
            }

            for (int i = 0; i <= n; i++)
                b[i] += nested[n];
        }
    }
}
