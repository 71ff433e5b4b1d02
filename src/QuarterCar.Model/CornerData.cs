using System.Collections.Immutable;

namespace QuarterCar.Model;

/// <summary>What a scenario says about one corner of the vehicle, in SI: the words asked for, not yet the model that is computed with (see <see cref="Corner"/>).</summary>
/// <param name="SprungWeight">Weight that this wheel carries through its spring, N; null where <paramref name="SpringLoad"/> is given instead.</param>
/// <param name="SpringLoad">Load on the springs at ride height, gas not in it, N; null where <paramref name="SprungWeight"/> is given.</param>
/// <param name="UnsprungWeight">Weight of wheel, hub and what moves with them, N.</param>
/// <param name="MotionRatio">Shaft travel per wheel travel over wheel travel; one point is a constant ratio.</param>
/// <param name="Tyre">The tyre.</param>
/// <param name="Coilover">Springs, shock and stops.</param>
public sealed record CornerData(
    double? SprungWeight,
    double? SpringLoad,
    double UnsprungWeight,
    ImmutableArray<TablePoint> MotionRatio,
    TyreData Tyre,
    CoiloverData Coilover);

/// <summary>One row of a straight-line table: argument and value, SI, units by the table's owner.</summary>
/// <param name="At">Argument.</param>
/// <param name="Value">Value there.</param>
public readonly record struct TablePoint(double At, double Value);

/// <summary>How the tyre feels the ground (physics.md section 2).</summary>
public enum TyreContact
{
    /// <summary>The ground right below the wheel centre.</summary>
    Point,

    /// <summary>A rigid circle of the tyre's free radius rolling over the ground.</summary>
    RollingCircle,

    /// <summary>The mean of the ground over a footprint's length.</summary>
    Footprint,
}

/// <summary>The tyre's words, SI.</summary>
/// <param name="Rate">Vertical rate, N/m.</param>
/// <param name="Damping">Vertical damping, N·s/m.</param>
/// <param name="Radius">Free radius, m; needed by <see cref="TyreContact.RollingCircle"/>.</param>
/// <param name="Contact">How it feels the ground.</param>
/// <param name="Footprint">Footprint length, m; needed by <see cref="TyreContact.Footprint"/>.</param>
/// <param name="Sidewall">Deflection at which the rim takes part, m; null without rim.</param>
/// <param name="RimRate">Rate that the rim adds beyond <paramref name="Sidewall"/>, N/m; null without rim.</param>
public sealed record TyreData(
    double Rate,
    double Damping = 0,
    double? Radius = null,
    TyreContact Contact = TyreContact.Point,
    double? Footprint = null,
    double? Sidewall = null,
    double? RimRate = null);

/// <summary>Springs, shock and stops of one coilover, SI.</summary>
/// <param name="Stroke">Shaft travel from full droop to full bump, m.</param>
/// <param name="Springs">The spring stack's words.</param>
/// <param name="Preload">Coil-nut travel past first contact, m; negative where the springs are loose at full droop.</param>
/// <param name="StopNut">Where the stop nut stands; null without one.</param>
/// <param name="Damper">Null without damper.</param>
/// <param name="Gas">Null without gas.</param>
/// <param name="Friction">Friction force, N.</param>
/// <param name="BumpStop">Null without bump stop.</param>
/// <param name="BottomOut">Metal on metal at full bump.</param>
/// <param name="TopOut">The stop at full droop.</param>
/// <param name="Body">Lengths of the body for checks of fit; null where not given.</param>
public sealed record CoiloverData(
    double Stroke,
    SpringSetData Springs,
    double Preload,
    StopNutData? StopNut,
    DamperData? Damper,
    GasData? Gas,
    double Friction,
    BumpStopData? BumpStop,
    StopData BottomOut,
    StopData TopOut,
    BodyData? Body);

/// <summary>One coil spring, SI.</summary>
/// <param name="Rate">Rate, N/m.</param>
/// <param name="FreeLength">Length without load, m.</param>
/// <param name="SolidLength">Length with its coils bound, m.</param>
/// <param name="WireDiameter">m, or null where not given.</param>
/// <param name="MeanDiameter">m, or null where not given.</param>
/// <param name="InnerDiameter">m, or null where not given.</param>
public sealed record SpringData(
    double Rate,
    double FreeLength,
    double SolidLength,
    double? WireDiameter = null,
    double? MeanDiameter = null,
    double? InnerDiameter = null)
{
    /// <summary>Travel from free to solid, m.</summary>
    public double Travel => FreeLength - SolidLength;

    /// <summary>Mean diameter of the coils, m: as given, or inner diameter and wire; null where neither is known.</summary>
    public double? CoilMean => MeanDiameter ?? InnerDiameter + WireDiameter;

    /// <summary>Inner diameter of the coils, m: as given, or mean diameter less wire; null where neither is known.</summary>
    public double? CoilInner => InnerDiameter ?? MeanDiameter - WireDiameter;
}

