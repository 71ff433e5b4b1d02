using System.Collections.Immutable;

using QuarterCar.Model.Statics;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Studies;

namespace QuarterCar.Reports.SetupSheet;

/// <summary>What a setup sheet is about.</summary>
/// <param name="Result">The corner as it stands.</param>
/// <param name="Date">The day on which it was made.</param>
/// <param name="Case">The load case taken; null for the scenario as written.</param>
/// <param name="Changes">Overrides as given, path=value.</param>
/// <param name="CaseComesLast">The load case was applied to the changed scenario; else the changes to the loaded one.</param>
/// <param name="Nut">What was asked of the stop nut; null for nothing.</param>
public sealed record SheetSubject(StandingResult Result, DateOnly Date, string? Case, ImmutableArray<string> Changes, bool CaseComesLast = false, NutRule? Nut = null)
{
    /// <summary>What whoever handles the coilover must know.</summary>
    internal HandlingFigures Handling { get; } = HandlingFigures.Of(Result.Corner);

    /// <summary>Both unit systems.</summary>
    internal BothUnits Units { get; } = new(Result.Scenario.Units);

    /// <summary>Stack without load, slider included, m; null where the slider's height is not given.</summary>
    internal double? StackFree => FitWork.StackFree(Result.Scenario.Corner.Coilover.Springs, Result.Scenario.Corner.Coilover.Body ?? new(null, null, null, null, null));

    /// <summary>From the spring plate to the coil nut with the shaft fully extended, m; null where the slider's height is not given.</summary>
    internal double? NutToPlate => StackFree - Result.Figures.Preload;

    /// <summary>From the slider to the stop nut as a tape finds it with the shaft fully extended, m; null without a stop nut.</summary>
    internal double? StopNutDistanceExtended => Result.Figures.StopNutGapFullDroop + Slack(0);

    /// <summary>The same at ride height, m.</summary>
    internal double? StopNutDistanceRideHeight => Result.Figures.StopNutGapRideHeight + Slack(Result.Figures.ShaftTravel);

    /// <summary>What loose springs leave open between them and the coil nut, m, not negative: they rest on the plate, and the slider on them hangs lower by as much.</summary>
    /// <param name="travel">Shaft travel, m.</param>
    internal double Slack(double travel) => Math.Max(0, -(Result.Figures.Preload + travel));
}
