using QuarterCar.Model.Springs;

using Xunit;

namespace QuarterCar.Model.Tests.Springs;

/// <summary>Series springs of which the upper stops after a travel of its own: check values SP-10 to SP-12 (formulas standard, numbers computed), given to 1e-12 relative.</summary>
public class SeriesRateTests
{
    private const double Inch = 0.0254, PoundForce = 0.45359237 * 9.80665, PoundForcePerInch = PoundForce / Inch;

    [Theory]
    [InlineData(250, 350, 4, 875.0 / 6, 1000, 48.0 / 7)]
    [InlineData(300, 300, 3, 150, 900, 6)]
    [InlineData(200, 400, 5, 400.0 / 3, 1000, 7.5)]
    public void SP10_to_12_crossover_force_travel_and_rates(double k1, double k2, double travel, double k12, double force, double at)
    {
        var upper = new SpringData(k1 * PoundForcePerInch, 12 * Inch, 2 * Inch);
        var stack = SpringStack.Build(new SpringSetData(null, upper, new SpringData(k2 * PoundForcePerInch, 14 * Inch, 2 * Inch)), travel * Inch);
        Near(force * PoundForce, stack.CrossoverForce!.Value);
        Near(at * Inch, stack.Compression(force * PoundForce));
        Near(k12 * PoundForcePerInch, stack.RateTowardDroop(at * Inch, 1e-9));
        Near(k2 * PoundForcePerInch, stack.RateTowardDroop(at * Inch + 1e-6));
        Near(force * PoundForce * at * Inch / 2, stack.Energy(at * Inch));
    }

    // 800 and 320 N/mm in series are 1600/7 N/mm; the lower's 75 mm are used up at 24 kN, reached a last bit to either side.
    [Theory]
    [InlineData(0)]
    [InlineData(1e-15)]
    [InlineData(-1e-15)]
    public void A_load_that_presses_a_spring_just_solid_still_counts_it(double lastBit)
    {
        var set = new SpringSetData(null, new SpringData(800e3, 0.1774, 0.1), new SpringData(320e3, 0.175, 0.1));
        Near(1.6e6 / 7, SpringStack.Build(set, null).FreeSeriesRate(24e3 * (1 + lastBit)));
        Near(800e3, SpringStack.Build(set, null).FreeSeriesRate(24e3 * (1 + 1e-6)));
    }

    private static void Near(double expected, double found) => Assert.Equal(expected, found, 1e-12 * expected);
}
