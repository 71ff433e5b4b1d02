using QuarterCar.Model.Springs;
using QuarterCar.Numerics;

namespace QuarterCar.Model.Motion;

/// <summary>
/// All straight-line laws of a corner cut at every kink, so that one cell of wheel travel and one cell of shaft velocity
/// name one smooth formula each. Built from the laws once a corner; the innermost loop reads only these numbers.
/// </summary>
public sealed class PieceGrid
{
    // Two kinks closer than this in wheel travel are one, m.
    private const double SamePlace = 1e-13;

    private PieceGrid(TravelBreak[] travelBreaks, TravelCell[] travelCells, double[] velocityBreaks, VelocityCell[] velocityCells)
    {
        TravelBreaks = travelBreaks;
        TravelCells = travelCells;
        VelocityBreaks = velocityBreaks;
        VelocityCells = velocityCells;
    }

    /// <summary>Kinks in wheel travel, rising.</summary>
    public TravelBreak[] TravelBreaks { get; }

    /// <summary>Cells between them; cell i ends at break i.</summary>
    public TravelCell[] TravelCells { get; }

    /// <summary>Kinks in shaft velocity, m/s, rising.</summary>
    public double[] VelocityBreaks { get; }

    /// <summary>Cells between them; cell i ends at break i.</summary>
    public VelocityCell[] VelocityCells { get; }

    /// <summary>The grid of a corner.</summary>
    public static PieceGrid Of(Corner corner)
    {
        List<TravelBreak> found = [];
        CollectTravelBreaks(corner, found);
        found.Sort((a, b) => a.At.CompareTo(b.At));
        List<TravelBreak> breaks = [];
        foreach (TravelBreak b in found)
        {
            if (breaks.Count > 0 && b.At - breaks[^1].At < SamePlace)
                breaks[^1] = breaks[^1].Join(b);
            else
                breaks.Add(b);
        }

        var cells = new TravelCell[breaks.Count + 1];
        for (int i = 0; i < cells.Length; i++)
        {
            double within = i == 0 ? breaks[0].At - 1 : i == breaks.Count ? breaks[^1].At + 1 : 0.5 * (breaks[i - 1].At + breaks[i].At);
            cells[i] = CellAt(corner, within);
        }

        double[] speeds = VelocityKinks(corner);
        var velocityCells = new VelocityCell[speeds.Length + 1];
        for (int i = 0; i < velocityCells.Length; i++)
        {
            double within = i == 0 ? speeds[0] - 1 : i == speeds.Length ? speeds[^1] + 1 : 0.5 * (speeds[i - 1] + speeds[i]);
            velocityCells[i] = VelocityCellAt(corner, within);
        }

        return new PieceGrid([.. breaks], cells, speeds, velocityCells);
    }

    private static void CollectTravelBreaks(Corner corner, List<TravelBreak> into)
    {
        MotionRatio ratio = corner.Ratio;
        foreach (StackBreak b in corner.Stack.Breaks)
            into.Add(new TravelBreak(ratio.WheelTravel(b.Compression - corner.Preload), TravelEvents.Of(b.Events)));
        into.Add(new TravelBreak(0, TravelEvents.TopOutRelease));
        into.Add(new TravelBreak(corner.FullBumpWheelTravel, TravelEvents.BottomOut));
        if (corner.Damper is { } damper)
        {
            foreach (double x in damper.Edges)
                into.Add(new TravelBreak(ratio.WheelTravel(x), TravelEvents.None));
        }

        for (int i = 1; i < ratio.Pieces.Length && !ratio.IsConstant; i++)
            into.Add(new TravelBreak(ratio.Pieces[i].From, TravelEvents.None));
        if (corner.BumpStop is not { } bump)
            return;
        for (int i = 0; i < bump.Lines.Pieces; i++)
        {
            double q = bump.Lines.Points[i];
            double w = bump.OnAxle ? corner.FullBumpWheelTravel - bump.Length + q : ratio.WheelTravel(corner.Stroke - bump.Length + q);
            into.Add(new TravelBreak(w, i == 0 ? TravelEvents.BumpStop : TravelEvents.None));
        }
    }

