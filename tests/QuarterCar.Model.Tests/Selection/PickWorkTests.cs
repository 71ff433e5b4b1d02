using QuarterCar.Model.Selection;
using QuarterCar.Model.Shaft;
using QuarterCar.Model.Springs;
using QuarterCar.Model.Tests.Statics;

using Xunit;

namespace QuarterCar.Model.Tests.Selection;

/// <summary>
/// Figures of one set of springs by hand. The gas is the bench's: 450 N at full droop, 642.159 N at 100 mm and 1090.53 N at 200 mm
/// (check values NL-11), F(x) = 480.3975·0.35/(0.35 − x) − 30.3975 N between and before. Corners on the very edge of a check have
/// lengths and rates of powers of two, so that nothing is rounded.
/// </summary>
public class PickWorkTests
{
    // Sums of a few lengths below a metre, solved for to a few roundings of the load.
    private const double Rounding = 1e-13;

    // 12 N/mm in series.
    private static readonly SpringData s_upper = new(20e3, 0.6, 0.1), s_lower = new(30e3, 0.6, 0.1);
    private static readonly SpringSetData s_pair = new(null, s_upper, s_lower);

    // 2048 N on two of these: 125 mm each, 250 mm of travel, so no preload where 250 of 500 mm of shaft are to show.
    private static readonly SpringData s_even = new(16384, 0.5, 0.25);
    private static readonly SpringSetData s_evenPair = new(null, s_even, s_even);
    private static readonly PickData s_evenAsked = new(2048, 0.5, 0.25, []);

    private static PickData WithGas(double load) => new(load, 0.3, 0.2, []) { Gas = Bench.Gas };

    [Theory]
    [InlineData(0, 1842.159, 0.1)] // 12·100 + 642.159
    [InlineData(50, 2442.159, 0.1)] // 12·150
    [InlineData(-50, 2890.53, 0.2)] // 12·150 + 1090.53
    [InlineData(-100, 530.06625, 0.05)] // before the springs touch: 480.3975·0.35/0.3 − 30.3975
    [InlineData(-100, 642.159, 0.1)] // where they just touch
    [InlineData(-400, 1090.53, 0.2)] // springs that never touch: 350 mm of gas
    public void Gas_and_springs_share_the_load(double preload, double load, double travel) =>
        Assert.Equal(travel, new PickWork(WithGas(2000)).Travel(SpringStack.Build(s_pair, null), preload / 1000, load), Rounding);

    [Fact]
    public void Gas_without_gauge_pressure_pulls_on_a_shaft_that_would_come_out()
    {
        // 12 N/mm on 50 mm of preload are the 600 N at full droop, where this gas has no force; 50 mm further out, where the springs would
        // be loose, it pulls: 30.3975·(0.35/0.4 − 1) = −3.8 N.
        PickData data = WithGas(2000) with { Gas = Bench.Gas with { Pressure = 0 } };
        Assert.Equal(0, new PickWork(data).Travel(SpringStack.Build(s_pair, null), 0.05, 600), Rounding);
    }

    [Fact]
    public void Springs_too_soft_for_the_load_leave_the_rest_to_the_gas()
    {
        // 1 N/mm twice, 0.5 in series: 150 N at 300 mm, and 3332.385 N of gas there; the springs alone would need metres.
        SpringData soft = new(1e3, 0.6, 0.1);
        Assert.Equal(0.3, new PickWork(WithGas(3482.385)).Travel(SpringStack.Build(new(null, soft, soft), null), 0, 3482.385), Rounding);
    }

    [Fact]
    public void Gas_that_carries_the_whole_load_is_refused()
    {
        double all = GasLaw.Of(Bench.Gas).Standing(WithGas(1).Travel);
        Assert.Equal("data", Assert.Throws<ArgumentException>(() => new PickWork(WithGas(all))).ParamName);
        Assert.StartsWith("The gas alone carries the load.", Assert.Throws<ArgumentException>(() => new PickWork(WithGas(all - 1))).Message, StringComparison.Ordinal);
        Assert.Equal(1, new PickWork(WithGas(643.159)).SpringForce, 1e-9);
    }

    [Fact]
    public void Settling_and_preload_count_the_gas_at_their_own_travel()
    {
        PickSet set = new PickWork(WithGas(1842.159)).Figures(s_pair);
        Assert.Equal(0.1, set.Settle, Rounding);
        Assert.Equal(0, set.Preload, Rounding);
        Assert.Equal(12e3, set.PrimaryRate, 1e-9);
    }

