using QuarterCar.Reports.Plots;

namespace QuarterCar.Reports.Tests;

/// <summary>The stretch that pictures show, and what they say of the rest.</summary>
public sealed class StretchTests
{
    private const double Mph = 0.44704; // m/s

    [Theory]
    [InlineData("[{ random: { iso8608: A, length: 100 m, seed: 7 } }]", 100)]
    [InlineData("[{ whoops: { height: 0.2 in, spacing: 10 ft, count: 20 } }, { random: { iso8608: A, length: 20 m, seed: 3 } }]", 80.96)] // 200 ft and 20 m
    public void A_road_that_goes_on_changing_is_shown_whole_though_the_shaft_hardly_moves(string terrain, double length)
    {
        var run = Scene.Run("quarry-ledge", "terrain=" + terrain, "speed=20 mph", "run.duration=14 s");
        foreach (var samples in new[] { RunSamples.Of(run), RunSamples.Of(run, 500, 1500) })
        {
            Assert.Equal(0, samples.First);
            Assert.InRange(samples.Last, length / (20 * Mph), 14);
            Assert.DoesNotContain("Before", samples.CropNote, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Level_ground_before_and_after_is_left_out_and_the_damper_speaks_of_the_stretch_shown()
    {
        // At 6 mph the step lies 300 ft / 8.8 ft/s = 34.1 s in, as far again from the end.
        var run = Scene.Run("quarry-ledge", "terrain=[{ flat: 300 ft }, { step: -20 in }, { flat: 300 ft }]", "run.duration=71 s");
        var samples = RunSamples.Of(run);
        Assert.InRange(samples.First, 32, 34.1);
        Assert.InRange(samples.Last, 34.2, 45);
        Assert.True(samples.Shown.Length > (samples.Last - samples.First) / 1e-3, "a short stretch of a long run is as fine as any: coarse, its nine tenths would be chance");
        Assert.Equal(" Before and after the stretch shown the corner is at rest or settling on level ground.", samples.CropNote);
        Assert.StartsWith("Nine tenths of the stretch shown the shaft is slower than ", DamperPlot.Title(samples), StringComparison.Ordinal);
        Assert.EndsWith(samples.CropNote, DamperPlot.Draw(samples)!.Note, StringComparison.Ordinal);
        Assert.StartsWith("Nine tenths of the time ", DamperPlot.Title(samples.Within(0, run.Track.EndTime)), StringComparison.Ordinal);
    }
}
