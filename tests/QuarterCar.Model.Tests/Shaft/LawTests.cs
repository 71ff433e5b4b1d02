using QuarterCar.Model.Shaft;

using Xunit;

namespace QuarterCar.Model.Tests.Shaft;

/// <summary>Forces on the shaft beside springs and gas, by hand from their formulas (physics.md section 4; stops: Hunt and Crossley, J. Appl. Mech. 42, 1975).</summary>
public class LawTests
{
    [Theory]
    [InlineData(-0.01, 1, 0, 0)]
    [InlineData(0, 1, 0, 0)]
    [InlineData(0.01, 0, 10_000, 50)]     // 1000 N/mm · 10 mm
    [InlineData(0.01, 1, 15_000, 50)]     // 1 + 0.5 s/m · 1 m/s
    [InlineData(0.01, -1, 5000, 50)]
    [InlineData(0.01, -3, 0, 50)]         // it does not pull
    public void A_stop_pushes_harder_while_it_is_closed_and_never_pulls(double q, double speed, double force, double energy)
    {
        var stop = new StopLaw(1e6, 0.5);
        Assert.Equal(force, stop.Force(q, speed), 1e-9);
        Assert.Equal(energy, stop.Energy(q), 1e-12);
    }

    [Theory]
    [InlineData(-0.01, 1, 0, 0)]
    [InlineData(0.01, 0, 500, 2.5)]
    [InlineData(0.04, 0, 3000, 50)]         // 10 + ½ · (1 + 3) · 20
    [InlineData(0.04, 2, 4200, 50)]         // 1 + 0.2 · 2
    [InlineData(0.04, -6, 0, 50)]
    [InlineData(0.08, 0, 7000, 250)]        // the last slope goes on: 10 + 120 + ½ · (5 + 7) · 20
    public void A_bump_stop_follows_its_lines(double q, double speed, double force, double energy)
    {
        var stop = BumpStopLaw.Of(new BumpStopData(false, 0.06, [new(0.02, 1000), new(0.06, 5000)], 0.2));
        Assert.Equal(force, stop.Force(q, speed), 1e-9);
        Assert.Equal(energy, stop.Energy(q), 1e-11);
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.01, 0.761594155955764888)]   // tanh 1 (Abramowitz and Stegun, table 4.15, from memory)
    [InlineData(-0.01, -0.761594155955764888)]
    [InlineData(10, 1)]
    public void Friction_builds_up_over_a_centimetre_a_second(double velocity, double share) =>
        Assert.Equal(80 * share, new FrictionLaw(80).At(velocity), 1e-9);

    [Fact]
    public void A_charge_warms_at_constant_volume()
    {
        GasLaw gas = GasLaw.Of(new GasData(1e6, 0.02, 1e-4, 1.3, 300, 330));
        Assert.Equal(1_101_325 * 1.1, gas.ChargedPressure, 1e-6);
        Assert.Equal(Math.PI * 1e-4, gas.Area, 1e-18);
        Assert.Equal(1e-4, gas.Volume);
        Assert.Equal(1.3, gas.Exponent);
    }

    // 1 kN at 1 m/s in, 2 kN out; ×2 in and ×3 out from 100 mm on, ×1.5 in to 120 mm.
    private readonly DamperLaw _damper = DamperLaw.Of(
        new DamperData([new(1, 1000)], [new(1, 2000)], [new DamperZone(0.1, 0.3, 2, 3), new DamperZone(0, 0.12, 1.5, 1)]), stroke: 0.3);

    [Theory]
    [InlineData(0.05, 0.5, 750)]
    [InlineData(0.05, -0.5, -1000)]
    [InlineData(0.05, 0, 0)]
    [InlineData(0.1, 1, 3000)]      // both zones: 2 · 1.5
    [InlineData(0.11, -1, -6000)]
    [InlineData(0.12, 1, 2000)]     // a zone ends before its end
    [InlineData(0.31, 1, 2000)]     // a zone to the end of the stroke goes on past it
    [InlineData(-0.01, 1, 1500)]    // and one from full droop on before it
    [InlineData(0.2, 3, 6000)]      // the last slope goes on
    public void A_damper_s_zones_multiply_its_force(double x, double velocity, double force) =>
        Assert.Equal(force, _damper.Force(x, velocity), 1e-9);

    [Fact]
    public void A_damper_of_several_points_bends_at_each_on_both_sides()
    {
        var damper = DamperLaw.Of(new DamperData([new(1, 1000), new(2, 1500)], [new(0.5, 800), new(1.5, 1200)], []), stroke: 0.3);
        Assert.Equal([-1400, -1200, -1000, -800, -400, 0, 500, 1250, 2000], new[] { -2, -1.5, -1, -0.5, -0.25, 0, 0.5, 1.5, 3 }.Select(v => damper.Force(0.1, v)));
    }

    [Fact]
    public void Edges_of_zones_inside_the_stroke_are_where_factors_change() =>
        Assert.Equal([0.1, 0.12], _damper.Edges.Order());
}
