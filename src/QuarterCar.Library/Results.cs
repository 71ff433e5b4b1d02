namespace QuarterCar;

/// <summary>A remark with a stable code and one plain sentence that says what to do.</summary>
/// <param name="Code">snake_case, as in summary.json.</param>
/// <param name="Message">One sentence.</param>
public sealed record Warning(string Code, string Message)
{
    internal static IReadOnlyList<Warning> Of(IEnumerable<Scenarios.Warning> warnings) => [.. warnings.Select(w => new Warning(w.Code, w.Message))];
}

/// <summary>A limit of the scenario held against its figure.</summary>
/// <param name="Figure">Dotted name.</param>
/// <param name="Largest">Largest allowed, in the unit of the figure's name.</param>
/// <param name="Value">What came out; null where the figure does not apply.</param>
/// <param name="Broken">True where the value is above the limit.</param>
public sealed record LimitResult(string Figure, double Largest, double? Value, bool Broken);

/// <summary>One row of events.csv, SI.</summary>
/// <param name="Name">As in events.csv: crossover, bump_stop, liftoff and so on.</param>
/// <param name="Time">s.</param>
/// <param name="Distance">m.</param>
/// <param name="ShaftTravel">m from full droop.</param>
/// <param name="ShaftVelocity">m/s, positive in bump.</param>
/// <param name="Contact">What the contact did; null for an event that is no touch of a stop.</param>
public sealed record RunEvent(string Name, double Time, double Distance, double ShaftTravel, double ShaftVelocity, RunContact? Contact);

/// <summary>One contact with a stop, SI.</summary>
/// <param name="PeakForce">N.</param>
/// <param name="Penetration">Largest, m.</param>
/// <param name="Duration">s.</param>
/// <param name="Energy">Taken while closing, J.</param>
public sealed record RunContact(double PeakForce, double Penetration, double Duration, double Energy);

/// <summary>How one spring of the stack stands, SI.</summary>
/// <param name="Position">tender, upper or lower.</param>
/// <param name="CompressionAtFullDroop">m.</param>
/// <param name="CompressionAtRideHeight">m.</param>
/// <param name="CompressionAtFullBump">m.</param>
/// <param name="BindClearanceAtFullBump">m; negative where it binds before.</param>
public sealed record SpringStand(
    string Position, double CompressionAtFullDroop, double CompressionAtRideHeight, double CompressionAtFullBump, double BindClearanceAtFullBump);
