using QuarterCar.Scenarios.Keys;
using QuarterCar.Scenarios.Reading;

using static QuarterCar.Scenarios.Tests.Readings;

namespace QuarterCar.Scenarios.Tests;

/// <summary>Limits and tolerances.</summary>
public class SideBlocksTests
{
    [Fact]
    public void Tolerances_read_as_shares_widths_and_shapes()
    {
        var found = Read(Bench + """

            tolerances:
              corner.sprung_weight: 4 %
              coilover.springs.upper.rate: { within: 2 %, shape: uniform }
              coilover.preload: 0.125 in
              coilover.gas.temperature: 9 degF
              corner.motion_ratio: 0.01
            """).Good().Tolerances;
        Assert.Equal(
            [
                new Tolerance("corner.sprung_weight", 0, 0.04, true, false),
                new Tolerance("coilover.springs.upper.rate", 0, 0.02, true, true),
                new Tolerance("coilover.preload", 0, 0.125 * 0.0254, false, false),
                new Tolerance("coilover.gas.temperature", 0, 5, false, false), // 9 °F are 5 K wide
                new Tolerance("corner.motion_ratio", 0, 0.01, false, false),
            ],
            found.Select(t => t with { Value = 0 }).ToArray());
        double[] values = [800 * 4.4482216152605, 150 * 4.4482216152605 / 0.0254, 1.5 * 0.0254, 293.15, 0.9]; // temperature: the default, 20 °C
        Assert.All(values.Zip(found), v => Assert.Equal(1, v.Second.Value / v.First, 1e-14));
    }

    [Theory]
    [InlineData("bottom_out", "counts.bottom_out")]
    [InlineData("counts.bottom_out", "counts.bottom_out")]
    [InlineData("peak_g", "acceleration.peak_g")]
    [InlineData("peak_N", "tyre.peak_N")]
    [InlineData("ride_height_m", "static.ride_height_m")]
    public void Figure_resolves_by_its_last_part(string given, string full)
    {
        Assert.True(FigureNames.TryResolve(given, out var figure, out _));
        Assert.Equal(full, figure);
    }

    [Theory, InlineData("m"), InlineData("counts"), InlineData("out"), InlineData("peak")]
    public void Part_of_a_name_is_no_figure(string given) => Assert.False(FigureNames.TryResolve(given, out _, out _));

    // contract, result files: 19 static, 9 travel, 18 counts, 4 acceleration, 4 tyre, 7 energy.
    [Fact]
    public void There_are_sixty_one_figures_each_once()
    {
        Assert.Equal(61, FigureNames.All.Length);
        Assert.Equal(61, FigureNames.All.Distinct().Count());
    }

    [Fact]
    public void Spring_load_that_became_a_weight_is_still_uncertain_as_a_load()
    {
        var text = Bench.Replace("sprung_weight: 800 lbf", "spring_load: 700 lbf", StringComparison.Ordinal) + "\ntolerances: { corner.spring_load: 4 % }\n";
        var options = ReadOptions.Plain with { Sets = ["coilover.friction=1 N"], Base = new Standing(sprungWeight: 3500) };
        var found = Assert.Single(With(text, options).Good().Tolerances);
        Assert.Equal(("corner.spring_load", 0.04), (found.Path, found.Within));
        Assert.Equal(700 * 4.4482216152605, found.Value, 1e-9);
    }
}