    [Fact]
    public void Under_another_load_the_stop_nut_stays_and_the_stops_hold_the_shaft()
    {
        // 2642.159 N: 2000 on the springs, 100 mm in the upper and 66.667 in the lower, 66.667 of preload. Without the load all is out;
        // four times the load is more than 300 mm of shaft.
        var work = new PickWork(WithGas(2642.159) with { Gap = 0.05 });
        PickSet set = work.Figures(s_pair);
        Assert.Equal(2000.0 / 12e3 - 0.1, set.Preload, Rounding);
        Assert.Equal((0.3, -0.9), (work.UnderLoad(set, -0.9).RideHeight, work.UnderLoad(set, -0.9).Share));
        Assert.Equal(0, work.UnderLoad(set, 3).RideHeight);
        // At 200 mm the springs are in by 266.667 mm, the upper by its 150: 30·116.667 = 3500 N, and 1090.53.
        PickLoadRow row = work.UnderLoad(set, 4590.53 / 2642.159 - 1);
        Assert.Equal(4590.53, row.Load, 1e-9);
        Assert.Equal(0.1, row.RideHeight, 1e-12);
    }

    [Fact]
    public void Other_springs_at_the_same_preload_stand_with_the_slider_free()
    {
        // 12·150 + 530.066 N at 50 mm with 100 of preload. A nut set for the wanted 100 mm would hold the upper spring at 1688 N.
        Assert.Equal(0.25, new PickWork(WithGas(2330.06625) with { Gap = 0 }).RideHeight(s_pair, 0.1), Rounding);
    }

    [Fact]
    public void On_the_very_edge_a_set_still_passes()
    {
        // Preload 0, and at full bump 250 mm in each spring.
        PickVerdict verdict = new PickWork(s_evenAsked).Verdict(s_evenPair);
        Assert.Equal((0, 0, 0, PickChecks.None, 0), (verdict.Preload, verdict.UpperClearance, verdict.LowerClearance, verdict.Failed, verdict.Short));
        PickSet set = new PickWork(s_evenAsked).Figures(s_evenPair);
        Assert.Equal(new PickRange(0, 0, 0.25, 0.25), set.Range);
        Assert.Equal(0, set.BindClearance);
        Assert.Null(set.ReachesStopNut);
    }

    [Theory]
    [InlineData(0.0625, true, 0.3125)] // held at 125 + 62.5 of the upper spring's 500 mm
    [InlineData(0.125, true, 0.25)] // C* 250 mm: just met at full bump
    [InlineData(0.1875, false, 0.25)] // C* 312.5 mm
    [InlineData(0.4375, false, 0.25)] // C* 562.5 mm, more than the upper spring has
    public void The_stop_nut_is_reached_up_to_full_bump(double gap, bool reached, double clearance)
    {
        PickSet set = new PickWork(s_evenAsked with { Gap = gap }).Figures(s_evenPair with { Upper = s_even with { FreeLength = 0.75 } });
        Assert.Equal(reached, set.ReachesStopNut);
        Assert.Equal(clearance, set.UpperClearance);
    }

    [Fact]
    public void On_the_very_edge_of_bind_with_a_gap_the_range_is_one_place() =>
        Assert.Equal(new PickRange(0, 0, 0.25, 0.25), new PickWork(s_evenAsked with { Gap = 0.125 }).Figures(s_evenPair).Range);

    [Theory]
    [InlineData(8192, true)] // 250 mm at 2048 N, all it has
    [InlineData(8256, false)] // 2064 N to press it solid
    [InlineData(8128, true)]
    public void A_tender_is_solid_from_the_force_on_that_leaves_it_no_travel(double rate, bool solid) =>
        Assert.Equal(solid, new PickWork(s_evenAsked).Figures(s_evenPair with { Tender = new SpringData(rate, 0.375, 0.125) }).TenderSolid);

    [Fact]
    public void A_set_without_tender_or_gap_says_nothing_of_either()
    {
        PickSet set = new PickWork(s_evenAsked).Figures(s_evenPair);
        Assert.Null(set.TenderSolid);
        Assert.Null(set.ReachesStopNut);
        Assert.Null(set.BowsFrom);
    }

