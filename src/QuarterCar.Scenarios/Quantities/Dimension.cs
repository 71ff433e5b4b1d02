namespace QuarterCar.Scenarios.Quantities;

/// <summary>What a value measures.</summary>
public enum Dimension
{
    /// <summary>Nothing: a plain number.</summary>
    Number,

    /// <summary>m.</summary>
    Length,

    /// <summary>N; a mass stands for its weight.</summary>
    Force,

    /// <summary>N/m.</summary>
    SpringRate,

    /// <summary>N·s/m.</summary>
    Damping,

    /// <summary>m/s.</summary>
    Speed,

    /// <summary>Pa.</summary>
    Pressure,

    /// <summary>m³.</summary>
    Volume,

    /// <summary>s.</summary>
    Time,

    /// <summary>rad.</summary>
    Angle,

    /// <summary>K.</summary>
    Temperature,

    /// <summary>s/m: time per length.</summary>
    Loss,

    /// <summary>1: given in percent.</summary>
    Share,
}
