using QuarterCar.Model;
using QuarterCar.Model.Statics;
using QuarterCar.Reports.Units;

namespace QuarterCar.Reports.SetupSheet;

/// <summary>A number of a step in both unit systems, with its letter in the drawing.</summary>
/// <param name="Letter">Empty where it is not in the drawing.</param>
/// <param name="First">The scenario's own units.</param>
/// <param name="Second">The other.</param>
internal sealed record StepNumber(string Letter, string First, string Second);

/// <summary>One step of the work: what to do, to which numbers, minding what.</summary>
/// <param name="Head">A word or two.</param>
/// <param name="Do">What to do.</param>
/// <param name="Numbers">What to set.</param>
/// <param name="Caution">Beside the numbers.</param>
internal sealed record SetupStep(string Head, string Do, StepNumber[] Numbers, string Caution);

/// <summary>The order of work.</summary>
internal static class SetupSteps
{
    // A coil nut nearer than this to the top of its thread is there, m: the rounding that the check of fit allows.
    private const double AtTop = 1e-9;

    /// <summary>The steps, numbered from one by the page.</summary>
    public static IEnumerable<SetupStep> Of(SheetSubject subject)
    {
        CoiloverData c = subject.Result.Scenario.Corner.Coilover;
        yield return new("Raise", "Raise the vehicle until the shaft is fully extended and the wheel hangs free.", [], SheetCautions.Raised);
        yield return Assemble(subject, c);
        yield return Preload(subject, c);
        if (c.StopNut is not null) yield return StopNut(subject);
        if (subject.Handling.Gas is { } gas) yield return Gas(subject, gas);
        yield return Lower(subject, c);
    }

    private static SetupStep Assemble(SheetSubject subject, CoiloverData c)
    {
        string order = string.Join(", ", Parts(c));
        FitFigures? fit = subject.Result.Fit;
        string needs = fit is not { LeastPreload: { } least, AssemblyForce: { } force, AssemblyEnergy: { } energy } ? "Whether they go on loose is not known: have a rated compressor at hand. "
            : least > 0 ? $"They go on compressed by {subject.Units.Text(Dimension.Length, least)}: a compressor rated for {subject.Units.Text(Dimension.Force, force)} and more, which then holds {subject.Units.Text(Dimension.Energy, energy)}. "
            : "They go on loose. ";
        return new("Assemble", $"From the coil nut down: {order}, spring plate.", [], needs + SheetCautions.Compressor);
    }

    private static IEnumerable<string> Parts(CoiloverData c)
    {
        if (c.Springs.Tender is not null) yield return "tender";
        if (c.Springs.Upper is not null)
        {
            yield return "upper spring";
            yield return "slider";
        }

        yield return c.Springs.Upper is null ? "spring" : "lower spring";
    }

    private static SetupStep Preload(SheetSubject subject, CoiloverData c)
    {
        double p = subject.Result.Figures.Preload;
        string tape = subject.NutToPlate is null ? "" : " Check B, nut to plate, with a tape.";
        FitFigures? fit = subject.Result.Fit;

        // Where the springs are pressed with the nut at the top of its thread, first contact lies above the thread and nothing can be counted from it.
        // Where they are loose there it lies on the thread; then the top counts only for a preload so far below zero that the nut would leave the thread.
        double? fromTop = fit is { NutFromTop: { } nut } && (fit.LeastPreload > 0 || nut < -AtTop) ? Math.Abs(nut) < AtTop ? 0 : nut : null;
        bool possible = !(fromTop < 0);
        StepNumber[] turns = c.Body?.ThreadPitch is { } pitch && possible ? [Same($"{Readable.Number(new("", 1, 1), (fromTop ?? p) / pitch)} turns")] : [];
        StepNumber[] whole = [Length("A", subject, p)], plate = subject.NutToPlate is { } length ? [Length("B", subject, length)] : [];
        StepNumber[] numbers = fromTop is null ? [.. whole, .. turns, .. plate] : [.. turns, .. whole, .. plate];
        string divide = c.Body?.ThreadPitch is null ? " Divide it by the pitch of your thread for turns." : "";
        string does = fromTop switch
        {
            < 0 => $"A cannot be set: the coil nut would stand {subject.Units.Text(Dimension.Length, -fromTop)} above its thread. The top of the thread gives {subject.Units.Text(Dimension.Length, p - fromTop.Value)} of preload.",
            0 => $"The springs are pressed by A with the coil nut at the top of its thread: leave it there.{tape}",
            { } down => $"The springs are pressed already with the coil nut at the top of its thread: from there run it down by {subject.Units.Text(Dimension.Length, down)}.{divide} A is the whole preload.{tape}",
            null when p >= 0 => $"Run the coil nut down until all springs just touch and none is pressed, then on by A.{divide}{tape}",
            null => $"Run the coil nut down until all springs just touch, then back up by {subject.Units.Text(Dimension.Length, -p)}: the springs hang loose at full droop.",
        };
        string thread = possible && fit is { ThreadLeft: { } left, MostPreload: { } most } ? $"Preload at most {subject.Units.Text(Dimension.Length, most)}; thread left {subject.Units.Text(Dimension.Length, left)}. " : "";
        string holds = possible && p > 0 ? $"The nut now carries {subject.Units.Text(Dimension.Force, subject.Handling.PreloadForce)}, the springs hold {subject.Units.Text(Dimension.Energy, subject.Handling.PreloadEnergy)}. " : "";
        return new("Preload", does, numbers, $"{holds}{thread}Keep the nut whole on its thread. {SheetCautions.Nut}");
    }

    private static SetupStep StopNut(SheetSubject subject)
    {
        double slack = subject.Slack(0);
        string loose = slack > 0 ? $", the slider resting on the loose lower spring: C has the slack of {subject.Units.Text(Dimension.Length, slack)} in it, the gap in check has not" : "";
        return new("Stop nut", $"Set C between slider and stop nut while the shaft is fully extended{loose}; D shows once it stands.",
            [Length("C", subject, subject.StopNutDistanceExtended), Length("D", subject, subject.StopNutDistanceRideHeight)], SheetCautions.StopNut);
    }

    private static SetupStep Gas(SheetSubject subject, GasPressures gas)
    {
        (string first, string second) = subject.Units.Pressure(gas.Charge);
        GasData data = subject.Result.Scenario.Corner.Coilover.Gas!;
        return new("Gas", $"Set the pressure with the shaft fully extended, at {Celsius(data.ChargeTemperature)}.", [new("", first, second)],
            $"Gauge and hose: {subject.Units.PressureText(gas.FullBump)} at full bump, {subject.Units.PressureText(gas.FullBumpHot)} from {Celsius(gas.HotAt)}. {SheetCautions.Gas}");
    }

    private static SetupStep Lower(SheetSubject subject, CoiloverData c)
    {
        string nut = c.StopNut is null ? "" : "; the stop nut stays, so D changes by as much";
        return new("Ride height", $"Lower it, roll it back and forth, let it settle from above and from below: E is the mean. Too low or high: raise it, then more or less preload{nut}.",
            [Length("E", subject, subject.Result.Figures.RideHeight)], SheetCautions.Settle);
    }

    private static string Celsius(double kelvin) =>
        FormattableString.Invariant($"{kelvin - 273.15:0} °C ({(kelvin - 273.15) * 1.8 + 32:0} °F)");

    private static StepNumber Length(string letter, SheetSubject subject, double? value)
    {
        (string first, string second) = subject.Units.Pair(Dimension.Length, value);
        return new(letter, first, second);
    }

    private static StepNumber Same(string text) => new("", text, "");
}
