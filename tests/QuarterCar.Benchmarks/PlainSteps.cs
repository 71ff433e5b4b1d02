using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.OdeSolvers;

using QuarterCar.Model;
using QuarterCar.Model.Motion;
using QuarterCar.Scenarios;
using QuarterCar.Studies;

namespace QuarterCar.Benchmarks;

/// <summary>The same equations as an engineer would first write them: the laws by value, stepped by MathNet.Numerics' fixed-step fourth-order Runge–Kutta, no events located.</summary>
internal sealed class PlainSteps
{
    private readonly Corner _corner;
    private readonly CourseModel _course;
    private readonly double _duration;

    public PlainSteps(Scenario scenario)
    {
        _corner = Corner.Build(scenario.Corner);
        _course = CourseModel.Of(scenario);
        _duration = _course.Duration(scenario.Run);
    }

    /// <summary>Shaft travel at the end of every step.</summary>
    /// <param name="steps">How many.</param>
    public Vector<double>[] Run(int steps)
    {
        double h = _course.Road.Segments[_course.Road.IndexAt(0)].HeightAt(0);
        double zu = h - _corner.Tyre.Deflection((_corner.SprungMass + _corner.UnsprungMass) * Corner.Gravity);
        return RungeKutta.FourthOrder(Vector<double>.Build.Dense([_corner.Standing, 0, zu, 0]), 0, _duration, steps + 1, Derivative);
    }

    /// <summary>Largest error of shaft travel against another run, on a 10 ms grid, m.</summary>
    public double Error(Vector<double>[] states, double[] grid)
    {
        double worst = 0;
        for (int i = 0; i < grid.Length; i++)
        {
            int k = (int)Math.Round(i * 0.01 / _duration * (states.Length - 1));
            if (k < states.Length)
                worst = Math.Max(worst, Math.Abs(_corner.Ratio.Travel(states[k][0]) - grid[i]));
        }

        return worst;
    }

    private Vector<double> Derivative(double t, Vector<double> y)
    {
        CornerForces f = CornerForces.At(_corner, y[0], y[1], _corner.StandingShaftTravel);
        _course.Road.Evaluate(_course.Speed * t, out double h, out double slope);
        double tyre = _corner.Tyre.Force(h - y[2], _course.Speed * slope - y[3]);
        double unsprung = (tyre - f.Wheel) / _corner.UnsprungMass - Corner.Gravity, sprung = f.Wheel / _corner.SprungMass - Corner.Gravity;
        return Vector<double>.Build.Dense([y[1], unsprung - sprung, y[3], unsprung]);
    }
}
