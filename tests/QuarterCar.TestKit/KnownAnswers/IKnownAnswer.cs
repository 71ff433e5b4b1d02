using System.Runtime.Intrinsics;

using QuarterCar.TestKit.Running;

namespace QuarterCar.TestKit.KnownAnswers;

/// <summary>A problem whose answer someone worked out without integrating numerically: equations, start, answer, source.</summary>
public interface IKnownAnswer
{
    /// <summary>Where equations and answer come from.</summary>
    string Source { get; }

    /// <summary>State at time 0.</summary>
    Vector256<double> Start { get; }
}

/// <summary>A smooth problem whose state is known at every time.</summary>
public interface IKnownMotion : IKnownAnswer, IRightHandSide
{
    /// <summary>The exact state.</summary>
    /// <param name="t">Time, s; 0 or later.</param>
    Vector256<double> Exact(double t);
}
