using System.Numerics;

using QuarterCar.Model;
using QuarterCar.Model.Terrain;
using QuarterCar.Scenarios;
using QuarterCar.TestKit;

using Xunit;

using Tolerance = QuarterCar.TestKit.Tolerance;

namespace QuarterCar.Studies.Tests.Properties;

/// <summary>QC-R (check-values section 5): what a linear quarter car does on a random road of ISO 8608, r.m.s.</summary>
public class RandomRoadTests
{
    private const double Speed = 20, Length = 3000;
    private const double Class = 16e-6; // A: a quarter of the printed values of class C, so that the tyre stays pressed on and the car linear

    // Class C, 20 m/s: sprung acceleration (m/s²), rattle (mm), tyre force (N); closed forms from memory, equal to the Lyapunov solution to nine digits.
    public static TheoryData<string, double, double, double> Closed => new()
    {
        { "QC-A", 1.25866838, 13.4876443, 1038.57547 },
        { "QC-B", 1.31694311, 13.2799845, 1028.74365 },
        { "QC-C", 1.37993535, 12.2094433, 781.322251 },
        { "QC-G", 1.41708066, 11.9296130, 720.334998 },
    };

    // The integral of the test itself, over all waves: the tail below 1e-4 and above 1e3 cycles/m is 1e-4 of the tyre force's square.
    [Theory, MemberData(nameof(Closed))]
    public void Integral_over_all_waves_is_the_closed_form(string id, double acceleration, double rattle, double force)
    {
        double[] all = BandLimited(id, 1e-4, 1e4);
        var tails = Tolerance.Share(3e-4, "what lies outside of 1e-4 to 1e4 cycles/m, and the trapezoids");
        tails.Holds(acceleration / 4, all[0], "acceleration");
        tails.Holds(rattle / 4e3, all[1], "rattle");
        tails.Holds(force / 4, all[2], "force");
    }

    // 3 km of class A: the course's cosines are steady sines to the car; ends of 50 m, with taper and start, are left out.
    [Theory, MemberData(nameof(Closed))]
    public void Long_course_gives_the_band_limited_integral(string id, double acceleration, double rattle, double force)
    {
        RunResult run = SingleRun.Of(Corners.Driven(Data(id), Speed, new RunSettings(Length / Speed, 2e-3, 1e-6), new RandomPiece('A', Length, 3)));
        Assert.Empty(run.Events);
        Sample[] rows = [.. run.Track.Rows().Where(r => r.Distance is > 50 and < Length - 50)];
        double[] expected = BandLimited(id, 0.011, 2.83);
        double rest = run.Standing.Figures.WheelTravel;
        var share = Tolerance.Share(0.01, "3 km hold some 30 of the longest waves, and straight lines every 5 cm take 0.2 % off the tyre force");
        share.Holds(expected[0], Rms(rows, r => r.SprungAcceleration), "acceleration");
        share.Holds(expected[1], Rms(rows, r => r.WheelTravel - rest), "rattle");
        share.Holds(expected[2], Rms(rows, r => r.TyreForce - run.Track.At(0).TyreForce), "force");

        // The band alone takes 1.5 to 2.3 % off the tyre force of the closed form, and less off the others.
        Assert.InRange(expected[2] / (force / 4), 0.97, 0.99);
        Assert.InRange(expected[0] / (acceleration / 4), 0.97, 1);
        Assert.InRange(expected[1] / (rattle / 4e3), 0.97, 1);
    }

    private static double Rms(Sample[] rows, Func<Sample, double> value) => Math.Sqrt(rows.Average(r => value(r) * value(r)));

    private static CornerData Data(string id)
    {
        double[] row = Row(id);
        return Corners.Linear(row[1], row[2], row[3], row[4], row[5], row[6]);
    }

    private static double[] Row(string id) => [.. CheckValues.Rows("quarter_car_sets.csv").Single(r => r[0] == id).Select((t, i) => i == 0 ? 0 : CheckValues.Number(t))];

    /// <summary>√∫|H|²·Gd dn over a band, of sprung acceleration, rattle and tyre force; trapezoids on 200,000 logarithmic steps.</summary>
    private static double[] BandLimited(string id, double from, double to)
    {
        const int steps = 200_000;
        double[] row = Row(id), sums = new double[3];
        double ratio = Math.Log(to / from) / steps;
        for (int i = 0; i <= steps; i++)
        {
            double n = from * Math.Exp(ratio * i), weight = (i is 0 or steps ? 0.5 : 1) * ratio * n * Class * Math.Pow(n / 0.1, -2);
            Complex[] h = Responses(row, new Complex(0, 2 * Math.PI * n * Speed));
            for (int k = 0; k < 3; k++)
                sums[k] += weight * h[k].Magnitude * h[k].Magnitude;
        }

        return [.. sums.Select(Math.Sqrt)];
    }

    // ms·s²·Zs = (ks + cs·s)(Zu − Zs), mu·s²·Zu = −(ks + cs·s)(Zu − Zs) + kt(Zr − Zu), with Zr = 1.
    private static Complex[] Responses(double[] row, Complex s)
    {
        double ms = row[1], mu = row[2], kt = row[5];
        Complex strut = row[3] + row[4] * s, sprung = ms * s * s + strut;
        Complex zu = kt / (mu * s * s + strut + kt - strut * strut / sprung), zs = strut / sprung * zu;
        return [s * s * zs, zu - zs, kt * (1 - zu)];
    }
}
