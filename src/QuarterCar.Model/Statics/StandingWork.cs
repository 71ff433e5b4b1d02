using QuarterCar.Model.Shaft;
using QuarterCar.Model.Springs;

namespace QuarterCar.Model.Statics;

/// <summary>Works out the standing figures of a corner (physics.md sections 3, 5 and 6).</summary>
public static class StandingWork
{
    /// <summary>Closer than this in stack compression counts as on a kink, m: the balance is found to the last bit or two.</summary>
    private const double OnKink = 1e-12;

    /// <summary>The standing figures.</summary>
    public static StandingFigures Figures(Corner corner)
    {
        double w = corner.Standing, x = corner.Ratio.Travel(w), y = x + corner.Preload;
        SpringStack stack = corner.Stack;
        double force = stack.Force(y), kw = WheelRate(corner, w, movingGas: true), reserve = Reserve(corner);
        double? crossover = stack.CrossoverForce is { } f ? stack.Compression(f) - corner.Preload : null;
        (double? ride, double hop) = Frequencies(corner, kw);
        return new StandingFigures(
            RideHeight: corner.Stroke - x,
            ShaftTravel: x,
            WheelTravel: w,
            Preload: corner.Preload,
            SpringForce: force,
            GasForce: corner.Gas?.Standing(x) ?? 0,
            PrimaryRate: stack.FreeSeriesRate(force),
            SecondaryRate: stack.HeldTravel is null ? null : stack.LowerRate,
            CrossoverShaftTravel: crossover,
            CrossoverShaftShowing: corner.Stroke - crossover,
            CrossoverForce: stack.CrossoverForce,
            StopNutGapFullDroop: Gap(stack, stack.Force(corner.Preload)),
            StopNutGapRideHeight: Gap(stack, force),
            BindClearanceFullBump: BindClearance(corner),
            RideFrequency: ride,
            WheelHopFrequency: hop,
            SpringFrequency: kw >= 0 ? Math.Sqrt(kw / corner.SprungMass) / (2 * Math.PI) : null,
            ReserveEnergy: double.IsNaN(reserve) ? null : reserve,
            ReserveWheelSpeed: double.IsNaN(reserve) ? null : Math.Sqrt(2 * reserve / corner.SprungMass));
    }

    /// <summary>One row a spring, from the coil nut down.</summary>
    public static IEnumerable<SpringStanding> Springs(Corner corner)
    {
        SpringStack stack = corner.Stack;
        double full = corner.Stroke + corner.Preload, standing = corner.StandingShaftTravel + corner.Preload;
        foreach (StackSpring s in stack.Springs)
        {
            yield return new SpringStanding(
                NameOf(s.Position),
                stack.CompressionOf(s, stack.Force(corner.Preload)),
                stack.CompressionOf(s, stack.Force(standing)),
                stack.CompressionOf(s, stack.Force(full)),
                stack.BindClearance(s.Position, full),
                BindsAt(corner, s));
        }
    }

    /// <summary>Least bind clearance of upper and lower at full bump, m.</summary>
    public static double BindClearance(Corner corner)
    {
        double full = corner.Stroke + corner.Preload, least = double.PositiveInfinity;
        foreach (StackSpring s in corner.Stack.Springs)
        {
            if (s.Position != SpringPosition.Tender)
                least = Math.Min(least, corner.Stack.BindClearance(s.Position, full));
        }

        return least;
    }

