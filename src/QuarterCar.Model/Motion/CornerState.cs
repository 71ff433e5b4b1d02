using System.Runtime.Intrinsics;

namespace QuarterCar.Model.Motion;

/// <summary>
/// The four numbers that are integrated: wheel travel w and its velocity, unsprung height z_u and its velocity (m, m/s).
/// They say the same as physics.md section 1's heights of both masses, z_s = z_u − w; but every law of the suspension
/// asks for w, so that the innermost loop need not subtract first.
/// </summary>
public static class CornerState
{
    /// <summary>Place of ẇ among the four.</summary>
    public const int WheelVelocityPlace = 1;

    /// <summary>Place of v_u among the four.</summary>
    public const int UnsprungVelocityPlace = 3;

    /// <summary>The state.</summary>
    /// <param name="wheelTravel">w, m.</param>
    /// <param name="wheelVelocity">ẇ, m/s.</param>
    /// <param name="unsprung">z_u, m.</param>
    /// <param name="unsprungVelocity">v_u, m/s.</param>
    public static Vector256<double> Of(double wheelTravel, double wheelVelocity, double unsprung, double unsprungVelocity) =>
        Vector256.Create(wheelTravel, wheelVelocity, unsprung, unsprungVelocity);

    /// <summary>w, m; of a rate of change ẇ, m/s.</summary>
    public static double WheelTravel(Vector256<double> y) => y.GetElement(0);

    /// <summary>ẇ, m/s; of a rate of change ẅ, m/s².</summary>
    public static double WheelVelocity(Vector256<double> y) => y.GetElement(WheelVelocityPlace);

    /// <summary>z_u, m.</summary>
    public static double Unsprung(Vector256<double> y) => y.GetElement(2);

    /// <summary>v_u, m/s; of a rate of change the unsprung acceleration, m/s².</summary>
    public static double UnsprungVelocity(Vector256<double> y) => y.GetElement(UnsprungVelocityPlace);

    /// <summary>z_s, m.</summary>
    public static double Sprung(Vector256<double> y) => y.GetElement(2) - y.GetElement(0);

    /// <summary>v_s, m/s; of a rate of change the sprung acceleration, m/s².</summary>
    public static double SprungVelocity(Vector256<double> y) => y.GetElement(UnsprungVelocityPlace) - y.GetElement(WheelVelocityPlace);
}
