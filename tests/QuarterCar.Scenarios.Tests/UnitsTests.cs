using QuarterCar.Scenarios.Quantities;

namespace QuarterCar.Scenarios.Tests;

/// <summary>Every unit against the exact constants that define it, and every way of writing a number.</summary>
public class UnitsTests
{
    // One rounding in the product and one in the table.
    private const double _rounding = 4e-16;

    // Written out by hand from 0.0254 m, 0.45359237 kg and 9.80665 m/s² in exact decimal arithmetic.
    [Theory]
    [InlineData("in", 0.0254)]
    [InlineData("ft", 0.3048)]
    [InlineData("mm", 0.001)]
    [InlineData("cm", 0.01)]
    [InlineData("m", 1)]
    [InlineData("lbf", 4.4482216152605)]
    [InlineData("lb", 4.4482216152605)]
    [InlineData("lbs", 4.4482216152605)]
    [InlineData("N", 1)]
    [InlineData("kN", 1000)]
    [InlineData("kg", 9.80665)]
    [InlineData("lbf/in", 175.12683524647636)]
    [InlineData("lb/in", 175.12683524647636)]
    [InlineData("N/mm", 1000)]
    [InlineData("N/m", 1)]
    [InlineData("kN/m", 1000)]
    [InlineData("lbf*s/in", 175.12683524647636)]
    [InlineData("lb*s/in", 175.12683524647636)]
    [InlineData("N*s/m", 1)]
    [InlineData("mph", 0.44704)]
    [InlineData("ft/s", 0.3048)]
    [InlineData("in/s", 0.0254)]
    [InlineData("m/s", 1)]
    [InlineData("km/h", 0.27777777777777778)]
    [InlineData("psi", 6894.7572931683613)]
    [InlineData("bar", 1e5)]
    [InlineData("kPa", 1e3)]
    [InlineData("MPa", 1e6)]
    [InlineData("in^3", 1.6387064e-5)]
    [InlineData("cm^3", 1e-6)]
    [InlineData("s", 1)]
    [InlineData("ms", 0.001)]
    [InlineData("deg", 0.017453292519943295)]
    [InlineData("s/m", 1)]
    [InlineData("s/in", 39.370078740157480)]
    public void Unit_has_its_exact_size(string name, double size) => Assert.Equal(0, (UnitTable.Find(name)!.Size / size) - 1, _rounding);

    [Theory, InlineData("20 degC", 293.15), InlineData("68 degF", 293.15), InlineData("-40 degF", 233.15), InlineData("-40 degC", 233.15), InlineData("90 °C", 363.15)]
    public void Temperature_has_its_zero(string text, double kelvin)
    {
        Assert.True(Measured.TryParse(text, out var m));
        Assert.Equal(kelvin, m.Si, 1e-12); // K; the Fahrenheit zero is a rounded fraction
    }

    [Theory]
    [InlineData("12 in", 12, "in")]
    [InlineData("12in", 12, "in")]
    [InlineData("  12   in ", 12, "in")]
    [InlineData("+1.5e1 in", 15, "in")]
    [InlineData("-.5 in", -0.5, "in")]
    [InlineData("\u22122 in", -2, "in")]
    [InlineData("5. in", 5, "in")]
    [InlineData("2.5 lbf·s/in", 2.5, "lbf·s/in")]
    [InlineData("28 in³", 28, "in³")]
    [InlineData("4 %", 4, "%")]
    [InlineData("1e-6", 1e-6, "")]
    public void Number_reads_with_its_unit(string text, double number, string unit)
    {
        Assert.True(Measured.TryParse(text, out var m));
        Assert.Equal((number, unit), (m.Number, m.UnitName));
        Assert.NotNull(m.Dimension);
    }

    [Theory, InlineData("in"), InlineData(""), InlineData("e5 in"), InlineData("- 5 in"), InlineData("five in"), InlineData("0x10 in x"), InlineData("١٢ in")]
    public void What_is_no_number_has_no_dimension(string text) => Assert.False(Measured.TryParse(text, out var m) && m.Dimension is not null);

    [Fact]
    public void Spelling_counts_so_that_mega_is_never_milli()
    {
        Assert.Null(UnitTable.Find("mPa"));
        Assert.Null(UnitTable.Find("Mm"));
    }

    [Fact]
    public void Every_dimension_can_be_written_in_SI_and_read_back() =>
        Assert.All(UnitTable.All.Select(u => u.Dimension).Distinct().Where(d => d != Dimension.Share), d =>
            Assert.Equal((1.0, 0.0, d), UnitTable.Find(UnitTable.SiName(d)) is { } u ? (u.Size, u.Zero, u.Dimension) : default));

    [Fact]
    public void Output_units_undo_what_reading_does()
    {
        Assert.Equal(4.4482216152605, ExactUnits.PoundForce);
        Assert.Equal(1.3558179483314004, ExactUnits.FootPoundForce, 1e-15); // J; one rounding
        Assert.Equal(12, 0.3048 / ExactUnits.Inch, 1e-14);
    }
}
