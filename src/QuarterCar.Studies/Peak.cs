using QuarterCar.Numerics.Integration;

namespace QuarterCar.Studies;

/// <summary>A quantity of a node.</summary>
internal delegate double FigureQuantity(in FigureNode node);

/// <summary>The largest value of a quantity over a run: found among the nodes of the steps, then followed on the interpolant between its neighbours. Never a maximum over samples.</summary>
internal struct Peak
{
    private const int Refinements = 24;
    private static readonly double s_golden = (Math.Sqrt(5) - 1) / 2;

    private int _step = -1;
    private double _from, _to;

    public Peak()
    {
    }

    /// <summary>Largest value at a node so far; −∞ before the first.</summary>
    public double Value { get; private set; } = double.NegativeInfinity;

    /// <summary>Takes one node's value.</summary>
    /// <param name="value">The value.</param>
    /// <param name="step">Index of the step.</param>
    /// <param name="from">θ of the node before, or the node's own.</param>
    /// <param name="to">θ of the node after, or the node's own.</param>
    public void Take(double value, int step, double from, double to)
    {
        if (value > Value)
            (Value, _step, _from, _to) = (value, step, from, to);
    }

    /// <summary>The largest value on the interpolant around the best node (golden section), across the ends of its step too: the peak may lie in the next step, before that one's first node.</summary>
    public readonly double Refined(RunTrack track, FigureQuantity quantity)
    {
        if (_step < 0)
            return Value;
        ReadOnlySpan<DenseStep> steps = track.Steps;
        double best = Math.Max(Value, Follow(track, quantity, _step, _from, _to));
        if (_from == 0 && _step > 0)
        {
            double end = EndOf(steps[_step - 1]);
            best = Math.Max(best, Follow(track, quantity, _step - 1, end * (1 - FigureWork.FirstNode), end));
        }

        if (_to == EndOf(steps[_step]) && _step + 1 < steps.Length)
            best = Math.Max(best, Follow(track, quantity, _step + 1, 0, EndOf(steps[_step + 1]) * FigureWork.FirstNode));
        return best;
    }

    private static double EndOf(in DenseStep step) => (step.End - step.Start) / step.Length;

    private static double Follow(RunTrack track, FigureQuantity quantity, int at, double low, double high)
    {
        ref readonly DenseStep step = ref track.Steps[at];
        double best = double.NegativeInfinity;
        for (int k = 0; k < Refinements && high - low > 1e-9; k++)
        {
            double a = high - s_golden * (high - low), b = low + s_golden * (high - low);
            double fa = quantity(new FigureNode(track, step, a)), fb = quantity(new FigureNode(track, step, b));
            best = Math.Max(best, Math.Max(fa, fb));
            if (fa > fb)
                high = b;
            else
                low = a;
        }

        return best;
    }
}
