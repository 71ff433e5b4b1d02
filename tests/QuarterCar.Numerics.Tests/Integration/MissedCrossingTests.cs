using System.Runtime.Intrinsics;

using QuarterCar.Numerics.Integration;
using QuarterCar.TestKit;
using QuarterCar.TestKit.Running;

using Xunit;

namespace QuarterCar.Numerics.Tests.Integration;

/// <summary>Crossings that looks at a few places of a step pass over: brief ones of a polynomial, and one of many waves within a step.</summary>
public class MissedCrossingTests
{
    // Chebyshev's T7(2t − 1) = cos 7φ rises from −1 to its first peak of 1 at 7φ = 6π, t = (1 + cos φ)/2; under a lid 1e-6 below that peak it
    // stays out for 2·acos(1 − 1e-6)/7 of the angle: 1.7e-4 of the step.
    [Fact]
    public void A_brief_excursion_of_a_polynomial_is_found()
    {
        double angle = (6 * Math.PI + Math.Acos(0.999999)) / 7;
        new Tolerance(1e-11, "rounding of 1e-14 over a slope of 0.05 a second").Holds((1 + Math.Cos(angle)) / 2, Assert.Single(Crossings(new Chebyshev(0.999999))));
    }

    [Fact]
    public void A_polynomial_that_only_comes_close_is_not_crossed() => Assert.Empty(Crossings(new Chebyshev(1.000001)));

    // Zero at first, then inside until cos 7φ = −1 again: t = (1 + cos(5π/7))/2, where it only touches; it leaves nowhere.
    [Fact]
    public void A_start_on_the_boundary_that_moves_inside_is_not_crossed() => Assert.Empty(Crossings(new Chebyshev(-1, Up: true)));

    // 1.01 − 0.0133·t is first below sin 20πt on the ninth wave of ten, at 1.01 − 0.0133·t = sin 20πt there (root by mpmath).
    [Fact]
    public void The_one_wave_that_reaches_a_body_in_flight_is_found_in_a_step_over_ten() =>
        new Tolerance(1e-11, "rounding over the speed at the touch").Holds(0.824301397447764627, Assert.Single(Crossings(new OverWaves(20))));

    private static List<double> Crossings<TModel>(TModel model)
        where TModel : struct, IWatched
    {
        var system = new Watched<TModel>(model, []);
        var integrator = new Integrator();
        integrator.Run(ref system, 0, 1, Vector256.Create(model.Start, 0, 0, 0), [], TestRun.Uncontrolled(1));
        Assert.Equal(1, integrator.Log.Steps[0].Length);
        return system.Crossings;
    }

    private interface IWatched
    {
        double Start { get; }

        double Slope(double t);

        double Guard(double t, double y);

        bool IsLinear { get; }

        int Stretches { get; }
    }

    /// <summary>y = T7(2t − 1), under a lid or, turned up, over a floor.</summary>
    private readonly record struct Chebyshev(double Lid, bool Up = false) : IWatched
    {
        public double Start => -1;

        public bool IsLinear => true;

        public int Stretches => 1;

        // T7' = 7·U6.
        public double Slope(double t)
        {
            double s = (2 * t - 1) * (2 * t - 1);
            return 14 * (((64 * s - 80) * s + 24) * s - 1);
        }

        public double Guard(double t, double y) => Up ? y - Lid : Lid - y;
    }

    /// <summary>A body that sinks slowly over waves.</summary>
    private readonly record struct OverWaves(int Stretches) : IWatched
    {
        public double Start => 1.01;

        public bool IsLinear => false;

        public double Slope(double t) => -0.0133;

        public double Guard(double t, double y) => y - Math.Sin(20 * Math.PI * t);
    }

    /// <summary>Watched until its first crossing.</summary>
    private struct Watched<TModel>(TModel model, List<double> crossings) : IPiecewiseSystem
        where TModel : struct, IWatched
    {
        public readonly List<double> Crossings => crossings;

        public readonly int Piece => crossings.Count;

        public readonly Vector256<double> Derivative(double t, Vector256<double> y) => Vector256.Create(model.Slope(t), 0, 0, 0);

        public readonly uint Suspects(in DenseStep step) => crossings.Count == 0 ? 1u : 0;

        public readonly double Guard(int guard, double t, Vector256<double> y) => model.Guard(t, y[0]);

        public readonly bool TryLinear(int guard, double start, out LinearGuard linear)
        {
            double weight = model.Guard(0, 1) - model.Guard(0, 0);
            linear = new LinearGuard(Vector256.Create(weight, 0, 0, 0), model.Guard(0, 0), 0);
            return model.IsLinear;
        }

        public readonly int Stretches(int guard, in DenseStep step) => model.Stretches;

        public readonly void Cross(int guard, double t, Vector256<double> y) => crossings.Add(t);

        public readonly void PassBreak(int index, double t, Vector256<double> y)
        {
        }

        public readonly bool IsAtRest(Vector256<double> y, Vector256<double> dydt) => false;
    }
}
