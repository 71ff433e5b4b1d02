using UnitsNet;

namespace QuarterCar.Drafts;

/// <summary>Force per velocity: the one quantity that the units library lacks.</summary>
/// <param name="NewtonSecondsPerMeter">N·s/m.</param>
public readonly record struct DampingRate(double NewtonSecondsPerMeter)
{
    // International inch 0.0254 m (1959), international pound 0.45359237 kg (1959), standard gravity 9.80665 m/s² (CGPM 1901).
    private const double PoundForceSecondPerInch = 0.45359237 * 9.80665 / 0.0254;

    /// <summary>From lbf·s/in.</summary>
    public static DampingRate FromPoundForceSecondsPerInch(double value) => new(value * PoundForceSecondPerInch);
}

/// <summary>Share of a contact's force that closing speed adds, per speed (Hunt and Crossley 1975).</summary>
/// <param name="SecondsPerMeter">s/m.</param>
public readonly record struct Loss(double SecondsPerMeter);

/// <summary>Shaft travel per wheel travel: one number, or a table over wheel travel joined by straight lines.</summary>
public sealed class MotionRatio
{
    private MotionRatio(double? number, IReadOnlyList<(Length WheelTravel, double Ratio)> rows) => (Number, Rows) = (number, rows);

    internal double? Number { get; }

    internal IReadOnlyList<(Length WheelTravel, double Ratio)> Rows { get; }

    /// <summary>The same over the whole travel.</summary>
    public static implicit operator MotionRatio(double ratio) => FromDouble(ratio);

    /// <summary>The same over the whole travel.</summary>
    public static MotionRatio FromDouble(double ratio) => new(ratio, []);

    /// <summary>A table over wheel travel from full droop, rising.</summary>
    public static MotionRatio Table(params (Length WheelTravel, double Ratio)[] rows) => new(null, [.. rows]);
}
