using System.Collections.Immutable;

using CsCheck;

using QuarterCar.Model;
using QuarterCar.Scenarios;

using Xunit;

namespace QuarterCar.Studies.Tests.Properties;

/// <summary>A corner with every mass, rate, damping, friction and stop table times c moves the same: only their ratios stand in the equations of motion.</summary>
public class ScaleLawTests
{
    // At 1e-9 a run is good to some 1e-9 m and 1e-9 s (it agrees so with the reference runs); both runs may be off.
    private const double Length = 1e-8, Time = 1e-8;

    [Fact]
    public void Everything_times_c_moves_the_same()
    {
        Scenario written = Scenes.Read("quarry-ledge", "coilover.gas=none", "run.tolerance=1e-9");
        RunResult one = SingleRun.Of(written);
        Gen.Double[0.2, 5].Sample(c =>
        {
            RunResult other = SingleRun.Of(written with { Corner = Scaled(written.Corner, c) });
            Assert.Equal(0, Scenes.Count(other, "coil_bind")); // solid coils have a rate of their own
            Assert.Equal(one.Events.Select(e => e.Event), other.Events.Select(e => e.Event));
            Assert.All(one.Events.Zip(other.Events), p => Assert.Equal(p.First.Time, p.Second.Time, Time));
            for (double t = 0; t <= 6; t += 0.05)
            {
                Assert.Equal(one.Track.At(t).ShaftTravel, other.Track.At(t).ShaftTravel, Length);
                Assert.Equal(one.Track.At(t).TyreDeflection, other.Track.At(t).TyreDeflection, Length);
            }

            Assert.Equal(c * Scenes.Hardest(one), Scenes.Hardest(other), c * 1e-5 * Scenes.Hardest(one));
            Assert.Equal(one.Standing.Figures.RideFrequency!.Value, other.Standing.Figures.RideFrequency!.Value, 1e-10);
        }, iter: 25);
    }

    private static CornerData Scaled(CornerData d, double c)
    {
        CoiloverData s = d.Coilover;
        return d with
        {
            SprungWeight = c * d.SprungWeight,
            UnsprungWeight = c * d.UnsprungWeight,
            Tyre = d.Tyre with { Rate = c * d.Tyre.Rate, Damping = c * d.Tyre.Damping },
            Coilover = s with
            {
                Springs = s.Springs with { Upper = s.Springs.Upper! with { Rate = c * s.Springs.Upper.Rate }, Lower = s.Springs.Lower with { Rate = c * s.Springs.Lower.Rate } },
                Damper = s.Damper! with { Compression = Times(s.Damper.Compression, c), Rebound = Times(s.Damper.Rebound, c) },
                Friction = c * s.Friction,
                BumpStop = s.BumpStop! with { Force = Times(s.BumpStop.Force, c) },
                BottomOut = s.BottomOut with { Rate = c * s.BottomOut.Rate },
                TopOut = s.TopOut with { Rate = c * s.TopOut.Rate },
            },
        };
    }

    private static ImmutableArray<TablePoint> Times(ImmutableArray<TablePoint> table, double c) => [.. table.Select(p => p with { Value = c * p.Value })];
}
