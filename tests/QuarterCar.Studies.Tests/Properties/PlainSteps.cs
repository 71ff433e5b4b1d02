using QuarterCar.Model;
using QuarterCar.Model.Motion;

namespace QuarterCar.Studies.Tests.Properties;

/// <summary>
/// The corner's forces by their plain laws (CornerForces.At: if and else, no grid of pieces), stepped by the classical
/// Runge-Kutta method of fourth order with a fixed step: nothing of the integrator, its pieces or its events. A step over
/// which a force jumps (tyre landing or losing its grip on the damping, edge of a damper zone, corner of the road) is halved down to a nanosecond.
/// </summary>
internal sealed class PlainSteps(RunTrack track)
{
    private const double Step = 40e-6, Shortest = 1e-9;

    private readonly Corner _corner = track.Corner;
    private readonly CourseModel _course = track.Course;

    /// <summary>Shaft travel at k times a spacing, m.</summary>
    public double[] ShaftTravels(double spacing, double duration)
    {
        double zu = _course.Road.Height(0) - _corner.Tyre.Deflection((_corner.SprungMass + _corner.UnsprungMass) * Corner.Gravity);
        var y = new State(zu - _corner.Standing, 0, zu, 0);
        int rows = (int)Math.Round(duration / spacing), between = (int)Math.Round(spacing / Step);
        var travels = new double[rows + 1];
        travels[0] = _corner.Ratio.Travel(y.Wheel);
        for (int k = 0; k < rows; k++)
        {
            for (int i = 0; i < between; i++)
                y = Advance(k * spacing + i * Step, y, Step);
            travels[k + 1] = _corner.Ratio.Travel(y.Wheel);
        }

        return travels;
    }

    private State Advance(double t, State y, double h)
    {
        State end = RungeKutta(t, y, h);
        if (h < Shortest || Branch(t, y) == Branch(t + h, end))
            return end;
        return Advance(t + h / 2, Advance(t, y, h / 2), h / 2);
    }

    private State RungeKutta(double t, State y, double h)
    {
        State a = Rate(t, y), b = Rate(t + h / 2, y.Plus(a, h / 2)), c = Rate(t + h / 2, y.Plus(b, h / 2)), d = Rate(t + h, y.Plus(c, h));
        return y.Plus(a, h / 6).Plus(b, h / 3).Plus(c, h / 3).Plus(d, h / 6);
    }

    private State Rate(double t, State y)
    {
        double wheel = CornerForces.At(_corner, y.Wheel, y.Vu - y.Vs, _corner.StandingShaftTravel).Wheel;
        return new State(y.Vs, wheel / _corner.SprungMass - Corner.Gravity, y.Vu, (Tyre(t, y) - wheel) / _corner.UnsprungMass - Corner.Gravity);
    }

    private double Tyre(double t, State y)
    {
        _course.Road.Evaluate(_course.Speed * t, out double h, out double slope);
        return _corner.Tyre.Force(h - y.Zu, _course.Speed * slope - y.Vu);
    }

    // Everything at which a force jumps.
    private (int Road, bool Down, bool Pressed, (double, double) Zone) Branch(double t, State y)
    {
        double s = _course.Speed * t;
        return (_course.Road.IndexAt(s), _course.Road.Height(s) > y.Zu, Tyre(t, y) > 0, _corner.Damper!.Factors(_corner.Ratio.Travel(y.Wheel)));
    }

    private readonly record struct State(double Zs, double Vs, double Zu, double Vu)
    {
        public double Wheel => Zu - Zs;

        public State Plus(State d, double h) => new(Zs + h * d.Zs, Vs + h * d.Vs, Zu + h * d.Zu, Vu + h * d.Vu);
    }
}
