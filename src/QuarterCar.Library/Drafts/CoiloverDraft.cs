using UnitsNet;

namespace QuarterCar.Drafts;

/// <summary>Springs, shock and stops.</summary>
public sealed record CoiloverDraft : Draft
{
    /// <summary>Shaft travel from full droop to full bump.</summary>
    public required Length Stroke { get; init; }

    /// <summary>From the coil nut down.</summary>
    public required SpringsDraft Springs { get; init; }

    /// <summary>Coil-nut travel past first contact. Left out: 0.</summary>
    public Length? Preload { get; init; }

    /// <summary>Left out: no stop nut.</summary>
    public StopNutDraft? StopNut { get; init; }

    /// <summary>Left out: no damper.</summary>
    public DamperDraft? Damper { get; init; }

    /// <summary>Gas behind the rod; left out: none.</summary>
    public GasDraft? Gas { get; init; }

    /// <summary>Friction of shaft and seals. Left out: 0.</summary>
    public Force? Friction { get; init; }

    /// <summary>The rubber or foam stop; left out: none.</summary>
    public BumpStopDraft? BumpStop { get; init; }

    /// <summary>Metal on metal at full bump; left out: physics.md's default.</summary>
    public StopDraft? BottomOut { get; init; }

    /// <summary>The stop at full droop; left out: physics.md's default.</summary>
    public StopDraft? TopOut { get; init; }

    /// <summary>Lengths of the body, for checks of fit only.</summary>
    public BodyDraft? Body { get; init; }
}

/// <summary>The springs, from the coil nut down; the lower alone is a single-spring setup.</summary>
public sealed record SpringsDraft : Draft
{
    /// <summary>A soft spring that goes solid; left out: none.</summary>
    public SpringDraft? Tender { get; init; }

    /// <summary>Above the slider; may be left out only without tender and stop nut.</summary>
    public SpringDraft? Upper { get; init; }

    /// <summary>Below the slider.</summary>
    public required SpringDraft Lower { get; init; }
}

/// <summary>One spring.</summary>
public sealed record SpringDraft : Draft
{
    /// <summary>Spring rate.</summary>
    public required ForcePerLength Rate { get; init; }

    /// <summary>Without load.</summary>
    public required Length FreeLength { get; init; }

    /// <summary>With its coils bound.</summary>
    public required Length SolidLength { get; init; }

    /// <summary>For checks of surge.</summary>
    public Length? WireDiameter { get; init; }

    /// <summary>Of the coils, for checks of buckling and surge.</summary>
    public Length? MeanDiameter { get; init; }

    /// <summary>Of the coils, for checks of fit.</summary>
    public Length? InnerDiameter { get; init; }
}

/// <summary>The stop nut.</summary>
public sealed record StopNutDraft : Draft
{
    /// <summary>Between slider and stop nut, 0 or more.</summary>
    public required Length Gap { get; init; }

    /// <summary>Where the gap is measured.</summary>
    public required GapPlace At { get; init; }
}

/// <summary>Where a stop-nut gap is measured.</summary>
public enum GapPlace
{
    /// <summary>With the vehicle standing.</summary>
    RideHeight,

    /// <summary>With the shaft fully extended.</summary>
    FullDroop,
}

/// <summary>Damper forces over shaft velocity, both as magnitudes; straight lines through the origin, the last slope carried on.</summary>
public sealed record DamperDraft : Draft
{
    /// <summary>Shaft going in.</summary>
    public required IReadOnlyList<(Speed Velocity, Force Force)> Compression { get; init; }

    /// <summary>Shaft coming out.</summary>
    public required IReadOnlyList<(Speed Velocity, Force Force)> Rebound { get; init; }

    /// <summary>Stretches of shaft travel in which the forces are multiplied.</summary>
    public IReadOnlyList<DamperZoneDraft>? Zones { get; init; }
}

/// <summary>A stretch of shaft travel in which the damper's forces are multiplied.</summary>
public sealed record DamperZoneDraft : Draft
{
    /// <summary>Shaft travel where it begins.</summary>
    public required Length From { get; init; }

    /// <summary>Shaft travel where it ends.</summary>
    public required Length To { get; init; }

    /// <summary>Factor going in.</summary>
    public required double Compression { get; init; }

    /// <summary>Factor coming out.</summary>
    public required double Rebound { get; init; }
}

/// <summary>Gas behind the rod.</summary>
public sealed record GasDraft : Draft
{
    /// <summary>Gauge pressure at full droop.</summary>
    public required Pressure Pressure { get; init; }

    /// <summary>Of the shock's rod.</summary>
    public required Length RodDiameter { get; init; }

    /// <summary>Of the gas at full droop.</summary>
    public required Volume Volume { get; init; }

    /// <summary>1 isothermal, 1.4 fast.</summary>
    public double? Exponent { get; init; }

    /// <summary>When the pressure was set.</summary>
    public Temperature? ChargeTemperature { get; init; }

    /// <summary>Now.</summary>
    public Temperature? Temperature { get; init; }
}

/// <summary>The rubber or foam stop.</summary>
public sealed record BumpStopDraft : Draft
{
    /// <summary>Where it sits.</summary>
    public required BumpStopPlace On { get; init; }

    /// <summary>It touches this far before full bump.</summary>
    public required Length Length { get; init; }

    /// <summary>Force over compression, the last slope carried on.</summary>
    public required IReadOnlyList<(Length Compression, Force Force)> Force { get; init; }

    /// <summary>Share of the force that closing speed adds, per speed.</summary>
    public Loss? Loss { get; init; }
}

/// <summary>Where a bump stop sits.</summary>
public enum BumpStopPlace
{
    /// <summary>On the shock's shaft.</summary>
    Shaft,

    /// <summary>Between axle and chassis.</summary>
    Axle,
}

/// <summary>A metal stop.</summary>
public sealed record StopDraft : Draft
{
    /// <summary>Stiffness of the contact.</summary>
    public ForcePerLength? Rate { get; init; }

    /// <summary>Share of the force that closing speed adds, per speed.</summary>
    public Loss? Loss { get; init; }
}

/// <summary>Lengths of the body, for checks of fit only.</summary>
public sealed record BodyDraft : Draft
{
    /// <summary>Lower spring plate to coil nut at the top of its thread, shaft fully extended.</summary>
    public Length? SeatLength { get; init; }

    /// <summary>Length of thread for the coil nut.</summary>
    public Length? Thread { get; init; }

    /// <summary>A turn.</summary>
    public Length? ThreadPitch { get; init; }

    /// <summary>Height of the slider between the springs.</summary>
    public Length? Slider { get; init; }

    /// <summary>Outside of the body.</summary>
    public Length? Diameter { get; init; }
}
