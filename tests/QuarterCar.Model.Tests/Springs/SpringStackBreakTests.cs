using QuarterCar.Model.Springs;

using Xunit;

namespace QuarterCar.Model.Tests.Springs;

/// <summary>Where the stack's force bends and what happens there, worked by hand in mm, N and N/mm.</summary>
public class SpringStackBreakTests
{
    // Solid at 160, 1200 and 3000 N.
    private static readonly SpringSetData s_triple = new(new SpringData(4e3, 0.1, 0.06), new SpringData(20e3, 0.16, 0.1), new SpringData(30e3, 0.2, 0.1));

    [Fact]
    public void A_triple_without_nut_goes_solid_spring_by_spring() => Is(
        SpringStack.Build(s_triple, null),
        new(0, 0, 3e3, RateRegion.Tender, false, StackEvents.None),                                      // 1/(1/4 + 1/20 + 1/30)
        new(0.04 + 0.008 + (0.16 / 30), 160, 12e3, RateRegion.Primary, false, StackEvents.TenderSolid),  // 40 + 160/20 + 160/30
        new(0.14, 1200, 30e3, RateRegion.Bound, false, StackEvents.UpperBind),                           // 40 + 60 + 1200/30
        new(0.2, 3000, 5e6, RateRegion.Bound, false, StackEvents.LowerBind | StackEvents.CoilBind));     // 40 + 60 + 100

    [Fact]
    public void A_nut_hands_over_and_the_upper_spring_never_goes_solid() => Is(
        SpringStack.Build(s_triple, 0.08),
        new(0, 0, 3e3, RateRegion.Tender, false, StackEvents.None),
        new(0.04 + 0.008 + (0.16 / 30), 160, 12e3, RateRegion.Primary, false, StackEvents.TenderSolid),
        new(0.08 + (0.8 / 30), 800, 30e3, RateRegion.Secondary, true, StackEvents.Crossover),            // 80 = 40 + 800/20
        new(0.18, 3000, 5e6, RateRegion.Bound, true, StackEvents.LowerBind | StackEvents.CoilBind));

    // Lengths in powers of two, so that both happen at 250 N to the last bit.
    [Fact]
    public void A_nut_that_meets_the_slider_as_the_tender_goes_solid_is_one_break_with_both() => Is(
        SpringStack.Build(s_triple with { Tender = new SpringData(4e3, 0.125, 0.0625), Upper = new SpringData(16e3, 0.25, 0.125) }, 0.078125), // 62.5 + 250/16
        new(0, 0, 1 / ((1 / 4e3) + (1 / 16e3) + (1 / 30e3)), RateRegion.Tender, false, StackEvents.None),
        new(0.078125 + (0.25 / 30), 250, 30e3, RateRegion.Secondary, true, StackEvents.TenderSolid | StackEvents.Crossover),
        new(0.178125, 3000, 5e6, RateRegion.Bound, true, StackEvents.LowerBind | StackEvents.CoilBind));

    [Fact]
    public void A_nut_that_holds_before_the_tender_is_solid_leaves_it_open() => Is(
        SpringStack.Build(s_triple, 0.012),
        new(0, 0, 3e3, RateRegion.Tender, false, StackEvents.None),
        new(0.012 + (0.04 / 30), 40, 30e3, RateRegion.Secondary, true, StackEvents.Crossover),           // 40 N · (1/4 + 1/20) = 12
        new(0.112, 3000, 5e6, RateRegion.Bound, true, StackEvents.LowerBind | StackEvents.CoilBind));

    [Fact]
    public void A_short_lower_spring_binds_first_and_the_nut_then_ends_all() => Is(
        SpringStack.Build(s_triple with { Lower = new SpringData(30e3, 0.12, 0.1) }, 0.08),              // solid at 600 N
        new(0, 0, 3e3, RateRegion.Tender, false, StackEvents.None),
        new(0.04 + 0.008 + (0.16 / 30), 160, 12e3, RateRegion.Primary, false, StackEvents.TenderSolid),
        new(0.04 + 0.03 + 0.02, 600, 20e3, RateRegion.Bound, false, StackEvents.LowerBind),
        new(0.08 + 0.02, 800, 5e6, RateRegion.Bound, true, StackEvents.Crossover | StackEvents.CoilBind));

