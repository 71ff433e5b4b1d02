using System.Collections.Immutable;

using QuarterCar.Model.Selection;

using Xunit;

namespace QuarterCar.Model.Tests.Selection;

/// <summary>Picking springs against closed forms worked out by hand. Straight springs: all comes out to rounding, a few 1e-16 of metres times ten steps.</summary>
public class PickTests
{
    private const double Rounding = 1e-14;

    // 3000 N on a 300 mm shock that is to show 120 mm: 180 mm of travel.
    private static readonly SpringData s_soft = new(20e3, 0.40, 0.10), s_hard = new(40e3, 0.40, 0.10);

    private static PickData Asked(params SpringData[] springs) => new(3000, 0.300, 0.120, [.. springs]) { Preload = 0.025 };

    [Fact]
    public void Required_rate_is_the_springs_share_of_the_load_over_travel_and_preload()
    {
        Assert.Equal(3000 / 0.205, Pick.Of(Asked(s_soft)).RequiredPrimaryRate, 1e-9);
        // 20 mm rod, 10 bar in 500 cm³ at full droop; isothermal at 180 mm.
        double area = Math.PI * 1e-4, volume = 500e-6;
        double gas = area * ((10e5 + 101325) * volume / (volume - area * 0.180) - 101325);
        Assert.Equal((3000 - gas) / 0.205, Pick.Of(Asked(s_soft) with { Gas = new GasData(10e5, 0.020, volume) }).RequiredPrimaryRate, 1e-9);
    }

    [Fact]
    public void Two_equal_springs_have_half_the_rate_and_a_step_of_two()
    {
        PickSet set = Assert.Single(Pick.Of(Asked(s_soft)).Sets);
        Assert.Equal(10e3, set.PrimaryRate, 1e-9);
        Assert.Equal(20e3, set.SecondaryRate);
        Assert.Equal(2, set.RateStep, 1e-14);
        Assert.Equal(0.300, set.Settle, Rounding);
        Assert.Equal(0.120, set.Preload, Rounding);
    }

    [Fact]
    public void Every_pair_has_its_upper_spring_no_stiffer_than_its_lower()
    {
        PickData data = Asked(s_hard, s_soft, s_soft with { FreeLength = 0.5 });
        ImmutableArray<PickSet> sets = Pick.Of(data).Sets;
        Assert.Equal(7, sets.Length); // 2 × 2 of the soft rate, 2 soft over hard, hard over hard
        Assert.Equal(7, Pick.Count(data));
        Assert.All(sets, s => Assert.True(s.Springs.Upper!.Rate <= s.Springs.Lower.Rate));
    }

    [Fact]
    public void With_the_slider_free_the_springs_share_the_stroke_by_their_flexibility()
    {
        // 20 over 40 kN/m: y = 3000·(1/20 + 1/40) = 225 mm, preload 45 mm; 345 mm at full bump, 230 of it in the upper spring.
        PickSet set = Find(Pick.Of(Asked(s_soft, s_hard)), 20e3, 40e3);
        Assert.Equal(0.045, set.Preload, Rounding);
        Assert.Equal(0.300 - 0.230, set.UpperClearance, Rounding);
        Assert.Equal(0.300 - 0.115, set.LowerClearance, Rounding);
        // The upper spring is solid at 6000 N: y = 450 mm, which a preload of 150 mm reaches at full bump.
        Assert.Equal((0, 0.150), (set.Range!.LeastPreload, Math.Round(set.Range.MostPreload, 13)));
        Assert.Equal(0.300 - 0.225, set.Range.Lowest, Rounding);
        Assert.Equal(0.300 - (0.225 - 0.150), set.Range.Highest, Rounding);
    }

    [Fact]
    public void On_the_stop_nut_the_lower_spring_takes_the_rest_and_limits_the_preload()
    {
        // At ride height the upper spring is in by 150 mm, so C* = 170 mm with a gap of 20; at full bump the lower takes 345 − 170.
        PickSet set = Find(Pick.Of(Asked(s_soft, s_hard) with { Gap = 0.020 }), 20e3, 40e3);
        Assert.True(set.ReachesStopNut);
        Assert.Equal(0.300 - 0.170, set.UpperClearance, Rounding);
        Assert.Equal(0.300 - 0.175, set.LowerClearance, Rounding);
        // The gap set anew keeps C* (no gas): 125 mm more preload use the lower spring up; the shaft is out by 45 of the 225 mm by then.
        Assert.Equal(0.045 + 0.125, set.Range!.MostPreload, Rounding);
        Assert.Equal(0.300 - (0.225 - 0.170), set.Range.Highest, Rounding);
    }

