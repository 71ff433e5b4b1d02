using QuarterCar.Scenarios.Keys;

namespace QuarterCar.Scenarios.Tests;

/// <summary>Paths in words: as somebody beside the vehicle would say them.</summary>
public class PathWordsTests
{
    [Theory]
    [InlineData("terrain[1].step", "step height")]
    [InlineData("terrain[0].flat", "flat length")]
    [InlineData("terrain[1].whoops.height", "whoops height")]
    [InlineData("terrain[1].whoops.count", "whoops count")]
    [InlineData("terrain[1].random.iso8608", "roughness class")]
    [InlineData("coilover.stop_nut.gap", "stop nut gap")]
    [InlineData("coilover.springs.upper.rate", "upper rate")]
    [InlineData("coilover.damper.zones[0].compression", "zone 1 compression")]
    [InlineData("coilover.damper.compression", "damper compression")]
    [InlineData("corner.sprung_weight", "sprung weight")]
    [InlineData("speed", "speed")]
    [InlineData("terrain[2]", "piece 3 of the ground")]
    public void A_path_is_named_by_its_last_key_and_its_owner_where_that_is_needed(string path, string words) => Assert.Equal(words, PathWords.Of(path));

    [Fact]
    public void Two_steps_beside_each_other_say_which_piece_of_the_ground_they_are() =>
        Assert.Equal(["step height of piece 2", "speed", "step height of piece 4"], PathWords.Of(["terrain[1].step", "speed", "terrain[3].step"]).ToArray());

    [Theory]
    [InlineData("AB")]
    [InlineData("Z")]
    [InlineData("a")]
    public void A_class_that_there_is_not_is_answered_with_all_that_there_are(string found) =>
        Assert.Contains("one of: A, B, C, D, E, F, G, H", Readings.Read(Readings.Bench.Replace("- step: -20 in", "- random: { iso8608: " + found + ", length: 20 m, seed: 1 }", StringComparison.Ordinal)).Problems[0].Wanted, StringComparison.Ordinal);
}
