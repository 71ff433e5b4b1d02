namespace QuarterCar.Model.Tyre;

/// <summary>The tyre's vertical force, N: pushes, never pulls (physics.md section 2).</summary>
/// <param name="Rate">k_t, N/m.</param>
/// <param name="Damping">c_t, N·s/m.</param>
/// <param name="Sidewall">Deflection at which the rim takes part, m; infinite without rim.</param>
/// <param name="RimRate">k_rim, N/m.</param>
public readonly record struct TyreLaw(double Rate, double Damping, double Sidewall, double RimRate)
{
    /// <summary>The law of a tyre's words.</summary>
    public static TyreLaw Of(TyreData data) => new(data.Rate, data.Damping, data.Sidewall ?? double.PositiveInfinity, data.RimRate ?? 0);

    /// <summary>Force at a deflection (negative in the air) and its speed, N.</summary>
    public double Force(double deflection, double speed) =>
        deflection <= 0 ? 0 : Math.Max(0, Elastic(deflection) + Damping * speed);

    /// <summary>The part that is given back, N.</summary>
    public double Elastic(double deflection) =>
        deflection <= 0 ? 0 : Rate * deflection + (deflection > Sidewall ? RimRate * (deflection - Sidewall) : 0);

    /// <summary>Energy stored at a deflection, J.</summary>
    public double Energy(double deflection)
    {
        double rim = Math.Max(0, deflection - Sidewall);
        return deflection <= 0 ? 0 : 0.5 * Rate * deflection * deflection + 0.5 * RimRate * rim * rim;
    }

    /// <summary>Deflection that carries a load at rest, m.</summary>
    public double Deflection(double load) =>
        load <= Rate * Sidewall ? load / Rate : (load + RimRate * Sidewall) / (Rate + RimRate);
}