    [Fact]
    public void The_range_ends_at_the_thread_where_that_comes_first()
    {
        var body = new BodyData(SeatLength: 0.80, Thread: 0.060, ThreadPitch: null, Slider: 0.030, Diameter: null);
        PickSet set = Find(Pick.Of(Asked(s_soft, s_hard) with { Body = body }), 20e3, 40e3);
        Assert.Equal(0.030, set.Range!.LeastPreload, Rounding); // 0.83 of stack on 0.80 of seat
        Assert.Equal(0.090, set.Range.MostPreload, Rounding);
        Assert.Equal(0.300 - (0.225 - 0.090), set.Range.Highest, Rounding);
        Assert.Equal(PickChecks.None, set.Failed);
    }

    [Theory]
    [InlineData(0.70, 0.20, PickChecks.BelowLeastPreload)] // needs 130 mm of preload to go on
    [InlineData(0.86, 0.06, PickChecks.BeyondThread)] // its thread ends at 30 mm of preload
    public void A_stack_that_the_body_does_not_take_fails(double seat, double thread, PickChecks expected)
    {
        var body = new BodyData(seat, thread, null, 0.030, null);
        Assert.Equal(expected, Find(Pick.Of(Asked(s_soft, s_hard) with { Body = body }), 20e3, 40e3).Failed);
    }

    [Theory]
    [InlineData(0.0635, 0.0762, PickChecks.None)] // 3.0 in springs over a 2.5 in body
    [InlineData(0.0762, 0.0762, PickChecks.OverBody)]
    public void A_spring_no_wider_than_the_body_does_not_go_over_it(double body, double inner, PickChecks expected)
    {
        PickData data = Asked(s_soft with { InnerDiameter = inner }, s_hard with { InnerDiameter = inner });
        Assert.Equal(expected, Find(Pick.Of(data with { Body = new BodyData(null, null, null, null, body) }), 20e3, 40e3).Failed);
    }

    [Fact]
    public void Failed_checks_rank_last_then_the_wanted_preload_then_bind_clearance()
    {
        // Preloads: soft/hard 45 mm, soft/soft 120 mm, hard/hard −30 mm (loose). A longer soft spring binds later.
        SpringData longer = s_soft with { FreeLength = 0.45 };
        ImmutableArray<PickSet> sets = Pick.Of(Asked(s_hard, s_soft, longer)).Sets;
        Assert.Equal((longer, s_hard), (sets[0].Springs.Upper, sets[0].Springs.Lower));
        Assert.Equal((s_soft, s_hard), (sets[1].Springs.Upper, sets[1].Springs.Lower));
        Assert.All(sets[2..^1], s => Assert.Equal(0.120, s.Preload, Rounding));
        Assert.Equal(PickChecks.Loose, sets[^1].Failed);
    }

    [Fact]
    public void A_tender_that_is_solid_at_ride_height_leaves_the_primary_rate_alone()
    {
        // 10 kN/m over 60 mm is solid at 600 N; 10 kN/m over 400 mm still works at 3000 N.
        SpringData solid = new(10e3, 0.100, 0.040), working = new(10e3, 0.500, 0.100);
        PickResult result = Pick.Of(Asked(s_soft, s_hard) with { Tenders = [solid, working] });
        PickSet with = result.Sets.Single(s => s.Springs.Tender == solid && s.Springs.Lower == s_hard && s.Springs.Upper == s_soft);
        Assert.True(with.TenderSolid);
        Assert.Equal(20e3 * 40e3 / 60e3, with.PrimaryRate, 1e-9);
        Assert.Equal(0.045 + 0.060, with.Preload, Rounding);
        PickSet soft = result.Sets.Single(s => s.Springs.Tender == working && s.Springs.Lower == s_hard && s.Springs.Upper == s_soft);
        Assert.False(soft.TenderSolid);
        Assert.Equal(1 / (1 / 10e3 + 1 / 20e3 + 1 / 40e3), soft.PrimaryRate, 1e-9);
        Assert.Equal(3 * 3, result.Sets.Length);
    }

    [Fact]
    public void Under_another_load_nothing_turned_it_moves_by_the_rate_it_stands_on()
    {
        // 13.33 kN/m: 150 N are 11.25 mm; 300 N are 22.5 mm, of which a gap of 5 mm allows 7.5 before the lower spring alone carries on.
        ImmutableArray<PickLoadRow> rows = Pick.Of(Asked(s_soft, s_hard) with { Gap = 0.005 }).Loads;
        Assert.Equal([-0.10, -0.05, 0, 0.05, 0.10], rows.Select(r => r.Share));
        Assert.Equal(0.120 + 0.01125, rows[1].RideHeight, Rounding);
        Assert.Equal(0.120, rows[2].RideHeight, Rounding);
        // On the nut from 100 N on: 7.5 mm, then 200 N on 40 kN/m.
        Assert.Equal(0.120 - 0.0075 - 0.005, rows[4].RideHeight, Rounding);
    }

