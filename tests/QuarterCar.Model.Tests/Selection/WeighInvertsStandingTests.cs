using System.Collections.Immutable;

using CsCheck;

using QuarterCar.Model.Selection;
using QuarterCar.Model.Statics;
using QuarterCar.TestKit;

using Xunit;

namespace QuarterCar.Model.Tests.Selection;

/// <summary>Weighing reads back what a corner stands on: any corner, its springs' lengths at ride height, its weight.</summary>
public class WeighInvertsStandingTests
{
    private static readonly Tolerance s_close = Tolerance.Share(1e-9, "the balance is solved to rounding; lengths of 0.3 m lose at most six of sixteen digits");

    private sealed record Case(CornerData Corner, double Standing);

    private static SpringData Spring(double rate) => new(rate, 0.6, 0.05);

    // No bump stop, springs too long to bind, nut at any gap or none; the weight is chosen so that the corner stands inside the stroke.
    private static readonly Gen<Case> s_cases =
        from tender in Gen.Double[3e3, 15e3]
        from upper in Gen.Double[15e3, 50e3]
        from lower in Gen.Double[15e3, 60e3]
        from positions in Gen.Int[1, 3]
        from preload in Gen.Double[0, 0.05]
        from gap in Gen.Double[0, 0.15]
        from hasNut in Gen.Bool
        from hasGas in Gen.Bool
        from ratio in Gen.Double[0.4, 1.2]
        from standing in Gen.Double[0.05, 0.25]
        let springs = new SpringSetData(positions == 3 ? Spring(tender) : null, positions >= 2 ? Spring(upper) : null, Spring(lower))
        let nut = hasNut && positions >= 2 ? new StopNutData(gap, StopNutReference.FullDroop) : null
        let gas = hasGas ? new GasData(1.2e6, 0.022, 4.5e-4) : null
        let coilover = new CoiloverData(0.3, springs, preload, nut, null, gas, 0, null, StopData.DefaultBottomOut, StopData.DefaultTopOut, null)
        select new Case(new CornerData(1000, null, 500, [new TablePoint(0, ratio)], new TyreData(2e5), coilover), standing);

    [Fact]
    public void Spring_force_and_sprung_weight_come_back_from_the_lengths_at_ride_height() => s_cases.Sample(c =>
    {
        Corner trial = Corner.Build(c.Corner);
        double ratio = c.Corner.MotionRatio[0].Value;
        double weight = ratio * (trial.Stack.Force(c.Standing + trial.Preload) + (trial.Gas?.Standing(c.Standing) ?? 0));
        var corner = Corner.Build(c.Corner with { SprungWeight = weight });
        WeighedCorner weighed = Weigh.Corner(Measured(corner, ratio), new WeighErrors());
        StandingFigures figures = StandingWork.Figures(corner);
        s_close.Holds(figures.SpringForce, weighed.Loads.SpringLoad, "spring force");
        s_close.Holds(weight, weighed.Loads.SprungWeight!.Value, "sprung weight");
        Assert.Empty(weighed.Disagreements);
    });

    private static MeasuredCorner Measured(Corner corner, double ratio)
    {
        ImmutableArray<MeasuredSpring> springs =
        [
            .. StandingWork.Springs(corner).Zip(corner.Stack.Springs, (s, data) =>
                new MeasuredSpring(s.Position, data.Rate, 0.6, [0.6 - s.CompressionRideHeight])),
        ];
        bool clear = corner.Stack.CrossoverForce is not { } f || corner.Stack.Force(corner.StandingShaftTravel + corner.Preload) <= f;
        return new MeasuredCorner("any", springs, clear, ratio, corner.Stroke - corner.StandingShaftTravel, corner.Stroke, corner.Data.Coilover.Gas);
    }
}
