using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace QuarterCar.Numerics.Integration;

/// <summary>How large an error may be, component by component: Absolute + Relative·|y|.</summary>
/// <param name="Absolute">Floor, in the state's units.</param>
/// <param name="Relative">Share of the larger of the step's two end states.</param>
public readonly record struct ErrorScale(Vector256<double> Absolute, double Relative)
{
    /// <summary>The allowed error of a step between two states.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector256<double> Allowed(Vector256<double> y0, Vector256<double> y1) =>
        Vector256.FusedMultiplyAdd(Vector256.Max(Vector256.Abs(y0), Vector256.Abs(y1)), Vector256.Create(Relative), Absolute);
}

/// <summary>Decides whether a step is good and how long the next one may be. Knows no physics.</summary>
/// <param name="Safety">Share of the predicted length that is used.</param>
/// <param name="Shrink">Least factor.</param>
/// <param name="Grow">Largest factor; an error of 0 gives it.</param>
public readonly record struct StepController(double Safety, double Shrink, double Grow)
{
    /// <summary>Values that suit an eighth-order pair that is cut at events: a rejected step costs as much as a good one, so the prediction is held back more than usual (measured on the reference runs: a third of the rejections of 0.9, hardly more steps).</summary>
    public static readonly StepController Default = new(0.78, 0.25, 6);

    /// <summary>Factor on the step length. errorNorm 1 is just allowed; the error grows with the eighth power of the length, and three square roots are its eighth root.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double Factor(double errorNorm)
    {
        double root = Math.Sqrt(Math.Sqrt(Math.Sqrt(errorNorm)));
        return root * Grow <= Safety ? Grow : Math.Max(Shrink, Safety / root);
    }
}
