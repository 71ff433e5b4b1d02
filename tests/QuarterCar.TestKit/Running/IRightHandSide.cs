using System.Runtime.Intrinsics;

using QuarterCar.Numerics.Integration;

namespace QuarterCar.TestKit.Running;

/// <summary>Smooth equations without pieces.</summary>
public interface IRightHandSide
{
    /// <summary>dy/dt.</summary>
    /// <param name="t">Time, s.</param>
    /// <param name="y">State.</param>
    Vector256<double> Derivative(double t, Vector256<double> y);
}

/// <summary>Smooth equations as a system of one piece that ends nowhere.</summary>
/// <param name="right">The equations.</param>
public readonly struct Smooth<TRight>(TRight right) : IPiecewiseSystem
    where TRight : struct, IRightHandSide
{
    /// <inheritdoc/>
    public int Piece => 0;

    /// <inheritdoc/>
    public Vector256<double> Derivative(double t, Vector256<double> y) => right.Derivative(t, y);

    /// <inheritdoc/>
    public uint Suspects(in DenseStep step) => 0;

    /// <inheritdoc/>
    public double Guard(int guard, double t, Vector256<double> y) => 1;

    public bool TryLinear(int guard, double start, out LinearGuard linear)
    {
        linear = default;
        return false;
    }

    public int Stretches(int guard, in DenseStep step) => 1;

    /// <inheritdoc/>
    public void Cross(int guard, double t, Vector256<double> y)
    {
    }

    /// <inheritdoc/>
    public void PassBreak(int index, double t, Vector256<double> y)
    {
    }

    /// <inheritdoc/>
    public bool IsAtRest(Vector256<double> y, Vector256<double> dydt) => false;
}
