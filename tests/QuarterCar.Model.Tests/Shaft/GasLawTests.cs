using QuarterCar.Model.Shaft;
using QuarterCar.TestKit;

using Xunit;

namespace QuarterCar.Model.Tests.Shaft;

// check-values section 6, NL-11 (C, formula from memory): A 3e-4 m², 1.5 MPa gauge, 101 325 Pa outside, V0 = 0.35 m·A.
public class GasLawTests
{
    private static GasLaw Law(double exponent) => new(3e-4, 1.5e6 + GasLaw.Atmosphere, 0.35 * 3e-4, exponent);

    // NL-11.
    [Theory]
    [InlineData(1, 0, 450)]
    [InlineData(1, .1, 642.159)]
    [InlineData(1, .2, 1090.53)]
    [InlineData(1, .3, 3332.385)]
    [InlineData(1.4, 0, 450)]
    [InlineData(1.4, .1, 739.0517640641)]
    [InlineData(1.4, .2, 1542.7456301312)]
    [InlineData(1.4, .3, 7293.4281108883)]
    public void The_gas_pushes_with_its_polytropic_force(double exponent, double x, double force) =>
        Tolerance.Share(1e-12, "all printed digits; n = 1 gives whole thousandths").Holds(force, Law(exponent).Moving(x, 0));

    // NL-11: n = 1 is the standing gas.
    [Theory]
    [InlineData(.1, 642.159)]
    [InlineData(.3, 3332.385)]
    public void The_standing_gas_is_isothermal(double x, double force) =>
        Tolerance.Share(1e-12, "whole thousandths").Holds(force, Law(1.4).Standing(x));

    // NL-11.
    [Theory]
    [InlineData(1, 1372.5642857)]
    [InlineData(1.4, 1921.59)]
    public void At_full_droop_the_gas_has_its_known_rate(double exponent, double rate) =>
        Tolerance.Share(1e-10, "eleven printed digits").Holds(rate, Law(exponent).MovingRate(0, 0));

    [Theory]
    [InlineData(1)]
    [InlineData(1.4)]
    public void The_energys_slope_is_the_force(double exponent)
    {
        const double d = 1e-5;
        GasLaw law = Law(exponent);
        double slope = (law.MovingEnergy(.2 + d, .05) - law.MovingEnergy(.2 - d, .05)) / (2 * d);
        Tolerance.Share(1e-7, "central difference: d²/6 of F″ over F, which is 200/m² here").Holds(law.Moving(.2, .05), slope);
    }

    // The integral of NL-11's force from 0 to 0.2 m, of gas that stood at 0.1 m (quadrature by mpmath); isothermal in closed form.
    [Fact]
    public void The_energy_is_the_forces_integral_from_full_droop()
    {
        Tolerance.Share(1e-12, "twenty digits of the quadrature").Holds(142.1469209857878636, Law(1.4).MovingEnergy(0.2, 0.1));
        Tolerance.Share(1e-12, "a logarithm").Holds((480.3975 * 0.35 * Math.Log(350.0 / 150)) - (30.3975 * 0.2), Law(1).MovingEnergy(0.2, 0.1));
        Assert.Equal(0, Law(1.4).MovingEnergy(0, 0.1));
    }
}