    [Theory]
    [InlineData(0.18, 0.05, 0.196368157318)] // 120 mm of preload: 420 at full bump, 210 in each
    [InlineData(0.18, 0.28, null)] // solid after 170 mm
    [InlineData(0.23, 0.05, null)] // 70 mm of preload: 185 in each
    public void A_lower_spring_bows_where_full_bump_presses_it_in_beyond_its_buckling(double travel, double solid, double? bows)
    {
        // 450 mm free and 76.2 mm across its coils: from 196.368 mm on (check value SP-4). Two of 20 N/mm under 3000 N are in by 300 mm.
        SpringData lower = new(20e3, 0.45, solid, MeanDiameter: 0.0762);
        double? found = new PickWork(new PickData(3000, 0.3, 0.3 - travel, [])).Figures(new(null, new SpringData(20e3, 0.6, 0.1), lower)).BowsFrom;
        Assert.Equal(bows is null, found is null);
        Assert.Equal(bows ?? 0, found ?? 0, 1e-12);
    }

    // 20 over 40 N/mm, 300 mm of travel each, 180 mm of shaft under 3000 N: 45 mm of preload.
    private static readonly PickData s_asked = new(3000, 0.3, 0.12, []);
    private static readonly SpringData s_soft = new(20e3, 0.4, 0.1), s_hard = new(40e3, 0.4, 0.1);
    private static readonly SpringSetData s_stepped = new(null, s_soft, s_hard);

    private static PickVerdict OnBody(BodyData body, SpringSetData? set = null) => new PickWork(s_asked with { Body = body }).Verdict(set ?? s_stepped);

    [Theory]
    [InlineData(0.785, PickChecks.None, 0)] // 830 − 785: the nut at the very top of its thread
    [InlineData(0.785 - 5e-10, PickChecks.None, 0)] // half a nanometre is rounding
    [InlineData(0.785 - 2e-9, PickChecks.BelowLeastPreload, 2e-9)]
    [InlineData(0.7, PickChecks.BelowLeastPreload, 0.085)]
    public void A_stack_too_long_for_its_seat_lacks_what_its_preload_is_less_than_the_least(double seat, PickChecks failed, double lacks)
    {
        PickVerdict verdict = OnBody(new BodyData(seat, 0.2, null, 0.03, null));
        Assert.Equal(failed, verdict.Failed);
        Assert.Equal(lacks, verdict.Short, 1e-14);
    }

    [Theory]
    [InlineData(0.015, PickChecks.None, 0)] // from 30 to 45 mm: the nut at the very end of its thread
    [InlineData(0.015 - 5e-10, PickChecks.None, 0)]
    [InlineData(0.015 - 2e-9, PickChecks.BeyondThread, 2e-9)]
    [InlineData(0.010, PickChecks.BeyondThread, 0.005)]
    public void A_thread_too_short_lacks_what_the_preload_is_beyond_its_end(double thread, PickChecks failed, double lacks)
    {
        PickVerdict verdict = OnBody(new BodyData(0.8, thread, null, 0.03, null));
        Assert.Equal(failed, verdict.Failed);
        Assert.Equal(lacks, verdict.Short, 1e-14);
    }

    [Theory]
    [InlineData(0.9)] // 100 mm of play
    [InlineData(0.8)] // none
    public void A_stack_that_leaves_play_is_loose_and_no_more(double seat)
    {
        // 40 over 40 N/mm: 150 mm of 180, so 30 loose.
        PickVerdict verdict = OnBody(new BodyData(seat, 0.2, null, 0, null), new(null, s_hard, s_hard));
        Assert.Equal(PickChecks.Loose, verdict.Failed);
        Assert.Equal(0.03, verdict.Short, Rounding);
    }

    [Fact]
    public void What_a_set_lacks_is_added_up_over_its_checks()
    {
        // 130 − 45 mm above the thread; springs of 60 and 61 on a body of 62 mm.
        SpringSetData tight = new(null, s_soft with { InnerDiameter = 0.060 }, s_hard with { InnerDiameter = 0.061 });
        PickVerdict verdict = OnBody(new BodyData(0.7, 0.2, null, 0.03, 0.062), tight);
        Assert.Equal(PickChecks.BelowLeastPreload | PickChecks.OverBody, verdict.Failed);
        Assert.Equal(0.085 + 0.002 + 0.001, verdict.Short, Rounding);
        // 345 mm at full bump, 230 in the upper and 115 in the lower: with 200 and 110 mm of travel the upper lacks more.
        PickVerdict binds = new PickWork(s_asked).Verdict(new(null, s_soft with { SolidLength = 0.2 }, s_hard with { SolidLength = 0.29 }));
        Assert.Equal(PickChecks.Binds, binds.Failed);
        Assert.Equal(0.03, binds.Short, Rounding);
        Assert.Equal(-0.005, binds.LowerClearance, Rounding);
    }

