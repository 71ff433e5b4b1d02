using System.Globalization;

using QuarterCar.Reports.Units;
using QuarterCar.Studies.Terrains;

namespace QuarterCar.Reports.Words;

/// <summary>What `terrain` prints: how rough the ground is in one sentence, then figures, then warnings.</summary>
public static class TerrainText
{
    /// <summary>Writes it.</summary>
    /// <param name="result">The ground.</param>
    /// <param name="writer">Where it goes.</param>
    /// <param name="colour">True where the writer is a terminal that shows colour.</param>
    public static void Write(TerrainResult result, TextWriter writer, bool colour = false)
    {
        var read = new Readable(result.Units);
        var page = new TextPage(writer, colour);
        page.Paragraph(result.Title).Paragraph(Verdict(result, read), "bold");
        page.Group(Figures(result, read)).Warnings(result.Warnings).Flush();
    }

    /// <summary>The answer in one sentence.</summary>
    public static string Verdict(TerrainResult result, Readable read)
    {
        var figures = result.Figures;
        var unit = read.Unit(Dimension.Distance);
        string length = (figures.Length * unit.PerSi).ToString(figures.Length < 100 ? "0.#" : "0", CultureInfo.InvariantCulture) + "\u00a0" + unit.Name;
        string index = figures.RoughnessIndex is { } iri ? $", International Roughness Index {Index(iri)} m/km" : "";
        return (figures.Fit, result.IsRough) switch
        {
            ({ } fit, true) => $"As rough as ISO 8608 class {fit.RoadClass} over {length}{index}.",
            (_, true) => $"No ISO 8608 class over {length}{index}.",
            _ => $"Single obstacles over {length}, from {read.Text(Dimension.Length, figures.Lowest)} to {read.Text(Dimension.Length, figures.Highest)}.",
        };
    }

    /// <summary>A density in m³ as people compare it: in millionths.</summary>
    public static string Density(double density) => (density * 1e6).ToString(density < 1e-6 ? "0.###" : density < 1e-4 ? "0.0" : "0", CultureInfo.InvariantCulture);

    private static string Index(double value) => value.ToString("0.00", CultureInfo.InvariantCulture);

    private static FigureGroup Figures(TerrainResult result, Readable read)
    {
        var figures = result.Figures;
        FigureLine Line(string words, Dimension dimension, double si) => new(words, read.Number(dimension, si), read.Unit(dimension).Name);
        return new("Ground",
        [
            Line("Length", Dimension.Distance, figures.Length),
            Line("Highest above its start", Dimension.Length, figures.Highest),
            Line("Lowest", Dimension.Length, figures.Lowest),
            new("Steepest slope", Degrees(figures.LargestSlope ?? double.PositiveInfinity), figures.LargestSlope is null ? "° (a vertical step)" : "°"),
            new("Density at 0.1 cycles/m, line of slope −2", figures.Fit is { } fit ? Density(fit.Density) : Readable.None, figures.Fit is null ? "" : "10⁻⁶ m³"),
            new("ISO 8608 class", figures.Fit?.RoadClass.ToString() ?? Readable.None, ""),
            new("International Roughness Index", figures.RoughnessIndex is { } iri ? Index(iri) : Readable.None, figures.RoughnessIndex is null ? "" : "m/km"),
        ]);
    }

    private static string Degrees(double slope) => (Math.Atan(slope) * 180 / Math.PI).ToString("0.0", CultureInfo.InvariantCulture);
}
