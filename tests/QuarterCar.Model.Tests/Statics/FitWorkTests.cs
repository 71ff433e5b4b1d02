using CsCheck;

using QuarterCar.Model.Springs;
using QuarterCar.Model.Statics;

using Xunit;

namespace QuarterCar.Model.Tests.Statics;

/// <summary>Fit on the body against closed forms worked by hand in mm and N/mm: upper 20 and lower 30 N/mm (12 in series), 200 mm of travel each.</summary>
public class FitWorkTests
{
    // Sums of a few lengths of the order of 1 m: rounding below 1e-14.
    private const double Rounding = 1e-12;

    private static readonly SpringSetData s_pair = new(null, Spring(20, 300, 100), Spring(30, 350, 150));
    private static readonly BodyData s_body = new(0.640, 0.100, 0.002, 0.030, 0.062);

    [Fact]
    public void Lengths_turns_force_and_energy_follow_from_the_stack_and_the_seat()
    {
        FitFigures fit = FitWork.Of(Build(s_pair, s_body, 60))!;
        Near(0.680, fit.StackFree);          // 300 + 350 + 30
        Near(0.040, fit.LeastPreload);       // 680 − 640
        Near(0.020, fit.NutFromTop);         // 60 − 40
        Near(0.080, fit.ThreadLeft);         // 100 − 20
        Near(30, fit.PreloadTurns);          // 60 / 2
        Near(480, fit.AssemblyForce, 1e-9);  // 12 · 40
        Near(9.6, fit.AssemblyEnergy, 1e-9); // ½ · 12 · 40² N·mm
        Near(0.002, fit.RadialClearance);    // (66 − 62) / 2
    }

    [Fact]
    public void Thread_limits_the_most_preload_where_no_spring_binds_before() =>
        Near(0.140, FitWork.Of(Build(s_pair, s_body, 60, stroke: 150))!.MostPreload); // 40 + 100; the upper would bind at 333.3 − 150

    [Fact]
    public void Without_a_stop_nut_the_upper_spring_limits_the_preload_where_its_bind_force_is_met_at_full_bump() =>
        Near((200 + 4000.0 / 30 - 250) / 1000, FitWork.Of(Build(s_pair, s_body, 60))!.MostPreload); // solid at 4000 N

    [Fact]
    public void A_stop_nut_that_stays_leaves_the_upper_spring_all_the_preload_until_it_is_solid() =>
        Near(0.110, FitWork.Of(Build(s_pair, s_body, 60, held: 150))!.MostPreload); // 60 + (200 − 150); the lower stays at 250 + 60 − 150 = 160 of 200

    [Fact]
    public void Where_the_lower_spring_binds_on_the_stop_nut_no_preload_helps() =>
        Assert.Null(FitWork.Of(Build(s_pair, s_body, 60, held: 100))!.MostPreload); // 250 + 60 − 100 = 210 of 200

    [Fact]
    public void A_stack_shorter_than_its_seat_needs_no_preload_and_no_force()
    {
        FitFigures fit = FitWork.Of(Build(s_pair, s_body with { SeatLength = 0.700 }, 10))!;
        Assert.Equal(0, fit.LeastPreload);
        Assert.Equal(0, fit.AssemblyForce);
        Assert.Equal(0, fit.AssemblyEnergy);
        Near(0.030, fit.NutFromTop);  // 10 + 20 of play
        Near(0.070, fit.ThreadLeft);
    }

    [Fact]
    public void A_single_spring_needs_no_slider_but_two_do()
    {
        BodyData without = s_body with { Slider = null };
        Near(0.350, FitWork.StackFree(s_pair with { Upper = null }, without));
        Near(0.380, FitWork.StackFree(s_pair with { Upper = null }, s_body)); // 350 and a spacer of 30
        Assert.Null(FitWork.StackFree(s_pair, without));
        FitFigures fit = FitWork.Of(Build(s_pair, without, 60))!;
        Assert.Null(fit.LeastPreload);
        Assert.Null(fit.AssemblyForce);
        Near(30, fit.PreloadTurns);
    }

    [Fact]
    public void Without_seat_thread_or_pitch_what_hangs_on_them_is_not_known()
    {
        FitFigures bare = FitWork.Of(Build(s_pair, new BodyData(null, 0.1, null, 0.03, null), 60))!;
        Near(0.680, bare.StackFree);
        Assert.Equal((null, null, null, null, null), (bare.LeastPreload, bare.MostPreload, bare.NutFromTop, bare.ThreadLeft, bare.PreloadTurns));
        Assert.Equal((null, null, null), (bare.AssemblyForce, bare.AssemblyEnergy, bare.RadialClearance));
        FitFigures endless = FitWork.Of(Build(s_pair, s_body with { Thread = null }, 60))!;
        Near(0.020, endless.NutFromTop);
        Assert.Equal((null, null), (endless.MostPreload, endless.ThreadLeft));
    }