    private static TravelCell CellAt(Corner corner, double w)
    {
        RatioPiece ratio = corner.Ratio.PieceAt(w);
        double x = ratio.Travel(w), y = x + corner.Preload;
        var cell = new TravelCell { Ratio = ratio, CompressionFactor = 1, ReboundFactor = 1, OnStopNut = corner.Stack.OnStopNut(y) };
        if (y > 0)
        {
            cell.StackRate = corner.Stack.RateTowardDroop(y);
            cell.StackAtZero = corner.Stack.Force(y) - cell.StackRate * x;
        }

        if (corner.Damper is { } damper)
            (cell.CompressionFactor, cell.ReboundFactor) = damper.Factors(x);
        double q = corner.BumpStopCompression(w);
        if (q > 0)
        {
            StraightLines lines = corner.BumpStop!.Lines;
            double rate = lines.Slope(lines.PieceAt(q));
            double at = corner.BumpStop.OnAxle ? w : x;
            double zero = lines.At(q) - rate * at;
            if (corner.BumpStop.OnAxle)
                (cell.AxleAtZero, cell.AxleRate, cell.Touches) = (zero, rate, cell.Touches | Contacts.AxleBumpStop);
            else
                (cell.BumpAtZero, cell.BumpRate, cell.Touches) = (zero, rate, cell.Touches | Contacts.BumpStop);
        }

        if (x > corner.Stroke)
            (cell.StopAtZero, cell.StopRate, cell.Touches) = (-corner.BottomOut.Rate * corner.Stroke, corner.BottomOut.Rate, cell.Touches | Contacts.BottomOut);
        if (x < 0)
            (cell.StopAtZero, cell.StopRate, cell.Touches) = (0, corner.TopOut.Rate, cell.Touches | Contacts.TopOut);
        return cell;
    }

    private static double[] VelocityKinks(Corner corner)
    {
        // At ẋ = 0 damper and zone factors change sides, and the largest travels lie there.
        SortedSet<double> kinks = [0];
        if (corner.Damper is { } damper)
        {
            ReadOnlySpan<double> v = damper.Lines.Points;
            for (int i = 1; i < v.Length - 1; i++)
                kinks.Add(v[i]);
        }

        if (corner.BumpStop is { OnAxle: false, Loss: > 0 } bump)
            kinks.Add(-1 / bump.Loss);
        if (corner.BottomOut.Loss > 0)
            kinks.Add(-1 / corner.BottomOut.Loss);
        if (corner.TopOut.Loss > 0)
            kinks.Add(1 / corner.TopOut.Loss);
        return [.. kinks];
    }

    private static VelocityCell VelocityCellAt(Corner corner, double v)
    {
        var cell = new VelocityCell { Compresses = v > 0 };
        if (corner.Damper is { Lines: var lines })
        {
            int piece = lines.PieceAt(v);
            cell.DamperRate = lines.Slope(piece);
            cell.DamperAtZero = lines.OnPiece(piece, 0);
        }

        // A contact whose loss would make it pull is open there.
        if (corner.BumpStop is { OnAxle: false, Loss: var loss } && 1 + loss * v > 0)
            cell.Pushes |= Contacts.BumpStop;
        if (1 + corner.BottomOut.Loss * v > 0)
            cell.Pushes |= Contacts.BottomOut;
        if (1 - corner.TopOut.Loss * v > 0)
            cell.Pushes |= Contacts.TopOut;
        return cell;
    }
}

/// <summary>A kink in wheel travel and what it means.</summary>
/// <param name="At">m.</param>
/// <param name="Events">On the way in; on the way out the opposite.</param>
public readonly record struct TravelBreak(double At, TravelEvents Events)
{
    /// <summary>Two kinks in one place.</summary>
    public TravelBreak Join(TravelBreak other) => this with { Events = new TravelEvents(Events.Bits | other.Events.Bits) };
}

/// <summary>Stops that can touch in a cell.</summary>
[Flags]
public enum Contacts
{
    /// <summary>None.</summary>
    None = 0,

    /// <summary>On the shaft.</summary>
    BumpStop = 1,

    /// <summary>Metal at full bump.</summary>
    BottomOut = 2,

    /// <summary>At full droop.</summary>
    TopOut = 4,

    /// <summary>On the axle.</summary>
    AxleBumpStop = 8,
}

/// <summary>The formula of the position-dependent laws between two kinks in wheel travel; forces over shaft travel x as AtZero + Rate·x, the axle bump stop's over wheel travel.</summary>
public struct TravelCell
{
    /// <summary>Motion ratio here.</summary>
    public RatioPiece Ratio;

    /// <summary>Spring stack, N and N/m.</summary>
    public double StackAtZero, StackRate;

    /// <summary>Bump stop on the shaft, N and N/m.</summary>
    public double BumpAtZero, BumpRate;

    /// <summary>Bottom-out or top-out, N and N/m.</summary>
    public double StopAtZero, StopRate;

    /// <summary>Bump stop on the axle, N and N/m.</summary>
    public double AxleAtZero, AxleRate;

    /// <summary>Zone factors of the damper.</summary>
    public double CompressionFactor, ReboundFactor;

    /// <summary>Which stops touch.</summary>
    public Contacts Touches;

    /// <summary>True with the slider on the stop nut.</summary>
    public bool OnStopNut;
}

/// <summary>The formula of the velocity-dependent laws between two kinks in shaft velocity: damper AtZero + Rate·ẋ before zone factors.</summary>
public struct VelocityCell
{
    /// <summary>N and N·s/m.</summary>
    public double DamperAtZero, DamperRate;

    /// <summary>True where the shaft goes in.</summary>
    public bool Compresses;

    /// <summary>Stops that push at these velocities.</summary>
    public Contacts Pushes;
}
