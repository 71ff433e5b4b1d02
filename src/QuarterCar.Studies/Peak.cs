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
            var (left, here, right) = (new Place(places[mid - 1], values[mid - 1]), new Place(places[mid], values[mid]), new Place(places[mid + 1], values[mid + 1]));
            if (i == mid)
                Follow(track, step, left, here, right, quantity);
            else
                Beside(track, step, i < mid ? left : right, here, i < mid ? right : left, quantity);
        }
    }

    // The highest is the step's end. Where a parabola has its top just beside it, the top is followed from there.
    private void Beside(RunTrack track, in DenseStep step, Place end, Place next, Place third, FigureQuantity quantity)
    {
        double a = (next.Value - end.Value) / (next.At - end.At), b = (third.Value - next.Value) / (third.At - next.At), bend = (b - a) / (third.At - end.At);
        double foot = 0.5 * (next.At - end.At - (a / bend)), rise = -bend * foot * foot;
        if (!(bend < 0 && foot / (next.At - end.At) is > 0 and < 1 && end.Value + 2 * rise > Value))
            return;
        var top = new Place(end.At + foot, quantity(new FigureNode(track, step, end.At + foot)));
        Value = Math.Max(Value, top.Value);
        if (top.Value > end.Value)
            Follow(track, step, end.At < next.At ? end : next, top, end.At < next.At ? next : end, quantity);
    }

    // By parabolas through the highest of three and its neighbours. A top is concave, so that it lies below the chords carried on past the highest: as long as these
    // rise above the largest known, it may.
    private void Follow(RunTrack track, in DenseStep step, Place left, Place mid, Place right, FigureQuantity quantity)
    {
        for (int k = 0; k < Refinements; k++)
        {
            double before = mid.At - left.At, behind = right.At - mid.At;
            double up = (mid.Value - left.Value) / before, down = (mid.Value - right.Value) / behind;
            if (!(mid.Value + Math.Max(up * behind, down * before) > Value) || before + behind < Closest)
                return;
            double foot = 0.5 * (up * behind - down * before) / (up + down), wider = Math.Max(before, behind);

            // All but at the middle already: a little beyond it on the wider side, so that both sides close in.
            if (Math.Abs(foot) < 0.05 * wider)
                foot = Math.Max(3 * Math.Abs(foot), 0.0025 * wider) * (behind > before ? 1 : -1);
            var top = new Place(mid.At + foot, quantity(new FigureNode(track, step, mid.At + foot)));
            Value = Math.Max(Value, top.Value);
            if (top.Value <= mid.Value)
                (left, right) = foot > 0 ? (left, top) : (top, right);
            else
                (left, mid, right) = foot > 0 ? (mid, top, right) : (left, top, mid);
        }
    }

    private readonly record struct Place(double At, double Value);
}
