using System.Runtime.Intrinsics;

using QuarterCar.TestKit.Running;

namespace QuarterCar.Numerics.Tests.Integration;

/// <summary>y' = 1 with one or two switches that run straight over time.</summary>
internal readonly record struct Line(double First, double FirstSlope, double Second, double SecondSlope) : ISwitched
{
    public int Switches => double.IsNaN(Second) ? 1 : 2;

    public Vector256<double> Derivative(double t, Vector256<double> y, uint on) => Vector256.Create(1.0, 0, 0, 0);

    public double Switch(int index, double t, Vector256<double> y) => index == 0 ? First + FirstSlope * t : Second + SecondSlope * t;
}
