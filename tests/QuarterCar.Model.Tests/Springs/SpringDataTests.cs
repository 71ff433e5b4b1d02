using Xunit;

namespace QuarterCar.Model.Tests.Springs;

/// <summary>Of wire, mean and inner diameter two make the third.</summary>
public class SpringDataTests
{
    [Theory]
    [InlineData(0.012, 0.075, null, 0.075, 0.063)]
    [InlineData(0.012, null, 0.063, 0.075, 0.063)]
    [InlineData(0.012, 0.076, 0.063, 0.076, 0.063)] // as given, where both are
    [InlineData(null, 0.075, null, 0.075, null)]
    [InlineData(null, null, 0.063, null, 0.063)]
    [InlineData(0.012, null, null, null, null)]
    public void Mean_and_inner_diameter_lie_a_wire_apart(double? wire, double? mean, double? inner, double? coilMean, double? coilInner)
    {
        var spring = new SpringData(20e3, 0.3, 0.1, wire, mean, inner);
        Assert.Equal((Rounded(coilMean), Rounded(coilInner)), (Rounded(spring.CoilMean), Rounded(spring.CoilInner)));

        static double? Rounded(double? length) => length is { } m ? Math.Round(m, 12) : null;
    }
}
