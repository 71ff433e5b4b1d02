using QuarterCar.Reports.Studies;

using UnitSystem = QuarterCar.Scenarios.UnitSystem;

namespace QuarterCar.Reports.Tests.Studies;

/// <summary>Values of a path as a reach shows them: with the decimals of its resolution, never past what holds.</summary>
public sealed class PathScaleTests
{
    private const double Inch = 0.0254, PoundPerInch = 4.4482216152605 / Inch;

    // 60 lbf/in in 1024 pieces are 0.0586 lbf/in: two decimals tell them apart. 240 less 1004 pieces are 181.171875.
    [Theory]
    [InlineData(240, "181.18")]
    [InlineData(180, "181.17")]
    public void A_value_is_rounded_to_the_side_that_it_was_reached_from(double from, string number) =>
        Assert.Equal(number, Rate(60.0 / 1024).NumberToward(from * PoundPerInch, 181.171875 * PoundPerInch));

    [Fact]
    public void A_value_with_no_more_digits_than_are_shown_stays_whichever_way_it_was_reached()
    {
        PathScale inches = new PathScale("coilover.preload", UnitSystem.Us).Telling(0.03 * Inch);
        foreach (int hundredths in Enumerable.Range(1, 400))
        {
            string text = (hundredths / 100.0).ToString("F2", System.Globalization.CultureInfo.InvariantCulture);
            Assert.Equal((text, text), (inches.NumberToward(0, hundredths * 0.01 * Inch), inches.NumberToward(9, hundredths * 0.01 * Inch)));
        }
    }

    // The plain number of a path without a unit has three decimals; a resolution of 1e-9 needs nine.
    [Theory]
    [InlineData(60.0 / 1024, "0.059\u00a0lbf/in")]
    [InlineData(200.0 / 1024, "0.20\u00a0lbf/in")]
    [InlineData(3, "3.0\u00a0lbf/in")]
    [InlineData(1e-7, "0.00000010\u00a0lbf/in")]
    public void A_resolution_is_never_nothing(double size, string text) => Assert.Equal(text, Rate(size).Difference(size * PoundPerInch));

    [Theory]
    [InlineData(240, "240\u00a0lbf/in")]
    [InlineData(77.5, "77.5\u00a0lbf/in")]
    [InlineData(0.04, "0.04\u00a0lbf/in")]
    public void An_end_has_the_digits_that_it_needs(double rate, string text) => Assert.Equal(text, Rate(0.01).End(rate * PoundPerInch));

    private static PathScale Rate(double difference) => new PathScale("coilover.springs.lower.rate", UnitSystem.Us).Telling(difference * PoundPerInch);
}
