using System.Runtime.Intrinsics;

using QuarterCar.TestKit.Running;

namespace QuarterCar.Numerics.Tests.Integration;

/// <summary>The smooth DETEST problems that fit into four equations, by name.</summary>
internal readonly record struct Detest(string Name) : IRightHandSide
{
    public Vector256<double> Start => Name switch
    {
        "A5" => Vector256.Create(4.0, 0, 0, 0),
        "B1" => Vector256.Create(1.0, 3, 0, 0),
        "B2" => Vector256.Create(2.0, 0, 1, 0),
        "B3" => Vector256.Create(1.0, 0, 0, 0),
        "B5" => Vector256.Create(0.0, 1, 1, 0),
        "E2" => Vector256.Create(2.0, 0, 0, 0),
        "E4" => Vector256.Create(30.0, 0, 0, 0),
        "E5" => Vector256<double>.Zero,
        ['D', ..] => Orbit((2 * (Name[1] - '0') - 1) / 10.0),
        _ => Vector256.Create(1.0, 0, 0, 0),
    };

    public Vector256<double> Derivative(double t, Vector256<double> y) => Name switch
    {
        "A1" => First(-y[0]),
        "A2" => First(-0.5 * y[0] * y[0] * y[0]),
        "A3" => First(y[0] * Math.Cos(t)),
        "A4" => First(y[0] * (20 - y[0]) / 80),
        "A5" => First((y[0] - t) / (y[0] + t)),
        "B1" => Vector256.Create(2 * (y[0] - y[0] * y[1]), -(y[1] - y[0] * y[1]), 0, 0),
        "B2" => Vector256.Create(-y[0] + y[1], y[0] - 2 * y[1] + y[2], y[1] - y[2], 0),
        "B3" => Vector256.Create(-y[0], y[0] - y[1] * y[1], y[1] * y[1], 0),
        "B5" => Vector256.Create(y[1] * y[2], -y[0] * y[2], -0.51 * y[0] * y[1], 0),
        "E2" => Vector256.Create(y[1], (1 - y[0] * y[0]) * y[1] - y[0], 0, 0),
        "E4" => Vector256.Create(y[1], 0.032 - 0.4 * y[1] * y[1], 0, 0),
        "E5" => Vector256.Create(y[1], Math.Sqrt(1 + y[1] * y[1]) / (25 - t), 0, 0),
        _ => Attracted(y),
    };

    private static Vector256<double> First(double slope) => Vector256.Create(slope, 0, 0, 0);

    private static Vector256<double> Orbit(double e) => Vector256.Create(1 - e, 0, 0, Math.Sqrt((1 + e) / (1 - e)));

    private static Vector256<double> Attracted(Vector256<double> y)
    {
        double r = Math.Sqrt(y[0] * y[0] + y[1] * y[1]), cube = r * r * r;
        return Vector256.Create(y[2], y[3], -y[0] / cube, -y[1] / cube);
    }
}

/// <summary>DETEST F1: an oscillator under a forcing of +1 and −1 in turns of a second. Switch: +1.</summary>
internal readonly record struct SquareForced : ISwitched
{
    private const double A = 0.1;

    public int Switches => 0;

    public Vector256<double> Derivative(double t, Vector256<double> y, uint on) =>
        Vector256.Create(y[1], 2 * A * y[1] - (Math.PI * Math.PI + A * A) * y[0] + ((on & 1) != 0 ? 1 : -1), 0, 0);

    public double Switch(int index, double t, Vector256<double> y) => 1;

    public uint Pass(uint on) => on ^ 1;
}

/// <summary>DETEST F2: y' = 55 − 1.5y and 55 − 0.5y in turns of a second. Switch: 1.5.</summary>
internal readonly record struct JumpingRate : ISwitched
{
    public int Switches => 0;

    public Vector256<double> Derivative(double t, Vector256<double> y, uint on) => Vector256.Create(55 - ((on & 1) != 0 ? 1.5 : 0.5) * y[0], 0, 0, 0);

    public double Switch(int index, double t, Vector256<double> y) => 1;

    public uint Pass(uint on) => on ^ 1;
}

/// <summary>A light body around two heavy ones in their turning frame, on an orbit that closes: Hairer, Nørsett, Wanner, section II.0.</summary>
internal readonly record struct Arenstorf : IRightHandSide
{
    public const double Period = 17.0652165601579625588917206249;
    private const double Mu = 0.012277471, Rest = 1 - Mu;

    public static Vector256<double> Start => Vector256.Create(0.994, 0, 0, -2.00158510637908252240537862224);

    /// <summary>r² + 2(1 − μ)/D1 + 2μ/D2 − v², constant along the orbit.</summary>
    public static double Jacobi(Vector256<double> y) =>
        y[0] * y[0] + y[2] * y[2] + 2 * Rest / Distance(y, -Mu) + 2 * Mu / Distance(y, Rest) - y[1] * y[1] - y[3] * y[3];

    public Vector256<double> Derivative(double t, Vector256<double> y)
    {
        double d1 = Math.Pow(Distance(y, -Mu), 3), d2 = Math.Pow(Distance(y, Rest), 3);
        return Vector256.Create(
            y[1], y[0] + 2 * y[3] - Rest * (y[0] + Mu) / d1 - Mu * (y[0] - Rest) / d2,
            y[3], y[2] - 2 * y[1] - Rest * y[2] / d1 - Mu * y[2] / d2);
    }

    private static double Distance(Vector256<double> y, double body) => Math.Sqrt((y[0] - body) * (y[0] - body) + y[2] * y[2]);
}
