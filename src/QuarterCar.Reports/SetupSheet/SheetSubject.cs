using System.Collections.Immutable;

using QuarterCar.Model.Statics;
using QuarterCar.Studies;

namespace QuarterCar.Reports.SetupSheet;

/// <summary>What a setup sheet is about.</summary>
/// <param name="Result">The corner as it stands.</param>
/// <param name="Date">The day on which it was made.</param>
/// <param name="Case">The load case taken; null for the scenario as written.</param>
/// <param name="Changes">Overrides as given, path=value.</param>
public sealed record SheetSubject(StandingResult Result, DateOnly Date, string? Case, ImmutableArray<string> Changes)
{
    /// <summary>What whoever handles the coilover must know.</summary>
    internal HandlingFigures Handling { get; } = HandlingFigures.Of(Result.Corner);

    /// <summary>Both unit systems.</summary>
    internal BothUnits Units { get; } = new(Result.Scenario.Units);

    /// <summary>Stack without load, slider included, m; null where the slider's height is not given.</summary>
    internal double? StackFree => FitWork.StackFree(Result.Scenario.Corner.Coilover.Springs, Result.Scenario.Corner.Coilover.Body ?? new(null, null, null, null, null));

    /// <summary>From the spring plate to the coil nut with the shaft fully extended, m; null where the slider's height is not given.</summary>
    internal double? NutToPlate => StackFree - Result.Figures.Preload;
}
