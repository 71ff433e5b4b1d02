using System.Runtime.Intrinsics;

namespace QuarterCar.Numerics.Integration;

/// <summary>
/// Four first-order equations that are smooth on one piece at a time. The system knows which piece it is on; its
/// derivative is that piece's formula, carried on past the piece's ends, so that a trial step, its error estimate and
/// its interpolant always see a smooth function. Guards say where the piece ends.
/// </summary>
/// <remarks>Implemented by structs, so that the compiler makes one inlined copy of the stepper a system.</remarks>
public interface IPiecewiseSystem
{
    /// <summary>dy/dt on the present piece.</summary>
    /// <param name="t">Time, s.</param>
    /// <param name="y">State.</param>
    Vector256<double> Derivative(double t, Vector256<double> y);

    /// <summary>Tag of the present piece, remembered with each step; its meaning is the system's own.</summary>
    int Piece { get; }

    /// <summary>Guards that a step may cross, as a bit mask; 0 where it certainly crosses none. Bit i stands for guard i.</summary>
    /// <param name="step">The accepted step with its interpolant.</param>
    uint Suspects(in DenseStep step);

    /// <summary>Positive inside the present piece, negative past its end.</summary>
    /// <param name="guard">Which, 0 to 31.</param>
    /// <param name="t">Time, s.</param>
    /// <param name="y">State.</param>
    double Guard(int guard, double t, Vector256<double> y);

    /// <summary>The same guard as a function linear in the state, where it is one: a polynomial along the step, of which no crossing is missed.</summary>
    /// <param name="guard">Which.</param>
    /// <param name="start">Start of the step, s.</param>
    /// <param name="linear">The function.</param>
    /// <returns>False where the guard is no such function on the present piece.</returns>
    bool TryLinear(int guard, double start, out LinearGuard linear);

    /// <summary>
    /// Into how many equal stretches a step is to be cut so that a guard that is not linear dips once in each at most. The
    /// step is as long as the state allows; what the guard reads besides it (a road under a wheel in the air) may go up and
    /// down many times meanwhile.
    /// </summary>
    /// <param name="guard">Which; one for which <see cref="TryLinear"/> said no.</param>
    /// <param name="step">The accepted step.</param>
    /// <returns>1 or more.</returns>
    int Stretches(int guard, in DenseStep step);

    /// <summary>Moves to the piece behind a guard.</summary>
    /// <param name="guard">The guard that was crossed.</param>
    /// <param name="t">When, s.</param>
    /// <param name="y">State there; continuous.</param>
    void Cross(int guard, double t, Vector256<double> y);

    /// <summary>Moves past a break time that the integration has just reached.</summary>
    /// <param name="index">Index into the break times.</param>
    /// <param name="t">When, s.</param>
    /// <param name="y">State there; continuous.</param>
    void PassBreak(int index, double t, Vector256<double> y);

    /// <summary>True where the state is an equilibrium that lasts until the next break: nothing to integrate.</summary>
    /// <param name="y">State.</param>
    /// <param name="dydt">Its derivative.</param>
    bool IsAtRest(Vector256<double> y, Vector256<double> dydt);
}
