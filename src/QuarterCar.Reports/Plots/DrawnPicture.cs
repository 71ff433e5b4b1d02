using System.Collections.Immutable;

using QuarterCar.Reports.Plots.Compare;
using QuarterCar.Reports.Studies;
using QuarterCar.Scenarios;
using QuarterCar.Studies;
using QuarterCar.Studies.Spreads;
using QuarterCar.Studies.Sweeps;

namespace QuarterCar.Reports.Plots;

/// <summary>A picture of the result files by itself, for who wants it elsewhere than in a folder.</summary>
public sealed class DrawnPicture
{
    private readonly Sheet _sheet;

    private DrawnPicture(Sheet sheet) => _sheet = sheet;

    /// <summary>Its file name without ending.</summary>
    public string Name => _sheet.Name;

    /// <summary>The answer in words.</summary>
    public string Title => _sheet.Title;

    /// <summary>What to look for.</summary>
    public string Caption => _sheet.Caption;

    /// <summary>The pictures of a run.</summary>
    public static ImmutableArray<DrawnPicture> Of(RunResult run) => All(RunPlots.Of(run));

    /// <summary>The pictures of a standing corner.</summary>
    public static ImmutableArray<DrawnPicture> Of(StandingResult standing) => All(RunPlots.Of(standing));

    /// <summary>The overlaid pictures of setups beside each other, the first <see cref="SetupStyles.Most"/> of them, lettered from A; none for none.</summary>
    public static ImmutableArray<DrawnPicture> Of(IReadOnlyList<(string Title, RunResult Run)> setups) =>
        setups.Count == 0 ? [] : All(ComparePlots.Of([.. setups.Take(SetupStyles.Most).Select((s, i) => (CompareTable.Mark(i), s.Title, s.Run))], setups[0].Run.Scenario.Units));

    /// <summary>The pictures of a spread; none where no sample ran.</summary>
    public static ImmutableArray<DrawnPicture> Of(SpreadResult spread, UnitSystem units) => All(SpreadPlots.Of(units, spread));

    /// <summary>The picture of a sweep; null where a table says more.</summary>
    public static DrawnPicture? Of(SweepResult sweep) => SweepPlot.Draw(sweep) is { } sheet ? new(sheet) : null;

    /// <summary>Makes ScottPlot letter the caller's own plots with the typeface of these pictures, on a machine without fonts too.</summary>
    public static void UseTypeface() => PlotFont.Use();

    /// <summary>As PNG.</summary>
    /// <param name="scale">Pixels a px, 800 px wide.</param>
    public byte[] Png(float scale) => _sheet.Png(scale);

    /// <summary>As SVG with real text.</summary>
    public string Svg() => _sheet.Svg();

    private static ImmutableArray<DrawnPicture> All(ImmutableArray<Sheet> sheets) => [.. sheets.Select(s => new DrawnPicture(s))];
}
