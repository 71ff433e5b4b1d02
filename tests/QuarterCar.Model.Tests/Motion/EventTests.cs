using System.Runtime.Intrinsics;

using QuarterCar.Model.Motion;
using QuarterCar.Model.Terrain;
using QuarterCar.Model.Tests.Statics;
using QuarterCar.Numerics.Integration;

using Xunit;

namespace QuarterCar.Model.Tests.Motion;

/// <summary>What is noted where a piece is left, and the two ways a run begins.</summary>
public class EventTests
{
    private static readonly Vector256<double> s_state = Rig.State(0.26, 0.5);

    // From 250 to 300 mm of wheel lies nothing; past 300 the bump stop, past 325 its bend, past 375 metal, past 500 the bound spring.
    [Fact]
    public void Kinks_of_travel_are_noted_by_their_names_on_the_way_in_and_out()
    {
        CornerMotion motion = Rig.At(Rig.Geared(Rig.OnShaft), s_state);
        for (int i = 1; i <= 4; i++)
            motion.Cross(CornerGuard.TravelHigh, i, s_state);
        for (int i = 5; i <= 8; i++)
            motion.Cross(CornerGuard.TravelLow, i, s_state);
        (CornerEvent, double)[] noted = [.. motion.Events.Events.ToArray().Select(e => (e.Event, e.Time))];
        Assert.Equal(
            [
                (CornerEvent.BumpStop, 1), (CornerEvent.BottomOut, 3), (CornerEvent.LowerBind, 4), (CornerEvent.CoilBind, 4),
                (CornerEvent.LowerUnbind, 5), (CornerEvent.CoilUnbind, 5), (CornerEvent.BottomOutRelease, 6), (CornerEvent.BumpStopRelease, 8),
            ],
            noted);
        Assert.Equal(s_state, motion.Events.Events[0].State);
    }

    [Fact]
    public void Full_droop_is_left_and_met()
    {
        CornerMotion motion = Rig.At(Rig.Geared(null), Rig.State(-0.01, 0));
        motion.Cross(CornerGuard.TravelHigh, 1, s_state);
        motion.Cross(CornerGuard.TravelLow, 2, s_state);
        Assert.Equal([CornerEvent.TopOutRelease, CornerEvent.TopOut], Names(motion));
    }

    [Fact]
    public void A_state_on_a_kink_is_past_it() => // the vehicle stands on it: no event
        Assert.Equal(0.05, Rig.At(Rig.Geared(Rig.OnShaft), Rig.State(0.25, 0)).Guard(CornerGuard.TravelHigh, 0, Rig.State(0.25, 0)), 1e-12);

    [Fact]
    public void The_tyre_lifts_off_lands_and_meets_its_rim()
    {
        CornerMotion motion = Rig.At(Rig.Geared(null), Rig.State(0.1, 0));
        motion.Cross(CornerGuard.DeflectionHigh, 1, Rig.State(0.1, 0, 0.05));
        Assert.Equal(double.PositiveInfinity, motion.Guard(CornerGuard.DeflectionHigh, 1, s_state));
        motion.Cross(CornerGuard.DeflectionLow, 2, Rig.State(0.1, 0, 0.05, -0.2));
        Assert.Empty(Names(motion));
        Assert.Equal(0, motion.Piece & PieceTag.Airborne);
        motion.Cross(CornerGuard.DeflectionLow, 3, Rig.State(0.1, 0, 0, -0.2));
        Assert.Equal(PieceTag.Airborne, motion.Piece & PieceTag.Airborne);
        motion.Cross(CornerGuard.DeflectionHigh, 4, Rig.State(0.1, 0, 0, 0.2));
        Assert.Equal([CornerEvent.Liftoff, CornerEvent.Touchdown], Names(motion));
        Assert.Equal(0, motion.Piece & PieceTag.Airborne);
    }

    [Fact]
    public void The_tyre_s_force_follows_from_phase_to_phase()
    {
        CornerMotion motion = Rig.At(Rig.Geared(null), Rig.State(0.1, 0));
        motion.Cross(CornerGuard.DeflectionHigh, 1, Rig.State(0.1, 0, 0.05));
        Tyre(22_100, Rig.State(0.1, 0, 0.06));   // 12 kN, 10 kN of rim, 100 N
        motion.Cross(CornerGuard.DeflectionLow, 2, Rig.State(0.1, 0, 0.05, -0.2));
        Tyre(8100, Rig.State(0.1, 0, 0.04));
        motion.Cross(CornerGuard.DeflectionLow, 3, Rig.State(0.1, 0, 0, -0.2));
        Tyre(0, Rig.State(0.1, 0, -0.01));
        motion.Cross(CornerGuard.DeflectionHigh, 4, Rig.State(0.1, 0, 0, 0.2));
        Tyre(2100, Rig.State(0.1, 0));

        // At 80 mm of shaft 20 N/mm · 130 mm act on the wheel by 0.8; no damper at rest, no friction.
        void Tyre(double force, Vector256<double> y) =>
            Assert.Equal(((force - (0.8 * 2600)) / Rig.Unsprung) - 9.80665, motion.Derivative(0, y).GetElement(3), 1e-9);
    }

