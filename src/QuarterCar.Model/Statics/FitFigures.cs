namespace QuarterCar.Model.Statics;

/// <summary>Fit of the stack on the body, SI: the block "fit" of `check --json`. Null: its data is not given.</summary>
/// <param name="StackFree">Free lengths and slider, m.</param>
/// <param name="LeastPreload">Preload with the coil nut at the top of its thread, m, not negative: what assembly needs.</param>
/// <param name="MostPreload">Preload with the coil nut at the end of its thread, or less where a spring would bind at full bump, m.</param>
/// <param name="NutFromTop">How far down its thread the coil nut stands, m; negative above the thread.</param>
/// <param name="ThreadLeft">Thread below the coil nut, m; negative past its end.</param>
/// <param name="PreloadTurns">Preload in turns of the coil nut.</param>
/// <param name="AssemblyForce">Force of the stack at the least preload, N.</param>
/// <param name="AssemblyEnergy">Energy stored in the stack at the least preload, J.</param>
/// <param name="RadialClearance">Between body and the tightest spring, all round, m; negative where that spring does not go over the body.</param>
public sealed record FitFigures(
    double? StackFree,
    double? LeastPreload,
    double? MostPreload,
    double? NutFromTop,
    double? ThreadLeft,
    double? PreloadTurns,
    double? AssemblyForce,
    double? AssemblyEnergy,
    double? RadialClearance);
