using QuarterCar.Numerics.Integration;

namespace QuarterCar.Studies;

/// <summary>How a run ended, in the words of the result files.</summary>
public static class RunEnds
{
    /// <summary>The end time was reached.</summary>
    public const string Finished = "finished";

    /// <summary>The account of an integration.</summary>
    public static RunAccount Account(IntegrationOutcome o) => new(Name(o.End), o.Time, Advice(o), o.Steps, o.Rejected, o.Evaluations);

    private static string Name(IntegrationEnd end) => end switch
    {
        IntegrationEnd.Finished => Finished,
        IntegrationEnd.StepTooSmall => "step_too_small",
        IntegrationEnd.TooManyEvents => "too_many_events",
        _ => "not_finite",
    };

    private static string Advice(IntegrationOutcome o)
    {
        string at = FormattableString.Invariant($"The run stopped at t = {o.Time:0.######} s: ");
        return o.End switch
        {
            IntegrationEnd.Finished => "",
            IntegrationEnd.StepTooSmall => at + "no step, however short, met run.tolerance; check the stiffest rates (bottom_out, top_out, rim_rate) or loosen run.tolerance.",
            IntegrationEnd.TooManyEvents => at + "too many contacts or changes of piece; something chatters: check gaps, zones and rates, or shorten run.duration.",
            _ => at + "the numbers left their range; check for values far out of proportion (gas volume, rates, weights).",
        };
    }
}
