using System.Text.Json;

using QuarterCar.Scenarios.Keys;
using QuarterCar.Scenarios.Quantities;
using QuarterCar.Scenarios.Reading;

namespace QuarterCar.Scenarios.Tests;

/// <summary>Numbers set among the values of a scenario that was read, held against reading the whole document with them.</summary>
public class NumberTemplateTests
{
    private static readonly string[] _texts =
        [Readings.Bench, .. Directory.GetFiles(Readings.Folder("reference"), "*.yaml").Order(StringComparer.Ordinal).Select(File.ReadAllText)];

    private static readonly double[] _factors = [0, 0.37, 0.999, 1, 1.0 / 0.9, 2.5, -1, 40];

    [Fact]
    public void Every_number_of_every_reference_scenario_set_alone_gives_the_bits_of_the_whole_reading()
    {
        var (same, left) = (0, 0);
        foreach (var text in _texts)
        {
            var document = Document(text);
            foreach (var (path, written) in Numbers(document))
            {
                var template = NumberTemplate.Of(document, Set(path, written.ToString()), 1);
                Assert.NotNull(template);
                foreach (var value in Values(written))
                {
                    var whole = ScenarioReader.Read(document, Set(path, value)).Scenario;
                    var quick = template.With([value]);

                    // What the reading refuses, the template leaves to it; and it leaves nothing else.
                    Assert.Equal(whole is null ? null : Json(whole), quick is null ? null : Json(quick));
                    (same, left) = quick is null ? (same, left + 1) : (same + 1, left);
                }
            }
        }

        Assert.True(same > 5000, $"{same} values were the same");
        Assert.True(left > 1000, $"{left} values were refused");
    }

    [Fact]
    public void Numbers_set_together_give_the_bits_of_the_whole_reading_the_later_of_two_at_one_path_counting()
    {
        string[] paths = ["coilover.springs.upper.rate", "corner.motion_ratio", "terrain[1].step", "run.duration", "coilover.friction", "coilover.springs.upper.rate"];
        string[] first = ["150 lbf/in", "0.9", "-20 in", "4 s", "3 N", "1 N/mm"], second = ["161.5 lb/in", "1", "-4e-1 m", "1e3 ms", "0 lbf", "180 lbf/in"];
        var document = Document(Readings.Bench);
        var template = NumberTemplate.Of(document, Set(paths, first), paths.Length)!;
        Assert.Equal(Json(ScenarioReader.Read(document, Set(paths, second)).Good()), Json(template.With(second)!));
    }

    [Fact]
    public void A_tolerance_tells_the_value_that_was_set()
    {
        var document = Document(Readings.Bench + "\ntolerances: { corner.sprung_weight: 4 %, corner.motion_ratio: 1 %, tyre.rate: 2 % }");
        string[] paths = ["corner.sprung_weight", "corner.motion_ratio"], values = ["700 lbf", "0.8"];
        var template = NumberTemplate.Of(document, Set(paths, ["900 lbf", "1"]), 2)!;
        Assert.Equal(Json(ScenarioReader.Read(document, Set(paths, values)).Good()), Json(template.With(values)!));
    }

    [Fact]
    public void A_spring_load_becomes_the_same_weight()
    {
        var document = Document(Readings.Bench.Replace("sprung_weight: 800 lbf", "spring_load: 700 lbf", StringComparison.Ordinal)
            .Replace("heavy, corner.sprung_weight: +120 lbf", "heavy, corner.spring_load: +120 lbf", StringComparison.Ordinal));
        var options = Set("coilover.preload", "1 in") with { Base = new Readings.Standing(1, 3333) };
        var template = NumberTemplate.Of(document, options, 1)!;
        var whole = ScenarioReader.Read(document, options with { Sets = ["coilover.preload=2 in"] }).Good();
        Assert.Equal(3333, whole.Corner.SprungWeight);
        Assert.Equal(Json(whole), Json(template.With(["2 in"])!));
    }

    [Theory]
    [InlineData("none")]
    [InlineData("")]
    [InlineData("'150 lbf/in'")]
    [InlineData("150 lbf/in # soft")]
    [InlineData("150 lbf·s")]
    [InlineData("- 5 lbf/in")]
    [InlineData("...")]
    [InlineData("[150 lbf/in]")]
    [InlineData("150")]
    [InlineData("150 in")]
    [InlineData("-150 lbf/in")]
    [InlineData("1e999 lbf/in")]
    [InlineData("150 lbf/in\n")]
    public void What_is_not_plainly_a_right_number_is_left_to_the_reading(string text) =>
        Assert.Null(NumberTemplate.Of(Document(Readings.Bench), Set("coilover.springs.upper.rate", "150 lbf/in"), 1)!.With([text]));

    [Theory]
    [InlineData("title", "another")]
    [InlineData("tyre.contact", "point")]
    [InlineData("coilover.springs.upper", "{ rate: 150 lbf/in, free_length: 12 in, solid_length: 4.5 in }")]
    [InlineData("coilover.stop_nut", "none")]
    [InlineData("corner.motion_ratio", "[[0 in, 0.9], [4 in, 1]]")]
    [InlineData("coilover.nonsense", "1 in")]
    public void Paths_that_hold_no_single_number_have_no_template(string path, string text) =>
        Assert.Null(NumberTemplate.Of(Document(Readings.Bench), Set(path, text), 1));

    private static ScenarioDocument Document(string text) => ScenarioDocument.Parse("bench.yaml", text, null, new ProblemList())!;

    private static IEnumerable<(string Path, Measured Written)> Numbers(ScenarioDocument document) =>
        ValueReader.Read(document.Root, ScenarioKeys.Root, new ProblemList()).All
            .Select(v => (v.Key, Number: v.Value as NumberValue))
            .Where(v => v.Number is not null)
            .Select(v => (v.Key, v.Number!.Measured));

    // In the unit as written, and in SI.
    private static IEnumerable<string> Values(Measured written) => _factors.SelectMany(f => new[]
    {
        Measured.Write(f * written.Number, written.UnitName),
        Measured.Write(f * written.Si, written.Unit is { } unit ? UnitTable.SiName(unit.Dimension) : ""),
    });

    private static ReadOptions Set(string path, string value) => Set([path], [value]);

    private static ReadOptions Set(string[] paths, string[] values) =>
        ReadOptions.Plain with { Sets = [.. paths.Zip(values, (p, v) => p + "=" + v)], Nut = NutRule.Reset, Units = UnitSystem.Us };

    // Everything but the hash, numbers to the last bit.
    private static string Json(Scenario s) => JsonSerializer.Serialize(new { s.Title, s.File, s.Units, s.Corner, Excitation = Text(s.Excitation), s.Run, s.Limits, s.Cases, s.Tolerances, s.Warnings });

    private static string Text(Excitation excitation) => excitation is Course c
        ? JsonSerializer.Serialize(c.Speed) + string.Concat(c.Pieces.Select(p => p.GetType().Name + JsonSerializer.Serialize<object>(p)))
        : JsonSerializer.Serialize<object>(excitation);
}