    /// <summary>Slope of the frictionless wheel force at a wheel travel, N/m: the motion ratio and its change included; at a kink the side toward droop.</summary>
    /// <param name="corner">The corner.</param>
    /// <param name="w">Wheel travel, m.</param>
    /// <param name="movingGas">True for gas that moves from its standing state, false for gas at rest.</param>
    public static double WheelRate(Corner corner, double w, bool movingGas)
    {
        RatioPiece ratio = RatioTowardDroop(corner.Ratio, w);
        double x = ratio.Travel(w), r = ratio.Ratio(w), y = x + corner.Preload;
        double force = corner.Stack.Force(y), rate = corner.Stack.RateTowardDroop(y, OnKink), axle = 0;
        if (corner.Gas is { } gas)
        {
            double x0 = corner.StandingShaftTravel;
            force += movingGas ? gas.Moving(x, x0) : gas.Standing(x);
            rate += movingGas ? gas.MovingRate(x, x0) : gas.StandingRate(x);
        }

        double q = corner.BumpStopCompression(w);
        if (q > OnKink)
        {
            BumpStopLaw bump = corner.BumpStop!;
            double slope = bump.Lines.Slope(bump.Lines.PieceAt(q - OnKink));
            (force, rate, axle) = bump.OnAxle ? (force, rate, slope) : (force + bump.Force(q, 0), rate + slope, 0);
        }

        force += corner.BottomOut.Force(x - corner.Stroke, 0) - corner.TopOut.Force(-x, 0);
        rate += x > corner.Stroke + OnKink ? corner.BottomOut.Rate : 0;
        rate += x < -OnKink ? corner.TopOut.Rate : 0;
        return r * r * rate + ratio.Slope * force + axle;
    }

    // ½·stored to full bump or coil bind, whichever comes first, less the load's own work (physics.md section 6).
    private static double Reserve(Corner corner)
    {
        double end = corner.EndOfTravel, w0 = corner.Standing;
        double x0 = corner.StandingShaftTravel, w1 = corner.Ratio.WheelTravel(end);
        if (!(w1 >= w0 - OnKink))
            return double.NaN;
        if (w1 <= w0 + OnKink)
            return 0; // on the very edge of bind: the last bit must not tell a reserve of nothing from none
        double stored = corner.Stack.Energy(end + corner.Preload), energy = stored - corner.Stack.Energy(x0 + corner.Preload);
        if (corner.Gas is { } gas)
            energy += gas.MovingEnergy(end, x0) - gas.MovingEnergy(x0, x0);
        if (corner.BumpStop is { } bump)
            energy += bump.Energy(corner.BumpStopCompression(w1)) - bump.Energy(corner.BumpStopCompression(w0));
        energy -= corner.TopOut.Energy(-x0);
        energy -= corner.SprungWeight * (w1 - w0);

        // A difference of energies is known to their last bits only, and the speed is its root: noise of 1e-14 J would read as 1e-8 m/s.
        return Math.Abs(energy) <= 1e-12 * stored ? 0 : energy > 0 ? energy : double.NaN;
    }

    // Roots of λ² − λ·((k_w + k_t)/m_u + k_w/m_s) + k_w·k_t/(m_s·m_u), λ = ω².
    private static (double? Ride, double Hop) Frequencies(Corner corner, double kw)
    {
        double kt = corner.Tyre.Rate, ms = corner.SprungMass, mu = corner.UnsprungMass;
        double b = (kw + kt) / mu + kw / ms, c = kw * kt / (ms * mu), high = 0.5 * (b + Math.Sqrt(b * b - 4 * c)), low = c / high;
        return (low >= 0 ? Math.Sqrt(low) / (2 * Math.PI) : null, Math.Sqrt(high) / (2 * Math.PI));
    }

    private static double? Gap(SpringStack stack, double force) =>
        stack.HeldTravel is { } held ? Math.Max(0, held - stack.FreeGroupCompression(force)) : null;

    private static double? BindsAt(Corner corner, StackSpring spring)
    {
        StackEvents wanted = spring.Position switch
        {
            SpringPosition.Tender => StackEvents.TenderSolid,
            SpringPosition.Upper => StackEvents.UpperBind,
            _ => StackEvents.LowerBind,
        };
        foreach (StackBreak b in corner.Stack.Breaks)
        {
            if ((b.Events & wanted) != 0 && b.Compression - corner.Preload <= corner.Stroke)
                return corner.Stroke - (b.Compression - corner.Preload);
        }

        return null;
    }

    private static RatioPiece RatioTowardDroop(MotionRatio ratio, double w)
    {
        RatioPiece at = ratio.Pieces[0];
        foreach (RatioPiece p in ratio.Pieces)
        {
            if (p.From < w - OnKink)
                at = p;
        }

        return at;
    }

    private static string NameOf(SpringPosition p) => p switch
    {
        SpringPosition.Tender => "tender",
        SpringPosition.Upper => "upper",
        _ => "lower",
    };
}
