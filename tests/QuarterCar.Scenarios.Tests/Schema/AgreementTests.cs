using QuarterCar.Scenarios.Keys;

namespace QuarterCar.Scenarios.Tests.Schema;

/// <summary>Reader and schema, each a judge of its own, on one corpus of good and bad files.</summary>
public class AgreementTests
{
    /// <summary>What only the reader sees: sizes across units, what holds between two values, what is beside the file, what YAML itself is.</summary>
    private static readonly string[] _readersAlone =
    [
        "anchor_and_alias.yaml", "bump_stop_force_falls.yaml", "bump_stop_not_rising.yaml", "damper_falls_in_velocity.yaml", "gas_below_absolute_zero.yaml",
        "gas_volume_too_small.yaml", "profile_bad.yaml", "solid_longer_than_free.yaml", "tag.yaml", "too_many_rows.yaml", "too_many_rows_by_default_duration.yaml",
    ];

    public static TheoryData<string> BadFiles => [.. Names("data/bad").Except(_readersAlone)];

    public static TheoryData<string> ReadersAlone => [.. _readersAlone];

    public static TheoryData<string> GoodFiles => [.. Names("scenarios").Select(f => "scenarios/" + f), .. Names("reference").Select(f => "reference/" + f)];

    [Theory, MemberData(nameof(GoodFiles))]
    public void What_the_reader_takes_fits_the_schema(string file) => Assert.Equal([], Validator.Mistakes(File.ReadAllText(Readings.Folder(file))));

    [Fact]
    public void What_new_writes_fits_the_schema() => Assert.Equal([], Validator.Mistakes(ScenarioTemplate.Text));

    [Theory, MemberData(nameof(BadFiles))]
    public void What_the_reader_refuses_does_not_fit_the_schema(string name) => Assert.NotEmpty(MistakesOrNoYaml(name));

    [Theory, MemberData(nameof(ReadersAlone))]
    public void What_is_said_to_be_the_readers_alone_fits_the_schema(string name) => Assert.Empty(MistakesOrNoYaml(name));

