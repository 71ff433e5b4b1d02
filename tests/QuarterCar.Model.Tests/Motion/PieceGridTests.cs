using QuarterCar.Model.Motion;
using QuarterCar.Model.Tests.Statics;

using Xunit;

namespace QuarterCar.Model.Tests.Motion;

/// <summary>A corner's laws cut at every kink: places, formulas and names by hand.</summary>
public class PieceGridTests
{
    // Over 0.8: springs touch at −50 mm of shaft and bind at 400; zone 100 to 200; bump stop from 240, bent at 260; the stroke's ends 0 and 300.
    [Fact]
    public void Travel_is_cut_at_every_kink_of_a_law_over_it()
    {
        PieceGrid grid = PieceGrid.Of(Rig.Geared(Rig.OnShaft));
        Near([-0.0625, 0, 0.125, 0.25, 0.3, 0.325, 0.375, 0.5], grid.TravelBreaks.Select(b => b.At));
        uint none = 0;
        Assert.Equal(
            [none, Bit(CornerEvent.TopOutRelease), none, none, Bit(CornerEvent.BumpStop), none, Bit(CornerEvent.BottomOut), Bit(CornerEvent.LowerBind) | Bit(CornerEvent.CoilBind)],
            grid.TravelBreaks.Select(b => b.Events.Bits));
        Near([0, 20e3, 20e3, 20e3, 20e3, 20e3, 20e3, 20e3, 5e6], grid.TravelCells.Select(c => c.StackRate));
        Near([0, 1000, 1000, 1000, 1000, 1000, 1000, 1000, 9000 - (5e6 * 0.4)], grid.TravelCells.Select(c => c.StackAtZero), 1e-6);
        Near([1, 1, 1, 2, 1, 1, 1, 1, 1], grid.TravelCells.Select(c => c.CompressionFactor));
        Near([1, 1, 1, 3, 1, 1, 1, 1, 1], grid.TravelCells.Select(c => c.ReboundFactor));
        Near([0, 0, 0, 0, 0, 50e3, 100e3, 100e3, 100e3], grid.TravelCells.Select(c => c.BumpRate), 1e-6);
        Near([0, 0, 0, 0, 0, -12_000, -25_000, -25_000, -25_000], grid.TravelCells.Select(c => c.BumpAtZero), 1e-6); // 1000 − 100 · 260
        Near([1e6, 1e6, 0, 0, 0, 0, 0, 1e7, 1e7], grid.TravelCells.Select(c => c.StopRate));
        Near([0, 0, 0, 0, 0, 0, 0, -3e6, -3e6], grid.TravelCells.Select(c => c.StopAtZero), 1e-6);
        const Contacts top = Contacts.TopOut, bump = Contacts.BumpStop, both = Contacts.BumpStop | Contacts.BottomOut;
        Assert.Equal([top, top, Contacts.None, Contacts.None, Contacts.None, bump, bump, both, both], grid.TravelCells.Select(c => c.Touches));
    }

    [Fact]
    public void A_bump_stop_on_the_axle_has_its_place_and_formula_over_wheel_travel()
    {
        PieceGrid grid = PieceGrid.Of(Rig.Geared(Rig.OnAxle));
        Near([-0.0625, 0, 0.125, 0.25, 0.315, 0.335, 0.375, 0.5], grid.TravelBreaks.Select(b => b.At));
        Near([0, 0, 0, 0, 0, 50e3, 100e3, 100e3, 100e3], grid.TravelCells.Select(c => c.AxleRate), 1e-6);
        Near([0, 0, 0, 0, 0, -15_750, -32_500, -32_500, -32_500], grid.TravelCells.Select(c => c.AxleAtZero), 1e-6); // 1000 − 100 · 335
        Assert.Equal(Contacts.AxleBumpStop, grid.TravelCells[5].Touches);
        Assert.Equal(Contacts.AxleBumpStop | Contacts.BottomOut, grid.TravelCells[7].Touches);
        Near([-10, 0, 2], grid.VelocityBreaks); // its loss is a guard of its own
    }

    // Losses let go at −1/0.2, −1/0.1 and 1/0.5 m/s; a damper of two points a side bends at its inner ones.
    [Fact]
    public void Velocity_is_cut_where_the_damper_bends_and_stops_let_go()
    {
        var damper = new DamperData([new(0.5, 800), new(1.5, 1200)], [new(1, 2000), new(3, 3000)], []);
        PieceGrid grid = PieceGrid.Of(Rig.Of([new(0, 1)], Rig.OnShaft, damper: damper));
        Near([-10, -5, -1, 0, 0.5, 2], grid.VelocityBreaks);
        Near([500, 500, 500, 2000, 1600, 400, 400], grid.VelocityCells.Select(c => c.DamperRate), 1e-9);
        Near([-1500, -1500, -1500, 0, 0, 600, 600], grid.VelocityCells.Select(c => c.DamperAtZero), 1e-9);
        Assert.Equal([false, false, false, false, true, true, true], grid.VelocityCells.Select(c => c.Compresses));
        const Contacts top = Contacts.TopOut, bottom = Contacts.BottomOut, bump = Contacts.BumpStop;
        Assert.Equal([top, top | bottom, top | bottom | bump, top | bottom | bump, top | bottom | bump, top | bottom | bump, bottom | bump], grid.VelocityCells.Select(c => c.Pushes));
    }

