using System.Runtime.Intrinsics;

using QuarterCar.TestKit.Running;

namespace QuarterCar.TestKit.KnownAnswers;

/// <summary>A mass between straight springs of up to three rates, falling, with a line of force; its derivative is that of every problem below.</summary>
internal static class OneMass
{
    internal const double G = 9.80665;

    /// <summary>(x, v, 0, 0)' for an acceleration.</summary>
    internal static Vector256<double> Moves(Vector256<double> y, double acceleration) => Vector256.Create(y[1], acceleration, 0, 0);

    internal static bool Has(uint on, int index) => (on >> index & 1) != 0;
}

/// <summary>A mass on one spring to the left of 0 and another to the right; switches: right of 0, moving right.</summary>
/// <param name="Mass">kg.</param>
/// <param name="Left">Rate for x below 0, N/m.</param>
/// <param name="Right">Rate for x above 0, N/m.</param>
public readonly record struct TwoRateSpring(double Mass, double Left, double Right) : IKnownAnswer, ISwitched
{
    /// <inheritdoc/>
    public string Source => "half a period on each spring; NL-1 (C, formula from memory)";

    /// <inheritdoc/>
    public Vector256<double> Start => Vector256.Create(-1.0, 0, 0, 0);

    /// <summary>T = π√m(1/√k1 + 1/√k2), s.</summary>
    public double Period => Math.PI * Math.Sqrt(Mass) * (1 / Math.Sqrt(Left) + 1 / Math.Sqrt(Right));

    /// <inheritdoc/>
    public int Switches => 2;

    /// <inheritdoc/>
    public Vector256<double> Derivative(double t, Vector256<double> y, uint on) =>
        OneMass.Moves(y, -(OneMass.Has(on, 0) ? Right : Left) * y[0] / Mass);

    /// <inheritdoc/>
    public double Switch(int index, double t, Vector256<double> y) => y[index];
}

/// <summary>A mass that flies between two springs; switches: on the right spring, on the left one, moving right.</summary>
/// <param name="Mass">kg.</param>
/// <param name="Rate">Of either spring, N/m.</param>
/// <param name="Gap">From the middle to either spring, m.</param>
/// <param name="Speed">Through the middle, m/s.</param>
public readonly record struct MassInGap(double Mass, double Rate, double Gap, double Speed) : IKnownAnswer, ISwitched
{
    /// <inheritdoc/>
    public string Source => "two half swings and two flights; NL-2 (C, formula from memory)";

    /// <inheritdoc/>
    public Vector256<double> Start => Vector256.Create(0, Speed, 0, 0);

    /// <summary>T = 2π√(m/k) + 4e/v0, s.</summary>
    public double Period => 2 * Math.PI * Math.Sqrt(Mass / Rate) + 4 * Gap / Speed;

    /// <summary>e + v0√(m/k), m.</summary>
    public double Reach => Gap + Speed * Math.Sqrt(Mass / Rate);

    /// <inheritdoc/>
    public int Switches => 3;

    /// <inheritdoc/>
    public Vector256<double> Derivative(double t, Vector256<double> y, uint on) => OneMass.Moves(
        y, -Rate / Mass * (OneMass.Has(on, 0) ? y[0] - Gap : OneMass.Has(on, 1) ? y[0] + Gap : 0));

    /// <inheritdoc/>
    public double Switch(int index, double t, Vector256<double> y) => index switch { 0 => y[0] - Gap, 1 => -Gap - y[0], _ => y[1] };
}

/// <summary>A mass dropped on a series pair of springs, down positive from touch; switches: touching, past the crossover, going down.</summary>
/// <param name="Mass">kg.</param>
/// <param name="Rate">Of the pair, N/m.</param>
/// <param name="Crossover">Travel at which the upper spring is shut, m; infinite for a single spring.</param>
/// <param name="LowerRate">Beyond the crossover, N/m.</param>
/// <param name="Height">Fallen before touch, m.</param>
public readonly record struct DropOnSprings(double Mass, double Rate, double Crossover, double LowerRate, double Height) : IKnownAnswer, ISwitched
{
    /// <inheritdoc/>
    public string Source => "energy, and arcs of ellipses in the phase plane; NL-3, NL-4 (C; NL-3 after Roark, from memory)";

    /// <inheritdoc/>
    public Vector256<double> Start => Vector256.Create(-Height, 0, 0, 0);

    /// <inheritdoc/>
    public int Switches => 3;

    /// <inheritdoc/>
    public Vector256<double> Derivative(double t, Vector256<double> y, uint on) =>
        OneMass.Moves(y, OneMass.G - (OneMass.Has(on, 0) ? Force(y[0], OneMass.Has(on, 1)) : 0) / Mass);

    /// <summary>Force of the springs on one of the two lines, N.</summary>
    public double Force(double x, bool beyond) => beyond ? Rate * Crossover + LowerRate * (x - Crossover) : Rate * x;

    /// <inheritdoc/>
    public double Switch(int index, double t, Vector256<double> y) => index switch { 0 => y[0], 1 => y[0] - Crossover, _ => y[1] };
}
