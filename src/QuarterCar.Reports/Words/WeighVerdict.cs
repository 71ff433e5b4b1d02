using System.Globalization;

using QuarterCar.Model.Selection;
using QuarterCar.Reports.Units;

namespace QuarterCar.Reports.Words;

/// <summary>What weighing a corner comes to, in a sentence, and what its uncertainty hangs on.</summary>
internal static class WeighVerdict
{
    // Less than this reads as 1.0 times.
    private const double LeastWidening = 1.05;

    /// <summary>The load first; a mean of springs that do not carry the same is never the answer.</summary>
    public static string Of(WeighedCorner corner, Readable read)
    {
        string named = corner.Measured.Name is { } name ? name + ": " : "";
        return corner.Instead is { } instead
            ? $"{(named.Length > 0 ? named + "the" : "The")} springs do not read the same, so their mean is no load. {Likely(corner.Cause)}: {Loads(corner, instead, read)}."
            : $"{named}{Loads(corner, corner.Loads, read)}.";
    }

    /// <summary>What makes most of the uncertainty, and what halving it would bring.</summary>
    public static string Decides(WeighedCorner corner, WeighErrors errors, Readable read)
    {
        double widening = corner.Loads.Widening;
        bool told = widening >= LeastWidening;
        string widens = told ? string.Create(CultureInfo.InvariantCulture, $", which widens the uncertainty {widening:0.0} times") : "";
        if (!corner.Disagreements.IsEmpty) return $"What decides it: the springs differ more than their errors explain{widens}.";

        double lengths = With(errors with { Length = errors.Length / 2 }), rates = With(errors with { Rate = errors.Rate / 2 });
        (string what, string half) = lengths <= rates
            ? ("the lengths", $"read to ±\u00a0{read.Text(Dimension.Length, errors.Length / 2)} in place of {read.Text(Dimension.Length, errors.Length)}")
            : ("the rates", $"measured to ±\u00a0{Percent(errors.Rate / 2)} in place of {Percent(errors.Rate)}");
        string gives = $"{half} they give{(told ? ", before it is widened," : "")} ±\u00a0{read.Text(Dimension.Force, Math.Min(lengths, rates))} in place of {read.Text(Dimension.Force, With(errors))}";
        return told ? $"What decides it: the springs scatter within their errors, but more than usual{widens}; then {what}: {gives}." : $"What decides it: {what}. {char.ToUpperInvariant(gives[0])}{gives[1..]}.";

        // A widening that is told apart is in neither number; one too small to be told is in both. How the springs scatter when read again nobody knows.
        double With(WeighErrors better)
        {
            CornerLoads loads = Weigh.Corner(corner.Measured, better).Loads;
            return loads.Uncertainty / loads.Widening * (told ? 1 : widening);
        }
    }

    /// <summary>Left against right, in words.</summary>
    public static string Side(SideDifference difference, Readable read)
    {
        string pair = $"{difference.Left.Measured.Name} and {difference.Right.Measured.Name}";
        return difference.Difference is not { } less ? $"{pair}: compare them once their springs agree"
            : Math.Abs(less) <= difference.Uncertainty ? $"{pair}: within the errors"
            : $"{(less > 0 ? difference.Left : difference.Right).Measured.Name} carries more than {(less > 0 ? difference.Right : difference.Left).Measured.Name}";
    }

    private static string Likely(DisagreementCause cause) => cause == DisagreementCause.SliderOnStopNut
        ? "Most likely the slider rests on the stop nut; then the lower spring alone counts"
        : "Most likely the tender is solid; then the other springs count";

    private static string Loads(WeighedCorner corner, CornerLoads loads, Readable read) =>
        $"{LoadWords.PlusMinus(loads, read)} on the springs"
        + (corner.GasForce is null ? "" : $", {LoadWords.PlusMinus(loads.CoiloverLoad, loads.Uncertainty, read)} on the coilover with its gas")
        + (loads.SprungWeight is { } weight && corner.Measured.MotionRatio is { } r ? $", {LoadWords.PlusMinus(weight, r * loads.Uncertainty, read)} of sprung weight at the wheel" : "");

    private static string Percent(double share) => (share * 100).ToString("0.##", CultureInfo.InvariantCulture) + "\u00a0%";
}
