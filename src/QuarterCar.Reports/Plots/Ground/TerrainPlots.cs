using System.Collections.Immutable;

using QuarterCar.Studies.Terrains;

namespace QuarterCar.Reports.Plots.Ground;

/// <summary>The pictures of a ground, and those that a run over a long one adds.</summary>
internal static class TerrainPlots
{
    /// <summary>Of a ground: the spectrum only where it is rough all along and has a class.</summary>
    public static ImmutableArray<Sheet> Of(TerrainResult result) =>
        IsClassed(result) ? [TerrainPlot.Draw(result), SpectrumPlot.Draw(result)] : [TerrainPlot.Draw(result)];

    /// <summary>Of a run; none on a short course or a drop.</summary>
    public static IEnumerable<Sheet> Of(RunSamples samples)
    {
        if (RunSpectra.Of(samples.Run) is not { } spectra) yield break;
        if (IsClassed(spectra.Ground)) yield return SpectrumPlot.Draw(spectra.Ground);
        yield return ResponsePlot.Draw(samples, spectra);
    }

    private static bool IsClassed(TerrainResult result) => result.IsRough && result.Figures.Fit is not null;
}
