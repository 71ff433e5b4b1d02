namespace QuarterCar.Reports.Units;

/// <summary>What a column or a figure measures; decides its unit in each unit system.</summary>
public enum Dimension
{
    /// <summary>A pure number.</summary>
    Number,

    /// <summary>A share, 1 is all of it.</summary>
    Share,

    /// <summary>s in both systems.</summary>
    Time,

    /// <summary>A length on the coilover: m, or in.</summary>
    Length,

    /// <summary>A length along the ground: in files as <see cref="Length"/>, for people m or ft.</summary>
    Distance,

    /// <summary>m/s, or in/s.</summary>
    Velocity,

    /// <summary>m/s² inside, g in both systems outside.</summary>
    Acceleration,

    /// <summary>N, or lbf.</summary>
    Force,

    /// <summary>N/m, or lbf/in.</summary>
    Rate,

    /// <summary>J, or ft·lbf.</summary>
    Energy,

    /// <summary>Hz in both systems.</summary>
    Frequency,

    /// <summary>A word, not a number.</summary>
    Word,
}
