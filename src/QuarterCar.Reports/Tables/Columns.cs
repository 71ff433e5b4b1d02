using QuarterCar.Model;
using QuarterCar.Model.Statics;
using QuarterCar.Reports.Units;
using QuarterCar.Studies;

namespace QuarterCar.Reports.Tables;

/// <summary>The columns of trace.csv, curve.csv and events.csv.</summary>
public static class Columns
{
    /// <summary>trace.csv: one row a sample.</summary>
    public static readonly Table<Sample> Trace = new(
    [
        new("time", Dimension.Time, s => s.Time),
        new("distance", Dimension.Distance, s => s.Distance),
        new("ground", Dimension.Length, s => s.Ground),
        new("road", Dimension.Length, s => s.Road),
        new("sprung", Dimension.Length, s => s.Sprung),
        new("sprung_velocity", Dimension.Velocity, s => s.SprungVelocity),
        new("unsprung", Dimension.Length, s => s.Unsprung),
        new("unsprung_velocity", Dimension.Velocity, s => s.UnsprungVelocity),
        new("wheel_travel", Dimension.Length, s => s.WheelTravel),
        new("wheel_velocity", Dimension.Velocity, s => s.WheelVelocity),
        new("shaft_travel", Dimension.Length, s => s.ShaftTravel),
        new("shaft_velocity", Dimension.Velocity, s => s.ShaftVelocity),
        new("shaft_showing", Dimension.Length, s => s.ShaftShowing),
        new("sprung_acceleration", Dimension.Acceleration, s => s.SprungAcceleration),
        new("unsprung_acceleration", Dimension.Acceleration, s => s.UnsprungAcceleration),
        new("spring_force", Dimension.Force, s => s.SpringForce),
        new("damper_force", Dimension.Force, s => s.DamperForce),
        new("gas_force", Dimension.Force, s => s.GasForce),
        new("bump_stop_force", Dimension.Force, s => s.BumpStopForce),
        new("friction_force", Dimension.Force, s => s.FrictionForce),
        new("bottom_out_force", Dimension.Force, s => s.BottomOutForce),
        new("top_out_force", Dimension.Force, s => s.TopOutForce),
        new("shaft_force", Dimension.Force, s => s.ShaftForce),
        new("tyre_force", Dimension.Force, s => s.TyreForce),
        new("tyre_deflection", Dimension.Length, s => s.TyreDeflection),
        new("slider_gap", Dimension.Length, s => s.SliderGap ?? double.NaN),
        new("lower_spring_compression", Dimension.Length, s => s.LowerSpringCompression),
        new("upper_group_compression", Dimension.Length, s => s.UpperGroupCompression),
        new("coil_nut_force", Dimension.Force, s => s.CoilNutForce),
        new("stop_nut_force", Dimension.Force, s => s.StopNutForce),
        Word<Sample>("rate_region", s => RegionName(s.Region)),
    ]);

    /// <summary>curve.csv: the standing force over travel.</summary>
    public static readonly Table<CurveRow> Curve = new(
    [
        new("wheel_travel", Dimension.Length, r => r.WheelTravel),
        new("shaft_travel", Dimension.Length, r => r.ShaftTravel),
        new("shaft_showing", Dimension.Length, r => r.ShaftShowing),
        new("motion_ratio", Dimension.Number, r => r.MotionRatio),
        new("spring_force", Dimension.Force, r => r.SpringForce),
        new("gas_force", Dimension.Force, r => r.GasForce),
        new("bump_stop_force", Dimension.Force, r => r.BumpStopForce),
        new("shaft_force", Dimension.Force, r => r.ShaftForce),
        new("wheel_force", Dimension.Force, r => r.WheelForce),
        new("spring_rate", Dimension.Rate, r => r.SpringRate),
        new("wheel_rate", Dimension.Rate, r => r.WheelRate),
        new("coil_nut_force", Dimension.Force, r => r.CoilNutForce),
        new("stop_nut_force", Dimension.Force, r => r.StopNutForce),
        Word<CurveRow>("rate_region", r => RegionName(r.Region)),
    ]);

    /// <summary>events.csv: one row an event; the last four filled on a contact's touch row.</summary>
    public static readonly Table<EventRow> Events = new(
    [
        Word<EventRow>("event", e => e.Event),
        new("time", Dimension.Time, e => e.Time),
        new("distance", Dimension.Distance, e => e.Distance),
        new("shaft_travel", Dimension.Length, e => e.ShaftTravel),
        new("shaft_velocity", Dimension.Velocity, e => e.ShaftVelocity),
        new("peak_force", Dimension.Force, e => e.Contact?.PeakForce ?? double.NaN),
        new("penetration", Dimension.Length, e => e.Contact?.Penetration ?? double.NaN),
        new("duration", Dimension.Time, e => e.Contact?.Duration ?? double.NaN),
        new("energy", Dimension.Energy, e => e.Contact?.Energy ?? double.NaN),
    ]);

    /// <summary>The word of a rate region in the result files.</summary>
    public static string RegionName(RateRegion region) => region switch
    {
        RateRegion.Loose => "loose",
        RateRegion.Tender => "tender",
        RateRegion.Primary => "primary",
        RateRegion.Secondary => "secondary",
        RateRegion.Bound => "bound",
        _ => throw new ArgumentOutOfRangeException(nameof(region), region, "no such region"),
    };

    private static Column<T> Word<T>(string name, Func<T, string> word) => new(name, Dimension.Word, _ => double.NaN, word);
}
