using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Keys;

using static QuarterCar.Scenarios.Tests.Readings;

namespace QuarterCar.Scenarios.Tests;

/// <summary>The scenario that a newcomer starts from.</summary>
public class TemplateTests
{
    [Fact]
    public void Template_reads_without_a_problem() => Assert.NotNull(Read(ScenarioTemplate.Text).Good().Corner.Coilover.StopNut);

    [Fact]
    public void Every_key_of_the_table_stands_in_the_template_with_its_help()
    {
        foreach (var path in KeyPaths.All(ScenarioKeys.Root))
        {
            var name = path[(path.LastIndexOf('.') + 1)..];
            Assert.Contains(name + ":", ScenarioTemplate.Text, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("tender", "coilover.springs.tender")]
    [InlineData("body", "coilover.body")]
    [InlineData("bottom_out", "coilover.bottom_out")]
    [InlineData("cases", "cases")]
    [InlineData("tolerances", "tolerances")]
    public void What_stands_aside_reads_when_its_comment_sign_goes(string key, string path)
    {
        var lines = ScenarioTemplate.Text.Split('\n').ToList();
        var at = lines.FindIndex(l => l.TrimStart().StartsWith("# " + key + ":", StringComparison.Ordinal));
        var indentation = lines[at].Length - lines[at].TrimStart().Length;
        for (var i = at; i == at || (lines[i].TrimStart().StartsWith("# ", StringComparison.Ordinal) && lines[i].Length - lines[i].TrimStart().Length > indentation); i++)
        {
            var start = lines[i].Length - lines[i].TrimStart().Length;
            lines[i] = lines[i][..start] + lines[i][(start + 2)..];
        }

        var text = string.Join('\n', lines);
        _ = Read(text).Good();
        Assert.True(DocumentPath.TryParse(path, out var steps));
        Assert.NotNull(YamlReader.Read("t", text, new ProblemList())!.Find(steps.Steps.AsSpan()));
    }

    [Fact]
    public void Every_example_of_a_single_key_reads_by_itself()
    {
        var text = ScenarioTemplate.Text;
        Assert.DoesNotContain("\t", text, StringComparison.Ordinal);
        foreach (var piece in TerrainKeys.Pieces.Where(p => p.Kind is MapKind && p.Name != "profile"))
        {
            var example = string.Join(", ", ((MapKind)piece.Kind).Keys.Select(k => $"{k.Name}: {k.Example}"));
            _ = Read(text, $"terrain[1]={{ {piece.Name}: {{ {example} }} }}").Good();
        }
    }
}
