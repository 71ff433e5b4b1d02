using System.Collections.Immutable;
using System.Diagnostics;

using CsCheck;

using QuarterCar.Model.Terrain;

using Xunit;
using Xunit.Abstractions;

namespace QuarterCar.Model.Tests.Terrain;

public class RoadTests(ITestOutputHelper output)
{
    private static Road Foot(double length, params ImmutableArray<TerrainPiece> pieces) =>
        Road.Build(Ground.Build(pieces), TyreContact.Footprint, 0, length);

    // EN-2 (from memory and computed): a footprint of 0.25 m shrinks a cosine by sin(πL/λ)/(πL/λ); nine decimals.
    [Theory, InlineData(1, 0.900316316), InlineData(5, 0.995892735)]
    public void Footprint_shrinks_a_cosine_by_its_known_gain(double wavelength, double gain)
    {
        var road = Foot(0.25, new FlatPiece(1), new HaversinePiece(0.2, wavelength, 6), new FlatPiece(1));
        var (trough, crest) = (road.Height(1 + 2 * wavelength), road.Height(1 + 2.5 * wavelength));
        Assert.Equal(gain, (crest - trough) / 0.2, 1e-9);
        Assert.Equal(0.1, (crest + trough) / 2, 1e-13);
        Assert.Equal(4, road.Breaks.Length); // the train's two ends under the footprint's two ends
    }

    // Quadrature of 16 points a quarter of a stretch is exact to rounding; a table adds 1e-13 m.
    [Fact]
    public void Footprint_is_the_mean_of_the_ground_by_quadrature() =>
        Gen.Select(TerrainGen.Terrain, Gen.Double[0.05, 0.5], Gen.Double[0, 1].Array[25]).Sample((pieces, length, shares) =>
        {
            var plain = new PlainGround(pieces);
            var road = Foot(length, pieces);
            foreach (var share in shares)
            {
                var s = -length + share * (plain.Length + 2 * length);
                var error = road.Height(s) - plain.Mean(s, length);
                if (!(Math.Abs(error) <= 1e-12))
                    Assert.Fail($"s = {s:R}, L = {length:R}: off by {error} m; {string.Join(' ', pieces)}");
            }
        }, iter: TerrainGen.Times(2000));

    [Fact]
    public void Point_contact_is_the_ground() =>
        Gen.Select(TerrainGen.Terrain, Gen.Double[0, 1].Array[25]).Sample((pieces, shares) =>
        {
            var plain = new PlainGround(pieces);
            var ground = Ground.Build(pieces);
            var road = Road.Build(ground, TyreContact.Point, 0, 0);
            foreach (var share in shares)
            {
                var s = -1 + share * (plain.Length + 2);
                Assert.Equal(plain.Height(s), ground.Height(s), 1e-13);
                Assert.Equal(plain.Height(s), road.Height(s), 3e-13); // a table adds 1e-13 m
            }
        }, iter: TerrainGen.Times(1000));

    // Central differences over 2e-5 m: the third derivative of an arc at slope 2 and R = 0.2 m is 2.7e3 1/m², which makes 5e-8; rounding adds 1e-11.
    [Theory, InlineData(TyreContact.Point), InlineData(TyreContact.RollingCircle), InlineData(TyreContact.Footprint)]
    public void Slope_is_the_derivative_of_the_height(TyreContact contact) =>
        Gen.Select(TerrainGen.Terrain, Gen.Double[0.2, 0.5], Gen.Double[0, 1].Array[25]).Sample((pieces, size, shares) =>
        {
            var road = Road.Build(Ground.Build(pieces), contact, size, size);
            const double h = 1e-5;
            foreach (ref readonly var segment in road.Segments)
            {
                if (!(segment.End - segment.Start > 4 * h) || double.IsInfinity(segment.End - segment.Start) || NearlyTight(pieces, size))
                    continue;
                foreach (var share in shares)
                {
                    var s = segment.Start + h + share * (segment.End - segment.Start - 2 * h);
                    segment.Evaluate(s, out _, out var slope);
                    segment.Evaluate(s + h, out var after, out _);
                    segment.Evaluate(s - h, out var before, out _);
                    if (Math.Abs(slope) < 2 && !(Math.Abs((after - before) / (2 * h) - slope) < 1e-7))
                        Assert.Fail($"s = {s:R}: slope {slope:R}, difference {(after - before) / (2 * h):R}; size {size:R}; {string.Join(' ', pieces)}");
                }
            }
        }, iter: TerrainGen.Times(1000));

