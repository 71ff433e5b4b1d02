using QuarterCar.Model.Springs;

namespace QuarterCar.Model.Statics;

/// <summary>Where the corner stands at rest: the least wheel travel at which the standing force at the wheel carries a load (physics.md section 5).</summary>
public static class Balance
{
    // Two wheel travels nearer than this are one, m: between them the force bends by less than its own last bits.
    private const double Same = 1e-10;

    /// <summary>Standing force at the wheel, no damper and no friction, N.</summary>
    /// <param name="corner">The corner.</param>
    /// <param name="w">Wheel travel, m.</param>
    /// <param name="withBumpStop">False leaves the bump stop out.</param>
    public static double WheelForce(Corner corner, double w, bool withBumpStop = true)
    {
        (double shaft, double axle) = Parts(corner, w, withBumpStop);
        return corner.Ratio.Ratio(w) * shaft + axle;
    }

    /// <summary>The least wheel travel that carries a load, m.</summary>
    /// <exception cref="CornerException">The load is more than even the stops carry before the gas is squeezed to nothing.</exception>
    public static double Least(Corner corner, double load, bool withBumpStop)
    {
        double[] breaks = Breaks(corner, withBumpStop);
        double low = breaks[0] - 0.01;
        while (WheelForce(corner, low, withBumpStop) > load && low > -1e6)
            low *= 2;

        // Past the travel at which the gas is squeezed to nothing its law has another branch, on which nothing stands.
        double end = corner.Gas is { } gas ? corner.Ratio.WheelTravel(gas.Volume / gas.Area) : double.PositiveInfinity;
        for (int i = 0; i < breaks.Length && breaks[i] < end; i++)
        {
            if (new SmoothPiece(corner, withBumpStop, low, breaks[i]).FirstRise(load) is { } rise)
                return Root(corner, load, withBumpStop, rise.Below, rise.Above);
            low = breaks[i];
        }

        double reach = end - low;
        for (double step = Math.Min(1e-3, 0.25 * reach); step < 0.9999 * reach && step < 1e6; step = Math.Min(2 * step, 0.5 * (step + reach)))
        {
            if (WheelForce(corner, low + step, withBumpStop) >= load)
                return Root(corner, load, withBumpStop, low, low + step);
        }

        throw new CornerException("corner", "a load that even the stops do not carry", "a smaller load or a stiffer bottom_out");
    }

    /// <summary>Wheel travels at which the standing force bends, rising, m.</summary>
    internal static double[] Breaks(Corner corner, bool withBumpStop)
    {
        var breaks = new List<double> { 0, corner.FullBumpWheelTravel };
        foreach (StackBreak b in corner.Stack.Breaks)
            breaks.Add(corner.Ratio.WheelTravel(b.Compression - corner.Preload));
        ReadOnlySpan<RatioPiece> pieces = corner.Ratio.Pieces;
        for (int i = 1; i < pieces.Length && !corner.Ratio.IsConstant; i++)
            breaks.Add(pieces[i].From);
        if (withBumpStop && corner.BumpStop is { } bump)
        {
            // The last line goes on past its end.
            foreach (double q in bump.Lines.Points[..^1])
            {
                breaks.Add(bump.OnAxle
                    ? corner.FullBumpWheelTravel - bump.Length + q
                    : corner.Ratio.WheelTravel(corner.Stroke - bump.Length + q));
            }
        }

        breaks.RemoveAll(w => !double.IsFinite(w));
        breaks.Sort();
        return [.. breaks];
    }

    // What pushes along the shaft and what pushes on the axle past it, N.
    private static (double Shaft, double Axle) Parts(Corner corner, double w, bool withBumpStop)
    {
        double x = corner.Ratio.Travel(w), shaft = corner.Stack.Force(x + corner.Preload), axle = 0;
        if (corner.Gas is { } gas)
            shaft += gas.Standing(x);
        if (withBumpStop && corner.BumpStop is { } bump)
        {
            double f = bump.Force(corner.BumpStopCompression(w), 0);
            (shaft, axle) = bump.OnAxle ? (shaft, f) : (shaft + f, 0);
        }

        return (shaft + corner.BottomOut.Force(x - corner.Stroke, 0) - corner.TopOut.Force(-x, 0), axle);
    }

    private static double Root(Corner corner, double load, bool withBumpStop, double low, double high) =>
        FirstRoot.Rising(w => WheelForce(corner, w, withBumpStop) - load, low, high, 1e-15 * load);

    /// <summary>
    /// The standing force between two neighbouring breaks. A falling motion ratio lets it fall there, so it may reach a load on a crest and be below it at both ends.
    /// Shaft force and its rate rise with travel (straight lines and convex gas), and the ratio is a straight line: their values at two places bound the slope between them,
    /// dF/dw = r'·S + r²·S' + axle's rate, and with it every value. Halves are looked at until the bounds say yes or no: no crest is missed.
    /// </summary>
    private readonly ref struct SmoothPiece
    {
        private readonly Corner _corner;
        private readonly bool _withBumpStop;
        private readonly Place _from, _to;
        private readonly double _ratioSlope, _straightRate, _axleRate;

        public SmoothPiece(Corner corner, bool withBumpStop, double from, double to)
        {
            (_corner, _withBumpStop) = (corner, withBumpStop);
            (_from, _to) = (At(from), At(to));
            double travel = _to.ShaftTravel - _from.ShaftTravel;
            _ratioSlope = (_to.Ratio - _from.Ratio) / (to - from);
            _straightRate = (_to.Shaft - _to.Gas - (_from.Shaft - _from.Gas)) / travel;
            _axleRate = (_to.Axle - _from.Axle) / (to - from);
        }

        /// <summary>Two wheel travels, m, between which the force rises past a load for the first time; null where it stays below. It starts below.</summary>
        public (double Below, double Above)? FirstRise(double load) => First(load, _from, _to);

        private (double Below, double Above)? First(double load, in Place a, in Place b)
        {
            (double least, double most) = Slopes(a, b);
            double width = b.Wheel - a.Wheel;
            if (!(width > Same && least < 0 && most > 0))
                return b.Force >= load ? (a.Wheel, b.Wheel) : null;

            // Where the steepest rise from the one end meets the steepest fall to the other.
            double crest = a.Force + most * (b.Force - a.Force - least * width) / (most - least);
            if (crest < load && b.Force < load)
                return null;
            Place mid = At(0.5 * (a.Wheel + b.Wheel));
            return First(load, a, mid) ?? First(load, mid, b);
        }

        private (double Least, double Most) Slopes(in Place a, in Place b)
        {
            double one = _ratioSlope * a.Shaft, other = _ratioSlope * b.Shaft, low = Math.Min(a.Ratio, b.Ratio), high = Math.Max(a.Ratio, b.Ratio);
            return (Math.Min(one, other) + low * low * (_straightRate + a.GasRate) + _axleRate, Math.Max(one, other) + high * high * (_straightRate + b.GasRate) + _axleRate);
        }

        private Place At(double w)
        {
            (double shaft, double axle) = Parts(_corner, w, _withBumpStop);
            double x = _corner.Ratio.Travel(w), r = _corner.Ratio.Ratio(w);
            return new Place(w, x, r, shaft, axle, _corner.Gas?.Standing(x) ?? 0, _corner.Gas?.StandingRate(x) ?? 0);
        }
    }

    private readonly record struct Place(double Wheel, double ShaftTravel, double Ratio, double Shaft, double Axle, double Gas, double GasRate)
    {
        public double Force => Ratio * Shaft + Axle;
    }
}