    [Fact]
    public void The_tightest_spring_decides_whatever_its_place()
    {
        // 60 mm inside on a body of 62: 1 mm too tight all round. Inner diameter from mean and wire: 76 − 12 = 64.
        SpringSetData three = new(Spring(10, 100, 60) with { InnerDiameter = 0.060 }, s_pair.Upper, s_pair.Lower);
        Near(-0.001, FitWork.RadialClearance(three, s_body));
        SpringData mean = s_pair.Lower with { InnerDiameter = null, MeanDiameter = 0.076, WireDiameter = 0.012 };
        Near(0.001, FitWork.RadialClearance(s_pair with { Lower = mean }, s_body));
        Assert.Null(FitWork.RadialClearance(s_pair, s_body with { Diameter = null }));
    }

    // 30 N/mm alone over 200 mm: nothing above it takes up travel, so 200 − 150 mm.
    [Fact]
    public void A_single_spring_allows_the_preload_that_its_travel_leaves() =>
        Near(0.050, FitWork.MostByBind(s_pair with { Upper = null }, 0.15));

    [Fact]
    public void Without_a_body_there_is_no_fit_and_without_a_spring_s_diameter_no_clearance()
    {
        Assert.Null(FitWork.Of(Build(s_pair, null, 60)));
        SpringSetData unknown = s_pair with { Upper = s_pair.Upper! with { InnerDiameter = null } };
        Assert.Null(FitWork.RadialClearance(unknown, s_body));
    }

    [Fact]
    public void At_the_most_preload_by_bind_the_clearance_is_nil_with_the_nut_left_in_place() =>
        Gen.Select(Gen.Double[15, 60], Gen.Double[15, 60], Gen.Double[0, 40], Gen.Double[0, 250], Gen.Double[4, 20]).Sample((upper, lower, preload, held, tender) =>
        {
            var set = new SpringSetData(Spring(tender, 100, 60), Spring(upper, 300, 100), Spring(lower, 350, 150));
            const double stroke = 0.25;
            double? most = FitWork.MostByBind(set, stroke, preload / 1000, held / 1000);
            double Clear(double p, double c)
            {
                var stack = SpringStack.Build(set, c);
                return Math.Min(stack.BindClearance(SpringPosition.Upper, stroke + p), stack.BindClearance(SpringPosition.Lower, stroke + p));
            }

            if (most is { } p)
            {
                double moved = held / 1000 + p - preload / 1000;
                if (moved < 0)
                    return;
                Assert.Equal(0, Clear(p, moved), 1e-9); // forces of 1e4 N to 1e-16 over rates of 1e4 N/m, a thousandfold
                Assert.True(Clear(p + 1e-3, moved + 1e-3) < 0);
            }
            else
            {
                Assert.True(Clear(preload / 1000, held / 1000) < 0);
            }
        });

    // On the nut the lower spring is pressed in by 250 − 50 mm, just its travel of 350 − 150 mm. It is solid at 17 N/mm · 200 mm
    // = 3.4 kN, where the upper has given 3400/40 = 85 mm and the tender its 40 mm: 40 + 85 + 200 − 250 = 75 mm of preload.
    [Fact]
    public void A_lower_spring_that_the_nut_lets_go_just_solid_still_allows_preload() =>
        Near(0.075, FitWork.MostByBind(new SpringSetData(Spring(20, 100, 60), Spring(40, 300, 100), Spring(17, 350, 150)), 0.25, 0, 0.05), 1e-12);

    private static void Near(double expected, double? found, double within = Rounding) => Assert.Equal(expected, found!.Value, within);

    private static SpringData Spring(double rate, double free, double solid) => new(rate * 1000, free / 1000, solid / 1000, InnerDiameter: 0.066);

    private static Corner Build(SpringSetData springs, BodyData? body, double preload, double stroke = 250, double? held = null) => Corner.Build(new CornerData(
        1500, null, 300, [new TablePoint(0, 1)], new TyreData(2e5),
        new CoiloverData(
            stroke / 1000, springs, preload / 1000, held is { } h ? new StopNutData(h / 1000, StopNutReference.UpperTravel) : null,
            null, null, 0, null, StopData.DefaultBottomOut, StopData.DefaultTopOut, body)));
}
