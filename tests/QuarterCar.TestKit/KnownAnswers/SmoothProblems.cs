using System.Runtime.Intrinsics;

namespace QuarterCar.TestKit.KnownAnswers;

/// <summary>y' = −y in four sizes.</summary>
public readonly record struct Decay : IKnownMotion
{
    /// <inheritdoc/>
    public string Source => "closed form exp(−t)";

    /// <inheritdoc/>
    public Vector256<double> Start => Vector256.Create(1.0, 2, -3, 0.5);

    /// <inheritdoc/>
    public Vector256<double> Derivative(double t, Vector256<double> y) => -y;

    /// <inheritdoc/>
    public Vector256<double> Exact(double t) => Start * Math.Exp(-t);
}

/// <summary>Two undamped masses on springs, 1 and 2 rad/s: (x1, v1, x2, v2).</summary>
public readonly record struct HarmonicOscillators : IKnownMotion
{
    /// <inheritdoc/>
    public string Source => "closed form sine and cosine";

    /// <inheritdoc/>
    public Vector256<double> Start => Vector256.Create(1.0, 0, 0, 2);

    /// <inheritdoc/>
    public Vector256<double> Derivative(double t, Vector256<double> y) => Vector256.Create(y[1], -y[0], y[3], -4 * y[2]);

    /// <inheritdoc/>
    public Vector256<double> Exact(double t) => Vector256.Create(Math.Cos(t), -Math.Sin(t), Math.Sin(2 * t), 2 * Math.Cos(2 * t));
}

/// <summary>Four bent equations: y' = −y²/2, −y³/2 (DETEST A2 from another start), y(1 − y) and −2ty.</summary>
public readonly record struct Curved : IKnownMotion
{
    /// <inheritdoc/>
    public string Source => "closed forms; A2 of Hull, Enright, Fellen, Sedgwick, SIAM J. Numer. Anal. 9, 1972";

    /// <inheritdoc/>
    public Vector256<double> Start => Vector256.Create(1, 0.5, 0.1, 1);

    /// <inheritdoc/>
    public Vector256<double> Derivative(double t, Vector256<double> y) =>
        Vector256.Create(-0.5 * y[0] * y[0], -0.5 * y[1] * y[1] * y[1], y[2] * (1 - y[2]), -2 * t * y[3]);

    /// <inheritdoc/>
    public Vector256<double> Exact(double t) =>
        Vector256.Create(2 / (2 + t), 1 / Math.Sqrt(4 + t), 1 / (1 + 9 * Math.Exp(-t)), Math.Exp(-t * t));
}

/// <summary>y' = 8t⁷ and lower powers: pure quadrature, exact for a method of order eight.</summary>
public readonly record struct Powers : IKnownMotion
{
    /// <inheritdoc/>
    public string Source => "closed form t⁸, t⁷, t⁶, t";

    /// <inheritdoc/>
    public Vector256<double> Start => Vector256<double>.Zero;

    /// <inheritdoc/>
    public Vector256<double> Derivative(double t, Vector256<double> y) =>
        Vector256.Create(8 * Math.Pow(t, 7), 7 * Math.Pow(t, 6), 6 * Math.Pow(t, 5), 1);

    /// <inheritdoc/>
    public Vector256<double> Exact(double t) => Vector256.Create(Math.Pow(t, 8), Math.Pow(t, 7), Math.Pow(t, 6), t);
}
