using System.Globalization;

using QuarterCar.Model.Selection;
using QuarterCar.Reports.Units;
using QuarterCar.Scenarios;

namespace QuarterCar.Reports.Words;

/// <summary>What is doubtful about a weighed corner, and what to do about it.</summary>
public static class WeighWarnings
{
    /// <summary>The warnings of one corner, the gravest first.</summary>
    public static IReadOnlyList<Warning> Of(WeighedCorner corner, WeighErrors errors, UnitSystem units)
    {
        var read = new Readable(units);
        Warning[] all = [.. Disagree(corner, read), .. Solid(corner, errors, read), .. Friction(corner, read), .. Ratio(corner)];
        return [.. all.Select(w => w with { Message = w.Message.Replace('\u00a0', ' ') })];
    }

    private static IEnumerable<Warning> Disagree(WeighedCorner corner, Readable read)
    {
        if (corner.Disagreements.IsEmpty) yield break;
        string Load(string position) => read.Text(Dimension.Force, corner.Springs.First(s => s.Spring.Position == position).Spring.Load);
        string pairs = string.Join("; ", corner.Disagreements.Select(d =>
            $"the {d.Low} spring reads {Load(d.Low)}, the {d.High} {Load(d.High)}, {read.Text(Dimension.Force, d.Difference)} apart where their errors explain {read.Text(Dimension.Force, d.Allowed)}"));
        yield return new("springs_disagree", char.ToUpperInvariant(pairs[0]) + pairs[1..] + ". " + Advice(corner, read));
    }

    private static string Advice(WeighedCorner corner, Readable read) => corner.Cause switch
    {
        DisagreementCause.SliderOnStopNut =>
            "Most likely the slider rests on the stop nut, and the upper spring stops at what it carried there: the load given is the lower spring's alone, "
            + $"{LoadWords.PlusMinus(corner.Answer, read)}. Back the nut off until the slider is clear and read both springs again, or weigh with the lower spring alone (stop_nut_clear: false).",
        DisagreementCause.TenderSolid =>
            $"Most likely the tender is solid and carries more than it shows: the load given is the other springs', {LoadWords.PlusMinus(corner.Answer, read)}. Give its solid length, or leave it out.",
        _ => $"Measure the {corner.Disagreements[0].Low} spring again: its free length off the vehicle and its rate, and look whether its coils touch or rub. "
            + "Until then the wider uncertainty holds.",
    };

    private static IEnumerable<Warning> Solid(WeighedCorner corner, WeighErrors errors, Readable read)
    {
        if (corner.Springs.Any(s => s.Use == SpringUse.Solid))
            yield return new("tender_solid", "The tender is at its solid length, give or take the length error, and carries more than it shows: it is left out. Nothing needs doing.");
        foreach (var s in corner.Springs.Where(s => s.Use == SpringUse.Counts && s.Spring.LoadedLengths.Min() - s.Spring.SolidLength <= errors.Compression))
        {
            yield return new(
                "near_solid",
                $"The {s.Spring.Position} spring stands within {read.Text(Dimension.Length, errors.Compression)} of its solid length: if coils touch, it carries more than it shows. "
                + "Look for light between the coils, and fit a stiffer or longer spring if there is none.");
        }
    }

    private static IEnumerable<Warning> Friction(WeighedCorner corner, Readable read)
    {
        if (corner.Friction > corner.Answer.Uncertainty)
        {
            yield return new(
                "friction_large",
                $"Settled from above and from below differ by {read.Text(Dimension.Force, 2 * corner.Friction)}, more than the springs' own error: roll the vehicle back and forth, "
                + "settle it again both ways and read again; if it stays, look for a tight bushing or a bent shaft.");
        }
    }

    private static IEnumerable<Warning> Ratio(WeighedCorner corner)
    {
        if (corner.Measured.MotionRatio is > 1 and { } r)
        {
            yield return new("motion_ratio_above_1", string.Create(
                CultureInfo.InvariantCulture, $"A motion ratio of {r:0.###} moves the shaft more than the wheel: check that it is shaft travel per wheel travel and not the inverse."));
        }
    }
}

/// <summary>A load with its uncertainty in words.</summary>
internal static class LoadWords
{
    /// <summary>"2119 ± 130 N".</summary>
    public static string PlusMinus(CornerLoads loads, Readable read) => PlusMinus(loads.SpringLoad, loads.Uncertainty, read);

    /// <summary>A force and its half-width.</summary>
    public static string PlusMinus(double force, double halfWidth, Readable read) =>
        $"{read.Number(Dimension.Force, force)}\u00a0±\u00a0{read.Text(Dimension.Force, halfWidth)}";
}