    // Where a trough is about as tight as the circle the contact runs away and derivatives of the road grow beyond what a difference resolves.
    private static bool NearlyTight(ImmutableArray<TerrainPiece> pieces, double radius) =>
        pieces.OfType<HaversinePiece>().Any(wave => 2 * Math.PI * Math.PI * Math.Abs(wave.Height) * radius / (wave.Spacing * wave.Spacing) is > 0.8 and < 1.5);

    [Fact]
    public void A_vertical_step_jumps_under_point_contact_by_its_height_and_the_far_side_counts()
    {
        var road = Road.Build(Ground.Build([new FlatPiece(1), new StepPiece(-0.3), new RampPiece(0.1, 1)]), TyreContact.Point, 0, 0);
        Assert.Equal([1, 2], road.Breaks.ToArray());
        Assert.Equal(-0.3, road.Jump(0), 1e-15);
        Assert.False(road.Jumps(1));
        Assert.Equal(1, road.IndexAt(1));
        Assert.Equal(0, road.IndexAt(Math.BitDecrement(1.0)));
        Assert.Equal(-0.3, road.Height(1), 1e-15);
        Assert.Null(road.Findings.LargestSlope);
    }

    [Fact]
    public void Lines_that_go_on_straight_make_no_break()
    {
        var profile = new ProfilePiece("p.csv", [new(0, 0), new(0.1, 0.01), new(0.2, 0.02), new(0.3, 0.03), new(1, 0.1)]);
        var ground = Ground.Build([new FlatPiece(1), new FlatPiece(2), profile, new RampPiece(0.2, 2), new FlatPiece(3)]);
        Assert.Equal([3, 6], ground.Corners.ToArray());
        Assert.Equal(9, ground.Length);
        Assert.Equal(0.3, ground.Height(100), 1e-15);
        Assert.Equal(0.1, ground.LargestSlope!.Value, 1e-15);
    }

    // Two grids that a program joined hold one place twice, the second time a few last digits on: 0.1·3 is 0.30000000000000004.
    [Theory, InlineData(TyreContact.Point), InlineData(TyreContact.RollingCircle), InlineData(TyreContact.Footprint)]
    public void Rows_at_one_place_but_for_rounding_are_a_vertical_step(TyreContact contact) =>
        Gen.Select(
            Gen.Select(Gen.Int[1, 40], Gen.Frequency((2, Gen.Const(0.0)), (3, Gen.Double[-0.3, 0.3])), Gen.Bool).Array[2, 12],
            Gen.Int[0, 3].Select(i => new[] { 0, 0.1, 3.048, 500 }[i]),
            Gen.Int[1, 16],
            Gen.Double[0, 1].Array[25]).Sample((rows, flat, digits, shares) =>
            {
                var (exact, near) = (new List<TablePoint> { new(0, 0) }, new List<TablePoint> { new(0, 0) });
                var place = 0;
                foreach (var (steps, height, again) in rows)
                {
                    var at = again ? exact[^1].At : 0.1 * (place += steps);
                    exact.Add(new(at, height));
                    near.Add(new(again ? near[^1].At + digits * (Math.BitIncrement(at) - at) : at, height));
                }
                if (place == 0)
                    return;
                var (road, other) = (Over(exact), Over(near));
                Assert.Equal(road.Breaks.Length, other.Breaks.Length);
                Assert.Equal(Enumerable.Range(0, road.Breaks.Length).Select(road.Jumps), Enumerable.Range(0, road.Breaks.Length).Select(other.Jumps));
                foreach (var s in shares.Select(share => flat - 1 + share * (exact[^1].At + 2)))
                    Assert.Equal(road.Height(s), other.Height(s), 1e-9);

                Road Over(List<TablePoint> points) => Road.Build(Ground.Build([new FlatPiece(flat), new ProfilePiece("p.csv", [.. points])]), contact, 0.45, 0.2);
            }, iter: TerrainGen.Times(2000));

    [Theory, InlineData(TyreContact.Point), InlineData(TyreContact.RollingCircle), InlineData(TyreContact.Footprint)]
    public void Level_ground_has_no_break(TyreContact contact)
    {
        var road = Road.Build(Ground.Build([new FlatPiece(3)]), contact, 0.4, 0.2);
        Assert.Equal(0, road.Breaks.Length);
        Assert.Equal([0, 0, 0], new[] { -9, 1, 99 }.Select(s => road.Height(s)));
        Assert.Equal(0, road.Findings.LargestSlope);
    }

