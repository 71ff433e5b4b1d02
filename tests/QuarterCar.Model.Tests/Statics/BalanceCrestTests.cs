using System.Collections.Immutable;

using CsCheck;

using QuarterCar.Model.Statics;

using Xunit;

namespace QuarterCar.Model.Tests.Statics;

/// <summary>A corner whose force at the wheel rises over a crest and falls again, because its motion ratio falls: a load just below the crest still finds it.</summary>
public class BalanceCrestTests
{
    // 20000 · (1 − 2w) · (w − w² + 0.05) N: at most 2529.82212813 N, at 183.772234 mm. Roots and crest by mpmath, 30 digits.
    [Theory]
    [InlineData(2529.8, 0.183008913122219475)]
    [InlineData(2529.82, 0.183535448680508350)]
    [InlineData(2529.822128, 0.183770349907539820)]
    public void A_load_just_below_the_crest_stands_before_it(double load, double standing) =>
        Near(standing, Falling(load).Standing, 1e-10);

    [Fact]
    public void A_load_just_above_the_crest_stands_on_metal() =>
        Assert.True(Falling(2529.8221282).Standing > (1 - Math.Sqrt(0.2)) / 2); // full bump: w² − w + 0.2 = 0

    // At the crest (1 − 2w)² = 2(w − w² + 0.05), so w − w² + 0.05 = 0.2: the spring carries 4000 N there. Above that its weight stands further out, on less.
    [Fact]
    public void A_spring_load_behind_the_crest_is_refused()
    {
        CornerData data = Falling(2500).Data with { SprungWeight = null };
        Near(0.14995, Corner.Build(data with { SpringLoad = 3999 }).StandingShaftTravel, 1e-9);
        CornerException refused = Assert.Throws<CornerException>(() => Corner.Build(data with { SpringLoad = 4001 }));
        Assert.Equal("corner.spring_load", refused.Key);
        Assert.Contains("motion ratio", refused.Wanted, StringComparison.Ordinal);
    }

    // With gas: r = 1 − 3w, (1 − 3w) · (20000 · (x + 0.05) + gas), x = w − 1.5w²; at most 2317.07618267 N at 107.98 mm (mpmath).
    [Theory]
    [InlineData(2317, 0.106904259497431197)]
    [InlineData(2317.0761, 0.107946726981845434)]
    public void A_crest_under_gas_is_found(double load, double standing) => Near(standing, Gassed(load).Standing, 1e-10);

    [Fact]
    public void A_load_above_a_crest_under_gas_stands_on_metal() =>
        Assert.True(Gassed(2317.0762).Standing > (1 - Math.Sqrt(0.22)) / 3); // full bump: 1.5w² − w + 0.13 = 0

    [Fact]
    public void Nothing_that_twenty_thousand_looks_see_lies_before_the_standing_balance() =>
        Gen.Select(Gen.Double[0.2, 1.2].Array[2, 5], Gen.Double[0.05, 0.12], Gen.Double[0.0, 0.1], Gen.Double[500, 4000], Gen.Bool, Gen.Int[0, 2]).Sample((ratios, spacing, preload, load, gas, bump) =>
        {
            ImmutableArray<TablePoint> table = [.. ratios.Select((r, i) => new TablePoint(i * spacing, r))];
            Corner corner = Bench.Of(Bench.Pair, load, 0.2, preload, gas: gas ? Bench.Gas : null, bump: bump == 0 ? null : Bench.Bump(bump == 2), table: table);
            double stands = corner.Standing, from = -0.01;
            Near(load, Balance.WheelForce(corner, stands), 1e-8 * load);
            for (int i = 0; i < 20_000; i++)
            {
                double w = from + ((corner.FullBumpWheelTravel + 0.02 - from) * i / 20_000);
                if (w < stands)
                    Assert.True(Balance.WheelForce(corner, w) < load, $"{w} m carries {load} N, and it stands at {stands} m");
            }
        }, iter: 100);

    [Fact]
    public void A_table_of_two_hundred_points_bends_the_force_at_each()
    {
        ImmutableArray<TablePoint> table = [.. Enumerable.Range(0, 200).Select(i => new TablePoint(i * 1e-3, i % 2 == 0 ? 1 : 0.9))];
        Corner corner = Bench.Of(Bench.Single, 2000, 0.15, 0.05, table: table);
        Assert.Subset(Balance.Breaks(corner, withBumpStop: true).ToHashSet(), table.Select(p => p.At).ToHashSet());

        // 0.95 mm of shaft a mm of wheel: x = 95 mm at 100 mm, where r = 1: 20000 · (0.0950 + 0.05) = 2900 N at 100 mm.
        Near(0.1, Bench.Of(Bench.Single, 2900, 0.15, 0.05, table: table).Standing, 1e-12);
    }

    private static Corner Falling(double load) => Bench.Of(Bench.Single, load, 0.2, 0.05, table: [new(0, 1), new(0.3, 0.4)]);

    private static Corner Gassed(double load) => Bench.Of(Bench.Single, load, 0.13, 0.05, gas: Bench.Gas, table: [new(0, 1), new(0.2, 0.4)]);

    private static void Near(double expected, double found, double within) => Assert.Equal(expected, found, within);
}
