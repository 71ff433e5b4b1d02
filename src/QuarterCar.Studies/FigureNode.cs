using System.Runtime.Intrinsics;

using QuarterCar.Model;
using QuarterCar.Model.Motion;
using QuarterCar.Numerics.Integration;

namespace QuarterCar.Studies;

/// <summary>The corner at one place inside a step, as the figures ask for it. Accelerations are the interpolant's own, so they belong to the step's piece even at its ends; the tyre's force follows from them and the masses.</summary>
internal readonly struct FigureNode
{
    public FigureNode(RunTrack track, in DenseStep step, double theta)
    {
        Corner corner = track.Corner;
        Vector256<double> y = step.AtTheta(theta), rate = step.DerivativeAtTheta(theta);
        Time = step.Start + theta * step.Length;
        (Sprung, SprungVelocity, Unsprung, UnsprungVelocity) = (y.GetElement(0), y.GetElement(1), y.GetElement(2), y.GetElement(3));
        SprungAcceleration = rate.GetElement(1);
        Forces = CornerForces.At(corner, Unsprung - Sprung, UnsprungVelocity - SprungVelocity, track.GasStart);
        double load = corner.SprungMass * rate.GetElement(1) + corner.UnsprungMass * rate.GetElement(3) + (corner.SprungMass + corner.UnsprungMass) * Corner.Gravity;
        TyreForce = (step.Piece & PieceTag.Airborne) != 0 ? 0 : Math.Max(0, load);
    }

    public double Time { get; }

    public double Sprung { get; }

    public double SprungVelocity { get; }

    public double Unsprung { get; }

    public double UnsprungVelocity { get; }

    public double SprungAcceleration { get; }

    public double TyreForce { get; }

    public CornerForces Forces { get; }
}
