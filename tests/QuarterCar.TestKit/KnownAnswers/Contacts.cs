using System.Runtime.Intrinsics;

using QuarterCar.Numerics.Integration;
using QuarterCar.TestKit.Running;

namespace QuarterCar.TestKit.KnownAnswers;

/// <summary>A mass that runs into a damped stop which never pulls; switches: past the stop's face, pushed, moving in.</summary>
/// <param name="Mass">kg.</param>
/// <param name="Rate">N/m.</param>
/// <param name="Damping">N·s/m.</param>
/// <param name="Speed">At touch, m/s.</param>
public readonly record struct MassOnStop(double Mass, double Rate, double Damping, double Speed) : IKnownAnswer, ISwitched
{
    /// <inheritdoc/>
    public string Source => "damped half swing, left where the force is zero; NL-12, NL-13 (C, formulas from memory)";

    /// <inheritdoc/>
    public Vector256<double> Start => Vector256.Create(0, Speed, 0, 0);

    /// <inheritdoc/>
    public int Switches => 3;

    /// <inheritdoc/>
    public Vector256<double> Derivative(double t, Vector256<double> y, uint on) =>
        OneMass.Moves(y, (on & 3) == 3 ? -Force(y) / Mass : 0);

    /// <inheritdoc/>
    public double Switch(int index, double t, Vector256<double> y) => index switch { 0 => y[0], 1 => Force(y), _ => y[1] };

    /// <summary>Force of spring and damper together, N.</summary>
    public double Force(Vector256<double> y) => Rate * y[0] + Damping * y[1];
}

/// <summary>
/// A ball that bounces with a coefficient of restitution e until the bounces pile up. Its state must be continuous, so the
/// height is written as (−e)ⁿ·u after n bounces: u and its derivative run through an impact unchanged.
/// </summary>
/// <param name="restitution">e.</param>
/// <param name="gravity">m/s².</param>
/// <param name="times">Where impact times are noted, s.</param>
public struct BouncingBall(double restitution, double gravity, List<double> times) : IPiecewiseSystem
{
    private double _scale = 1;

    /// <summary>First impact after a fall from rest, s.</summary>
    public static double FirstImpact(double height, double gravity) => Math.Sqrt(2 * height / gravity);

    /// <inheritdoc/>
    public readonly int Piece => 0;

    /// <inheritdoc/>
    public readonly Vector256<double> Derivative(double t, Vector256<double> y) => OneMass.Moves(y, -gravity / _scale);

    /// <inheritdoc/>
    public readonly uint Suspects(in DenseStep step) => 1;

    /// <inheritdoc/>
    public readonly double Guard(int guard, double t, Vector256<double> y) => y[0] * _scale;

    public bool TryLinear(int guard, double start, out LinearGuard linear)
    {
        linear = default;
        return false;
    }

    public int Stretches(int guard, in DenseStep step) => 1;

    /// <inheritdoc/>
    public void Cross(int guard, double t, Vector256<double> y)
    {
        times.Add(t);
        _scale *= -restitution;
    }

    /// <inheritdoc/>
    public readonly void PassBreak(int index, double t, Vector256<double> y)
    {
    }

    /// <inheritdoc/>
    public readonly bool IsAtRest(Vector256<double> y, Vector256<double> dydt) => false;
}
