using System.Collections.Immutable;

using CsCheck;

using QuarterCar.Model.Terrain;

using Xunit;

namespace QuarterCar.Model.Tests.Terrain;

public class RollingCircleTests
{
    private const double Radius = 0.47; // m, that of check-values EN-1

    private static Road Roll(double radius, params ImmutableArray<TerrainPiece> pieces) =>
        Road.Build(Ground.Build(pieces), TyreContact.RollingCircle, radius, 0);

    // EN-1 (computed): first contact √(2Rh − h²) before the step.
    [Theory, InlineData(0.10, 0.289827534924), InlineData(0.15, 0.344238289561), InlineData(0.20, 0.384707681233)]
    public void Wheel_first_touches_a_step_where_the_circle_meets_its_corner(double height, double before)
    {
        var road = Roll(Radius, new FlatPiece(2), new StepPiece(height), new FlatPiece(2));
        Assert.Equal(2, road.Breaks.Length);
        Assert.Equal(2 - before, road.Breaks[0], 1e-12);
        Assert.Equal(2, road.Breaks[1], 1e-15);
    }

    // EN-1 (computed), twelve decimals.
    [Theory, InlineData(-0.25, 0.027994974843), InlineData(-0.2, 0.055323406363), InlineData(-0.1, 0.089238500128), InlineData(-0.05, 0.097332857822), InlineData(0, 0.1)]
    public void Wheel_climbs_a_step_about_its_corner(double x, double height) =>
        Assert.Equal(height, Roll(Radius, new FlatPiece(2), new StepPiece(0.1), new FlatPiece(2)).Height(2 + x), 1e-12);

    // EN-1 (computed): contact starts R·tan(θ/2) before the foot, the centre then stands R(sec θ − 1) above the plane's line.
    [Fact]
    public void Wheel_meets_a_ramp_of_20_degrees_before_its_foot_and_rides_above_it()
    {
        var slope = Math.Tan(20 * Math.PI / 180);
        var road = Roll(Radius, new FlatPiece(2), new RampPiece(3 * slope, 3), new FlatPiece(2));
        Assert.Equal(2 - 0.082873680933, road.Breaks[0], 1e-12);
        road.Evaluate(3, out var height, out var rise);
        Assert.Equal(slope + 0.030163553064, height, 1e-12);
        Assert.Equal(slope, rise, 1e-15);
    }

    // physics.md section 2: past a drop taller than R the circle's height falls from −R to −H at ξ = −R.
    [Fact]
    public void Past_a_drop_taller_than_the_radius_the_wheel_falls_from_minus_R_to_minus_H()
    {
        var road = Roll(0.4, new FlatPiece(1), new StepPiece(-1), new FlatPiece(2));
        Assert.Equal([1, 1.4], road.Breaks.ToArray());
        Assert.Equal(0, road.Jump(0));
        Assert.Equal(-0.6, road.Jump(1), 1e-12);
        road.Segments[1].Evaluate(1.4, out var before, out var slope);
        Assert.Equal(-0.4, before, 2e-8); // the root of rounding: √(2·0.4·2e-16)
        Assert.True(double.IsFinite(slope));
        Assert.Equal(-1, road.Height(1.4));
        Assert.Null(road.Findings.LargestSlope);
    }

    // The search looks at 400 points a stretch and refines every local maximum to rounding: a few 1e-13 m for heights and distances of metres;
    // a table adds 1e-13 m. Beside a jump the two may stand on different sides of it, beside the end of an arc the root magnifies rounding.
    [Fact]
    public void Road_is_the_highest_circle_that_a_search_finds() =>
        Gen.Select(TerrainGen.Terrain, Gen.Double[0.2, 0.5], Gen.Double[0, 1].Array[25]).Sample((pieces, radius, shares) =>
        {
            var plain = new PlainGround(pieces);
            var road = Roll(radius, pieces);
            foreach (var share in shares)
            {
                var s = -2 * radius + share * (plain.Length + 4 * radius);
                if (road.Breaks.ToArray().Any(at => Math.Abs(at - s) < 1e-9))
                    continue;
                var error = road.Height(s) - plain.Circle(s, radius);
                if (Math.Abs(error) > 2e-12)
                    Assert.Fail($"s = {s:R}, R = {radius:R}: off by {error} m; cells {road.Segments[road.IndexAt(s)].TableCells}; {string.Join(' ', pieces)}");
            }
        }, iter: TerrainGen.Times(1500));