    [Fact]
    public void Stops_without_loss_push_at_any_velocity()
    {
        CornerData data = Rig.Of([new(0, 1)], Rig.OnShaft with { Loss = 0 }).Data;
        CoiloverData coilover = data.Coilover with { BottomOut = new StopData(1e7, 0), TopOut = new StopData(1e6, 0) };
        PieceGrid grid = PieceGrid.Of(Corner.Build(data with { Coilover = coilover }));
        Near([0], grid.VelocityBreaks);
        Assert.All(grid.VelocityCells, c => Assert.Equal(Contacts.BumpStop | Contacts.BottomOut | Contacts.TopOut, c.Pushes));
    }

    // Slider on the nut at 80 mm of upper spring: 1600 N, 133⅓ mm of a stack of 12 N/mm, 50 of them preload; past it 30 N/mm.
    [Fact]
    public void Past_the_crossover_the_slider_is_on_its_nut()
    {
        PieceGrid grid = PieceGrid.Of(Rig.Of([new(0, 1)], springs: Bench.Pair, held: 0.08));
        int at = Array.FindIndex(grid.TravelBreaks, b => b.Events.Bits == Bit(CornerEvent.Crossover));
        Near([1 / 12.0], [grid.TravelBreaks[at].At]);
        Near([12e3, 30e3], [grid.TravelCells[at].StackRate, grid.TravelCells[at + 1].StackRate], 1e-6);
        Assert.Equal([false, true], [grid.TravelCells[at].OnStopNut, grid.TravelCells[at + 1].OnStopNut]);
    }

    // A tender of 5 N/mm and 40 mm closes at 200 N; upper 20 N/mm binds at 160 mm and 3200 N, lower 30 N/mm at 6000 N.
    [Fact]
    public void A_tender_that_closes_and_an_upper_spring_that_binds_have_names()
    {
        var springs = new SpringSetData(new SpringData(5e3, 0.06, 0.02), new SpringData(20e3, 0.26, 0.1), new SpringData(30e3, 0.35, 0.15));
        PieceGrid grid = PieceGrid.Of(Rig.Of([new(0, 1)], springs: springs));
        CornerEvent[] named = [.. grid.TravelBreaks.Where(b => b.Events.Bits != 0).SelectMany(b => Enum.GetValues<CornerEvent>().Where(e => (b.Events.Bits & Bit(e)) != 0))];
        Assert.Equal([CornerEvent.TopOutRelease, CornerEvent.TenderSolid, CornerEvent.UpperBind, CornerEvent.BottomOut, CornerEvent.LowerBind, CornerEvent.CoilBind], named.OrderBy(n => Place(grid, n)).ThenBy(n => n));

        // 200 N: 40 + 10 + 6⅔ mm; 3200 N: 40 + 160 + 106⅔; 6000 N: 40 + 160 + 200; 50 of them preload.
        Assert.Equal(0.0066666666666667, Place(grid, CornerEvent.TenderSolid), 1e-12);
        Assert.Equal(0.25666666666667, Place(grid, CornerEvent.UpperBind), 1e-12);
        Assert.Equal(0.35, Place(grid, CornerEvent.LowerBind), 1e-12);
    }

    private static double Place(PieceGrid grid, CornerEvent e) => grid.TravelBreaks.Single(b => (b.Events.Bits & Bit(e)) != 0).At;

    // A table that falls from 1 at 0 to 0.4 at 300 mm, where X = 210 mm: each cell has the ratio of its own place.
    [Fact]
    public void Travel_is_cut_at_the_points_of_a_ratio_table()
    {
        PieceGrid grid = PieceGrid.Of(Rig.Of([new(0, 1), new(0.3, 0.4)]));
        Near([-0.05, 0, 0.3, 0.525, 0.775], grid.TravelBreaks.Select(b => b.At)); // full bump 90 mm past 210, bind 190; 0.4 a mm
        Near([0, 0, -2, 0, 0, 0], grid.TravelCells.Select(c => c.Ratio.Slope), 1e-12);
        Assert.Equal(Bit(CornerEvent.TopOutRelease), grid.TravelBreaks[1].Events.Bits); // and the table's first point: one kink
    }

    // A spring that binds just at full bump: 400 mm of compression are 350 of shaft; a bump stop's point on metal.
    [Fact]
    public void Kinks_in_one_place_are_one_with_all_their_names()
    {
        CornerData data = Rig.Of([new(0, 1)]).Data;
        PieceGrid grid = PieceGrid.Of(Corner.Build(data with { Coilover = data.Coilover with { Springs = new SpringSetData(null, null, new SpringData(20e3, 0.45, 0.1)) } }));
        Near([-0.05, 0, 0.3], grid.TravelBreaks.Select(b => b.At));
        Assert.Equal(Bit(CornerEvent.BottomOut) | Bit(CornerEvent.LowerBind) | Bit(CornerEvent.CoilBind), grid.TravelBreaks[2].Events.Bits);
        Near([5e6], [grid.TravelCells[3].StackRate]);
    }

    private static uint Bit(CornerEvent e) => 1u << (int)e;

    private static void Near(IEnumerable<double> expected, IEnumerable<double> found, double within = 1e-12)
    {
        double[] want = [.. expected], have = [.. found];
        Assert.Equal(want.Length, have.Length);
        for (int i = 0; i < want.Length; i++)
            Assert.Equal(want[i], have[i], within);
    }
}
