namespace QuarterCar.Model.Springs;

/// <summary>
/// Sideways buckling of a helical compression spring, EN 13906-1:2013 (from memory, like every formula of check-values
/// section 4; algebra checked against a second form): lengths in m, deflection positive in compression.
/// s_K = L₀·½/(1 − G/E)·[1 − √(1 − (1 − G/E)/(½ + G/E)·(π·D/(ν·L₀))²)]; where the root's argument is negative it never buckles.
/// </summary>
public static class Buckling
{
    /// <summary>Young's modulus of oil-tempered spring wire, Pa (EN 10270-2): what coilover springs are mostly wound of.</summary>
    public const double SpringSteelE = 206e9;

    /// <summary>Shear modulus of the same wire, Pa.</summary>
    public const double SpringSteelG = 79.5e9;

    /// <summary>Seating factor ν with both ends guided parallel: plate and slider, or plate and coil nut.</summary>
    public const double BothEndsParallel = 0.5;

    /// <summary>Deflection at which the spring buckles, m; null where it never does.</summary>
    /// <param name="freeLength">L₀, m.</param>
    /// <param name="meanDiameter">D, m.</param>
    /// <param name="seating">ν: 0.5 both ends guided parallel, 0.7 one pivoted, 1 both pivoted, 2 one free.</param>
    /// <param name="e">E, Pa.</param>
    /// <param name="g">G, Pa.</param>
    public static double? Deflection(
        double freeLength, double meanDiameter, double seating = BothEndsParallel, double e = SpringSteelE, double g = SpringSteelG)
    {
        double ratio = g / e, slenderness = Math.PI * meanDiameter / (seating * freeLength);
        double argument = 1 - (1 - ratio) / (0.5 + ratio) * slenderness * slenderness;
        return argument < 0 ? null : freeLength * 0.5 / (1 - ratio) * (1 - Math.Sqrt(argument));
    }

    /// <summary>Deflection at which a spring buckles between parallel seats, m; null where it never does or its diameter is not known.</summary>
    public static double? Deflection(SpringData spring) => spring.CoilMean is { } mean ? Deflection(spring.FreeLength, mean) : null;
}
