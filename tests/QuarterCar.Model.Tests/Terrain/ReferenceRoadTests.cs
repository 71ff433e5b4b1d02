using QuarterCar.Model.Terrain;

using Xunit;

namespace QuarterCar.Model.Tests.Terrain;

/// <summary>The roads of the reference runs, computed by an independent program (road found by closed forms there, by search in a second one).</summary>
public class ReferenceRoadTests
{
    public static TheoryData<string> Names => [.. ReferenceRoad.All.Select(road => road.Name)];

    // Both programs find a break as the crossing of two curves; where those meet at a small angle (desert_table: 4e-3) rounding of 1e-16 m
    // in height is 1e-13 m in distance, 1e-14 s at speed. The reference's own search stopped at about 1e-12 s.
    private const double BreakTolerance = 1e-11; // s

    private const double TraceTolerance = 1e-11; // m: traces have twelve digits of heights below 1 m, of distances below 100 m

    [Theory, MemberData(nameof(Names))]
    public void Road_breaks_of_a_reference_run_stand_where_the_reference_has_them(string name)
    {
        var reference = ReferenceRoad.Of(name);
        var breaks = reference.Build().Breaks.ToArray();
        // The reference lists breaks within its duration; all of these runs pass the whole course.
        var expected = reference.BreakTimes();
        Assert.Equal(expected.Length, breaks.Length);
        for (var i = 0; i < expected.Length; i++)
            Assert.InRange(breaks[i] / reference.Speed - expected[i], -BreakTolerance, BreakTolerance);
    }

    [Theory, MemberData(nameof(Names))]
    public void Ground_and_road_of_a_reference_run_are_the_traces(string name)
    {
        var reference = ReferenceRoad.Of(name);
        var ground = Ground.Build(reference.Pieces);
        var road = reference.Build();
        var breaks = reference.BreakTimes();
        var compared = 0;
        foreach (var row in reference.Rows().Where(row => !breaks.Any(time => Math.Abs(time - row.Time) < 20e-6)))
        {
            // The trace's own distance has twelve digits; speed times time has them all.
            var s = reference.Speed * row.Time;
            Assert.InRange(ground.Height(s) - row.Ground, -TraceTolerance, TraceTolerance);
            Assert.InRange(road.Height(s) - row.Road, -TraceTolerance, TraceTolerance);
            compared++;
        }
        Assert.True(compared > 300, $"only {compared} rows compared");
    }
}
