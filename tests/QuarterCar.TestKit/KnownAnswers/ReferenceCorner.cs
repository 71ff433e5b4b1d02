using System.Runtime.Intrinsics;

using QuarterCar.TestKit.Running;

namespace QuarterCar.TestKit.KnownAnswers;

/// <summary>The road under the reference corner.</summary>
public enum ReferenceRoad
{
    /// <summary>REF-1: flat at 0, dropped from 0.3 m; time counts from touchdown.</summary>
    Drop,

    /// <summary>REF-2: 0.1 m higher from the start.</summary>
    Step,

    /// <summary>REF-3: straight up 0.15 m in 0.1 s.</summary>
    Ramp,
}

/// <summary>
/// The corner of the reference runs REF-1 to REF-3, written on its own: (zs, vs, zu, vu), up positive, 0 at free lengths
/// with the tyre just touching. Switches in the order of <see cref="Names"/>, and the droop stop.
/// </summary>
/// <param name="Road">Which run.</param>
public readonly record struct ReferenceCorner(ReferenceRoad Road) : IKnownAnswer, ISwitched
{
    private const double Sprung = 300, Unsprung = 60, TyreRate = 200e3, Pair = 24e3, Lower = 60e3, Crossover = 3200 / Pair;
    private const double BumpFace = 0.2, BumpRate = 2e5, BumpBend = 4e6, DroopRate = 5e5, Compression = 1500, Rebound = 3000;

    /// <summary>Names of the switches in the reference tables.</summary>
    public static readonly IReadOnlyList<string> Names = ["crossover", "bump", "v=0", "tyre"];

    /// <summary>End of the ramp, s.</summary>
    public const double RampEnd = 0.1;

    /// <summary>Switches that are on at the start: tyre pressed, strut about to shorten.</summary>
    public const uint OnAtStart = 0b01100;

    /// <inheritdoc/>
    public string Source => "check-values section 6 (C): eighth-order steps restarted at every event, relative error 1e-12; fixed steps of fourth order agree within 3e-8";

    /// <inheritdoc/>
    public Vector256<double> Start => Road == ReferenceRoad.Drop ? Vector256.Create(0, -2.425693715208, 0, -2.425693715208) : Static;

    /// <summary>Standing still.</summary>
    public static Vector256<double> Static
    {
        get
        {
            double zu = -(Sprung + Unsprung) * OneMass.G / TyreRate;
            return Vector256.Create(zu - Sprung * OneMass.G / Pair, 0, zu, 0);
        }
    }

    /// <inheritdoc/>
    public int Switches => 5;

    /// <inheritdoc/>
    public Vector256<double> Derivative(double t, Vector256<double> y, uint on)
    {
        double force = Strut(y, on), tyre = OneMass.Has(on, 3) ? TyreRate * (Height(t) - y[2]) : 0;
        return Vector256.Create(y[1], force / Sprung - OneMass.G, y[3], (tyre - force) / Unsprung - OneMass.G);
    }

    /// <summary>Force of springs, damper and stops, N; positive pushes the masses apart.</summary>
    public static double Strut(Vector256<double> y, uint on)
    {
        double s = y[2] - y[0], v = y[3] - y[1], q = s - BumpFace;
        double spring = OneMass.Has(on, 0) ? Pair * Crossover + Lower * (s - Crossover) : Pair * s;
        double bump = OneMass.Has(on, 1) ? BumpRate * q + BumpBend * q * q : 0;
        double droop = OneMass.Has(on, 4) ? DroopRate * s : 0;
        return spring + bump + droop + (OneMass.Has(on, 2) ? Compression : Rebound) * v;
    }

    /// <inheritdoc/>
    public double Switch(int index, double t, Vector256<double> y) => index switch
    {
        0 => y[2] - y[0] - Crossover,
        1 => y[2] - y[0] - BumpFace,
        2 => y[3] - y[1],
        3 => Height(t) - y[2],
        _ => y[0] - y[2],
    };

    private double Height(double t) => Road switch
    {
        ReferenceRoad.Drop => 0,
        ReferenceRoad.Step => 0.1,
        _ => t < RampEnd ? 1.5 * t : 0.15,
    };
}
