namespace QuarterCar.Model.Motion;

/// <summary>All forces of a corner at one position and velocity, by the laws themselves: the plain reading of physics.md sections 3 and 4 that traces, figures and checks use. SI, positive in bump.</summary>
public readonly record struct CornerForces
{
    /// <summary>Wheel travel, m, and its velocity, m/s.</summary>
    public double WheelTravel { get; init; }

    /// <summary>m/s.</summary>
    public double WheelVelocity { get; init; }

    /// <summary>m.</summary>
    public double ShaftTravel { get; init; }

    /// <summary>m/s.</summary>
    public double ShaftVelocity { get; init; }

    /// <summary>Shaft per wheel.</summary>
    public double Ratio { get; init; }

    /// <summary>Springs, N.</summary>
    public double Spring { get; init; }

    /// <summary>N.</summary>
    public double Damper { get; init; }

    /// <summary>N.</summary>
    public double Gas { get; init; }

    /// <summary>N, at the shaft or, on the axle, at the wheel.</summary>
    public double BumpStop { get; init; }

    /// <summary>N.</summary>
    public double Friction { get; init; }

    /// <summary>N.</summary>
    public double BottomOut { get; init; }

    /// <summary>N, 0 or negative.</summary>
    public double TopOut { get; init; }

    /// <summary>Sum on the shaft, N.</summary>
    public double Shaft { get; init; }

    /// <summary>Suspension force at the wheel, N.</summary>
    public double Wheel { get; init; }

    /// <summary>The forces.</summary>
    /// <param name="corner">The corner.</param>
    /// <param name="w">Wheel travel, m.</param>
    /// <param name="wDot">Its velocity, m/s.</param>
    /// <param name="gasStart">Shaft travel at which the moving gas left its standing state, m.</param>
    public static CornerForces At(Corner corner, double w, double wDot, double gasStart)
    {
        ref readonly RatioPiece ratio = ref corner.Ratio.PieceAt(w);
        double x = ratio.Travel(w), r = ratio.Ratio(w), v = r * wDot;
        bool onAxle = corner.BumpStop is { OnAxle: true };
        double bump = corner.BumpStop is { } b ? b.Force(corner.BumpStopCompression(w), onAxle ? wDot : v) : 0;
        var f = new CornerForces
        {
            WheelTravel = w,
            WheelVelocity = wDot,
            ShaftTravel = x,
            ShaftVelocity = v,
            Ratio = r,
            Spring = corner.Stack.Force(x + corner.Preload),
            Damper = corner.Damper?.Force(x, v) ?? 0,
            Gas = corner.Gas?.Moving(x, gasStart) ?? 0,
            BumpStop = bump,
            Friction = corner.Friction.At(v),
            BottomOut = corner.BottomOut.Force(x - corner.Stroke, v),
            TopOut = -corner.TopOut.Force(-x, -v),
        };
        double shaft = f.Spring + f.Damper + f.Gas + f.Friction + f.BottomOut + f.TopOut + (onAxle ? 0 : bump);
        return f with { Shaft = shaft, Wheel = r * shaft + (onAxle ? bump : 0) };
    }
}
