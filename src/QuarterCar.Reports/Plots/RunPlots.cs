using System.Collections.Immutable;

using QuarterCar.Reports.Plots.Ground;
using QuarterCar.Studies;

namespace QuarterCar.Reports.Plots;

/// <summary>The pictures of one run, and of one standing corner.</summary>
internal static class RunPlots
{
    /// <summary>Of a run, in the order of the report; of one whose numbers left their range at once, the standing corner's.</summary>
    public static ImmutableArray<Sheet> Of(RunResult run)
    {
        if (!RunSamples.HasAny(run)) return Of(run.Standing);
        var samples = RunSamples.Of(run);
        Sheet?[] sheets =
        [
            ShaftTravelPlot.Draw(samples), TravelUsePlot.Draw(samples), ForceTravelPlot.Draw(run.Standing, samples),
            DamperPlot.Draw(samples), TyreLoadPlot.Draw(samples), AccelerationPlot.Draw(samples),
        ];
        return [.. sheets.OfType<Sheet>(), .. TerrainPlots.Of(samples)];
    }

    /// <summary>Of a standing corner.</summary>
    public static ImmutableArray<Sheet> Of(StandingResult standing) => [ForceTravelPlot.Draw(standing, null), RatesPlot.Draw(standing)];
}
