using System.Globalization;

using QuarterCar.Numerics.Signals;
using QuarterCar.Reports.Units;
using QuarterCar.Studies.Terrains;

using SkiaSharp;

namespace QuarterCar.Reports.Plots.Ground;

/// <summary>At which frequency does the corner work? Spectra of the sprung acceleration and of the tyre load, with ride and wheel-hop frequency.</summary>
internal static class ResponsePlot
{
    private const float Left = 76, Right = Sheet.Width - 24, Height = 170;
    private const double Lowest = 0.4, Highest = 50; // Hz

    private static readonly (double From, double To) Frequencies = (Math.Log10(Lowest), Math.Log10(Highest));

    /// <summary>Draws it.</summary>
    public static Sheet Draw(RunSamples samples, RunSpectra spectra)
    {
        var read = samples.Read;
        double g = read.Unit(Dimension.Acceleration).PerSi, force = read.Unit(Dimension.Force).PerSi;
        string sprung = Peak(spectra.Acceleration), load = Peak(spectra.TyreLoad);
        string title = sprung == load ? $"Sprung mass and tyre load both swing most at {load} Hz" : $"The sprung mass shakes most at {sprung} Hz, the tyre load swings most at {load} Hz";
        var sheet = new Sheet("response_spectra", title, "Spectra over the course, both axes in decades. Area under a linear plot is the mean square.")
        {
            Caption = "Peaks near the ride frequency ask for damping, near wheel hop for less unsprung mass or more damping; a peak of its own is washboard at this speed.",
        };
        var upper = Part(sheet, samples, spectra.Acceleration, g * g, sheet.Top + 8, "sprung mass, g²/Hz");
        LogAxes.Unlabelled(upper.Plot.Axes.Bottom, Frequencies);
        var lower = Part(sheet, samples, spectra.TyreLoad, force * force, upper.Data.Bottom + 22, $"tyre load, {read.Unit(Dimension.Force).Name}²/Hz");
        lower.Plot.Axes.Bottom.Label.Text = "frequency, Hz";
        AxisLabels.Style(lower);
        sheet.Height = lower.Data.Bottom + 52;
        return sheet;
    }

    private static Panel Part(Sheet sheet, RunSamples samples, Spectrum spectrum, double scale, float top, string label)
    {
        (double Frequency, double Density)[] shown =
        [
            .. Enumerable.Range(0, spectrum.Densities.Length).Select(i => (Frequency: spectrum.Frequency(i), Density: spectrum.Densities[i] * scale))
                .Where(p => p.Frequency is >= Lowest and <= Highest && p.Density > 0),
        ];
        var heights = LogAxes.Around(shown.Select(p => p.Density), 0.25);
        var panel = sheet.Add(new Panel(new SKRect(Left, top, Right, top + Height), Frequencies, heights));
        LogAxes.Fine(panel.Plot.Axes.Bottom, Frequencies);
        LogAxes.Decades(panel.Plot.Axes.Left, heights);
        panel.Plot.Axes.Left.Label.Text = label;
        AxisLabels.Style(panel);
        panel.Line(panel.Pixels(shown.Select(p => (Math.Log10(p.Frequency), Math.Log10(p.Density)))), Palette.Setup, 2);
        var figures = samples.Run.Standing.Figures;
        Mark(sheet, panel, figures.RideFrequency, "ride");
        Mark(sheet, panel, figures.WheelHopFrequency, "wheel hop");
        return panel;
    }

    private static void Mark(Sheet sheet, Panel panel, double? frequency, string word)
    {
        if (frequency is not { } f || f < Lowest || f > Highest) return;
        float x = panel.X(Math.Log10(f));
        sheet.Under(canvas => Marks.Line(canvas, new(x, panel.Data.Top), new(x, panel.Data.Bottom), Palette.Help, 1, [4, 3]));
        Marks.Label(sheet, panel, new(x, panel.Data.Bottom - 10), word);
    }

    private static string Peak(Spectrum spectrum)
    {
        int most = 0;
        for (int i = 0; i < spectrum.Densities.Length; i++)
        {
            if (spectrum.Densities[i] > spectrum.Densities[most]) most = i;
        }

        return spectrum.Frequency(most).ToString("0.0", CultureInfo.InvariantCulture);
    }
}
