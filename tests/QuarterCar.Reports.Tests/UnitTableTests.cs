using QuarterCar.Reports.Units;

using UnitsNet;

using UnitSystem = QuarterCar.Scenarios.UnitSystem;

namespace QuarterCar.Reports.Tests;

public sealed class UnitTableTests
{
    [Fact]
    public void Pound_force_per_inch_is_the_exact_compound() =>
        Assert.Equal(4.4482216152605 / 0.0254, 1 / UnitTable.Of(Dimension.Rate, UnitSystem.Us).PerSi, 9); // rounding of 175.1… alone: 3e-14

    [Fact]
    public void Foot_pound_is_1_3558179483314004_J() =>
        Assert.Equal(1.3558179483314004, 1 / UnitTable.Of(Dimension.Energy, UnitSystem.Us).PerSi, 14);

    [Theory]
    [InlineData(Dimension.Length)]
    [InlineData(Dimension.Velocity)]
    [InlineData(Dimension.Force)]
    [InlineData(Dimension.Rate)]
    public void Factors_agree_with_a_units_library_within_the_digits_it_keeps(Dimension dimension)
    {
        double library = dimension switch
        {
            Dimension.Length => Length.FromInches(1).Meters,
            Dimension.Velocity => Speed.FromInchesPerSecond(1).MetersPerSecond,
            Dimension.Force => Force.FromPoundsForce(1).Newtons,
            _ => ForcePerLength.FromPoundsForcePerInch(1).NewtonsPerMeter,
        };
        double ours = 1 / UnitTable.Of(dimension, UnitSystem.Us).PerSi;
        Assert.InRange(ours / library, 1 - 2e-9, 1 + 2e-9); // the library rounds lbf/in to 175.126835, 1.4e-9 off
    }

    [Theory]
    [InlineData(UnitSystem.Us, Dimension.Length, 0.0254 * 5.3241, "5.32\u00a0in")]
    [InlineData(UnitSystem.Si, Dimension.Length, 0.13523, "135.2\u00a0mm")]
    [InlineData(UnitSystem.Us, Dimension.Force, 4448.2216152605, "1000\u00a0lbf")]
    [InlineData(UnitSystem.Si, Dimension.Force, 4448.2, "4448\u00a0N")]
    [InlineData(UnitSystem.Si, Dimension.Length, -0.00001, "0.0\u00a0mm")]
    [InlineData(UnitSystem.Si, Dimension.Length, -0.0226, "\u221222.6\u00a0mm")]
    public void Readable_numbers_are_rounded_to_what_a_wrench_can_set(UnitSystem units, Dimension dimension, double si, string expected) =>
        Assert.Equal(expected, new Readable(units).Text(dimension, si));

    [Fact]
    public void What_does_not_apply_reads_as_a_dash() => Assert.Equal("–", new Readable(UnitSystem.Si).Text(Dimension.Length, null));
}