    [Fact]
    public void Springs_that_go_solid_together_are_one_break() => Is(
        SpringStack.Build(new SpringSetData(null, new SpringData(20e3, 0.1875, 0.125), new SpringData(10e3, 0.25, 0.125)), null), // 20 · 62.5 = 10 · 125
        new(0, 0, 20e3 / 3, RateRegion.Primary, false, StackEvents.None),
        new(0.1875, 1250, 5e6, RateRegion.Bound, false, StackEvents.UpperBind | StackEvents.LowerBind | StackEvents.CoilBind));

    [Fact]
    public void A_tender_above_a_lone_spring_is_soft_until_it_is_solid_and_a_nut_may_hold_it()
    {
        var set = s_triple with { Upper = null };
        Is(
            SpringStack.Build(set, null),
            new(0, 0, 60e3 / 17, RateRegion.Tender, false, StackEvents.None),                            // 1/(1/4 + 1/30)
            new(0.04 + (0.16 / 30), 160, 30e3, RateRegion.Primary, false, StackEvents.TenderSolid),
            new(0.14, 3000, 5e6, RateRegion.Bound, false, StackEvents.LowerBind | StackEvents.CoilBind));
        Assert.Equal(80, SpringStack.Build(set, 0.02).CrossoverForce!.Value, 1e-9);                      // 4 · 20
    }

    [Fact]
    public void A_single_spring_has_no_slider_for_a_nut_to_meet()
    {
        var stack = SpringStack.Build(new SpringSetData(null, null, new SpringData(30e3, 0.2, 0.1)), 0.02);
        Assert.Null(stack.HeldTravel);
        Assert.Null(stack.CrossoverForce);
        Assert.Equal(3000, stack.SolidForce);
    }

    [Fact]
    public void A_nut_beyond_all_that_the_upper_group_can_give_is_never_met()
    {
        var stack = SpringStack.Build(s_triple, 0.1001); // 40 + 60
        Assert.Equal(0.1001, stack.HeldTravel);
        Assert.Null(stack.CrossoverForce);
        Assert.Equal(4, stack.Breaks.Length);
        Assert.False(stack.OnStopNut(1));
        Assert.Equal((5000, 0), stack.NutForces(5000));
    }

    [Fact]
    public void Force_energy_and_their_inverse_go_through_every_piece()
    {
        var stack = SpringStack.Build(s_triple, 0.08);
        (double y, double force)[] places =
        [
            (0.02, 60), (0.08, 160 + (12 * (80 - 48 - (160.0 / 30)))), (0.08 + (1.5 / 30), 1500), (0.1802, 4000), // 1 kN on 5000 N/mm
        ];
        foreach ((double y, double force) in places)
        {
            Assert.Equal(force, stack.Force(y), 1e-8);
            Assert.Equal(y, stack.Compression(force), 1e-14);
        }

        Assert.Equal(0, stack.Force(0));
        Assert.Equal(0, stack.Force(-0.01));
        Assert.Equal(0, stack.Energy(-0.01));
        Assert.Equal(0.6, stack.Energy(0.02), 1e-12); // ½ · 3 · 20²

        // ½·4·40² + ½·20·40² + ½·30·100² and past it 0.2 mm from 3000 to 4000 N.
        Assert.Equal(3.2 + 16 + 150 + 0.7, stack.Energy(0.1802), 1e-11);
    }

