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
}