    [Fact]
    public void Neighbours_are_the_lists_next_rates_at_the_same_preload_and_at_the_same_height()
    {
        SpringData next = s_soft with { Rate = 25e3 };
        PickResult result = Pick.Of(Asked(s_soft, next, s_hard) with { Preload = 0.040 });
        Assert.Equal((20e3, 40e3), (result.Sets[0].Springs.Upper!.Rate, result.Sets[0].Springs.Lower.Rate));
        PickNeighbour stiffer = Assert.Single(result.Neighbours, n => n.Place == "upper");
        Assert.Equal(3000 * (1 / 25e3 + 1 / 40e3) - 0.180, stiffer.Set.Preload, Rounding);
        Assert.Equal(0.300 - (0.195 - 0.045), stiffer.RideHeight, Rounding);
    }

    [Fact]
    public void Where_none_passes_the_set_that_lacks_least_is_named()
    {
        // 100 mm of travel each: 20/20 binds by 110 mm at full bump twice over the share, 20/40 less.
        SpringData shortSoft = s_soft with { SolidLength = 0.30 }, shortHard = s_hard with { SolidLength = 0.30 };
        PickResult result = Pick.Of(Asked(shortSoft, shortHard));
        Assert.Equal(0, result.Passing);
        Assert.Contains(result.FailedBy, f => f.Check == PickChecks.Binds && f.Count > 0);
        Assert.NotNull(result.Nearest);
        Assert.Null(Pick.Of(Asked(s_soft, s_hard)).Nearest);
    }

    [Fact]
    public void Sets_that_tie_go_by_the_list_s_order_upper_lower_tender()
    {
        // Three of one rate and one travel, told apart by their length, and two tenders without any travel: every set stands at 120 mm of
        // preload with the same clearance, to the last bit, because the lengths are whole sixteenths of a metre. 27 sets:
        // up to 16 the sort leaves ties where they are anyway.
        SpringData a = new(20e3, 0.5, 0.125), b = a with { FreeLength = 0.625, SolidLength = 0.25 }, c = a with { FreeLength = 0.75, SolidLength = 0.375 };
        SpringData none = new(1e3, 0.125, 0.125), other = none with { FreeLength = 0.0625, SolidLength = 0.0625 };
        ImmutableArray<PickSet> sets = Pick.Of(Asked(a, b, c) with { Tenders = [none, other] }).Sets;
        Assert.Equal(
            from upper in new[] { a, b, c } from lower in new[] { a, b, c } from tender in new[] { null, none, other } select new SpringSetData(tender, upper, lower),
            sets.Select(s => s.Springs));
    }

    [Fact]
    public void Nearer_to_the_wanted_preload_goes_before_clearance_but_not_within_a_nanometre()
    {
        // Under 3000 N: 20 over 40 N/mm at 45 mm, 20 over 50 at 30 mm; wanted 30. The one further off has more travel.
        SpringData longer = s_hard with { FreeLength = 0.9 }, near = new(50e3, 0.4, 0.1), upper = s_soft with { FreeLength = 0.8 };
        PickResult result = Pick.Of(Asked(upper, longer, near) with { Preload = 0.030 });
        Assert.Equal((upper, near), (result.Sets[0].Springs.Upper, result.Sets[0].Springs.Lower));
        // Two springs softer by a part in 20 million are in by 15 nm more than 300 mm: further off. By a part in 2000 million it is 0.15 nm.
        SpringData wide = new(20e3, 0.5, 0.1);
        Assert.Equal(0.4, Pick.Of(Asked(s_soft, wide with { Rate = 20e3 - 1e-3 })).Sets[0].Springs.Upper!.FreeLength);
        Assert.Equal(0.5, Pick.Of(Asked(s_soft, wide with { Rate = 20e3 - 1e-5 })).Sets[0].Springs.Upper!.FreeLength);
    }

