using System.Runtime.Intrinsics;

using QuarterCar.TestKit.Running;

namespace QuarterCar.TestKit.KnownAnswers;

/// <summary>A pendulum of g/l = 1 let go from rest; switch: past the lowest point.</summary>
/// <param name="Release">Angle, rad.</param>
public readonly record struct Pendulum(double Release) : IKnownAnswer, ISwitched
{
    /// <inheritdoc/>
    public string Source => "T/T0 = 2K(sin(θ0/2))/π, complete elliptic integral; NL-14 (C, formula from memory)";

    /// <inheritdoc/>
    public Vector256<double> Start => Vector256.Create(Release, 0, 0, 0);

    /// <inheritdoc/>
    public int Switches => 1;

    /// <inheritdoc/>
    public Vector256<double> Derivative(double t, Vector256<double> y, uint on) => OneMass.Moves(y, -Math.Sin(y[0]));

    /// <inheritdoc/>
    public double Switch(int index, double t, Vector256<double> y) => y[0];
}

/// <summary>Duffing's spring ẍ + x + x³ = 0 let go from rest; switch: right of the middle.</summary>
/// <param name="Release">m.</param>
public readonly record struct Duffing(double Release) : IKnownAnswer, ISwitched
{
    /// <inheritdoc/>
    public string Source => "complete elliptic integral; NL-14 (C, formula from memory)";

    /// <inheritdoc/>
    public Vector256<double> Start => Vector256.Create(Release, 0, 0, 0);

    /// <inheritdoc/>
    public int Switches => 1;

    /// <inheritdoc/>
    public Vector256<double> Derivative(double t, Vector256<double> y, uint on) => OneMass.Moves(y, -y[0] - y[0] * y[0] * y[0]);

    /// <inheritdoc/>
    public double Switch(int index, double t, Vector256<double> y) => y[0];
}

/// <summary>Two masses in the air with a spring and a damper between them: (zs, vs, zu, vu), up positive. Switch: spring longer than free.</summary>
/// <param name="Sprung">kg.</param>
/// <param name="Unsprung">kg.</param>
/// <param name="Rate">N/m.</param>
/// <param name="Damping">N·s/m.</param>
public readonly record struct FallingPair(double Sprung, double Unsprung, double Rate, double Damping) : IKnownAnswer, ISwitched
{
    /// <inheritdoc/>
    public string Source => "centre of mass falls freely, relative ω = √(k(1/ms + 1/mu)); NL-10 (C, formula from memory)";

    /// <inheritdoc/>
    public Vector256<double> Start => Vector256.Create(0.1, 1.5, 0, 1.5);

    /// <inheritdoc/>
    public int Switches => 1;

    /// <summary>Height of the centre of mass, m.</summary>
    public double Centre(Vector256<double> y) => (Sprung * y[0] + Unsprung * y[2]) / (Sprung + Unsprung);

    /// <inheritdoc/>
    public Vector256<double> Derivative(double t, Vector256<double> y, uint on)
    {
        double force = Rate * (y[0] - y[2]) + Damping * (y[1] - y[3]);
        return Vector256.Create(y[1], -OneMass.G - force / Sprung, y[3], -OneMass.G + force / Unsprung);
    }

    /// <inheritdoc/>
    public double Switch(int index, double t, Vector256<double> y) => y[0] - y[2];
}

/// <summary>A projectile in resisting air, (height, speed, angle) over distance; switch: above ground. Stands still once down.</summary>
public readonly record struct Projectile : IKnownAnswer, ISwitched
{
    /// <inheritdoc/>
    public string Source => "ODE-PRJ: a general library's printed example (R), converged digits (C)";

    /// <inheritdoc/>
    public Vector256<double> Start => Vector256.Create(0.5, 0.5, Math.PI / 5, 0);

    /// <inheritdoc/>
    public int Switches => 1;

    /// <inheritdoc/>
    public Vector256<double> Derivative(double t, Vector256<double> y, uint on)
    {
        double tan = Math.Tan(y[2]), v = y[1];
        return (on & 1) == 0 ? Vector256<double>.Zero
            : Vector256.Create(tan, -0.032 * tan / v - 0.02 * v / Math.Cos(y[2]), -0.032 / (v * v), 0);
    }

    /// <inheritdoc/>
    public double Switch(int index, double t, Vector256<double> y) => y[0];

    /// <inheritdoc/>
    public uint Turn(int index, uint on, double t, Vector256<double> y) => 0;
}