    [Fact]
    public void A_spring_just_as_wide_as_the_body_fails_and_lacks_next_to_nothing()
    {
        PickVerdict verdict = OnBody(new BodyData(null, null, null, null, 0.0625), new(null, s_soft with { InnerDiameter = 0.0625 }, s_hard with { InnerDiameter = 0.07 }));
        Assert.Equal(PickChecks.OverBody, verdict.Failed);
        Assert.InRange(verdict.Short, double.Epsilon, 1e-300);
    }

    [Theory]
    [InlineData(null, null, 0, 0.150)] // neither known: from no preload to bind, 6000 N at 450 mm
    [InlineData(0.80, null, 0.030, 0.150)] // no thread given
    [InlineData(0.80, 0.05, 0.030, 0.080)]
    [InlineData(0.80, 0.0, 0.030, 0.030)] // one place only
    [InlineData(0.90, 0.1, 0, 0.030)] // 70 mm of play
    public void The_range_is_from_the_seat_to_the_thread_or_to_bind(double? seat, double? thread, double least, double most)
    {
        PickRange range = new PickWork(s_asked with { Body = new BodyData(seat, thread, null, 0.03, null) }).Figures(s_stepped).Range!;
        Assert.Equal(least, range.LeastPreload, Rounding);
        Assert.Equal(most, range.MostPreload, Rounding);
        Assert.Equal(0.3 - (0.225 - least), range.Lowest, Rounding);
        Assert.Equal(0.3 - (0.225 - most), range.Highest, Rounding);
    }

    [Theory]
    [InlineData(0.65, 0.1, null)] // 180 mm to go on, 150 before bind
    [InlineData(0.90, 0.05, null)] // the thread ends in the play
    [InlineData(0.65, 0.1, 0.02)] // at 180 mm of preload the lower takes 300 + 180 − 170 of its 300
    public void Where_the_least_is_more_than_the_most_there_is_no_range(double seat, double thread, double? gap) =>
        Assert.Null(new PickWork(s_asked with { Body = new BodyData(seat, thread, null, 0.03, null), Gap = gap }).Figures(s_stepped).Range);

    [Fact]
    public void With_gas_the_gap_is_set_anew_at_the_ride_height_of_every_preload()
    {
        // 20 over 40 N/mm under 2642.159 N: at 100 mm of travel 2000 N on the springs, 100 and 50 mm, so 50 of preload. C* = 100 + 30;
        // the lower takes 300 + 50 − 130 = 220 mm at full bump, all that it has.
        var data = new PickData(2642.159, 0.3, 0.15, []) { Gas = Bench.Gas, Gap = 0.03 };
        PickRange range = new PickWork(data).Figures(new(null, s_soft, s_hard with { SolidLength = 0.18 })).Range!;
        Assert.Equal(0.05, range.MostPreload, Rounding);
        Assert.Equal(0.2, range.Highest, Rounding);
        Assert.Equal(0, range.LeastPreload);
    }

    [Fact]
    public void Where_the_preload_lifts_the_load_the_gap_is_set_with_the_shaft_all_out()
    {
        // Two of 20 N/mm, 250 mm each, under 1000 N: all out from 100 mm of preload on. C* = p/2 + 20; at full bump the lower takes
        // 200 + p − C* = 250 mm at p = 140, where the upper has 90.
        SpringData spring = new(20e3, 0.4, 0.15);
        PickRange range = new PickWork(new PickData(1000, 0.2, 0.15, []) { Gap = 0.02 }).Figures(new(null, spring, spring)).Range!;
        Assert.Equal(0.14, range.MostPreload, Rounding);
        Assert.Equal(0.2, range.Highest);
        Assert.Equal(0.1, range.Lowest, Rounding);
    }

    [Fact]
    public void Springs_too_soft_for_the_load_stand_at_full_bump()
    {
        // Two of 20 N/mm, 250 mm each, under 4000 N would settle by 400 mm of 200; 500 − 200 mm of preload use them up.
        SpringData spring = new(20e3, 0.4, 0.15);
        PickSet set = new PickWork(new PickData(4000, 0.2, 0.1, [])).Figures(new(null, spring, spring));
        Assert.Equal(0.4, set.Settle, Rounding);
        Assert.Equal(0, set.Range!.Lowest);
        Assert.Equal(0.3, set.Range.MostPreload, Rounding);
        Assert.Equal(0.2 - (0.4 - 0.3), set.Range.Highest, Rounding);
    }
}
