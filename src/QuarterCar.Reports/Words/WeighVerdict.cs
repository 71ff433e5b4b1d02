using System.Globalization;

using QuarterCar.Model.Selection;
using QuarterCar.Reports.Units;

namespace QuarterCar.Reports.Words;

/// <summary>What weighing a corner comes to, in a sentence, and what its uncertainty hangs on.</summary>
internal static class WeighVerdict
{
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
        if (corner.Loads.Widening > 1)
        {
            return string.Create(CultureInfo.InvariantCulture,
                $"What decides it: the springs differ more than their errors explain, which widens the uncertainty {corner.Loads.Widening:0.0} times.");
        }

        double lengths = With(errors with { Length = errors.Length / 2 }), rates = With(errors with { Rate = errors.Rate / 2 });
        string half = lengths <= rates
            ? $"the lengths. Read to ±\u00a0{read.Text(Dimension.Length, errors.Length / 2)} in place of {read.Text(Dimension.Length, errors.Length)}"
            : $"the rates. Measured to ±\u00a0{Percent(errors.Rate / 2)} in place of {Percent(errors.Rate)}";
        return $"What decides it: {half} they give ±\u00a0{read.Text(Dimension.Force, Math.Min(lengths, rates))} in place of {read.Text(Dimension.Force, corner.Loads.Uncertainty)}.";

        double With(WeighErrors better) => Weigh.Corner(corner.Measured, better).Loads.Uncertainty;
    }

    /// <summary>Left against right, in words.</summary>
    public static string Side(SideDifference difference, Readable read)
    {
        string pair = $"{difference.Left.Measured.Name} and {difference.Right.Measured.Name}";
        return difference.Left.Instead is not null || difference.Right.Instead is not null ? $"{pair}: compare them once their springs agree"
            : Math.Abs(difference.Difference) <= difference.Uncertainty ? $"{pair}: within the errors"
            : $"{(difference.Difference > 0 ? difference.Left : difference.Right).Measured.Name} carries more than {(difference.Difference > 0 ? difference.Right : difference.Left).Measured.Name}";
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
