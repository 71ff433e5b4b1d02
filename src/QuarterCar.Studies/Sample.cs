using QuarterCar.Model;

namespace QuarterCar.Studies;

/// <summary>Everything about the corner at one instant, SI: a row of trace.csv. Signs as physics.md: heights up, travels and forces positive in bump.</summary>
public readonly record struct Sample
{
    /// <summary>s.</summary>
    public double Time { get; init; }

    /// <summary>m along the ground.</summary>
    public double Distance { get; init; }

    /// <summary>Ground height below the wheel centre, m.</summary>
    public double Ground { get; init; }

    /// <summary>Height that the tyre feels, after its contact model, m.</summary>
    public double Road { get; init; }

    /// <summary>Height of the sprung mass, m.</summary>
    public double Sprung { get; init; }

    /// <summary>m/s.</summary>
    public double SprungVelocity { get; init; }

    /// <summary>Height of the unsprung mass, m.</summary>
    public double Unsprung { get; init; }

    /// <summary>m/s.</summary>
    public double UnsprungVelocity { get; init; }

    /// <summary>m.</summary>
    public double WheelTravel { get; init; }

    /// <summary>m/s.</summary>
    public double WheelVelocity { get; init; }

    /// <summary>m.</summary>
    public double ShaftTravel { get; init; }

    /// <summary>m/s.</summary>
    public double ShaftVelocity { get; init; }

    /// <summary>m.</summary>
    public double ShaftShowing { get; init; }

    /// <summary>m/s², gravity not in it (0 at rest).</summary>
    public double SprungAcceleration { get; init; }

    /// <summary>m/s².</summary>
    public double UnsprungAcceleration { get; init; }

    /// <summary>N.</summary>
    public double SpringForce { get; init; }

    /// <summary>N.</summary>
    public double DamperForce { get; init; }

    /// <summary>N.</summary>
    public double GasForce { get; init; }

    /// <summary>N, at the shaft, or at the wheel for an axle bump stop.</summary>
    public double BumpStopForce { get; init; }

    /// <summary>N.</summary>
    public double FrictionForce { get; init; }

    /// <summary>N.</summary>
    public double BottomOutForce { get; init; }

    /// <summary>N, 0 or negative.</summary>
    public double TopOutForce { get; init; }

    /// <summary>Sum of the forces on the shaft, N; an axle bump stop apart.</summary>
    public double ShaftForce { get; init; }

    /// <summary>N, never negative.</summary>
    public double TyreForce { get; init; }

    /// <summary>m, negative in the air.</summary>
    public double TyreDeflection { get; init; }

    /// <summary>Slider to stop nut, m, 0 on it; null without a stop nut.</summary>
    public double? SliderGap { get; init; }

    /// <summary>m, stops at solid.</summary>
    public double LowerSpringCompression { get; init; }

    /// <summary>m, stops at solid or at the nut.</summary>
    public double UpperGroupCompression { get; init; }

    /// <summary>N.</summary>
    public double CoilNutForce { get; init; }

    /// <summary>N.</summary>
    public double StopNutForce { get; init; }

    /// <summary>What the stack is doing.</summary>
    public RateRegion Region { get; init; }
}
