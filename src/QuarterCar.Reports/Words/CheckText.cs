using System.Globalization;

using QuarterCar.Model.Statics;
using QuarterCar.Reports.Units;
using QuarterCar.Studies;

namespace QuarterCar.Reports.Words;

/// <summary>What `check` prints: how the corner stands, then figures, springs, damping, fit, load cases, warnings.</summary>
public static class CheckText
{
    /// <summary>Writes it.</summary>
    /// <param name="result">The standing corner.</param>
    /// <param name="writer">Where it goes.</param>
    /// <param name="colour">True where the writer is a terminal that shows colour.</param>
    public static void Write(StandingResult result, TextWriter writer, bool colour = false)
    {
        var read = new Readable(result.Scenario.Units);
        var page = new TextPage(writer, colour);
        page.Paragraph(result.Scenario.Title).Paragraph(Verdict.Of(result), "bold");
        page.Group(FigureWords.Standing(result.Figures, read));
        Springs(page, result, read);
        Damping(page, result, read);
        if (result.Fit is { } fit) page.Group(Fit(fit, read)).Paragraph(Cautions.Wrench);
        Cases(page, result, read);
        page.Warnings(result.Warnings);
        page.Gap().Paragraph(Cautions.Springs).Flush();
    }

    private static void Springs(TextPage page, StandingResult result, Readable read)
    {
        if (result.Springs.IsEmpty) return;
        string Of(double? value) => read.Number(Dimension.Length, value);
        page.Rows(
            $"Springs, compression ({read.Unit(Dimension.Length).Name})",
            [
                .. result.Springs.Select(s => new[]
                {
                    s.Position, Of(s.CompressionFullDroop), Of(s.CompressionRideHeight), Of(s.CompressionFullBump), Of(s.BindClearanceFullBump), Of(s.BindsAtShaftShowing),
                }),
            ],
            [1, 2, 3, 4, 5],
            ["", "droop", "ride", "bump", "clear of bind", "binds at showing"]);
    }

    private static void Damping(TextPage page, StandingResult result, Readable read)
    {
        if (result.Damping.IsEmpty) return;
        page.Rows(
            "Damping ratio, of critical",
            [.. result.Damping.Select(d => new[] { d.Region, d.Direction, "at " + read.Text(Dimension.Velocity, d.ShaftVelocity), d.Ratio.ToString("F2", CultureInfo.InvariantCulture) })],
            [3]);
    }

    private static FigureGroup Fit(FitFigures fit, Readable read)
    {
        FigureLine Line(string words, Dimension dimension, double? value) => new(words, read.Number(dimension, value), value is null ? "" : read.Unit(dimension).Name);
        return new("Fit on the body",
        [
            Line("Stack, free", Dimension.Length, fit.StackFree),
            Line("Least preload", Dimension.Length, fit.LeastPreload),
            Line("Most preload", Dimension.Length, fit.MostPreload),
            Line("Coil nut from the top of its thread", Dimension.Length, fit.NutFromTop),
            Line("Thread left", Dimension.Length, fit.ThreadLeft),
            new("Preload in turns", Readable.Number(new("", 1, 1), fit.PreloadTurns), fit.PreloadTurns is null ? "" : "turns"),
            Line("Force to assemble", Dimension.Force, fit.AssemblyForce),
            Line("Energy stored when assembled", Dimension.Energy, fit.AssemblyEnergy),
            Line("Clearance around the body", Dimension.Length, fit.RadialClearance),
        ]);
    }

    private static void Cases(TextPage page, StandingResult result, Readable read)
    {
        if (result.Cases.IsEmpty) return;
        page.Rows(
            "Load cases",
            [
                .. result.Cases.Select(c => new[]
                {
                    c.Name, read.Number(Dimension.Length, c.Static.RideHeight), read.Number(Dimension.Length, c.Static.CrossoverShaftShowing), read.Number(Dimension.Frequency, c.Static.RideFrequency),
                }),
            ],
            [1, 2, 3],
            ["", "ride height, " + read.Unit(Dimension.Length).Name, "crossover at", "Hz"]);
    }
}
