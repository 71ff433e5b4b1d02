using System.Globalization;
using System.Text.RegularExpressions;

using CsCheck;

using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Quantities;
using QuarterCar.Scenarios.Reading;

namespace QuarterCar.Studies.Tests.RandomCorners;

/// <summary>A random corner as the text of a scenario, in metric or in US words: reader, corner, run and figures are all part of what is tried.</summary>
/// <param name="Template">The text, each quantity as &lt;SI value|dimension&gt;.</param>
internal sealed partial record CornerCase(string Template)
{
    private const int Faces = 96;

    /// <summary>Corners that somebody could build.</summary>
    public static readonly Gen<CornerCase> Plausible = Gen.Double[0, 1].Array[Faces].Select(f => new CornerCase(CornerWords.Plausible(new Dice(f))));

    /// <summary>Corners at the edges of what the reader accepts.</summary>
    public static readonly Gen<CornerCase> Wild = Gen.Double[0, 1].Array[Faces].Select(f => new CornerCase(CornerWords.Wild(new Dice(f))));

    public static Gen<CornerCase> Of(string kind) => kind == "wild" ? Wild : Plausible;

    /// <summary>How many corners a test tries: QUARTERCAR_CORNERS, else so many.</summary>
    public static long Count(long standard) =>
        Number("QUARTERCAR_CORNERS", standard);


    /// <summary>How many corners a second opinion is asked on: QUARTERCAR_OPINIONS, else so many.</summary>
    public static long Opinions(long standard) => Number("QUARTERCAR_OPINIONS", standard);

    public string Si => Write(us: false);

    public string Us => Write(us: true);

    /// <summary>Reads a text; null where the reader refuses it with its problems.</summary>
    public static Scenario? Read(string text, params string[] sets)
    {
        ReadResult read = ScenarioReader.ReadText("random.yaml", text, ReadOptions.Plain with { Sets = [.. sets], Base = StandingBase.Instance });
        if (read.Scenario is null && read.Problems.IsEmpty)
            throw new InvalidOperationException("refused without a reason");
        return read.Scenario;
    }

    private static long Number(string variable, long standard) =>
        long.TryParse(Environment.GetEnvironmentVariable(variable), CultureInfo.InvariantCulture, out long n) ? n : standard;

    private string Write(bool us) => Quantity().Replace(Template, m =>
    {
        double si = double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture);
        (double size, string unit) = m.Groups[2].Value switch
        {
            "N" => us ? (ExactUnits.PoundForce, "lbf") : (1, "N"),
            "m" => us ? (ExactUnits.Inch, "in") : (1, "m"),
            "N/m" => us ? (ExactUnits.PoundForcePerInch, "lbf/in") : (1, "N/m"),
            "m/s" => us ? (ExactUnits.Inch, "in/s") : (1, "m/s"),
            "N*s/m" => us ? (ExactUnits.PoundForceSecondPerInch, "lbf*s/in") : (1, "N*s/m"),
            "Pa" => us ? (ExactUnits.PoundForcePerSquareInch, "psi") : (1e3, "kPa"),
            "m^3" => us ? (ExactUnits.CubicInch, "in^3") : (1e-6, "cm^3"),
            "s/m" => us ? (ExactUnits.SecondPerInch, "s/in") : (1, "s/m"),
            _ => throw new InvalidOperationException(m.Value),
        };
        return (si / size).ToString("R", CultureInfo.InvariantCulture) + " " + unit;
    });

    [GeneratedRegex(@"<([^|>]+)\|([^>]+)>")]
    private static partial Regex Quantity();
}
