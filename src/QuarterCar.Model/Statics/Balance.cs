using QuarterCar.Model.Springs;

namespace QuarterCar.Model.Statics;

/// <summary>Where the corner stands at rest: the least wheel travel at which the standing force at the wheel carries a load (physics.md section 5).</summary>
public static class Balance
{
    // A falling motion ratio lets the wheel force fall between two breaks: look this often between them.
    private const int LooksPerPiece = 16;

    /// <summary>Standing force at the wheel, no damper and no friction, N.</summary>
    /// <param name="corner">The corner.</param>
    /// <param name="w">Wheel travel, m.</param>
    /// <param name="withBumpStop">False leaves the bump stop out.</param>
    public static double WheelForce(Corner corner, double w, bool withBumpStop = true)
    {
        ref readonly RatioPiece ratio = ref corner.Ratio.PieceAt(w);
        double x = ratio.Travel(w), shaft = corner.Stack.Force(x + corner.Preload), axle = 0;
        if (corner.Gas is { } gas)
            shaft += gas.Standing(x);
        if (withBumpStop && corner.BumpStop is { } bump)
        {
            double f = bump.Force(corner.BumpStopCompression(w), 0);
            (shaft, axle) = bump.OnAxle ? (shaft, f) : (shaft + f, 0);
        }

        shaft += corner.BottomOut.Force(x - corner.Stroke, 0) - corner.TopOut.Force(-x, 0);
        return ratio.Ratio(w) * shaft + axle;
    }

    /// <summary>The least wheel travel that carries a load, m.</summary>
    /// <exception cref="CornerException">The load is more than even the stops carry before the gas is squeezed to nothing.</exception>
    public static double Least(Corner corner, double load, bool withBumpStop)
    {
        Span<double> breaks = stackalloc double[96];
        int n = Breaks(corner, withBumpStop, breaks);
        int looks = corner.Ratio.IsConstant ? 1 : LooksPerPiece;
        double low = breaks[0] - 0.01;
        while (WheelForce(corner, low, withBumpStop) > load && low > -1e6)
            low *= 2;

        // Past the travel at which the gas is squeezed to nothing its law has another branch, on which nothing stands.
        double end = corner.Gas is { } gas ? corner.Ratio.WheelTravel(gas.Volume / gas.Area) : double.PositiveInfinity;
        for (int i = 0; i < n && breaks[i] < end; i++)
        {
            double from = low;
            for (int k = 1; k <= looks; k++)
            {
                double to = k == looks ? breaks[i] : from + (breaks[i] - from) * k / looks;
                if (WheelForce(corner, to, withBumpStop) >= load)
                    return Root(corner, load, withBumpStop, low, to);
                low = to;
            }
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
    internal static int Breaks(Corner corner, bool withBumpStop, Span<double> into)
    {
        int n = 0;
        Add(into, ref n, 0);
        Add(into, ref n, corner.FullBumpWheelTravel);
        foreach (StackBreak b in corner.Stack.Breaks)
            Add(into, ref n, corner.Ratio.WheelTravel(b.Compression - corner.Preload));
        ReadOnlySpan<RatioPiece> pieces = corner.Ratio.Pieces;
        for (int i = 1; i < pieces.Length && !corner.Ratio.IsConstant && n < 60; i++)
            Add(into, ref n, pieces[i].From);
        if (withBumpStop && corner.BumpStop is { } bump)
        {
            ReadOnlySpan<double> q = bump.Lines.Points;
            for (int i = 0; i < q.Length - 1 && n < into.Length; i++)
            {
                Add(into, ref n, bump.OnAxle
                    ? corner.FullBumpWheelTravel - bump.Length + q[i]
                    : corner.Ratio.WheelTravel(corner.Stroke - bump.Length + q[i]));
            }
        }

        into[..n].Sort();
        return n;
    }

    private static void Add(Span<double> into, ref int n, double w)
    {
        if (n < into.Length && double.IsFinite(w))
            into[n++] = w;
    }

    private static double Root(Corner corner, double load, bool withBumpStop, double low, double high) =>
        FirstRoot.Rising(w => WheelForce(corner, w, withBumpStop) - load, low, high, 1e-15 * load);
}
