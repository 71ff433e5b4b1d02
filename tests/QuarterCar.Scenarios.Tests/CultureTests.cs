using System.Globalization;

using QuarterCar.Scenarios.Keys;

namespace QuarterCar.Scenarios.Tests;

/// <summary>The answer does not depend on the machine's culture, nor on the units that the file speaks.</summary>
public class CultureTests
{
    [Theory, InlineData("en-US"), InlineData("de-DE"), InlineData("tr-TR")]
    public void Reading_is_the_same_in_every_culture(string culture)
    {
        var before = (Readings.Read(Readings.Bench).Good().Hash, Wrong());
        var old = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            Assert.Equal(before.Hash, Readings.Read(Readings.Bench).Good().Hash);
            Assert.Equal(before.Item2, Wrong());
        }
        finally
        {
            CultureInfo.CurrentCulture = old;
        }
    }

    [Fact]
    public void Template_has_full_stops() => Assert.Contains("0.875 in", ScenarioTemplate.Text, StringComparison.Ordinal);

    private static string[] Wrong() =>
        Readings.Read(Readings.Bench, "coilover.gas.volume=3.5 in^3", "run.sample=1e-9 s", "terrain[0].flat=1,5 m", "run.tolerance=0.5").Lines();

    [Fact]
    public void US_text_and_SI_text_of_one_scenario_give_the_same_numbers()
    {
        // By hand from the exact inch and pound-force; each SI decimal below is exact or has 17 figures.
        var si = Readings.Bench
            .Replace("800 lbf", "3558.5772922084 N", StringComparison.Ordinal)
            .Replace("140 lbf", "622.75102613647 N", StringComparison.Ordinal)
            .Replace("1200 lbf/in", "210.15220229577165 N/mm", StringComparison.Ordinal)
            .Replace("17 in", "431.8 mm", StringComparison.Ordinal)
            .Replace("stroke: 12 in", "stroke: 304.8 mm", StringComparison.Ordinal)
            .Replace("150 lbf/in, free_length: 12 in, solid_length: 4.5 in", "26.269025286971457 kN/m, free_length: 30.48 cm, solid_length: 0.1143 m", StringComparison.Ordinal)
            .Replace("225 lbf/in, free_length: 14 in, solid_length: 5.6 in", "39403.537930457185 N/m, free_length: 355.6 mm, solid_length: 142.24 mm", StringComparison.Ordinal)
            .Replace("preload: 1.5 in", "preload: 38.1 mm", StringComparison.Ordinal)
            .Replace("gap: 1.2 in", "gap: 30.48 mm", StringComparison.Ordinal)
            .Replace("180 psi, rod_diameter: 0.875 in, volume: 28 in^3", "12.41056312770305 bar, rod_diameter: 22.225 mm, volume: 458.837792 cm^3", StringComparison.Ordinal)
            .Replace("flat: 10 ft", "flat: 3.048 m", StringComparison.Ordinal)
            .Replace("step: -20 in", "step: -508 mm", StringComparison.Ordinal)
            .Replace("6 mph", "9.656064 km/h", StringComparison.Ordinal);
        var us = Readings.Read(Readings.Bench).Good();
        var metric = Readings.Read(si).Good();

        Assert.Equal((UnitSystem.Us, UnitSystem.Si), (us.Units, metric.Units));
        var (a, b) = (Numbers(us), Numbers(metric));
        Assert.Equal(a.Length, b.Length);
        Assert.All(a.Zip(b), pair => Assert.Equal(pair.First, pair.Second, Math.Abs(pair.First) * 1e-12)); // the shortest decimals above are rounded at 1e-16
    }

    private static double[] Numbers(Scenario s)
    {
        var c = s.Corner.Coilover;
        var course = (Course)s.Excitation;
        return
        [
            s.Corner.SprungWeight!.Value, s.Corner.UnsprungWeight, s.Corner.Tyre.Rate, s.Corner.Tyre.Radius!.Value, c.Stroke,
            c.Springs.Upper!.Rate, c.Springs.Upper.FreeLength, c.Springs.Upper.SolidLength, c.Springs.Lower.Rate, c.Springs.Lower.FreeLength, c.Springs.Lower.SolidLength,
            c.Preload, c.StopNut!.Length, c.Gas!.Pressure, c.Gas.RodDiameter, c.Gas.Volume, course.Speed,
            ((Model.Terrain.FlatPiece)course.Pieces[0]).Length, ((Model.Terrain.StepPiece)course.Pieces[1]).Height,
        ];
    }
}
