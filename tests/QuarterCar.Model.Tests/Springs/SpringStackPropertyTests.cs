using CsCheck;

using QuarterCar.Model.Springs;

using Xunit;

namespace QuarterCar.Model.Tests.Springs;

/// <summary>What holds for every spring stack (physics.md section 3), over thousands of random ones. Lengths below a metre and forces below 1e6 N in a dozen operations: 1e-12 m and 1e-6 N are rounding with room.</summary>
public class SpringStackPropertyTests
{
    private const double Length = 1e-12, Force = 1e-6;
    private const long Many = 5000;

    [Fact]
    public void Compression_is_the_sum_of_the_springs_own_under_one_force() => Gen.Select(StackCase.Any, Gen.Double[0, 1]).Sample((c, share) =>
    {
        SpringStack stack = c.Build();
        double force = share * stack.SolidForce;
        Assert.Equal(c.PlainCompression(force), stack.Compression(force), Length);
    }, iter: Many);

    [Fact]
    public void Force_is_the_inverse_of_compression() => Gen.Select(StackCase.Any, Gen.Double[0, 1.05]).Sample((c, share) =>
    {
        SpringStack stack = c.Build();
        double y = share * stack.Breaks[^1].Compression;
        Assert.Equal(y, stack.Compression(stack.Force(y)), Length);
    }, iter: Many);

    [Fact]
    public void Force_is_continuous_over_every_break_and_rises() => StackCase.Any.Sample(c =>
    {
        SpringStack stack = c.Build();
        double last = 0;
        foreach (StackBreak b in stack.Breaks)
        {
            // A nanometre on the steepest piece is 5e6 N/m times that.
            Assert.Equal(b.Force, stack.Force(b.Compression - 1e-9), SpringStack.SolidRate * 1e-9 + Force);
            Assert.Equal(b.Force, stack.Force(b.Compression), Force);
            Assert.True(stack.Force(b.Compression + 1e-6) > b.Force && b.Force >= last);
            last = b.Force;
        }
    }, iter: Many);

    [Fact]
    public void Loose_springs_push_nothing() => Gen.Select(StackCase.Any, Gen.Double[-1, 0]).Sample((c, y) => c.Build().Force(y) == 0, iter: Many);

    [Fact]
    public void Once_nothing_is_left_to_compress_the_rate_is_that_of_solid_coils() => Gen.Select(StackCase.Any, Gen.Double[1e-4, 0.1]).Sample((c, past) =>
    {
        SpringStack stack = c.Build();
        StackBreak solid = stack.Breaks[^1];
        Assert.Equal(solid.Force + 5e6 * past, stack.Force(solid.Compression + past), Force);
    }, iter: Many);

    [Fact]
    public void Coil_nut_and_stop_nut_together_carry_the_stack_and_each_pushes() => Gen.Select(StackCase.Any, Gen.Double[0, 1.2]).Sample((c, share) =>
    {
        SpringStack stack = c.Build();
        double force = share * stack.SolidForce;
        (double coil, double stop) = stack.NutForces(force);
        Assert.Equal(force, coil + stop, Force);
        Assert.True(coil >= 0 && stop >= 0 && (stop == 0 || c.Held is not null));
    }, iter: Many);

    [Fact]
    public void Energy_is_the_area_under_the_force() => Gen.Select(StackCase.Any, Gen.Double[0, 1.05]).Sample((c, share) =>
    {
        SpringStack stack = c.Build();
        double y = share * stack.Breaks[^1].Compression, area = 0, from = 0;
        foreach (double to in stack.Breaks.ToArray().Select(b => Math.Min(y, b.Compression)).Append(y))
        {
            area += (to - from) * (stack.Force(from) + stack.Force(to)) / 2;
            from = to;
        }

        Assert.Equal(area, stack.Energy(y), 1e-9 * (1 + area));
    }, iter: Many);

    [Fact]
    public void Bind_clearance_is_the_springs_travel_less_what_the_stroke_asks_of_it() => Gen.Select(StackCase.Any, Gen.Double[0.05, 0.6]).Sample((c, y) =>
    {
        if (c.Set.Tender is not null || c.Set.Upper is not { } upper)
            return;

        // Without solid coils: series rates up to C*, then the lower spring alone takes the rest.
        SpringData lower = c.Set.Lower;
        double free = y * lower.Rate / (upper.Rate + lower.Rate), group = Math.Min(free, c.Held ?? double.PositiveInfinity);
        SpringStack stack = c.Build();
        Assert.Equal(upper.Travel - group, stack.BindClearance(SpringPosition.Upper, y), Length);
        Assert.Equal(lower.Travel - (y - group), stack.BindClearance(SpringPosition.Lower, y), Length);
    }, iter: Many);
}