    [Fact]
    public void Those_that_fail_are_ranked_by_the_wanted_preload_too_and_the_nearest_is_the_one_short_of_least()
    {
        // Travels of 160 mm, 25 of preload wanted: 20/40 at 45 lacks 230 − 160 = 70 mm at full bump, 40/40 is 30 mm loose and in by 135
        // at full bump, 20/20 at 120 lacks 210 − 160 = 50.
        SpringData soft = s_soft with { SolidLength = 0.24 }, hard = s_hard with { SolidLength = 0.24 };
        PickResult result = Pick.Of(Asked(soft, hard));
        Assert.Equal([(20e3, 40e3), (40e3, 40e3), (20e3, 20e3)], result.Sets.Select(s => (s.Springs.Upper!.Rate, s.Springs.Lower.Rate)));
        Assert.Equal([0.045, -0.030, 0.120], result.Sets.Select(s => Math.Round(s.Preload, 13)));
        Assert.Equal((40e3, 40e3), (result.Nearest!.Springs.Upper!.Rate, result.Nearest.Springs.Lower.Rate));
        Assert.Equal((3, 0), (result.Examined, result.Passing));
        Assert.Equal([(PickChecks.Loose, 1L), (PickChecks.Binds, 2L)], result.FailedBy.Select(f => (f.Check, f.Count)));
    }

    [Fact]
    public void Sets_that_pass_are_counted_and_checks_that_none_fails_are_not_named()
    {
        // Of 20/20, 20/40 and 40/40 N/mm the last is 30 mm loose.
        PickResult result = Pick.Of(Asked(s_soft, s_hard));
        Assert.Equal((3, 2), (result.Examined, result.Passing));
        Assert.Equal([(PickChecks.Loose, 1L)], result.FailedBy.Select(f => (f.Check, f.Count)));
        Assert.Equal(3000, result.SpringForce);
    }

    [Fact]
    public void Those_passing_that_bow_or_have_a_tender_at_work_are_counted()
    {
        // 400 mm of spring on 50 mm of coil bow from 79.3 mm on (EN 13906-1 by hand). Under 20/40 N/mm the lower is in by 115 mm at full bump; 40/40 bows too but is 30 mm loose.
        PickResult slim = Pick.Of(Asked(s_soft, s_hard with { MeanDiameter = 0.05 }));
        Assert.Equal([(PickRemarks.Bows, 1L)], slim.PassingBut.Select(p => (p.Remark, p.Count)));
        Assert.Equal([PickRemarks.Bows, PickRemarks.None, PickRemarks.Bows], slim.Sets.Select(s => s.Remarks));
        Assert.Equal(0.0793, slim.Sets[0].BowsFrom!.Value, 1e-4);
        // 10 N/mm over 60 mm is solid at 600 N, over 400 mm it still works at 3000, above each of the three pairs.
        PickResult tenders = Pick.Of(Asked(s_soft, s_hard) with { Tenders = [new(10e3, 0.100, 0.040), new(10e3, 0.500, 0.100)] });
        Assert.Equal((8, 3), (tenders.Passing, Assert.Single(tenders.PassingBut, p => p.Remark == PickRemarks.TenderWorks).Count));
        Assert.Empty(Pick.Of(Asked(s_soft, s_hard)).PassingBut);
    }

    [Fact]
    public void Every_tender_is_tried_above_every_pair()
    {
        // 7 pairs of three springs, of which two have one rate; each bare and with two tenders.
        PickData data = Asked(s_hard, s_soft, s_soft with { FreeLength = 0.5 }) with { Tenders = [s_soft, s_hard] };
        Assert.Equal(21, Pick.Count(data));
        Assert.Equal(21, Pick.Of(data).Examined);
        Assert.Equal(0, Pick.Count(Asked()));
    }

    [Fact]
    public void The_best_two_thousand_are_listed()
    {
        // 15 alike: 225 pairs, bare and with eight tenders 2025.
        PickData data = Asked([.. Enumerable.Repeat(s_soft, 15)]) with { Tenders = [.. Enumerable.Repeat(new SpringData(1e3, 0.1, 0.05), 8)] };
        PickResult result = Pick.Of(data);
        Assert.Equal((2000, 2025), (result.Sets.Length, result.Examined));
    }

    [Fact]
    public void A_list_without_springs_gives_no_set()
    {
        PickResult result = Pick.Of(Asked());
        Assert.Empty(result.Sets);
        Assert.Empty(result.Loads);
        Assert.Empty(result.Neighbours);
        Assert.Null(result.Nearest);
        Assert.Equal(3000 / 0.205, result.RequiredPrimaryRate, 1e-9);
    }

    [Fact]
    public void A_pick_that_is_stopped_ends() => Assert.Throws<OperationCanceledException>(() => Pick.Of(Asked(s_soft, s_hard), new CancellationToken(true)));

    private static PickSet Find(PickResult result, double upper, double lower) =>
        result.Sets.Single(s => s.Springs.Tender is null && s.Springs.Upper!.Rate == upper && s.Springs.Lower.Rate == lower);
}
