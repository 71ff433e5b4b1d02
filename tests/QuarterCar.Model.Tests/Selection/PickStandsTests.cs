using CsCheck;

using QuarterCar.Model.Selection;
using QuarterCar.Model.Shaft;
using QuarterCar.Model.Statics;

using Xunit;

namespace QuarterCar.Model.Tests.Selection;

/// <summary>What is picked stands: put into a corner, every set has the wanted ride height and the bind clearance that check finds.</summary>
public class PickStandsTests
{
    private static readonly Gen<SpringData> s_spring =
        from rate in Gen.Double[10e3, 90e3]
        from travel in Gen.Double[0.10, 0.35]
        select new SpringData(rate, travel + 0.12, 0.12);

    private static readonly Gen<PickData> s_asked = Asked().Where(d => d.Gas is not { } gas || GasLaw.Of(gas).Standing(d.Travel) < 0.95 * d.Load);

    private static Gen<PickData> Asked() =>
        from load in Gen.Double[1500, 6000]
        from stroke in Gen.Double[0.15, 0.40]
        from share in Gen.Double[0.2, 0.8]
        from gap in Gen.Double[0, 0.08]
        from slider in Gen.Bool
        from gas in Gen.Bool
        from pressure in Gen.Double[2e5, 15e5]
        from room in Gen.Double[1.2, 4]
        from springs in s_spring.Array[1, 3]
        from tender in s_spring.Select(s => s with { Rate = s.Rate / 8 }).Array[0, 1]
        select new PickData(load, stroke, share * stroke, [.. springs])
        {
            Tenders = [.. tender],
            Gap = slider ? null : gap,
            Gas = gas ? new GasData(pressure, 0.022, room * Math.PI / 4 * 0.022 * 0.022 * stroke) : null,
        };

    [Fact]
    public void A_picked_set_in_a_corner_stands_at_the_wanted_ride_height_and_binds_where_check_says() => s_asked.Sample(
        data =>
        {
            foreach (PickSet set in Pick.Of(data).Sets)
            {
                Corner corner = In(data, set, set.Preload);
                StandingFigures figures = StandingWork.Figures(corner);
                // The corner's balance is found to rounding of the load over the softest rate: some 1e-12 m.
                Assert.Equal(data.RideHeight, figures.RideHeight, 1e-9);
                Assert.Equal(set.BindClearance, figures.BindClearanceFullBump, 1e-9);
                Assert.Equal(set.PrimaryRate, figures.PrimaryRate, 1e-6);
            }
        },
        iter: 500);

    [Fact]
    public void At_the_most_preload_one_spring_just_binds_at_full_bump_with_its_gap_set_anew() => s_asked.Sample(
        data =>
        {
            foreach (PickSet set in Pick.Of(data).Sets.Where(s => s.Range is not null))
            {
                Corner corner = In(data, set, set.Range!.MostPreload);
                bool toppedOut = corner.StandingShaftTravel < 0;
                // A shaft pressed against its top-out gives way by force over 1e6 N/m there, which the range leaves out.
                Assert.Equal(0, StandingWork.BindClearance(corner), toppedOut ? 0.05 : 1e-9);
                if (!toppedOut && corner.StandingShaftTravel < data.Stroke)
                    Assert.Equal(set.Range.Highest, StandingWork.Figures(corner).RideHeight, 1e-9);
            }
        },
        iter: 300);

    [Fact]
    public void More_preload_never_lowers_the_corner() => s_asked.Sample(
        data => Assert.All(Pick.Of(data).Sets.Where(s => s.Range is not null), s => Assert.True(s.Range!.Highest >= s.Range.Lowest)), iter: 300);

    private static Corner In(PickData data, PickSet set, double preload) => Corner.Build(new CornerData(
        data.Load, null, 500, [new TablePoint(0, 1)], new TyreData(200e3),
        new CoiloverData(
            data.Stroke, set.Springs, preload, data.Gap is { } gap ? new StopNutData(gap, StopNutReference.RideHeight) : null,
            null, data.Gas, 0, null, StopData.DefaultBottomOut, StopData.DefaultTopOut, null)));
}