    [Theory]
    [InlineData("speed: 6 mph", "speed: 6mph", true)]
    [InlineData("speed: 6 mph", "speed: +6 km / h", true)]
    [InlineData("speed: 6 mph", "speed: -6 mph", false)]
    [InlineData("speed: 6 mph", "speed: 0.0 mph", false)]
    [InlineData("speed: 6 mph", "speed: 6", false)]
    [InlineData("speed: 6 mph", "speed: 6 mpg", false)]
    [InlineData("speed: 6 mph", "speed: 6,5 mph", false)]
    [InlineData("volume: 28 in^3", "volume: 28 in³", true)]
    [InlineData("volume: 28 in^3", "volume: 28 lbf", false)]
    [InlineData("preload: 1.5 in", "preload: −0.5 in", true)]
    [InlineData("preload: 1.5 in", "preload: 1.5 in\n  friction: -0 N", true)]
    [InlineData("preload: 1.5 in", "preload: 1.5 in\n  friction: -1 N", false)]
    [InlineData("motion_ratio: 0.9", "motion_ratio: '0.9'", true)]
    [InlineData("motion_ratio: 0.9", "motion_ratio: [[0 in, 0.9], [12 in, 0.97]]", true)]
    [InlineData("motion_ratio: 0.9", "motion_ratio: [[0 in, 0.9, 1]]", false)]
    [InlineData("motion_ratio: 0.9", "motion_ratio: 0", false)]
    [InlineData("title: Bench corner", "title: 2024", true)]
    [InlineData("title: Bench corner", "title:", false)]
    [InlineData("title: Bench corner", "title: [Bench]", false)]
    [InlineData("  - flat: 10 ft", "  - whoops: { height: 20 in, spacing: 18 ft, count: 6 }", true)]
    [InlineData("  - flat: 10 ft", "  - whoops: { height: 20 in, spacing: 18 ft, count: 0 }", false)]
    [InlineData("  - flat: 10 ft", "  - whoops: { height: 20 in, spacing: 18 ft, count: 2.5 }", false)]
    [InlineData("  - flat: 10 ft", "  - { flat: 10 ft, step: 2 in }", false)]
    [InlineData("  - flat: 10 ft", "  - random: { iso8608: I, length: 200 m, seed: 7 }", false)]
    [InlineData("speed: 6 mph", "speed: 6 mph\nlimits: { bottom_out: 0, travel.travel_use: 0.95 }", true)]
    [InlineData("speed: 6 mph", "speed: 6 mph\nlimits: { bottom: 0 }", false)]
    [InlineData("speed: 6 mph", "speed: 6 mph\nlimits: { bottom_out: none }", false)]
    [InlineData("speed: 6 mph", "speed: 6 mph\ntolerances: { coilover.preload: 3 mm, corner.motion_ratio: 1 % }", true)]
    [InlineData("speed: 6 mph", "speed: 6 mph\ntolerances: { coilover.preload: 3 N }", false)]
    [InlineData("speed: 6 mph", "speed: 6 mph\ntolerances: { coilover.preload: { shape: uniform } }", false)]
    [InlineData("speed: 6 mph", "speed: 6 mph\ntolerances: { title: 3 % }", false)]
    [InlineData("speed: 6 mph", "speed: 6 mph\nrun: { tolerance: 1e-7 }", true)]
    [InlineData("speed: 6 mph", "speed: 6 mph\nrun: { tolerance: 0.5 }", false)]
    [InlineData("name: heavy, corner.sprung_weight: +120 lbf", "name: heavy, corner.sprung_wait: +120 lbf", false)]
    [InlineData("name: heavy, corner.sprung_weight: +120 lbf", "name: heavy, corner.sprung_weight: +120", false)]
    [InlineData("name: heavy, corner.sprung_weight: +120 lbf", "name: heavy, coilover.gas: none", true)]
    [InlineData("name: heavy, corner.sprung_weight: +120 lbf", "corner.sprung_weight: +120 lbf", false)]
    public void One_change_of_a_good_file_is_judged_alike(string written, string changed, bool good)
    {
        Assert.Contains(written, Readings.Bench, StringComparison.Ordinal);
        var text = Readings.Bench.Replace(written, changed, StringComparison.Ordinal);

        Assert.Equal((good, good), (Readings.Read(text).Problems.IsEmpty, Validator.Mistakes(text).Length == 0));
    }

    [Fact]
    public void Every_example_of_the_key_table_fits() =>
        Assert.Empty(Validator.Mistakes(string.Join('\n', ScenarioTemplate.Text.Split('\n').Select(WithoutSign).Where(l => !l.StartsWith("drop:", StringComparison.Ordinal)
            && !l.TrimStart().StartsWith("spring_load:", StringComparison.Ordinal) && !l.TrimStart().StartsWith("height: 3 ft", StringComparison.Ordinal)))));

    /// <summary>A line of the template with the sign taken off that sets an optional key aside.</summary>
    private static string WithoutSign(string line)
    {
        var indentation = line.Length - line.TrimStart().Length;
        var rest = line[indentation..];
        return rest.StartsWith("# ", StringComparison.Ordinal) && rest.Contains(':', StringComparison.Ordinal) && rest[2..].Contains("  # ", StringComparison.Ordinal)
            ? line[..indentation] + rest[2..]
            : line;
    }

    private static string[] MistakesOrNoYaml(string name)
    {
        try
        {
            return Validator.Mistakes(File.ReadAllText(Path.Combine(Readings.Folder("data/bad"), name)));
        }
        catch (YamlDotNet.Core.YamlException e)
        {
            return [e.Message];
        }
    }

    private static IEnumerable<string> Names(string folder) =>
        Directory.GetFiles(Readings.Folder(folder), "*.yaml").Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal);
}
