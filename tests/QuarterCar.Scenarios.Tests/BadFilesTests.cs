using QuarterCar.Scenarios.Reading;

namespace QuarterCar.Scenarios.Tests;

/// <summary>Every wrong file of data/bad gives exactly the lines that stand beside it.</summary>
public class BadFilesTests
{
    public static TheoryData<string> Files => [.. Directory.GetFiles(Readings.Folder("data/bad"), "*.yaml").Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)];

    [Theory, MemberData(nameof(Files))]
    public void Wrong_file_gives_the_lines_that_stand_beside_it(string name)
    {
        var path = Path.Combine(Readings.Folder("data/bad"), name);
        var wanted = File.ReadAllLines(Path.ChangeExtension(path, ".txt"));

        var found = ScenarioReader.ReadText(name, File.ReadAllText(path), ReadOptions.Plain, Path.GetDirectoryName(path));

        Assert.NotEmpty(wanted);
        Assert.Equal(wanted, found.Lines());
    }

    [Fact]
    public void There_are_at_least_forty_of_them() => Assert.True(Files.Count >= 40);

    [Fact]
    public void Missing_file_is_named()
    {
        var line = Assert.Single(ScenarioReader.Read("nowhere/at_all.yaml", ReadOptions.Plain).Lines());
        Assert.Equal("nowhere/at_all.yaml: found no such file; wanted a scenario file (YAML)", line);
    }

    [Fact]
    public void Directory_is_no_scenario()
    {
        var folder = Readings.Folder("data");
        Assert.Equal($"{folder}: found a directory; wanted a scenario file (YAML)", Assert.Single(ScenarioReader.Read(folder, ReadOptions.Plain).Lines()));
    }

    [Fact]
    public void File_above_the_limit_is_refused_by_its_size_alone()
    {
        using var file = new Scratch("large.yaml");
        using (var stream = File.Create(file.Path))
        {
            stream.SetLength(100_000_000); // sparse: reading it would find zeros, which is another message
        }

        Assert.Equal($"{file.Path}: found more than 10 MB; wanted a scenario file (YAML)", Assert.Single(ScenarioReader.Read(file.Path, ReadOptions.Plain).Lines()));
    }

    [Theory, InlineData(new byte[] { 0x74, 0x3a, 0xff, 0xfe }), InlineData(new byte[] { 0x74, 0x3a, 0x20, 0x00 })]
    public void Bytes_that_are_no_text_are_said_to_be_none(byte[] bytes)
    {
        using var file = new Scratch("binary.yaml");
        File.WriteAllBytes(file.Path, bytes);
        Assert.Equal($"{file.Path}: found bytes that are not UTF-8 text; wanted a text file in UTF-8", Assert.Single(ScenarioReader.Read(file.Path, ReadOptions.Plain).Lines()));
    }

    [Fact]
    public void Thousands_of_mistakes_are_counted_not_listed()
    {
        var text = Readings.Bench + "\n" + string.Concat(Enumerable.Range(0, 5000).Select(i => FormattableString.Invariant($"unknown{i}: 1\n")));
        var lines = Readings.Read(text).Lines();
        Assert.Equal(ProblemList.Most + 1, lines.Length);
        Assert.Equal("bench.yaml: found 4,900 more mistakes; wanted the mistakes above corrected first", lines[^1]);
    }

    [Fact]
    public void A_hundred_cases_are_allowed_and_more_are_not()
    {
        var cases = "\ncases:\n" + string.Concat(Enumerable.Range(0, 101).Select(i => FormattableString.Invariant($"  - {{ name: c{i}, speed: {i + 1} mph }}\n")));
        var text = Readings.Bench[..Readings.Bench.IndexOf("\ncases:", StringComparison.Ordinal)] + cases;
        Assert.Equal("bench.yaml:22: cases: found 101 items; wanted at most 100", Assert.Single(Readings.Read(text).Lines()));
        Assert.Equal(100, Readings.Read(text, "cases[100]=none").Good().Cases.Length);
    }
}