    [Fact]
    public void Start_on_a_course_already_felt_is_noticed()
    {
        Assert.Equal(0, Foot(0.2, new FlatPiece(0.1), new StepPiece(0.5), new FlatPiece(1)).Findings.HeightUnderStart);
        Assert.Equal(0.125, Foot(0.2, new FlatPiece(0.05), new StepPiece(0.5), new FlatPiece(1)).Findings.HeightUnderStart, 1e-15);
    }

    // The slope of a haversine passes 1 where Hπ/L·sin(2πx/L) = 1.
    [Fact]
    public void A_bump_is_steep_from_where_its_slope_passes_1()
    {
        var findings = Road.Build(Ground.Build([new FlatPiece(1), new HaversinePiece(0.5, 1, 1), new FlatPiece(1)]), TyreContact.Point, 0, 0).Findings;
        Assert.Equal(Math.PI / 2, findings.LargestSlope!.Value, 1e-6); // looked at 4096 times a segment: (2π/4096)²/2 at most
        Assert.Equal(1 + Math.Asin(2 / Math.PI) / (2 * Math.PI), findings.SteepFrom!.Value, 1e-9);
    }

    [Fact]
    public void A_dip_is_steep_on_its_way_out()
    {
        var findings = Point(new FlatPiece(1), new HaversinePiece(-0.5, 1, 1), new FlatPiece(1));
        Assert.Equal(1.5 + (Math.Asin(2 / Math.PI) / (2 * Math.PI)), findings.SteepFrom!.Value, 1e-9);
        Assert.Equal(Math.PI / 2, findings.SteepestRise, 1e-6);
    }

    [Fact]
    public void A_way_down_counts_for_the_largest_slope_and_not_as_a_rise()
    {
        var findings = Point(new FlatPiece(1), new RampPiece(0.2, 1), new RampPiece(-0.9, 1), new FlatPiece(1));
        Assert.Equal(0.9, findings.LargestSlope!.Value, 1e-12);
        Assert.Equal(0.2, findings.SteepestRise, 1e-12);
        Assert.Null(findings.SteepFrom);
    }

    [Fact]
    public void A_ramp_of_1_is_not_yet_steep_and_the_first_of_two_steep_ones_counts()
    {
        Assert.Null(Point(new FlatPiece(1), new RampPiece(1, 1), new FlatPiece(1)).SteepFrom);
        Assert.Equal(3, Point(new FlatPiece(1), new RampPiece(0.5, 1), new FlatPiece(1), new RampPiece(1.5, 1), new RampPiece(2, 1), new FlatPiece(1)).SteepFrom!.Value, 1e-12);
    }

    // Over its 0.2 m the footprint's slope rises from 0 to 2: it is 1 where its middle is on the foot of the ramp.
    [Fact]
    public void A_footprint_is_steep_from_the_middle_of_its_way_onto_a_ramp_of_2() =>
        Assert.Equal(1, Foot(0.2, new FlatPiece(1), new RampPiece(2, 1), new FlatPiece(1)).Findings.SteepFrom!.Value, 1e-12);

    [Theory, InlineData(1), InlineData(2), InlineData(3)]
    public void Heights_that_jump_have_no_largest_slope(int steps)
    {
        ImmutableArray<TerrainPiece> pieces = [new FlatPiece(1), .. Enumerable.Range(0, steps).SelectMany(_ => new TerrainPiece[] { new StepPiece(-0.1), new FlatPiece(1) })];
        Assert.Null(Road.Build(Ground.Build(pieces), TyreContact.Point, 0, 0).Findings.LargestSlope);
    }

    private static RoadFindings Point(params ImmutableArray<TerrainPiece> pieces) => Road.Build(Ground.Build(pieces), TyreContact.Point, 0, 0).Findings;

    [Theory, InlineData(TyreContact.Point), InlineData(TyreContact.RollingCircle), InlineData(TyreContact.Footprint)]
    public void Two_kilometres_of_random_course_are_built_quickly(TyreContact contact)
    {
        var clock = Stopwatch.StartNew();
        var ground = Ground.Build([new FlatPiece(5), new RandomPiece('E', 2000, 1), new FlatPiece(5)]);
        var laid = clock.Elapsed.TotalMilliseconds;
        clock.Restart();
        var road = Road.Build(ground, contact, 0.4, 0.25);
        output.WriteLine($"{contact}: ground {laid:F0} ms, road {clock.Elapsed.TotalMilliseconds:F0} ms, {road.Breaks.Length} breaks");
        Assert.True(road.Breaks.Length > 10_000);
    }
}
