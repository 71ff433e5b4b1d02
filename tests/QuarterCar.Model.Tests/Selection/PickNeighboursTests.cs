using System.Collections.Immutable;

using QuarterCar.Model.Selection;

using Xunit;

namespace QuarterCar.Model.Tests.Selection;

/// <summary>Which springs of the list stand beside a choice, and where the choice would stand with them; 3000 N on 180 mm of travel.</summary>
public class PickNeighboursTests
{
    private static SpringData Spring(double rate, double free = 0.6, double? inner = null) => new(rate, free, 0.1, InnerDiameter: inner);

    private static ImmutableArray<PickNeighbour> Of(SpringData upper, SpringData lower, params SpringData[] list)
    {
        var data = new PickData(3000, 0.3, 0.12, [.. list]);
        var work = new PickWork(data);
        return [.. PickNeighbours.Of(data, work, work.Figures(new(null, upper, lower)))];
    }

    private static (string Place, double Upper, double Lower) Rates(PickNeighbour n) => (n.Place, n.Set.Springs.Upper!.Rate, n.Set.Springs.Lower.Rate);

    [Fact]
    public void Each_place_has_the_next_softer_and_then_the_next_stiffer_rate_of_the_list() => Assert.Equal(
        [("upper", 18e3, 40e3), ("upper", 24e3, 40e3), ("lower", 20e3, 36e3), ("lower", 20e3, 45e3)],
        Of(Spring(20e3), Spring(40e3), Spring(15e3), Spring(45e3), Spring(18e3), Spring(40e3), Spring(24e3), Spring(50e3), Spring(20e3), Spring(36e3)).Select(Rates));

    [Fact]
    public void At_the_ends_of_the_list_there_is_none_beyond() =>
        Assert.Equal([("upper", 40e3, 40e3), ("lower", 20e3, 20e3)], Of(Spring(20e3), Spring(40e3), Spring(20e3), Spring(40e3)).Select(Rates));

    [Fact]
    public void Of_two_equal_rates_the_upper_only_softens_and_the_lower_only_stiffens() => Assert.Equal(
        [("upper", 20e3, 30e3), ("lower", 30e3, 40e3)], Of(Spring(30e3), Spring(30e3), Spring(20e3), Spring(30e3), Spring(40e3)).Select(Rates));

    [Fact]
    public void A_list_of_one_rate_has_no_neighbours() => Assert.Empty(Of(Spring(30e3), Spring(30e3), Spring(30e3), Spring(30e3, 0.5)));

    [Fact]
    public void The_nearest_inner_diameter_goes_before_the_nearest_free_length()
    {
        // Beside 66 mm and 600 mm: 58 mm across is 8 off and 72 but 6, whatever the length; of those of 72 mm 590 is nearer than 620 and 570.
        SpringData upper = Spring(20e3, 0.6, 0.066), lower = Spring(40e3, 0.6, 0.066);
        ImmutableArray<PickNeighbour> beside = Of(upper, lower, upper, lower, Spring(30e3, 0.6, 0.058), Spring(30e3, 0.62, 0.072), Spring(30e3, 0.59, 0.072), Spring(30e3, 0.57, 0.072));
        Assert.All(beside.Where(n => n.Place == "upper" && n.Set.Springs.Upper!.Rate == 30e3), n => Assert.Equal((0.59, 0.072), (n.Set.Springs.Upper!.FreeLength, n.Set.Springs.Upper.InnerDiameter)));
        Assert.Equal(2, beside.Count(n => n.Set.Springs.Upper!.Rate == 30e3 || n.Set.Springs.Lower.Rate == 30e3));
    }

    [Fact]
    public void A_spring_of_unknown_diameter_comes_after_those_that_are_known()
    {
        SpringData upper = Spring(20e3, 0.6, 0.066), lower = Spring(40e3, 0.6, 0.066);
        PickNeighbour stiffer = Of(upper, lower, upper, lower, Spring(30e3, 0.6), Spring(30e3, 0.5, 0.1)).First(n => n.Set.Springs.Upper!.Rate == 30e3);
        Assert.Equal(0.1, stiffer.Set.Springs.Upper!.InnerDiameter);
    }

    [Theory]
    [InlineData(0.58)] // the other is 40 mm away
    [InlineData(0.63)]
    public void Where_no_diameter_is_known_the_nearest_free_length_is_fitted(double free)
    {
        PickNeighbour stiffer = Of(Spring(20e3), Spring(40e3), Spring(20e3), Spring(40e3), Spring(25e3, 0.64), Spring(25e3, free), Spring(25e3, 0.56)).First();
        Assert.Equal((25e3, free), (stiffer.Set.Springs.Upper!.Rate, stiffer.Set.Springs.Upper.FreeLength));
    }

    [Fact]
    public void A_neighbour_shows_its_own_preload_and_where_it_stands_at_the_choice_s()
    {
        // 20 over 40 N/mm: 225 mm, so 45 of preload. 20 over 50: 150 + 60 = 210, 30 of preload; at 45 it is in by 165 of 300 mm.
        PickNeighbour stiffer = Of(Spring(20e3), Spring(40e3), Spring(20e3), Spring(40e3), Spring(50e3)).Single(n => n.Set.Springs.Lower.Rate == 50e3);
        Assert.Equal(0.030, stiffer.Set.Preload, 1e-14);
        Assert.Equal(0.300 - 0.165, stiffer.RideHeight, 1e-14);
    }

    [Fact]
    public void A_tender_stays()
    {
        SpringData tender = Spring(2e3, 0.15);
        var data = new PickData(3000, 0.3, 0.12, [Spring(20e3), Spring(40e3)]) { Tenders = [tender] };
        var work = new PickWork(data);
        Assert.All(PickNeighbours.Of(data, work, work.Figures(new(tender, Spring(20e3), Spring(40e3)))), n => Assert.Equal(tender, n.Set.Springs.Tender));
    }
}
