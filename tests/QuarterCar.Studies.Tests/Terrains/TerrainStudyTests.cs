using System.Collections.Immutable;

using QuarterCar.Model;
using QuarterCar.Model.Terrain;
using QuarterCar.Scenarios;
using QuarterCar.Studies.Terrains;

using Xunit;

using Tolerance = QuarterCar.TestKit.Tolerance;

namespace QuarterCar.Studies.Tests.Terrains;

/// <summary>The numbers of a ground (check-values sections 1 and 2).</summary>
public class TerrainStudyTests
{
    private static readonly Tolerance s_table = Tolerance.Share(1e-9, "the tolerance that the table states");

    // IRI-T2, T3 (C): rows no nearer than 250 mm are taken as they are.
    [Fact]
    public void Coarse_profiles_have_the_index_of_the_table()
    {
        s_table.Holds(0.62550643425, Of(new(0, 0), new(20, 0), new(22, 0.02), new(24, 0), new(100, 0)).Figures.RoughnessIndex!.Value);
        s_table.Holds(0.34565666466, Of(new(0, 0), new(20, 0), new(20.25, 0.01), new(100, 0.01)).Figures.RoughnessIndex!.Value);
    }

    // Distances and heights count from the first row.
    [Fact]
    public void Profile_that_starts_elsewhere_has_the_same_index() =>
        s_table.Holds(0.62550643425, Of(new(500, 3), new(520, 3), new(522, 3.02), new(524, 3), new(600, 3)).Figures.RoughnessIndex!.Value);

    // IRI of an ideal road with the moving average (C): 2.172585637 for class A, twice as much each class; ±5 % is the allowance for one course.
    [Theory, InlineData('A', 2.172585637), InlineData('D', 17.380685), InlineData('G', 139.04548)]
    public void Six_kilometres_of_a_class_have_the_index_of_the_ideal_road(char roadClass, double index)
    {
        TerrainResult result = Of([new RandomPiece(roadClass, 6000, 5)]);
        Tolerance.Share(0.05, "the allowance of check-values 1.4 for 5 km and more").Holds(index, result.Figures.RoughnessIndex!.Value);
        Assert.Equal(roadClass, result.Figures.Fit!.Value.RoadClass);
        Tolerance.Share(0.01, "tapered ends of 5 m in 6 km").Holds(RandomCourse.Density(roadClass), result.Figures.Fit.Value.Density);
        Assert.Empty(result.Warnings);
    }

    // The same course as a profile of its own samples is the same ground.
    [Fact]
    public void Random_course_written_down_as_a_profile_has_the_same_numbers()
    {
        double[] heights = RandomCourse.Heights('E', 300, 8);
        TerrainFigures course = Of([new RandomPiece('E', 300, 8)]).Figures, profile = Of([.. heights.Select((z, i) => new TablePoint(i * 0.05, z))]).Figures;
        var same = Tolerance.Share(1e-9, "rounding of distances");
        same.Holds(course.Fit!.Value.Density, profile.Fit!.Value.Density);
        same.Holds(course.RoughnessIndex!.Value, profile.RoughnessIndex!.Value);
        same.Holds(course.LargestSlope!.Value, profile.LargestSlope!.Value);
    }

    // Every second metre of a class D, written down with one row lost, and with its last row at an odd place: nobody knows the ground between the rows,
    // and the straight lines between them would be ten times as smooth.
    [Theory, InlineData(40), InlineData(100)]
    public void A_lost_or_an_odd_row_leaves_the_class_of_the_ground(int every)
    {
        double[] heights = RandomCourse.Heights('D', 400, 3);
        TablePoint[] rows = [.. heights.Select((z, i) => new TablePoint(i * 0.05, z)).Where((_, i) => i % every == 0)];
        TablePoint last = rows[^1];
        TablePoint[] lost = [.. rows.Where((_, i) => i != rows.Length / 3)], odd = [.. rows[..^1], new TablePoint(last.At - (0.4 * every * 0.05), last.Value)];
        foreach (TablePoint[] profile in new[] { rows, lost, odd }) Assert.Equal('D', Of([.. profile]).Figures.Fit!.Value.RoadClass);
    }

    [Fact]
    public void Rough_ground_with_a_ledge_or_a_long_flat_in_it_says_whose_class_it_is()
    {
        RandomPiece rough = new('D', 200, 7);
        Assert.Contains(Of([rough, new StepPiece(-0.5), new FlatPiece(10)]).Warnings, w => w.Code == "mixed_course");
        Assert.Contains(Of([rough, new FlatPiece(100)]).Warnings, w => w.Code == "mixed_course");
        Assert.DoesNotContain(Of([new FlatPiece(5), rough, new FlatPiece(5)]).Warnings, w => w.Code == "mixed_course");
    }

    [Fact]
    public void Course_shorter_than_30_m_has_no_index_and_says_so()
    {
        TerrainResult result = Of(new TablePoint(0, 0), new TablePoint(10, 0.1), new TablePoint(29.9, 0));
        Assert.Null(result.Figures.RoughnessIndex);
        Assert.Contains(result.Warnings, w => w.Code == "too_short_for_iri");
    }

    [Fact]
    public void Steepest_slope_is_that_of_the_ground_and_none_at_a_vertical_step()
    {
        Assert.Equal(0.05, Of(new(0, 0), new(10, 0.2), new(14, 0)).Figures.LargestSlope!.Value, 1e-15);
        Assert.Null(Of(new(0, 0), new(10, 0), new(10, 0.1), new(20, 0.1)).Figures.LargestSlope);
    }

    [Fact]
    public void Rows_of_a_profile_are_its_own_points_with_both_sides_of_a_step()
    {
        TerrainRow[] rows = [.. Of(new(2, 1), new(2.3, 1.1), new(2.3, 1.2), new(5, 1)).Rows()];
        (double, double)[] wanted = [(0, 0), (0.3, 0.1), (0.3, 0.2), (3, 0)];
        Assert.Equal(wanted.Length, rows.Length);
        for (int i = 0; i < rows.Length; i++)
        {
            Assert.Equal(wanted[i].Item1, rows[i].Distance, 1e-12);
            Assert.Equal(wanted[i].Item2, rows[i].Ground, 1e-12);
            Assert.True(double.IsNaN(rows[i].Road));
        }
    }

    [Fact]
    public void Rows_of_pieces_are_every_5_cm_and_every_corner()
    {
        double[] distances = [.. Of([new FlatPiece(0.12), new RampPiece(0.01, 0.1), new FlatPiece(0.02)]).Rows().Select(r => Math.Round(r.Distance, 9))];
        Assert.Equal([0, 0.05, 0.1, 0.12, 0.17, 0.22, 0.24], distances);
    }

    // 20 km are laid in about a second; a wish to stop is heard before.
    [Fact]
    public void Long_course_can_be_stopped()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() => Ground.Build([new RandomPiece('D', 20_000, 1)], stop.Token));
    }

    private static TerrainResult Of(params ImmutableArray<TablePoint> points) => TerrainStudy.Of(new ProfilePiece("course.csv", points), UnitSystem.Si);

    private static TerrainResult Of(ImmutableArray<TerrainPiece> pieces) => TerrainStudy.Of("test", UnitSystem.Si, Ground.Build(pieces), null, pieces);
}
