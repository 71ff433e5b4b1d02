using QuarterCar.Model.Springs;

using Xunit;

namespace QuarterCar.Model.Tests.Springs;

/// <summary>Buckling deflection, EN 13906-1, against check values SP-3 to SP-6 (formula from memory, numbers computed independently). Given to 1e-9 relative.</summary>
public class BucklingTests
{
    // Oil-tempered: E 206, G 79.5 GPa; hot-rolled: G 78.5 GPa.
    private const double HotRolledG = 78.5e9;

    [Fact]
    public void SP3_a_stout_spring_between_parallel_seats_never_buckles() => Assert.Null(Buckling.Deflection(0.350, 0.0762));

    [Fact]
    public void SP4_a_longer_one_buckles_at_196_mm() => Near(196.368157318e-3, Buckling.Deflection(0.450, 0.0762));

    [Fact]
    public void SP5_pivoted_at_both_ends_the_stout_one_buckles_at_51_mm() => Near(50.717794610e-3, Buckling.Deflection(0.350, 0.0762, seating: 1));

    [Fact]
    public void SP6_one_end_pivoted_of_hot_rolled_wire_buckles_at_64_mm() =>
        Near(63.938940150e-3, Buckling.Deflection(0.400, 0.0635, seating: 0.7, g: HotRolledG));

    // Coefficient of D/ν in check values section 4: 2.615554 for 206/79.5, printed to 7 digits.
    [Theory, InlineData(2.6155, true), InlineData(2.6156, false)]
    public void The_slenderness_that_still_never_buckles_is_2_6155(double slenderness, bool stable) =>
        Assert.Equal(stable, Buckling.Deflection(slenderness * 0.1 / Buckling.BothEndsParallel, 0.1) is null);

    // G/E = ¼ makes the root's argument 1 − (π·D/(ν·L₀))²; with L₀ = π·D and ν = 1 it is 0, and s_K = L₀·½/(1 − ¼) = ⅔·L₀.
    [Fact]
    public void A_spring_just_slender_enough_buckles_at_the_double_root() =>
        Near(2 * Math.PI / 3, Buckling.Deflection(Math.PI, 1, seating: 1, e: 4, g: 1));

    [Fact]
    public void Inner_diameter_and_wire_stand_in_for_the_mean_diameter()
    {
        var given = new SpringData(1e4, 0.45, 0.1, MeanDiameter: 0.0762);
        var derived = new SpringData(1e4, 0.45, 0.1, WireDiameter: 0.012, InnerDiameter: 0.0642);
        Assert.Equal(Buckling.Deflection(given)!.Value, Buckling.Deflection(derived)!.Value, 1e-12);
        Assert.Null(new SpringData(1e4, 0.45, 0.1, WireDiameter: 0.012).CoilMean);
    }

    private static void Near(double expected, double? found) => Assert.Equal(expected, found!.Value, 1e-9 * expected);
}