    [Fact]
    public void The_rate_at_a_break_is_that_toward_droop()
    {
        var stack = SpringStack.Build(s_triple, 0.08);
        double crossover = 0.08 + (0.8 / 30);
        Assert.Equal(0, stack.RateTowardDroop(0));
        Assert.Equal(3e3, stack.RateTowardDroop(0.01), 1e-9);
        Assert.Equal(12e3, stack.RateTowardDroop(stack.Breaks[2].Compression), 1e-8);
        Assert.Equal(12e3, stack.RateTowardDroop(crossover + 1e-9, 1e-6), 1e-8);
        Assert.Equal(30e3, stack.RateTowardDroop(crossover + 1e-9), 1e-8);
        Assert.Equal(5e6, stack.RateTowardDroop(0.181));
    }

    [Fact]
    public void The_region_at_a_break_is_the_one_that_begins()
    {
        var stack = SpringStack.Build(s_triple, 0.08);
        Assert.Equal(RateRegion.Loose, stack.Region(-1e-9));
        Assert.Equal(RateRegion.Tender, stack.Region(0));
        Assert.Equal(RateRegion.Tender, stack.Region(0.05));
        Assert.Equal(RateRegion.Primary, stack.Region(stack.Breaks[1].Compression));
        Assert.Equal(RateRegion.Secondary, stack.Region(stack.Breaks[2].Compression));
        Assert.Equal(RateRegion.Bound, stack.Region(0.19));
        Assert.False(stack.OnStopNut(0.1));
        Assert.True(stack.OnStopNut(stack.Breaks[2].Compression));
        Assert.True(stack.OnStopNut(0.15));
    }

    [Fact]
    public void Each_spring_gives_until_it_is_solid_or_held()
    {
        var stack = SpringStack.Build(s_triple, 0.08);
        StackSpring[] springs = [.. stack.Springs];
        Assert.Equal([SpringPosition.Tender, SpringPosition.Upper, SpringPosition.Lower], springs.Select(s => s.Position));
        Assert.Equal([0.04, 0.025, Math.Round(0.5 / 30, 12)], springs.Select(s => Math.Round(stack.CompressionOf(s, 500), 12)));
        Assert.Equal([0.04, 0.04, 0.1], springs.Select(s => Math.Round(stack.CompressionOf(s, 5000), 12))); // held at 800 N; 3000 N
        Assert.Equal(0.065, stack.GroupCompression(500), 1e-15);
        Assert.Equal(0.08, stack.GroupCompression(900));
        Assert.Equal(0.085, stack.FreeGroupCompression(900), 1e-15);
        Assert.Equal(0.1, stack.FreeGroupCompression(9000), 1e-15);
        Assert.Equal((800, 400), Rounded(stack.NutForces(1200)));
        Assert.Equal((700, 0), Rounded(stack.NutForces(700)));
        Assert.Equal(30e3, stack.LowerRate);

        static (double, double) Rounded((double CoilNut, double StopNut) forces) => (Math.Round(forces.CoilNut, 8), Math.Round(forces.StopNut, 8));
    }

    [Theory]
    [InlineData(100, 3e3)]
    [InlineData(160, 3e3)]   // just solid: the side toward droop
    [InlineData(161, 12e3)]
    [InlineData(1200, 12e3)]
    [InlineData(2000, 30e3)]
    [InlineData(3001, 5e6)]
    public void Springs_in_series_act_without_those_that_are_solid(double force, double rate) =>
        Assert.Equal(rate, SpringStack.Build(s_triple, null).FreeSeriesRate(force), 1e-8);

    private static void Is(SpringStack stack, params StackBreak[] expected)
    {
        StackBreak[] found = stack.Breaks.ToArray();
        Assert.Equal(expected.Select(b => (b.RegionAbove, b.HeldAbove, b.Events)), found.Select(b => (b.RegionAbove, b.HeldAbove, b.Events)));
        foreach ((StackBreak e, StackBreak f) in expected.Zip(found))
        {
            Assert.Equal(e.Compression, f.Compression, 1e-14);
            Assert.Equal(e.Force, f.Force, 1e-9);
            Assert.Equal(e.RateAbove, f.RateAbove, 1e-8);
        }
    }
}
