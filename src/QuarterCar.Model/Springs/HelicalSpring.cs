namespace QuarterCar.Model.Springs;

/// <summary>
/// A cylindrical compression spring of round wire, SI: lengths in m, rate in N/m, stresses and moduli in Pa.
/// Formulas of EN 13906-1:2013, the same as those of Shigley, Mechanical Engineering Design, chapter 10; all from memory,
/// their algebra and numbers computed independently (check-values section 4). Buckling is <see cref="Buckling"/>'s.
/// </summary>
/// <param name="Wire">d, m.</param>
/// <param name="Mean">D, mean diameter of the coils, m.</param>
/// <param name="Active">n, active coils.</param>
/// <param name="ShearModulus">G, Pa.</param>
/// <param name="Density">kg/m³.</param>
public readonly record struct HelicalSpring(
    double Wire, double Mean, double Active, double ShearModulus = Buckling.SpringSteelG, double Density = HelicalSpring.SteelDensity)
{
    /// <summary>Spring steel, kg/m³.</summary>
    public const double SteelDensity = 7850;

    /// <summary>Coils of a cold-wound spring beyond the active ones, ends closed.</summary>
    public const double ColdEndCoils = 2;

    /// <summary>Coils of a hot-wound spring beyond the active ones.</summary>
    public const double HotEndCoils = 1.5;

    /// <summary>w = D/d.</summary>
    public double Index => Mean / Wire;

    /// <summary>G·d⁴/(8·D³·n), N/m.</summary>
    public double Rate => ShearModulus * Math.Pow(Wire, 4) / (8 * Math.Pow(Mean, 3) * Active);

    /// <summary>Active coils that give a rate: <see cref="Rate"/> solved for n.</summary>
    public static double ActiveFor(double rate, double wire, double mean, double shearModulus = Buckling.SpringSteelG) =>
        shearModulus * Math.Pow(wire, 4) / (8 * Math.Pow(mean, 3) * rate);

    /// <summary>Wahl's stress correction, (4w − 1)/(4w − 4) + 0.615/w.</summary>
    public double WahlFactor => (4 * Index - 1) / (4 * Index - 4) + 0.615 / Index;

    /// <summary>Bergsträsser's stress correction, (w + ½)/(w − ¾), the one of EN 13906-1.</summary>
    public double BergstraesserFactor => (Index + 0.5) / (Index - 0.75);

    /// <summary>Shear stress without correction, 8·F·D/(π·d³), Pa.</summary>
    /// <param name="force">N.</param>
    public double ShearStress(double force) => 8 * force * Mean / (Math.PI * Wire * Wire * Wire);

    /// <summary>The force at which the stress without correction reaches a value, N.</summary>
    /// <param name="stress">Pa.</param>
    public double ForceAt(double stress) => stress * Math.PI * Wire * Wire * Wire / (8 * Mean);

    /// <summary>Solid length with ground ends, n_t·d, m.</summary>
    /// <param name="endCoils">Coils beyond the active ones.</param>
    public double SolidLengthGround(double endCoils = ColdEndCoils) => (Active + endCoils) * Wire;

    /// <summary>Solid length with unground ends by EN 13906-1, (n_t + 1.5)·d, m.</summary>
    /// <param name="endCoils">Coils beyond the active ones.</param>
    public double SolidLengthUnground(double endCoils = ColdEndCoils) => (Active + endCoils + 1.5) * Wire;

    /// <summary>Solid length with squared, unground ends by Shigley, (n_t + 1)·d, m.</summary>
    /// <param name="endCoils">Coils beyond the active ones.</param>
    public double SolidLengthSquared(double endCoils = ColdEndCoils) => (Active + endCoils + 1) * Wire;

    /// <summary>Least sum of the gaps between coils in static use, cold wound, n·(0.0015·D²/d + 0.1·d), m; 1.5 times that in dynamic use.</summary>
    public double LeastGapCold => Active * (0.0015 * Mean * Mean / Wire + 0.1 * Wire);

    /// <summary>Least sum of the gaps between coils in static use, hot wound, 0.02·n·(D + d), m; twice that in dynamic use.</summary>
    public double LeastGapHot => 0.02 * Active * (Mean + Wire);

    /// <summary>Mass of the active coils, kg.</summary>
    public double ActiveMass => Density * Math.PI * Math.PI * Wire * Wire * Mean * Active / 4;

    /// <summary>First surge frequency, both ends held, d/(2·√2·π·n·D²)·√(G/ρ) = ½·√(rate/active mass), Hz.</summary>
    public double SurgeFrequency => Wire / (2 * Math.Sqrt(2) * Math.PI * Active * Mean * Mean) * Math.Sqrt(ShearModulus / Density);
}