/// <summary>The springs from the coil nut down. A single spring is the lower one.</summary>
/// <param name="Tender">Null without tender.</param>
/// <param name="Upper">Null with a single spring.</param>
/// <param name="Lower">The spring below the slider.</param>
public sealed record SpringSetData(SpringData? Tender, SpringData? Upper, SpringData Lower)
{
    /// <summary>Those there are, from the coil nut down.</summary>
    public IEnumerable<SpringData> All => Placed.Select(p => p.Spring);

    /// <summary>Those there are with their places by the names of a scenario, from the coil nut down.</summary>
    public IEnumerable<(string Place, SpringData Spring)> Placed
    {
        get
        {
            if (Tender is not null)
                yield return ("tender", Tender);
            if (Upper is not null)
                yield return ("upper", Upper);
            yield return ("lower", Lower);
        }
    }
}

/// <summary>What a stop-nut length refers to (physics.md section 3).</summary>
public enum StopNutReference
{
    /// <summary>The gap is measured with the vehicle standing.</summary>
    RideHeight,

    /// <summary>The gap is measured with the shaft fully extended.</summary>
    FullDroop,

    /// <summary>The length is C* itself, the upper group's compression at which the slider meets the nut: a nut that stayed on the body.</summary>
    UpperTravel,
}

/// <summary>Where the stop nut stands.</summary>
/// <param name="Length">m: a gap, not negative, or C* for <see cref="StopNutReference.UpperTravel"/>.</param>
/// <param name="At">What the length refers to.</param>
public sealed record StopNutData(double Length, StopNutReference At);

/// <summary>Damper force over shaft velocity: points of straight lines from the origin, magnitudes, rising in velocity.</summary>
/// <param name="Compression">Velocity m/s, force N, shaft going in.</param>
/// <param name="Rebound">Velocity m/s, force N, shaft coming out; both as magnitudes.</param>
/// <param name="Zones">Position zones; where two overlap both factors apply.</param>
public sealed record DamperData(
    ImmutableArray<TablePoint> Compression,
    ImmutableArray<TablePoint> Rebound,
    ImmutableArray<DamperZone> Zones);

/// <summary>A stretch of the shaft travel in which the damper's force is multiplied (physics.md section 4).</summary>
/// <param name="From">Shaft travel, m.</param>
/// <param name="To">Shaft travel, m.</param>
/// <param name="Compression">Factor going in.</param>
/// <param name="Rebound">Factor coming out.</param>
public sealed record DamperZone(double From, double To, double Compression, double Rebound);

/// <summary>Gas on the shaft's rod, charged at full droop.</summary>
/// <param name="Pressure">Gauge pressure at full droop and charge temperature, Pa.</param>
/// <param name="RodDiameter">m.</param>
/// <param name="Volume">Gas volume at full droop, m³.</param>
/// <param name="Exponent">Polytropic exponent while moving.</param>
/// <param name="ChargeTemperature">K.</param>
/// <param name="Temperature">K.</param>
public sealed record GasData(
    double Pressure,
    double RodDiameter,
    double Volume,
    double Exponent = 1.4,
    double ChargeTemperature = GasData.RoomTemperature,
    double Temperature = GasData.RoomTemperature)
{
    /// <summary>20 °C in K.</summary>
    public const double RoomTemperature = 293.15;

    /// <summary>Rod section, m².</summary>
    public double RodArea => Math.PI / 4 * RodDiameter * RodDiameter;
}

/// <summary>A bump stop on the shaft or on the axle (physics.md section 4).</summary>
/// <param name="OnAxle">True on the axle (wheel travel), false on the shaft.</param>
/// <param name="Length">Its length, m: it touches this far before full bump.</param>
/// <param name="Force">Compression m, force N; straight lines from (0, 0), last slope carried on.</param>
/// <param name="Loss">Loss factor λ, s/m.</param>
public sealed record BumpStopData(bool OnAxle, double Length, ImmutableArray<TablePoint> Force, double Loss = BumpStopData.DefaultLoss)
{
    /// <summary>s/m.</summary>
    public const double DefaultLoss = 0.2;
}

/// <summary>A metal stop at an end of the stroke (physics.md section 4).</summary>
/// <param name="Rate">N/m.</param>
/// <param name="Loss">Loss factor λ, s/m.</param>
public sealed record StopData(double Rate, double Loss)
{
    /// <summary>Metal on metal at full bump where the scenario says nothing.</summary>
    public static readonly StopData DefaultBottomOut = new(1e7, 0.1);

    /// <summary>Top-out where the scenario says nothing.</summary>
    public static readonly StopData DefaultTopOut = new(1e6, 0.5);
}

/// <summary>Lengths of the coilover body, for checks of fit only; null where not given.</summary>
/// <param name="SeatLength">From the lower spring plate to the coil nut at the top of its thread, shaft fully extended, m.</param>
/// <param name="Thread">Length of thread for the coil nut, m.</param>
/// <param name="ThreadPitch">m a turn.</param>
/// <param name="Slider">Height of the slider between the springs, m.</param>
/// <param name="Diameter">Outer diameter of the body, m.</param>
public sealed record BodyData(double? SeatLength, double? Thread, double? ThreadPitch, double? Slider, double? Diameter);
