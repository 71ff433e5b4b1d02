using System.Collections.Immutable;

namespace QuarterCar.Model.Selection;

/// <summary>One spring's reading, SI.</summary>
/// <param name="Spring">What was measured.</param>
/// <param name="Uncertainty">Half-width of 95 % of its load, N; of a spring that <see cref="WeighedCorner.Answer"/> goes by, the one that stands in the answer.</param>
/// <param name="Use">Whether it counts in the corner's load, and if not, why.</param>
public sealed record WeighedSpring(MeasuredSpring Spring, double Uncertainty, SpringUse Use);

/// <summary>Whether a spring's reading is the load of the stack.</summary>
public enum SpringUse
{
    /// <summary>It counts.</summary>
    Counts,

    /// <summary>Left out: the slider is on the stop nut, which carries part of the load past it.</summary>
    PastStopNut,

    /// <summary>Left out: a tender that is solid carries more than its compression shows.</summary>
    Solid,
}

/// <summary>Two springs of one stack whose loads differ by more than their half-widths combined (root sum of squares).</summary>
/// <param name="Low">Position of the one that reads less.</param>
/// <param name="High">Position of the one that reads more.</param>
/// <param name="Difference">N, positive.</param>
/// <param name="Allowed">Their half-widths combined, N.</param>
public sealed record Disagreement(string Low, string High, double Difference, double Allowed);

/// <summary>The likely cause where springs of one stack disagree.</summary>
public enum DisagreementCause
{
    /// <summary>They agree.</summary>
    None,

    /// <summary>The upper spring reads less than the lower: the slider rests on the stop nut, so the upper spring stops at what it carried there.</summary>
    SliderOnStopNut,

    /// <summary>The tender reads less than the rest: it is solid.</summary>
    TenderSolid,

    /// <summary>A rate, a length or a coil that touches.</summary>
    Unknown,
}

/// <summary>Loads of a corner that follow from the springs that count, SI.</summary>
/// <param name="SpringLoad">Load on the springs, N.</param>
/// <param name="Uncertainty">Half-width of 95 % of it, N; that of gas and motion ratio is not in it.</param>
/// <param name="Widening">Factor by which the springs' disagreement widened it; 1 where they agree better than their errors.</param>
/// <param name="CoiloverLoad">Spring load and gas, N.</param>
/// <param name="SprungWeight">r·coilover load, N; null without motion ratio.</param>
public sealed record CornerLoads(double SpringLoad, double Uncertainty, double Widening, double CoiloverLoad, double? SprungWeight);

/// <summary>One corner weighed, SI.</summary>
/// <param name="Measured">What was measured.</param>
/// <param name="Springs">Every spring's reading, from the coil nut down.</param>
/// <param name="Loads">Of the weighted mean of the springs that count.</param>
/// <param name="Friction">Half the difference between settled from above and from below, N, off the springs that <see cref="Answer"/> goes by; null where none of them has two readings.</param>
/// <param name="GasForce">Standing, isothermal, N; null without gas.</param>
/// <param name="Disagreements">Pairs of counted springs that disagree.</param>
/// <param name="Cause">Why, most likely.</param>
/// <param name="Instead">The loads if <paramref name="Cause"/> is right, to be shown in place of a mean of springs that do not carry the same; null where no spring stands out.</param>
public sealed record WeighedCorner(
    MeasuredCorner Measured,
    ImmutableArray<WeighedSpring> Springs,
    CornerLoads Loads,
    double? Friction,
    double? GasForce,
    ImmutableArray<Disagreement> Disagreements,
    DisagreementCause Cause,
    CornerLoads? Instead)
{
    /// <summary>The loads to go on with, the same on every page and in every file: <see cref="Instead"/> where there are any, else <see cref="Loads"/>.</summary>
    public CornerLoads Answer => Instead ?? Loads;
}

/// <summary>The left corner's spring load less the right one's; none where either hangs on a likely cause in place of springs that agree.</summary>
/// <param name="Left">Left corner.</param>
/// <param name="Right">Right corner.</param>
public sealed record SideDifference(WeighedCorner Left, WeighedCorner Right)
{
    /// <summary>N, positive where the left carries more; null where there is none.</summary>
    public double? Difference => Known ? Left.Loads.SpringLoad - Right.Loads.SpringLoad : null;

    /// <summary>Half-width of 95 %, N: root sum of squares (JCGM 100:2008, 5.1.2); null where there is no difference.</summary>
    public double? Uncertainty => Known ? double.Hypot(Left.Loads.Uncertainty, Right.Loads.Uncertainty) : null;

    private bool Known => Left.Instead is null && Right.Instead is null;
}

/// <summary>Everything weighed at once.</summary>
/// <param name="Errors">Of the measurement.</param>
/// <param name="Corners">In the order of the input.</param>
/// <param name="Differences">Of corners whose names differ by left and right alone.</param>
public sealed record WeighResult(WeighErrors Errors, ImmutableArray<WeighedCorner> Corners, ImmutableArray<SideDifference> Differences);
