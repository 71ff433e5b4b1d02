using static QuarterCar.Scenarios.Tests.Readings;

namespace QuarterCar.Scenarios.Tests;

/// <summary>The hash is that of the content, not of the text.</summary>
public class HashTests
{
    private static readonly string _hash = Read(Bench).Good().Hash;

    [Fact]
    public void Hash_is_sixty_four_lower_case_hex_digits() => Assert.Matches("^[0-9a-f]{64}$", _hash);

    [Theory]
    [InlineData("sprung_weight: 800 lbf", "sprung_weight: 800.0  lbf   # heavy")]
    [InlineData("sprung_weight: 800 lbf", "sprung_weight: 8e2lb")]
    [InlineData("stroke: 12 in", "stroke: 304.8 mm")]
    [InlineData("stroke: 12 in", "stroke: 1 ft")]
    [InlineData("{ gap: 1.2 in, at: ride_height }", "{ at: ride_height, gap: 1.2 in }")]
    [InlineData("title: Bench corner", "title: 'Bench corner'")]
    [InlineData("rate: 1200 lbf/in", "rate: 1200 lbf/in\n  damping: 0 N*s/m")]
    [InlineData("speed: 6 mph", "run: { sample: 1 ms }\nspeed: 6 mph")]
    [InlineData("corner.sprung_weight: +120 lbf", "corner.sprung_weight: +120.0 lb")]
    public void Same_content_has_the_same_hash(string old, string text) => Assert.Equal(_hash, Read(Bench.Replace(old, text, StringComparison.Ordinal)).Good().Hash);

    [Theory]
    [InlineData("title: Bench corner", "title: Other corner")]
    [InlineData("sprung_weight: 800 lbf", "sprung_weight: 800.0000001 lbf")]
    [InlineData("at: ride_height", "at: full_droop")]
    [InlineData("speed: 6 mph", "speed: 6 mph\nlimits: { bottom_out: 0 }")]
    [InlineData("corner.sprung_weight: +120 lbf", "corner.sprung_weight: =120 lbf")]
    [InlineData("corner.sprung_weight: +120 lbf", "corner.sprung_weight: '+120 lbf'")]
    [InlineData("- step: -20 in", "- step: -20 in\n  - flat: 1 ft")]
    public void Other_content_has_another_hash(string old, string text) => Assert.NotEqual(_hash, Read(Bench.Replace(old, text, StringComparison.Ordinal)).Good().Hash);

    [Fact]
    public void File_name_does_not_count() => Assert.Equal(_hash, Reading.ScenarioReader.ReadText("other.yaml", Bench, Reading.ReadOptions.Plain).Good().Hash);

    [Fact]
    public void Overrides_count_as_if_written() =>
        Assert.Equal(Read(Bench.Replace("stroke: 12 in", "stroke: 11 in", StringComparison.Ordinal)).Good().Hash, Read(Bench, "coilover.stroke=11 in").Good().Hash);

    [Fact]
    public void Profile_points_count_and_the_profiles_name_does_not()
    {
        string Hash(string name, string points)
        {
            using var file = new Scratch(name, points);
            var text = Bench.Replace("- step: -20 in", "- step: -20 in\n  - profile: { file: " + name + " }", StringComparison.Ordinal);
            return Reading.ScenarioReader.ReadText("bench.yaml", text, Reading.ReadOptions.Plain, file.Folder).Good().Hash;
        }

        var hash = Hash("a.csv", "distance_m,height_mm\n0,0\n1,50\n");
        Assert.Equal(hash, Hash("b.csv", "height_m,distance_cm\n0,0\n0.05,100\n"));
        Assert.NotEqual(hash, Hash("a.csv", "distance_m,height_mm\n0,0\n1,51\n"));
    }
}
