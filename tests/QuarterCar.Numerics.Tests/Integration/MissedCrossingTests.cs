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

    // Each polynomial from its constant term on; the crossing is its first root at which it falls.
    [Theory]
    [InlineData(0.0, new[] { 0, -1.0 })]                                          // leaves at once
    [InlineData(0.0, new[] { 0, 0, -1.0 })]                                       // the same, at rest to begin with
    [InlineData(0.0, new[] { -1e-12, -1.0 })]                                     // outside by rounding, and leaves
    [InlineData(1e-6, new[] { 0, 1e-6, -1 })]                                     // t·(1e-6 − t): inside for a microsecond
    [InlineData(0.5, new[] { 0, 0, 0.5, -1 })]                                    // t²·(½ − t)
    [InlineData(0.3099, new[] { 0.9 * Near, -Near - (0.9 * 0.62), 0.9 + 0.62, -1 })] // ((t − 0.31)² − 1e-8)·(0.9 − t)
    [InlineData(1.0, new[] { 0, 1, -1 - 1e-15 })]                                 // at the very end
    [InlineData(double.NaN, new[] { 0, 1, -1 + 1e-15 })]
    [InlineData(double.NaN, new[] { -1e-12, 1.0 })]                               // outside by rounding, and moves inside
    [InlineData(double.NaN, new[] { 0, 0, 1.0 })]
    [InlineData(double.NaN, new[] { 0.0 })]
    public void A_polynomial_is_crossed_where_it_first_falls_below_0(double expected, double[] powers)
    {
        List<double> found = Crossings(new Powers(powers));
        if (double.IsNaN(expected))
            Assert.Empty(found);
        else
            new Tolerance(2e-11, "rounding of 1e-15 over a slope of 1e-4 a second").Holds(expected, Assert.Single(found));
    }

    // The lid over T7 is crossed at 0.04947; a parabola over time falls to 0 at another time, and is asked first. The step in question begins at 0.005.
    [Theory]
    [InlineData(0.3, 1)]
    [InlineData(0.0495, 1)]  // while T7 is out
    [InlineData(0.0494, 0)]
    [InlineData(0.01, 0)]
    public void Of_two_guards_the_earlier_crossing_counts_whichever_is_asked_first(double parabola, int first)
    {
        var system = new Watched<Chebyshev>(new Chebyshev(0.999999), [], parabola);
        var integrator = new Integrator();
        integrator.Run(ref system, 0, 1, Vector256.Create(-1.0, 0, 0, 0), [0.005], TestRun.Uncontrolled(1));
        Assert.Equal(first, Assert.Single(system.Guards));
        double expected = first == 0 ? parabola : (1 + Math.Cos((6 * Math.PI + Math.Acos(0.999999)) / 7)) / 2;
        new Tolerance(1e-11, "rounding of 1e-14 over a slope of 0.05 a second").Holds(expected, Assert.Single(system.Crossings));
    }

    private const double Near = (0.31 * 0.31) - 1e-8;

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

    /// <summary>A polynomial that is the guard itself.</summary>
    private readonly record struct Powers(double[] Coefficients) : IWatched
    {
        public double Start => Coefficients[0];

        public bool IsLinear => true;

        public int Stretches => 1;

        public double Slope(double t) => Coefficients.Select((c, n) => n == 0 ? 0 : n * c * Math.Pow(t, n - 1)).Sum();

        public double Guard(double t, double y) => y;
    }

    /// <summary>Watched until its first crossing: guard 1 is the model's; guard 0, where a time is given, a parabola that falls to 0 then.</summary>
    private struct Watched<TModel>(TModel model, List<double> crossings, double parabola = double.NaN) : IPiecewiseSystem
        where TModel : struct, IWatched
    {
        public readonly List<double> Crossings => crossings;

        public List<int> Guards { get; } = [];

        public readonly int Piece => crossings.Count;

        public readonly Vector256<double> Derivative(double t, Vector256<double> y) => Vector256.Create(model.Slope(t), 0, 0, 0);

        public readonly uint Suspects(in DenseStep step) => crossings.Count > 0 ? 0 : double.IsNaN(parabola) ? 0b10u : 0b11u;

        public readonly double Guard(int guard, double t, Vector256<double> y) => guard == 0 ? (parabola * parabola) - (t * t) : model.Guard(t, y[0]);

        public readonly bool TryLinear(int guard, double start, out LinearGuard linear)
        {
            double weight = model.Guard(0, 1) - model.Guard(0, 0);
            linear = guard == 0 ? new LinearGuard(default, (parabola * parabola) - (start * start), -2 * start, -1) : new LinearGuard(Vector256.Create(weight, 0, 0, 0), model.Guard(0, 0), 0);
            return guard == 0 || model.IsLinear;
        }

        public readonly int Stretches(int guard, in DenseStep step) => model.Stretches;

        public readonly void Cross(int guard, double t, Vector256<double> y)
        {
            crossings.Add(t);
            Guards.Add(guard);
        }

        public readonly void PassBreak(int index, double t, Vector256<double> y)
        {
        }

        public readonly bool IsAtRest(Vector256<double> y, Vector256<double> dydt) => false;
    }
}
