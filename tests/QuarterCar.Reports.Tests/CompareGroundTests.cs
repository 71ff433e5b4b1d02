using QuarterCar.Reports.Plots;
using QuarterCar.Reports.Plots.Compare;
using QuarterCar.Scenarios;
using QuarterCar.Studies;

namespace QuarterCar.Reports.Tests;

/// <summary>What the pictures of a comparison say where its setups do not drive the same ground.</summary>
public sealed class CompareGroundTests
{
    [Fact]
    public void A_drop_has_no_distance_so_a_course_beside_it_is_drawn_over_time()
    {
        var sheet = Shaft(Scene.Run("quarry-ledge"), Scene.Run("drop-test"));
        string svg = sheet.Svg();
        Assert.Contains(">time, s</text>", svg, StringComparison.Ordinal);
        Assert.DoesNotContain(">distance, ft</text>", svg, StringComparison.Ordinal);
        Assert.Contains(" B is a drop and has no distance: all are drawn over time.", sheet.Note, StringComparison.Ordinal);
        Assert.StartsWith("Not the same obstacle", sheet.Caption, StringComparison.Ordinal);
    }

    [Fact]
    public void The_ground_below_says_whose_it_is_where_another_setup_has_another()
    {
        var sheet = Shaft(Scene.Run("quarry-ledge", "terrain[1].step=-10 in"), Scene.Run("quarry-ledge"), Scene.Run("quarry-ledge", "terrain[1].step=-26 in"));
        Assert.Contains(" The ground below is A's; B, C drive another.", sheet.Note, StringComparison.Ordinal);
        Assert.StartsWith("Not the same obstacle", sheet.Caption, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("quarry-ledge")]
    [InlineData("farm-track")] // a profile, read once for each setup
    public void One_ground_under_all_needs_no_word(string name)
    {
        var sheet = Shaft(Scene.Run(name, "run.duration=1 s"), Scene.Run(name, "run.duration=1 s"));
        Assert.DoesNotContain("ground below", sheet.Note, StringComparison.Ordinal);
        Assert.StartsWith("The same obstacle", sheet.Caption, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_ground_at_another_speed_and_setups_alike_in_depth_are_said_to_be()
    {
        var sheet = Shaft(Scene.Run("quarry-ledge"), Scene.Run("quarry-ledge", "speed=4 mph"));
        Assert.StartsWith("The same ground under every setup, not at the same speed", sheet.Caption, StringComparison.Ordinal);
        var alike = Shaft(Scene.Run("drop-test", "run.duration=1 s"), Scene.Run("drop-test", "run.duration=1 s"));
        Assert.Matches("^All go to .* showing$", alike.Title);
        var metal = Shaft(Scene.Run("quarry-ledge", "corner.sprung_weight=8000 lbf", "run.duration=1 s"), Scene.Run("quarry-ledge", "corner.sprung_weight=8100 lbf", "run.duration=1 s"));
        Assert.Equal("All go into metal", metal.Title);
    }

    private static Sheet Shaft(params RunResult[] runs) =>
        ComparePlots.Of([.. runs.Select((r, i) => (((char)('A' + i)).ToString(), "setup", r))], UnitSystem.Us).Single(s => s.Name == "shaft_travel");
}
