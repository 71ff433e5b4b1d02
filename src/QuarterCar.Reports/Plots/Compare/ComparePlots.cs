using System.Collections.Immutable;

using QuarterCar.Reports.Units;
using QuarterCar.Scenarios;
using QuarterCar.Studies;

namespace QuarterCar.Reports.Plots.Compare;

/// <summary>The overlaid pictures of a comparison: shaft showing over distance, force over travel, bars of travel use.</summary>
internal static class ComparePlots
{
    /// <summary>Of the first setups that ran; one whose numbers left their range at once has no line. None where no setup has one.</summary>
    /// <param name="setups">Letter, title and run of each; at most <see cref="SetupStyles.Most"/> are drawn.</param>
    /// <param name="units">Of the pictures.</param>
    public static ImmutableArray<Sheet> Of(IReadOnlyList<(string Mark, string Title, RunResult Run)> setups, UnitSystem units)
    {
        var ran = setups.Take(SetupStyles.Most)
            .Select((s, i) => (Place: i, s.Mark, s.Title, s.Run))
            .Where(s => RunSamples.HasAny(s.Run))
            .ToArray();
        if (ran.Length == 0) return [];
        ImmutableArray<RunSamples> samples = Together([.. ran.Select(s => RunSamples.Of(s.Run with { Scenario = s.Run.Scenario with { Units = units } }))]);
        ImmutableArray<DrawnSetup> drawn = [.. samples.Select((s, i) => SetupStyles.Of(ran[i].Place, ran[i].Mark, ran[i].Title, s))];
        var read = new Readable(units);
        return [CompareShaftPlot.Draw(drawn, read), CompareTravelUsePlot.Draw(drawn, read), CompareForcePlot.Draw(drawn, read)];
    }

    // One stretch for all: from where the first begins to move to where the last comes to rest. A drop has no distance: beside one, courses are drawn over time.
    private static ImmutableArray<RunSamples> Together(ImmutableArray<RunSamples> samples)
    {
        bool overTime = !samples.All(s => s.OverDistance);
        double Speed(RunSamples s) => s.Run.Scenario.Excitation is Course c && !overTime ? c.Speed : 1;
        double first = samples.Min(s => s.First * Speed(s)), last = samples.Max(s => s.Last * Speed(s));
        return [.. samples.Select(s => s.Within(first / Speed(s), last / Speed(s), overTime))];
    }
}
