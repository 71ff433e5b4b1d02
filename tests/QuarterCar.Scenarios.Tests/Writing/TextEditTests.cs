using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Writing;

namespace QuarterCar.Scenarios.Tests.Writing;

/// <summary>Overrides written into a scenario's text leave everything else as it stands; what has no plain place is refused.</summary>
public sealed class TextEditTests
{
    private const string Text = "title: A # named\ncoilover:\n  # the nuts\n  preload: 1.4 in   # turned twice\n  springs: { upper: { rate: 160 lbf/in } }\n";

    [Theory]
    [InlineData("coilover.preload=2 in", "  preload: 2 in   # turned twice\n")]
    [InlineData("coilover.friction=18 lbf", "  # the nuts\n  friction: 18 lbf\n  preload: 1.4 in")]
    [InlineData("coilover.springs.upper.free_length=12 in", "  springs: { upper: { free_length: 12 in, rate: 160 lbf/in } }\n")]
    [InlineData("coilover.springs.upper={rate: 2 N/mm, free_length: 1 m}", "  springs: { upper: { rate: 2 N/mm, free_length: 1 m } }\n")]
    [InlineData("coilover.stop_nut=none", "  preload: 1.4 in   # turned twice\n")]
    public void An_override_is_written_where_it_belongs(string set, string wanted)
    {
        string edited = TextEdit.Apply(Text, [set])!;
        Assert.Contains(wanted, edited, StringComparison.Ordinal);
        Assert.StartsWith("title: A # named\n", edited, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("coilover.preload=none")]
    [InlineData("tyre.rate=1 N/m")]
    [InlineData("coilover.springs.upper.height=1 m")]
    [InlineData("coilover.preload=[")]
    public void What_has_no_plain_place_is_refused(string set) => Assert.Null(TextEdit.Apply(Text, [set]));

    [Theory]
    [InlineData("a: [1, '+120 lbf', \"x, y\", -20 in, [2, {b: ''}]]")]
    [InlineData("'a b': {c: 'd: e', f: \"line\\nbreak\", g: '- h', i: '#', j: '~'}")]
    public void A_node_written_on_one_line_reads_back_as_itself(string yaml)
    {
        var problems = new ProblemList();
        DocumentNode node = YamlReader.Read("x", yaml, problems)!;
        DocumentNode again = YamlReader.Read("x", FlowText.Of(node), problems)!, file = YamlReader.Read("x", FlowText.File(node), problems)!;
        Assert.Equal(0, problems.Count);
        Assert.Equal(Content(node), Content(again));
        Assert.Equal(Content(node), Content(file));
    }

    // In quotes it would set the value and no longer change it.
    [Fact]
    public void A_change_in_a_unit_with_a_star_stays_a_change() =>
        Assert.Equal("{ tyre.damping: +0.5 lbf*s/in, x: \"*y\" }", FlowText.Of(YamlReader.Read("x", "{tyre.damping: +0.5 lbf*s/in, x: '*y'}", new ProblemList())!));

    /// <summary>Every key and text of a tree, each set apart from its neighbours; whether it stood in quotes does not count.</summary>
    private static string Content(DocumentNode node) => node switch
    {
        ScalarNode s => $"<{s.Text.Length}:{s.Text}>",
        ListNode l => $"[{string.Concat(l.Items.Select(Content))}]",
        MapNode m => $"{{{string.Concat(m.Entries.Select(e => $"<{e.Name.Length}:{e.Name}>{Content(e.Value)}"))}}}",
        _ => "?",
    };
}