    [Fact]
    public void A_motion_that_is_used_again_has_no_old_events_and_a_long_one_keeps_all()
    {
        CornerMotion motion = Rig.At(Rig.Geared(null), Rig.State(-0.01, 0));
        for (int i = 0; i < 100; i++)
        {
            motion.Cross(CornerGuard.TravelHigh, i, s_state);
            motion.Cross(CornerGuard.TravelLow, i + 0.5, s_state);
        }

        Assert.Equal(200, motion.Events.Count);
        Assert.Equal(99.5, motion.Events.Events[199].Time);
        Assert.Equal(0, motion.Events.Events[0].Time);
        motion.Begin(Rig.Geared(null), Rig.Level, 0, s_state);
        Assert.Equal(0, motion.Events.Count);
    }

    [Fact]
    public void Heights_of_the_sprung_mass_are_those_of_the_wheel_less_its_travel()
    {
        Vector256<double> y = CornerState.Of(0.1, 0.5, 0.3, 0.2);
        Assert.Equal(0.2, CornerState.Sprung(y), 1e-15);
        Assert.Equal(-0.3, CornerState.SprungVelocity(y), 1e-15);
    }

    [Fact]
    public void A_run_passes_the_breaks_of_its_road_at_their_times()
    {
        var run = new MotionRun();
        Assert.Equal(IntegrationEnd.Finished, run.Drive(Rig.Of([new(0, 1)]), Rig.Over(new FlatPiece(1), new StepPiece(-0.5), new FlatPiece(2)), 5, 0.5, 1e-6).End);
        Assert.Equal((CornerEvent.Liftoff, 0.2), (run.Events.Events[0].Event, run.Events.Events[0].Time));
        Assert.Contains(run.Events.Events.ToArray(), e => e.Event == CornerEvent.Touchdown);
    }

    // Each comes to rest where its balance is, whichever form of the equations drives it; friction lets the last of it creep.
    [Theory]
    [InlineData(true, false)]
    [InlineData(false, false)]
    [InlineData(true, true)]
    public void A_damped_drop_comes_to_rest_where_the_corner_stands(bool constant, bool gas)
    {
        Corner corner = Rig.Of(constant ? [new(0, 1)] : [new(0, 0.6), new(0.3, 1.2)], gas: gas ? Bench.Gas with { Volume = 0.9 * 3e-4, Exponent = 1 } : null, damper: Rig.Damper);
        var run = new MotionRun();
        IntegrationOutcome outcome = run.Drop(corner, Rig.Level, 0.05, 20, 1e-6);
        Assert.Equal(IntegrationEnd.Finished, outcome.End);
        Assert.Equal(corner.Standing, outcome.State.GetElement(0), 2e-3);
        Assert.Equal(-550 * 9.80665 / 2e5, outcome.State.GetElement(2), 1e-4);
    }

    // Metal of 20 N/mm lets it 10 % and more past full bump, where the polynomial of the gas ends: it is driven again by the gas itself.
    [Fact]
    public void Past_the_polynomial_of_the_gas_the_gas_itself_drives()
    {
        CornerData data = Rig.Of([new(0, 1)], gas: Bench.Gas with { Volume = 0.9 * 3e-4 }).Data;
        Corner corner = Corner.Build(data with { Coilover = data.Coilover with { BottomOut = new StopData(2e4, 0) } });
        var run = new MotionRun();
        Assert.Equal(IntegrationEnd.Finished, run.Drop(corner, Rig.Level, 1.5, 0.9, 1e-6).End);
        Assert.True(run.Steps.Steps.ToArray().Max(s => s.C0.GetElement(0)) > 0.335);
        Assert.Equal(Math.Sqrt(2 * 1.5 / 9.80665), run.Events.Events[0].Time, 1e-7);
    }

    [Fact]
    public void A_piece_says_whether_the_slider_is_on_its_nut_and_whether_a_stop_pushes()
    {
        Corner pair = Rig.Of([new(0, 1)], springs: Bench.Pair, held: 0.08);
        Assert.Equal(0, Rig.At(pair, Rig.State(0.08, 0)).Piece);
        Assert.Equal(PieceTag.OnStopNut, Rig.At(pair, Rig.State(0.09, 0)).Piece);
        Assert.Equal(PieceTag.Touching, Rig.At(pair, Rig.State(-0.01, 0)).Piece);
        Assert.Equal(PieceTag.Airborne, Rig.At(pair, Rig.State(0.08, 0, -0.01)).Piece);
        Assert.Equal(PieceTag.Touching, Rig.At(Rig.Geared(Rig.OnAxle), Rig.State(0.32, 0)).Piece);
        Assert.Equal(0, Rig.At(Rig.Geared(Rig.OnAxle), Rig.State(0.31, 0)).Piece);
    }

