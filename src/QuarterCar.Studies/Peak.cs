using QuarterCar.Numerics;
using QuarterCar.Numerics.Integration;

namespace QuarterCar.Studies;

/// <summary>A quantity of a node.</summary>
internal delegate double FigureQuantity(in FigureNode node);

/// <summary>
/// The largest value of a quantity over a run, on the interpolants: a step's nodes are looked at in order, and what rises between them is followed wherever it may
/// be higher than all before. Never a maximum over samples, and not the top of the highest sample's neighbourhood: of two tops the lower may lie nearer to a node.
/// </summary>
internal struct Peak
{
    private const int Refinements = 16;

    // Of a step, as a share of its length: a top is known to some 1e-11 of how far it rises above the places beside it.
    private const double Closest = 1e-5;

    public Peak()
    {
    }

    /// <summary>The largest so far; −∞ before the first.</summary>
    public double Value { get; private set; } = double.NegativeInfinity;

    /// <summary>Takes one value.</summary>
    public void Take(double value) => Value = Math.Max(Value, value);

    /// <summary>Takes a step by its values at rising places.</summary>
    /// <param name="track">The run.</param>
    /// <param name="step">The step.</param>
    /// <param name="places">θ, three at least, from the step's start to its end.</param>
    /// <param name="values">The quantity there.</param>
    /// <param name="quantity">The quantity.</param>
    public void Take(RunTrack track, in DenseStep step, ReadOnlySpan<double> places, ReadOnlySpan<double> values, FigureQuantity quantity)
    {
        double most = values[0], least = most;
        for (int i = 1; i < values.Length; i++)
        {
            most = Math.Max(most, values[i]);
            least = Math.Min(least, values[i]);
        }

        // What rises between them rises by less than their spread.
        if (!(most + (most - least) > Value))
            return;
        Value = Math.Max(Value, most);
        int last = values.Length - 1;
        for (int i = 0; i <= last; i++)
        {
            if ((i > 0 && values[i] < values[i - 1]) || (i < last && values[i] < values[i + 1]))
                continue;
            int mid = Math.Clamp(i, 1, last - 1);
            var three = new Bracket(At(mid - 1, places, values), At(mid, places, values), At(mid + 1, places, values));
            if (i == mid)
                Follow(track, step, three, quantity);
            else
                Beside(track, step, i < mid ? three : new Bracket(three.Right, three.Mid, three.Left), quantity);
        }
    }

    // Upside down: a top is a dip of the negative.
    private static FunctionPoint At(int i, ReadOnlySpan<double> places, ReadOnlySpan<double> values) => new(places[i], -values[i]);

    // The highest is the step's end, the first of three. Where their parabola has its top just beside it, the top is followed from there.
    private void Beside(RunTrack track, in DenseStep step, Bracket three, FigureQuantity quantity)
    {
        (FunctionPoint end, FunctionPoint next, FunctionPoint third) = three;
        double a = (next.Value - end.Value) / (next.At - end.At), b = (third.Value - next.Value) / (third.At - next.At), bend = (b - a) / (third.At - end.At);
        double foot = 0.5 * (next.At - end.At - (a / bend)), rise = bend * foot * foot;
        if (!(bend > 0 && foot / (next.At - end.At) is > 0 and < 1 && 2 * rise - end.Value > Value))
            return;
        FunctionPoint top = Look(track, step, end.At + foot, quantity);
        if (top.Value < end.Value)
            Follow(track, step, end.At < next.At ? new Bracket(end, top, next) : new Bracket(next, top, end), quantity);
    }

    // As long as it may rise above the largest known.
    private void Follow(RunTrack track, in DenseStep step, Bracket top, FigureQuantity quantity)
    {
        for (int k = 0; k < Refinements && -top.Floor > Value && top.Width >= Closest; k++)
            top = top.With(Look(track, step, top.Next(), quantity));
    }

    private FunctionPoint Look(RunTrack track, in DenseStep step, double theta, FigureQuantity quantity)
    {
        double value = quantity(new FigureNode(track, step, theta));
        Take(value);
        return new FunctionPoint(theta, -value);
    }
}
