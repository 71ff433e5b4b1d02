using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Quantities;

namespace QuarterCar.Web.Form;

/// <summary>How far one press of an arrow key goes: what a hand would do, a turn of the coil nut, ¼ in of gap, a click's worth.</summary>
internal static class StepSizes
{
    /// <summary>Pitch of a coil-nut thread where the scenario does not give it, m (common practice, no source).</summary>
    public const double UsualPitch = 2e-3;

    private const double Inch = ExactUnits.Inch, Foot = ExactUnits.Foot;

    /// <summary>Pitch of the coil nut's thread, m: as given, else the usual one.</summary>
    public static double Pitch(DocumentNode root) => PitchGiven(root) ?? UsualPitch;

    /// <summary>Pitch of the coil nut's thread as given, m; null without one.</summary>
    public static double? PitchGiven(DocumentNode root) =>
        root.Find([PathStep.Key("coilover"), PathStep.Key("body"), PathStep.Key("thread_pitch")]) is ScalarNode s && Measured.TryParse(s.Text, out Measured m) && m.Dimension == Dimension.Length && m.Si > 0 ? m.Si : null;

    /// <summary>SI.</summary>
    /// <param name="path">Dotted path.</param>
    /// <param name="dimension">What stands there.</param>
    /// <param name="units">Units of the page: steps are round in them.</param>
    /// <param name="pitch">Of the coil nut's thread, m.</param>
    public static double Of(string path, Dimension dimension, UnitSystem units, double pitch)
    {
        bool us = units == UnitSystem.Us;
        string last = path[(path.LastIndexOf('.') + 1)..];
        return dimension switch
        {
            Dimension.Length => path == "coilover.preload" ? pitch : Length(path, last, us),
            Dimension.Force => last is "friction" ? Pick(us, 2 * ExactUnits.PoundForce, 10) : Pick(us, 10 * ExactUnits.PoundForce, 50),
            Dimension.SpringRate => path == "tyre.rate" ? Pick(us, 50 * ExactUnits.PoundForcePerInch, 10e3) : path.StartsWith("coilover.springs", StringComparison.Ordinal) ? Pick(us, 25 * ExactUnits.PoundForcePerInch, 5e3) : Pick(us, 5000 * ExactUnits.PoundForcePerInch, 1e6),
            Dimension.Damping => Pick(us, 0.25 * ExactUnits.PoundForceSecondPerInch, 50),
            Dimension.Speed => Pick(us, 0.5 * ExactUnits.MilePerHour, 1 * ExactUnits.KilometrePerHour),
            Dimension.Pressure => Pick(us, 10 * ExactUnits.PoundForcePerSquareInch, 0.5e5),
            Dimension.Volume => Pick(us, ExactUnits.CubicInch, 10e-6),
            Dimension.Time => last == "duration" ? 0.5 : 1e-3,
            Dimension.Temperature => Pick(us, 10 * ExactUnits.FahrenheitDegree, 5),
            Dimension.Loss => Pick(us, 0.005 * ExactUnits.SecondPerInch, 0.05),
            _ => last == "motion_ratio" ? 0.01 : last == "exponent" ? 0.05 : 0.1,
        };
    }

    private static double Length(string path, string last, bool us) => last switch
    {
        "stroke" or "free_length" or "step" or "rise" or "height" => Pick(us, Inch, 25e-3),
        "solid_length" or "slider" => Pick(us, 0.1 * Inch, 2e-3),
        "wire_diameter" => Pick(us, 0.01 * Inch, 0.25e-3),
        "mean_diameter" or "inner_diameter" or "rod_diameter" or "diameter" => Pick(us, 0.125 * Inch, 2e-3),
        "radius" or "footprint" or "sidewall" or "seat_length" or "thread" => Pick(us, 0.5 * Inch, 10e-3),
        "thread_pitch" => 0.25e-3,
        "flat" or "length" or "spacing" when path.StartsWith("terrain", StringComparison.Ordinal) => Pick(us, Foot, 0.5),
        _ => Pick(us, Inch / 4, 5e-3),
    };

    private static double Pick(bool us, double inches, double metric) => us ? inches : metric;
}