    [Fact]
    public void Ground_that_drops_away_under_the_tyre_is_a_lift_off_and_one_that_rises_a_landing()
    {
        Road ditch = Rig.Over(new FlatPiece(1), new StepPiece(-0.5), new FlatPiece(1), new StepPiece(0.5));
        CornerMotion motion = Rig.At(Rig.Geared(null), s_state, road: ditch, speed: 5);
        motion.PassBreak(0, 0.2, s_state);
        motion.PassBreak(1, 0.4, s_state);
        Assert.Equal([CornerEvent.Liftoff, CornerEvent.Touchdown], Names(motion));
        Assert.Equal([0.2, 0.4], motion.Events.Events.ToArray().Select(e => e.Time));
        CornerMotion shallow = Rig.At(Rig.Geared(null), s_state, road: Rig.Over(new FlatPiece(1), new StepPiece(-0.005)), speed: 5);
        shallow.PassBreak(0, 0.2, s_state);
        Assert.Empty(Names(shallow));
    }

    [Fact]
    public void At_a_kink_of_the_road_the_tyre_may_stop_pushing()
    {
        // From level to a fall of one in two at 10 m/s: 200 N/mm · 10 mm − 500 N·s/m · 5 m/s.
        Vector256<double> y = Rig.State(0.1, 0.5, 0.01, 0);
        CornerMotion motion = Rig.At(Rig.Geared(null), y, road: Rig.Over(new FlatPiece(1), new RampPiece(-5, 10)), speed: 10);
        Assert.Equal(2000, motion.Guard(CornerGuard.TyreForce, 0, y), 1e-6);
        motion.PassBreak(0, 0.1, y);
        Assert.Equal(500, motion.Guard(CornerGuard.TyreForce, 0.1, y), 1e-6); // −500, turned round: it does not push
        Assert.Empty(Names(motion));
    }

    [Theory]
    [InlineData(0, 0, 0, 0, true)]
    [InlineData(1e-12, 0, 0, 0, false)]
    [InlineData(0, 1e-12, 0, 0, false)]
    [InlineData(0, 0, 1e-8, 0, false)]
    [InlineData(0, 0, 0, -1e-8, false)]
    [InlineData(1e-14, -1e-14, 1e-10, 1e-10, true)]
    public void Rest_is_no_velocity_and_no_acceleration_on_level_road(double wDot, double vu, double wAcceleration, double uAcceleration, bool rest)
    {
        Vector256<double> y = CornerState.Of(0.1, wDot, -0.01, vu), dydt = CornerState.Of(wDot, wAcceleration, vu, uAcceleration);
        Assert.Equal(rest, Rig.At(Rig.Geared(null), y).IsAtRest(y, dydt));
        Assert.False(Rig.At(Rig.Geared(null), y, road: Rig.Over(new RampPiece(1, 10)), speed: 5).IsAtRest(y, dydt));
    }

    [Fact]
    public void A_run_begins_standing_on_the_ground_under_it()
    {
        // 550 kg on 200 N/mm: 26.968 mm of tyre, on a step of 100 mm at the start. 500 kg: 245.166 − 50 mm of travel.
        Corner corner = Rig.Of([new(0, 1)]);
        var run = new MotionRun();
        Assert.Equal(IntegrationEnd.Finished, run.Drive(corner, Rig.Over(new StepPiece(0.1), new FlatPiece(1)), 5, 0.5, 1e-6).End);
        Vector256<double> start = run.Steps.Steps[0].C0;
        Assert.Equal((500 * 9.80665 / 20e3) - 0.05, start.GetElement(0), 1e-12);
        Assert.Equal(0.1 - (550 * 9.80665 / 2e5), start.GetElement(2), 1e-12);
        Assert.Equal(0, start.GetElement(1));
        Assert.Equal(0, start.GetElement(3));
        Assert.Equal(0, run.Events.Count);
    }

    [Fact]
    public void A_drop_begins_hanging_on_its_top_out_above_level_ground()
    {
        // 20 + 1000 N/mm take the 1000 N of preload: −0.98039 mm; it lands after √(2h/g), the 50 kg on its springs still in balance with the top-out.
        var run = new MotionRun();
        Assert.Equal(IntegrationEnd.Finished, run.Drop(Rig.Of([new(0, 1)]), Rig.Level, 0.5, 0.4, 1e-6).End);
        Vector256<double> start = run.Steps.Steps[0].C0;
        Assert.Equal(-1000 / 1.02e6, start.GetElement(0), 1e-12);
        Assert.Equal(0.5, start.GetElement(2));
        NotedEvent landed = run.Events.Events[0];
        Assert.Equal(CornerEvent.Touchdown, landed.Event);
        Assert.Equal(Math.Sqrt(2 * 0.5 / 9.80665), landed.Time, 1e-9);
    }

    private static CornerEvent[] Names(CornerMotion motion) => [.. motion.Events.Events.ToArray().Select(e => e.Event)];
}
