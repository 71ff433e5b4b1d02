using System.Runtime.Intrinsics;

using QuarterCar.TestKit.Running;

namespace QuarterCar.TestKit.KnownAnswers;

/// <summary>A mass on a spring with dry friction; switch: moving right. The mass sticks where it comes to rest and the spring can't move it.</summary>
/// <param name="Mass">kg.</param>
/// <param name="Rate">N/m.</param>
/// <param name="Friction">N.</param>
/// <param name="Release">Where it is let go, to the right, m.</param>
public readonly record struct DryFriction(double Mass, double Rate, double Friction, double Release) : IKnownAnswer, ISwitched
{
    private const uint Stuck = 2;

    /// <inheritdoc/>
    public string Source => "2F/k lost in every half period π√(m/k); NL-5 (C, formula from memory)";

    /// <inheritdoc/>
    public Vector256<double> Start => Vector256.Create(Release, 0, 0, 0);

    /// <inheritdoc/>
    public int Switches => 1;

    /// <inheritdoc/>
    public Vector256<double> Derivative(double t, Vector256<double> y, uint on) => (on & Stuck) != 0
        ? Vector256<double>.Zero
        : OneMass.Moves(y, (-Rate * y[0] + ((on & 1) != 0 ? -Friction : Friction)) / Mass);

    /// <inheritdoc/>
    public double Switch(int index, double t, Vector256<double> y) => y[1];

    /// <inheritdoc/>
    public uint Turn(int index, uint on, double t, Vector256<double> y) =>
        (on ^ 1) | (Rate * Math.Abs(y[0]) <= Friction ? Stuck : 0);
}

/// <summary>A mass on a spring with a damper, c·v or c·v|v|; switch: moving right.</summary>
/// <param name="Mass">kg.</param>
/// <param name="Rate">N/m.</param>
/// <param name="Linear">N·s/m.</param>
/// <param name="Quadratic">N·s²/m².</param>
/// <param name="Release">Where it is let go, m.</param>
public readonly record struct DampedMass(double Mass, double Rate, double Linear, double Quadratic, double Release) : IKnownAnswer, ISwitched
{
    /// <inheritdoc/>
    public string Source => "logarithmic decrement, NL-6; first integral (1 − aX₁)e^{aX₁} = (1 + aX₀)e^{−aX₀}, NL-7 (both C, formulas from memory)";

    /// <inheritdoc/>
    public Vector256<double> Start => Vector256.Create(Release, 0, 0, 0);

    /// <inheritdoc/>
    public int Switches => 1;

    /// <inheritdoc/>
    public Vector256<double> Derivative(double t, Vector256<double> y, uint on) =>
        OneMass.Moves(y, (-Rate * y[0] - Linear * y[1] - ((on & 1) != 0 ? Quadratic : -Quadratic) * y[1] * y[1]) / Mass);

    /// <inheritdoc/>
    public double Switch(int index, double t, Vector256<double> y) => y[1];
}

/// <summary>A damper moved by X sin ωt; the state is the work that it takes, J. Switch: moving right.</summary>
/// <param name="Amplitude">X, m.</param>
/// <param name="Omega">ω, rad/s.</param>
/// <param name="Right">N·s/m while moving right.</param>
/// <param name="Left">N·s/m while moving left.</param>
/// <param name="Quadratic">N·s²/m².</param>
/// <param name="Friction">N.</param>
public readonly record struct DrivenDamper(double Amplitude, double Omega, double Right, double Left, double Quadratic, double Friction) : IKnownAnswer, ISwitched
{
    /// <inheritdoc/>
    public string Source => "πcωX², (π/2)(c_c + c_r)ωX², (8/3)c₂ω²X³, 4FX; NL-8 (C, formulas from memory)";

    /// <inheritdoc/>
    public Vector256<double> Start => Vector256<double>.Zero;

    /// <inheritdoc/>
    public int Switches => 1;

    /// <inheritdoc/>
    public Vector256<double> Derivative(double t, Vector256<double> y, uint on)
    {
        double v = Speed(t), sign = (on & 1) != 0 ? 1 : -1;
        return Vector256.Create(((sign > 0 ? Right : Left) * v + sign * (Quadratic * v * v + Friction)) * v, 0, 0, 0);
    }

    /// <inheritdoc/>
    public double Switch(int index, double t, Vector256<double> y) => Speed(t);

    private double Speed(double t) => Amplitude * Omega * Math.Cos(Omega * t);
}
