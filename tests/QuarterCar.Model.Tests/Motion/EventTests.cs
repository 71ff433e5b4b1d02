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
