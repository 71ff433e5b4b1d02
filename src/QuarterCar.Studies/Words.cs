using QuarterCar.Scenarios;

namespace QuarterCar.Studies;

/// <summary>Quantities in the words of a message, rounded to what a wrench can set.</summary>
internal static class Words
{
    private const double Inch = 0.0254;
    private const double PoundForce = 0.45359237 * 9.80665;
    private const double MilesPerHour = 0.44704;

    /// <summary>A length: 0.01 in, 0.1 mm.</summary>
    public static string Length(double metres, UnitSystem units) => units == UnitSystem.Us
        ? FormattableString.Invariant($"{metres / Inch:0.00} in")
        : FormattableString.Invariant($"{metres * 1000:0.0} mm");

    /// <summary>A force: 1 lbf, 1 N.</summary>
    public static string Force(double newtons, UnitSystem units) => units == UnitSystem.Us
        ? FormattableString.Invariant($"{newtons / PoundForce:0} lbf")
        : FormattableString.Invariant($"{newtons:0} N");

    /// <summary>A rate: 1 lbf/in, 0.1 N/mm.</summary>
    public static string Rate(double newtonsPerMetre, UnitSystem units) => units == UnitSystem.Us
        ? FormattableString.Invariant($"{newtonsPerMetre * Inch / PoundForce:0} lbf/in")
        : FormattableString.Invariant($"{newtonsPerMetre / 1000:0.0} N/mm");

    /// <summary>An energy: 1 ft·lbf, 1 J.</summary>
    public static string Energy(double joules, UnitSystem units) => units == UnitSystem.Us
        ? FormattableString.Invariant($"{joules / (12 * Inch * PoundForce):0} ft·lbf")
        : FormattableString.Invariant($"{joules:0} J");

    /// <summary>A share as whole percent.</summary>
    public static string Percent(double share) => FormattableString.Invariant($"{100 * share:0} %");

    /// <summary>A share as percent, with the decimals that tell it from both ends of a band: "10 %, outside 10 to 20 %" denies itself.</summary>
    public static string Percent(double share, double from, double to) => Apart(100 * share, 0, 100 * from, 100 * to) + " %";

    /// <summary>A number with at least so many decimals, and as many more as tell it from some bounds.</summary>
    public static string Apart(double value, int decimals, params ReadOnlySpan<double> bounds)
    {
        const int most = 12;
        for (; ; decimals++)
        {
            string text = Text(value);
            bool same = false;
            foreach (double bound in bounds) same |= Text(bound) == text;
            if (!same || decimals == most) return text;
        }

        string Text(double number) => number.ToString("F" + decimals, System.Globalization.CultureInfo.InvariantCulture);
    }

    /// <summary>A distance along the ground: feet or metres.</summary>
    public static string Distance(double metres, UnitSystem units) => units == UnitSystem.Us
        ? FormattableString.Invariant($"{metres / (12 * Inch):0.0} ft")
        : FormattableString.Invariant($"{metres:0.00} m");

    /// <summary>A speed of the shaft: 1 in/s, 0.01 m/s.</summary>
    public static string ShaftSpeed(double metresPerSecond, UnitSystem units) => units == UnitSystem.Us
        ? FormattableString.Invariant($"{metresPerSecond / Inch:0} in/s")
        : FormattableString.Invariant($"{metresPerSecond:0.00} m/s");

    /// <summary>A speed of travel.</summary>
    public static string Speed(double metresPerSecond, UnitSystem units) => units == UnitSystem.Us
        ? FormattableString.Invariant($"{metresPerSecond / MilesPerHour:0.#} mph")
        : FormattableString.Invariant($"{metresPerSecond * 3.6:0.#} km/h");
}
