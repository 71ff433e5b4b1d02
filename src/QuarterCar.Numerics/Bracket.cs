namespace QuarterCar.Numerics;

/// <summary>A function's value at one place.</summary>
/// <param name="At">The place.</param>
/// <param name="Value">The value.</param>
public readonly record struct FunctionPoint(double At, double Value);

/// <summary>Three places in a row, the lowest in the middle: between the outer two a smooth function has a dip. A top is a dip of what is negative.</summary>
/// <param name="Left">First.</param>
/// <param name="Mid">No higher than the other two.</param>
/// <param name="Right">Last.</param>
public readonly record struct Bracket(FunctionPoint Left, FunctionPoint Mid, FunctionPoint Right)
{
    /// <summary>From the lowest to the farther of the other two.</summary>
    public double Wider => Math.Max(Before, Behind);

    /// <summary>From the first to the last.</summary>
    public double Width => Before + Behind;

    /// <summary>As low as the dip can be: it is convex, so that it lies above the chords carried on past the lowest.</summary>
    public double Floor => Mid.Value - Math.Max(Rise * Before, Fall * Behind);

    /// <summary>True where all three are equally high.</summary>
    public bool IsFlat => !(Rise + Fall > 0);

    /// <summary>
    /// Where to look next: at the parabola's foot, never more than half way to either neighbour. Where that is all but the middle, a little beyond it on the
    /// wider side, so that both sides close in.
    /// </summary>
    public double Next()
    {
        double foot = 0.5 * (Fall * Behind - Rise * Before) / (Rise + Fall), wider = Wider;
        if (Math.Abs(foot) < 0.05 * wider)
            foot = Math.Max(3 * Math.Abs(foot), 0.0025 * wider) * (Behind > Before ? 1 : -1);
        return Mid.At + foot;
    }

    /// <summary>The narrower bracket with one place more.</summary>
    /// <param name="next">Between the outer two, not the middle.</param>
    public Bracket With(FunctionPoint next) => (next.Value >= Mid.Value, next.At > Mid.At) switch
    {
        (true, true) => this with { Right = next },
        (true, false) => this with { Left = next },
        (false, true) => new Bracket(Mid, next, Right),
        _ => new Bracket(Left, next, Mid),
    };

    private double Before => Mid.At - Left.At;

    private double Behind => Right.At - Mid.At;

    private double Fall => (Left.Value - Mid.Value) / Before;

    private double Rise => (Right.Value - Mid.Value) / Behind;
}
