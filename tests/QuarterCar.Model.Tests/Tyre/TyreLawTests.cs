using CsCheck;

using QuarterCar.Model.Tyre;

using Xunit;

namespace QuarterCar.Model.Tests.Tyre;

/// <summary>The tyre's law (physics.md section 2).</summary>
public class TyreLawTests
{
    private static readonly Gen<TyreLaw> s_tyre = Gen.Select(Gen.Double[5e4, 8e5], Gen.Double[0, 3000], Gen.Bool, Gen.Double[0.02, 0.2], Gen.Double[1e5, 3e6],
        (rate, damping, rim, sidewall, rimRate) => TyreLaw.Of(rim ? new TyreData(rate, damping, Sidewall: sidewall, RimRate: rimRate) : new TyreData(rate, damping)));

    [Fact]
    public void Tyre_never_pulls() => Gen.Select(s_tyre, Gen.Double[-0.5, 0.5], Gen.Double[-30, 30]).Sample((t, q, v) => t.Force(q, v) >= 0 && (q > 0 || t.Force(q, v) == 0), iter: 20_000);

    [Fact]
    public void Past_the_sidewall_the_rim_adds_its_rate() => Gen.Select(s_tyre, Gen.Double[0.01, 0.3]).Sample((t, past) =>
    {
        if (double.IsInfinity(t.Sidewall))
            return;
        double expected = t.Rate * (t.Sidewall + past) + t.RimRate * past;
        Assert.Equal(expected, t.Force(t.Sidewall + past, 0), 1e-12 * expected);
    });

    [Fact]
    public void The_deflection_under_a_load_carries_that_load() => Gen.Select(s_tyre, Gen.Double[0, 1e5]).Sample((t, load) =>
        Assert.Equal(load, t.Elastic(t.Deflection(load)), 1e-9 * (1 + load)));

    // 200 N/mm with 3 kN·s/m; from 50 mm on the rim adds 1000 N/mm.
    [Theory]
    [InlineData(0.02, 1, 7000, 4000, 40)]
    [InlineData(0.02, -2, 0, 4000, 40)]
    [InlineData(0.06, 0, 22_000, 22_000, 410)] // 12 + 10 kN; ½ · 200 · 60² + ½ · 1000 · 10² N·mm
    [InlineData(0, 1, 0, 0, 0)]
    [InlineData(-0.01, 1, 0, 0, 0)]
    public void Force_and_energy_of_a_tyre_by_hand(double deflection, double speed, double force, double elastic, double energy)
    {
        TyreLaw tyre = TyreLaw.Of(new TyreData(2e5, 3000, Sidewall: 0.05, RimRate: 1e6));
        Assert.Equal(force, tyre.Force(deflection, speed), 1e-8);
        Assert.Equal(elastic, tyre.Elastic(deflection), 1e-8);
        Assert.Equal(energy, tyre.Energy(deflection), 1e-10);
    }

    [Theory]
    [InlineData(4000, 0.02)]
    [InlineData(22_000, 0.06)]
    public void Deflection_by_hand(double load, double deflection) =>
        Assert.Equal(deflection, TyreLaw.Of(new TyreData(2e5, Sidewall: 0.05, RimRate: 1e6)).Deflection(load), 1e-12);
}
