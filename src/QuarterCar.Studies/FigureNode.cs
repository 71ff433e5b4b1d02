using System.Runtime.Intrinsics;

using QuarterCar.Model;
using QuarterCar.Model.Motion;
using QuarterCar.Numerics.Integration;

namespace QuarterCar.Studies;

/// <summary>
/// The corner at one place inside a step, as the figures ask for it: what moves, and no force but the tyre's, because most nodes want no other. Accelerations are
/// the interpolant's own, so they belong to the step's piece even at its ends; the tyre's force follows from them and the masses.
/// </summary>
internal readonly struct FigureNode
{
    public FigureNode(RunTrack track, in DenseStep step, double theta)
    {
        Corner corner = track.Corner;
        Vector256<double> y = step.AtTheta(theta), rate = step.DerivativeAtTheta(theta);
        Time = step.Start + theta * step.Length;
        (WheelTravel, WheelVelocity) = (CornerState.WheelTravel(y), CornerState.WheelVelocity(y));
        (Unsprung, UnsprungVelocity) = (CornerState.Unsprung(y), CornerState.UnsprungVelocity(y));
        ref readonly RatioPiece ratio = ref corner.Ratio.PieceAt(WheelTravel);
        (ShaftTravel, ShaftVelocity) = (ratio.Travel(WheelTravel), ratio.Ratio(WheelTravel) * WheelVelocity);
        SprungAcceleration = CornerState.SprungVelocity(rate);
        double load = corner.SprungMass * SprungAcceleration + corner.UnsprungMass * CornerState.UnsprungVelocity(rate) + (corner.SprungMass + corner.UnsprungMass) * Corner.Gravity;
        TyreForce = (step.Piece & PieceTag.Airborne) != 0 ? 0 : Math.Max(0, load);
    }

    public double Time { get; }

    public double WheelTravel { get; }

    public double WheelVelocity { get; }

    public double ShaftTravel { get; }

    public double ShaftVelocity { get; }

    public double Unsprung { get; }

    public double UnsprungVelocity { get; }

    public double SprungAcceleration { get; }

    public double TyreForce { get; }
}
