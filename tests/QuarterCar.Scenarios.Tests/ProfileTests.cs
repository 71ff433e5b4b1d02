using System.Collections.Immutable;
using System.Text;

using QuarterCar.Model;
using QuarterCar.Model.Terrain;
using QuarterCar.Scenarios.Reading;

namespace QuarterCar.Scenarios.Tests;

/// <summary>Terrain profiles beside the scenario.</summary>
public class ProfileTests
{
    [Fact]
    public void Points_come_in_SI_with_a_step_where_two_rows_share_a_distance()
    {
        using var file = new Scratch("course.csv", "height_in,distance_ft,note\r\n0,5,start\r\n-10,10,\"a ledge, \"\"first\"\" edge\"\r\n0,10,\r\n");
        using var scenario = new Scratch("unused.yaml");
        var text = Readings.Bench.Replace("- step: -20 in", "- step: -20 in\n  - profile: { file: course.csv }", StringComparison.Ordinal);
        var course = (Course)ScenarioReader.ReadText("bench.yaml", text, ReadOptions.Plain, file.Folder).Good().Excitation;
        var points = Assert.IsType<ProfilePiece>(course.Pieces[2]).Points;
        TablePoint[] wanted = [new(1.524, 0), new(3.048, -0.254), new(3.048, 0)];
        Assert.Equal(wanted.Length, points.Length);
        for (var i = 0; i < wanted.Length; i++)
        {
            Assert.Equal(wanted[i].At, points[i].At, 1e-15);
            Assert.Equal(wanted[i].Value, points[i].Value, 1e-15);
        }
    }

    [Fact]
    public void More_than_five_million_rows_are_too_many()
    {
        var text = new StringBuilder("distance_m,height_m\n");
        for (var i = 0; i <= ProfileReader.MostRows; i++)
        {
            text.Append("1,2\n");
        }

        var problems = new ProblemList();
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(text.ToString()));
        Assert.Null(ProfileReader.Read(stream, "long.csv", problems));
        Assert.Equal("long.csv:5000002: found more than 5,000,000 rows; wanted at most 5,000,000 rows: thin the profile, or split the course", Assert.Single(problems.ToImmutable()).ToString());
    }

    [Theory, InlineData("\"0,0\n1,1\n"), InlineData("a")]
    public void Header_that_never_ends_is_a_problem_not_a_crash(string text)
    {
        var problems = new ProblemList();
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat(text, 2_000_000 / text.Length))));
        Assert.Null(ProfileReader.Read(stream, "hostile.csv", problems));
        Assert.Single(problems.ToImmutable());
    }

    // 1,5 m and 0,3 m of height read as distance 1 and height 5 otherwise; empty cells at the end are some programs' habit.
    [Theory]
    [InlineData("distance_m,height_m\n0,0\n1,5,0,3\n", "course.csv:3: found 4 cells; wanted 2, one a column (decimals with a point, 1.5)")]
    [InlineData("distance_m,height_mm,height_m\n0,0,0\n1,2,3\n", "course.csv:1: height_m: found it beside 'height_mm'; wanted one column of height, in one unit")]
    [InlineData("distance_ft,distance_m,height_m\n0,0,0\n1,2,3\n", "course.csv:1: distance_m: found it beside 'distance_ft'; wanted one column of distance, in one unit")]
    public void What_could_be_read_in_two_ways_is_refused(string text, string problem)
    {
        var problems = new ProblemList();
        Assert.Null(Read(text, problems));
        Assert.Equal(problem, Assert.Single(problems.ToImmutable()).ToString());
    }

    [Fact]
    public void Empty_cells_past_the_header_and_other_columns_are_left_alone()
    {
        var problems = new ProblemList();
        TablePoint[] points = [.. Read("distance_m,note,height_m,height_note\n0,a,0.5,b,,\n1,,0.25,\n", problems)!.Value];
        Assert.Equal([new TablePoint(0, 0.5), new TablePoint(1, 0.25)], points);
        Assert.Equal(0, problems.Count);
    }

    private static ImmutableArray<TablePoint>? Read(string text, ProblemList problems)
    {
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(text));
        return ProfileReader.Read(stream, "course.csv", problems)?.Points;
    }

    [Theory, InlineData(".."), InlineData("."), InlineData(""), InlineData("a/b.csv"), InlineData("a\\b.csv"), InlineData("/etc/hosts"), InlineData("C:course.csv")]
    public void File_elsewhere_is_not_beside(string name) => Assert.False(ProfileReader.IsBeside(name));

    [Fact]
    public void Text_without_a_folder_has_no_profiles()
    {
        var text = Readings.Bench.Replace("- step: -20 in", "- step: -20 in\n  - profile: { file: course.csv }", StringComparison.Ordinal);
        Assert.Equal(
            ["bench.yaml:21: terrain[2].profile.file: found a profile file, but no scenario file to look beside; wanted the plain name of a file beside the scenario file"],
            Readings.Read(text).Lines());
    }
}
