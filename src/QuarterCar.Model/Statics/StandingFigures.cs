namespace QuarterCar.Model.Statics;

/// <summary>The standing figures of one corner, SI: the block "static" of summary.json (physics.md sections 3, 5 and 6). Null: does not apply.</summary>
/// <param name="RideHeight">Shaft showing, m: stroke less shaft travel.</param>
/// <param name="ShaftTravel">m.</param>
/// <param name="WheelTravel">m.</param>
/// <param name="Preload">m.</param>
/// <param name="SpringForce">N.</param>
/// <param name="GasForce">N.</param>
/// <param name="PrimaryRate">N/m.</param>
/// <param name="SecondaryRate">N/m; null without stop nut.</param>
/// <param name="CrossoverShaftTravel">m.</param>
/// <param name="CrossoverShaftShowing">m.</param>
/// <param name="CrossoverForce">N.</param>
/// <param name="StopNutGapFullDroop">m.</param>
/// <param name="StopNutGapRideHeight">m, 0 on the nut.</param>
/// <param name="BindClearanceFullBump">Least of upper and lower, m, negative where a spring binds before full bump.</param>
/// <param name="RideFrequency">Undamped, of the two masses, Hz; null where the wheel force falls.</param>
/// <param name="WheelHopFrequency">Hz.</param>
/// <param name="SpringFrequency">Sprung mass on the wheel rate, rigid tyre, Hz; null where the wheel force falls.</param>
/// <param name="ReserveEnergy">From ride height to full bump or coil bind, J; null where ride height lies beyond.</param>
/// <param name="ReserveWheelSpeed">m/s.</param>
public sealed record StandingFigures(
    double RideHeight,
    double ShaftTravel,
    double WheelTravel,
    double Preload,
    double SpringForce,
    double GasForce,
    double PrimaryRate,
    double? SecondaryRate,
    double? CrossoverShaftTravel,
    double? CrossoverShaftShowing,
    double? CrossoverForce,
    double? StopNutGapFullDroop,
    double? StopNutGapRideHeight,
    double BindClearanceFullBump,
    double? RideFrequency,
    double WheelHopFrequency,
    double? SpringFrequency,
    double? ReserveEnergy,
    double? ReserveWheelSpeed);

/// <summary>One spring's travel in the standing stack, m.</summary>
/// <param name="Position">tender, upper or lower.</param>
/// <param name="CompressionFullDroop">m.</param>
/// <param name="CompressionRideHeight">m.</param>
/// <param name="CompressionFullBump">m, stops at solid.</param>
/// <param name="BindClearanceFullBump">m, negative where it binds before.</param>
/// <param name="BindsAtShaftShowing">m; null where it does not bind within the stroke.</param>
public sealed record SpringStanding(
    string Position,
    double CompressionFullDroop,
    double CompressionRideHeight,
    double CompressionFullBump,
    double BindClearanceFullBump,
    double? BindsAtShaftShowing);

/// <summary>One row of the standing force over travel, SI: curve.csv.</summary>
/// <param name="WheelTravel">m.</param>
/// <param name="ShaftTravel">m.</param>
/// <param name="ShaftShowing">m.</param>
/// <param name="MotionRatio">Shaft per wheel.</param>
/// <param name="SpringForce">N.</param>
/// <param name="GasForce">N, isothermal.</param>
/// <param name="BumpStopForce">N, at shaft or axle.</param>
/// <param name="ShaftForce">N.</param>
/// <param name="WheelForce">N.</param>
/// <param name="SpringRate">N/m, at a break the droop side.</param>
/// <param name="WheelRate">N/m, likewise.</param>
/// <param name="CoilNutForce">N.</param>
/// <param name="StopNutForce">N.</param>
/// <param name="Region">Rate region, at a break the side toward bump.</param>
public readonly record struct CurveRow(
    double WheelTravel,
    double ShaftTravel,
    double ShaftShowing,
    double MotionRatio,
    double SpringForce,
    double GasForce,
    double BumpStopForce,
    double ShaftForce,
    double WheelForce,
    double SpringRate,
    double WheelRate,
    double CoilNutForce,
    double StopNutForce,
    RateRegion Region);
