using QuarterCar.Model;

using Xunit;

namespace QuarterCar.Studies.Tests.Properties;

/// <summary>What the road does with a corner: it pushes, and in the air nothing does.</summary>
public class FlightTests
{
    public static TheoryData<string> Names => [.. Scenes.Names];

    [Theory, MemberData(nameof(Names))]
    public void The_tyre_never_pulls(string name) => Assert.All(Scenes.Run(name).Track.Rows(), s => Assert.True(s.TyreForce >= 0 && (s.TyreDeflection > 0 || s.TyreForce == 0)));

    // check-values section 6, NL-10 (C): whatever springs and stops do between them, the centre of mass falls at −g.
    [Theory, InlineData("quarry-ledge"), InlineData("rising-ratio"), InlineData("tender-triple"), InlineData("axle-bump-stop")]
    public void In_the_air_the_centre_of_mass_falls_as_a_stone(string name)
    {
        RunResult run = Scenes.Run(name, "run.tolerance=1e-9");
        double ms = run.Standing.Corner.SprungMass, mu = run.Standing.Corner.UnsprungMass;
        double from = Scenes.First(run, "liftoff").Time, to = Scenes.First(run, "touchdown").Time;
        (double z0, double v0) = Centre(from);
        for (int k = 1; k <= 16; k++)
        {
            double t = (to - from) * k / 16;
            (double z, double v) = Centre(from + t);

            // Some dozen steps, each good to 1e-9 times 0.15 of 0.3 m and 2 m/s.
            Assert.Equal(z0 + v0 * t - Corner.Gravity * t * t / 2, z, 1e-8);
            Assert.Equal(v0 - Corner.Gravity * t, v, 1e-8);
        }

        (double Height, double Velocity) Centre(double t)
        {
            Sample s = run.Track.At(t);
            return ((ms * s.Sprung + mu * s.Unsprung) / (ms + mu), (ms * s.SprungVelocity + mu * s.UnsprungVelocity) / (ms + mu));
        }
    }
}