    // Each side is computed from its own formula: 1e-12 m is rounding of the heights and the tables' error; the break itself, a double, is off by
    // some last digits, which the slope magnifies (1e4 and more just short of the end of an arc).
    [Fact]
    public void Road_is_continuous_at_every_break_that_is_no_jump() =>
        Gen.Select(TerrainGen.Terrain, Gen.Double[0.2, 0.5]).Sample((pieces, radius) =>
        {
            var road = Roll(radius, pieces);
            for (var i = 0; i < road.Breaks.Length; i++)
            {
                road.Segments[i].Evaluate(road.Breaks[i], out var before, out var slopeBefore);
                road.Segments[i + 1].Evaluate(road.Breaks[i], out var after, out var slopeAfter);
                var lastDigits = 8 * (Math.BitIncrement(Math.Abs(road.Breaks[i])) - Math.Abs(road.Breaks[i]));
                var allowed = 1e-12 + lastDigits * (Math.Abs(slopeBefore) + Math.Abs(slopeAfter));
                if (!road.Jumps(i) && Math.Abs(after - before) > allowed)
                    Assert.Fail($"at {road.Breaks[i]:R}: {before:R} then {after:R}, R = {radius:R}; {string.Join(' ', pieces)}");
            }
        }, iter: TerrainGen.Times(3000));

    [Fact]
    public void Whoops_with_open_troughs_are_one_segment() =>
        Assert.Equal([1, 1 + 12 * 5.0], Roll(0.45, new FlatPiece(1), new HaversinePiece(0.2, 5, 12), new FlatPiece(9)).Breaks.ToArray());

    // Symmetry puts the change of flank at each trough.
    [Fact]
    public void Whoops_with_tight_troughs_break_at_each_trough_and_share_one_table()
    {
        var road = Roll(0.45, new FlatPiece(1), new HaversinePiece(0.3, 1.2, 4), new FlatPiece(9));
        var breaks = road.Breaks.ToArray();
        Assert.Equal(5, breaks.Length);
        for (var i = 1; i <= 3; i++)
            Assert.Equal(1 + 1.2 * i, breaks[i], 1e-12);
        Assert.True(breaks[0] < 1 && breaks[4] > 1 + 4 * 1.2, "the wheel touches the flanks beyond the whoops' ends");
        for (var i = 2; i <= 4; i++)
            Assert.True(road.Segments[1].SharesTableWith(road.Segments[i]));
    }

    // physics.md section 2: y₁ ≥ h(s_c − R) + R is bad input.
    [Theory, InlineData(0.4, true), InlineData(0.55, true), InlineData(0.399999, false), InlineData(-0.6, false)]
    public void A_rise_as_high_as_the_hub_is_reported(double height, bool stops)
    {
        var stop = Roll(0.4, new FlatPiece(2), new StepPiece(height), new FlatPiece(2)).Findings.HubStops;
        Assert.Equal(stops ? 1 : 0, stop.Length);
        if (stops)
            Assert.Equal(new HubStop(2, height, 0.4, Piece: 1, Row: null), stop[0]);
    }

    // The hub is as high as the ramp lifts it: at s_c − R the wheel is on the ramp's tangent, R(sec θ − 1) above its line.
    [Fact]
    public void A_rise_out_of_a_profile_is_reported_with_its_row_and_the_hub_on_the_slope_before_it()
    {
        var profile = new ProfilePiece("course.csv", [new(10, 5), new(14, 6), new(14, 6.9), new(16, 6.9)]);
        var stop = Assert.Single(Roll(0.5, new FlatPiece(1), profile).Findings.HubStops);
        Assert.Equal((5.0, 1.9, 1, 2), (stop.Distance, Math.Round(stop.Top, 12), stop.Piece, stop.Row));
        Assert.Equal((4 - 0.5) / 4 + 0.5 * Math.Sqrt(1 + 1 / 16.0), stop.Hub, 1e-12);
    }

    // First touch of a step's corner has slope √(R² − (R − H)²)/(R − H): 1 at H = R(1 − 1/√2).
    [Theory, InlineData(0.12, 0.4), InlineData(0.1172, 0.4002)]
    public void A_step_is_steep_from_its_first_touch_when_it_is_higher_than_0_29_radii(double height, double radius)
    {
        var gentle = height < radius * (1 - Math.Sqrt(0.5));
        var findings = Roll(radius, new FlatPiece(2), new StepPiece(height), new FlatPiece(2)).Findings;
        var reach = Math.Sqrt(2 * radius * height - height * height);
        Assert.Equal(reach / (radius - height), findings.SteepestRise, 1e-12);
        if (gentle)
            Assert.Null(findings.SteepFrom);
        else
            Assert.Equal(2 - reach, findings.SteepFrom!.Value, 1e-14);
    }
}
