using System.Runtime.CompilerServices;

using QuarterCar.Numerics;

namespace QuarterCar.Model.Shaft;

/// <summary>Dry friction of the shaft, N, with the velocity's sign: F·tanh(ẋ/v_ref) (physics.md section 4).</summary>
/// <param name="Force">Friction force, N.</param>
public readonly record struct FrictionLaw(double Force)
{
    /// <summary>Velocity over which friction builds up, m/s.</summary>
    public const double ReferenceVelocity = 0.01;

    /// <summary>Force at a shaft velocity, N.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double At(double velocity) => Force * TanhTable.Tanh(velocity * (1 / ReferenceVelocity));
}

/// <summary>A stop of one rate, Hunt and Crossley contact (J. Appl. Mech. 42, 1975, 440–445; physics.md section 4). N, positive against penetration.</summary>
/// <param name="Rate">N/m.</param>
/// <param name="Loss">λ, s/m.</param>
public readonly record struct StopLaw(double Rate, double Loss)
{
    /// <summary>Force.</summary>
    /// <param name="q">Penetration, m; no force where it is not positive.</param>
    /// <param name="qDot">m/s, positive while closing.</param>
    public double Force(double q, double qDot) => q <= 0 ? 0 : Rate * q * Math.Max(0, 1 + Loss * qDot);

    /// <summary>Energy stored at a penetration, J.</summary>
    public double Energy(double q) => q <= 0 ? 0 : 0.5 * Rate * q * q;
}

/// <summary>A bump stop: straight-line force over compression with a Hunt and Crossley loss (physics.md section 4).</summary>
/// <param name="Lines">N over m from (0, 0).</param>
/// <param name="Loss">λ, s/m.</param>
/// <param name="OnAxle">True on the axle.</param>
/// <param name="Length">m.</param>
public sealed record BumpStopLaw(StraightLines Lines, double Loss, bool OnAxle, double Length)
{
    /// <summary>The law of a bump stop's words.</summary>
    public static BumpStopLaw Of(BumpStopData data)
    {
        double[] q = [0, .. data.Force.Select(p => p.At)], f = [0, .. data.Force.Select(p => p.Value)];
        return new BumpStopLaw(new StraightLines(q, f), data.Loss, data.OnAxle, data.Length);
    }

    /// <summary>Force at a compression and its speed (positive while closing), N.</summary>
    public double Force(double q, double qDot) => q <= 0 ? 0 : Lines.At(q) * Math.Max(0, 1 + Loss * qDot);

    /// <summary>Energy stored at a compression, J.</summary>
    public double Energy(double q) => q <= 0 ? 0 : Lines.Integral(q);
}

/// <summary>Gas on the rod (physics.md section 4). N, pushing the shaft out, positive in bump.</summary>
/// <param name="Area">Rod section A, m².</param>
/// <param name="ChargedPressure">P₁, absolute, at full droop and present temperature, Pa.</param>
/// <param name="Volume">V at full droop, m³.</param>
/// <param name="Exponent">n while moving.</param>
public readonly record struct GasLaw(double Area, double ChargedPressure, double Volume, double Exponent)
{
    /// <summary>Standard atmosphere, Pa.</summary>
    public const double Atmosphere = 101_325;

    /// <summary>The law of a charge's words.</summary>
    public static GasLaw Of(GasData data) =>
        new(data.RodArea, (data.Pressure + Atmosphere) * data.Temperature / data.ChargeTemperature, data.Volume, data.Exponent);

    /// <summary>Standing force at a shaft travel (isothermal), N.</summary>
    public double Standing(double x) => Area * (ChargedPressure * Volume / (Volume - Area * x) - Atmosphere);

    /// <summary>Slope of <see cref="Standing"/>, N/m.</summary>
    public double StandingRate(double x) => Area * Area * ChargedPressure * Volume / ((Volume - Area * x) * (Volume - Area * x));

    /// <summary>Force at a shaft travel in a motion that started standing at another, N.</summary>
    /// <param name="x">Shaft travel, m.</param>
    /// <param name="x0">Where the motion started, m.</param>
    public double Moving(double x, double x0) => Area * (Factor(x0) * Math.Pow(Volume - Area * x, -Exponent) - Atmosphere);

    /// <summary>Slope of <see cref="Moving"/>, N/m.</summary>
    public double MovingRate(double x, double x0) => Area * Area * Exponent * Factor(x0) * Math.Pow(Volume - Area * x, -Exponent - 1);

    /// <summary>Energy that the moving gas has taken since x = 0, J: the integral of <see cref="Moving"/>.</summary>
    public double MovingEnergy(double x, double x0)
    {
        double now = Volume - Area * x, work = Exponent == 1
            ? Math.Log(Volume / now)
            : (Math.Pow(now, 1 - Exponent) - Math.Pow(Volume, 1 - Exponent)) / (Exponent - 1);
        return Factor(x0) * work - Area * Atmosphere * x;
    }

    /// <summary>P₁·V·V₀ⁿ⁻¹, the constant of the polytrope that leaves the standing state at x₀.</summary>
    public double Factor(double x0) => ChargedPressure * Volume * Math.Pow(Volume - Area * x0, Exponent - 1);
}

/// <summary>The damper: force over shaft velocity, multiplied by position zones (physics.md section 4). N, with the velocity's sign.</summary>
public sealed class DamperLaw
{
    private readonly DamperZone[] _zones;

    private DamperLaw(StraightLines lines, DamperZone[] zones)
    {
        Lines = lines;
        _zones = zones;
    }

    /// <summary>N over m/s, rebound negative, through the origin.</summary>
    public StraightLines Lines { get; }

    /// <summary>The law of a damper's words.</summary>
    /// <param name="data">The words.</param>
    /// <param name="stroke">m: a zone that ends there goes on past it.</param>
    public static DamperLaw Of(DamperData data, double stroke)
    {
        double[] v = [.. data.Rebound.Reverse().Select(p => -p.At), 0, .. data.Compression.Select(p => p.At)];
        double[] f = [.. data.Rebound.Reverse().Select(p => -p.Value), 0, .. data.Compression.Select(p => p.Value)];
        DamperZone[] zones =
        [
            .. data.Zones.Select(z => z with
            {
                From = z.From <= 0 ? double.NegativeInfinity : z.From,
                To = z.To >= stroke ? double.PositiveInfinity : z.To,
            }),
        ];
        return new DamperLaw(new StraightLines(v, f), zones);
    }

    /// <summary>Shaft travels at which a factor changes, m.</summary>
    public IEnumerable<double> Edges => _zones.SelectMany(z => new[] { z.From, z.To }).Where(double.IsFinite);

    /// <summary>Factors of compression and rebound at a shaft travel.</summary>
    public (double Compression, double Rebound) Factors(double x)
    {
        double c = 1, r = 1;
        foreach (DamperZone z in _zones)
        {
            if (x >= z.From && x < z.To)
                (c, r) = (c * z.Compression, r * z.Rebound);
        }

        return (c, r);
    }

    /// <summary>Force at a shaft travel and velocity, N.</summary>
    public double Force(double x, double velocity)
    {
        (double c, double r) = Factors(x);
        return Lines.At(velocity) * (velocity > 0 ? c : r);
    }
}
