using QuarterCar.Cli.Help;
using QuarterCar.Cli.Verbs;

namespace QuarterCar.Cli.Tests;

/// <summary>Help pages: in the order of a manual page, for a terminal of 80 columns, naming what there is.</summary>
public sealed class HelpPageTests
{
    private static readonly string[] s_headings = ["Usage:", "What it does:", "Arguments:", "Options:", "Files:", "Exit codes:", "Example:", "Examples:", "See also:"];

    private static readonly string[] s_verbs = [.. CommandLine.Verbs().Select(v => v.Help.Name)];

    public static TheoryData<string> Names => [.. s_verbs];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_page_has_its_parts_in_the_order_of_a_manual_page(string verb)
    {
        string[] lines = Page(verb);
        Assert.StartsWith($"quartercar {verb}: ", lines[0], StringComparison.Ordinal);
        string[] found = [.. lines.Where(l => l.EndsWith(':') && !l.StartsWith(' '))];
        Assert.Equal(s_headings.Where(found.Contains), found);
        Assert.Superset(new HashSet<string>(["Usage:", "What it does:", "Options:", "Exit codes:", "See also:"]), new HashSet<string>(found));
    }

    [Fact]
    public void Lines_fit_80_columns_but_for_command_lines_which_are_copied_whole() =>
        Assert.All(
            s_verbs.Append("").SelectMany(Page).Where(l => !l.StartsWith("  quartercar ", StringComparison.Ordinal)),
            l => Assert.True(l.Length <= 80, l));

    [Theory]
    [MemberData(nameof(Names))]
    public void A_page_names_every_argument_and_option_once_and_says_what_each_is(string verb)
    {
        string[] lines = Page(verb);
        Verb asked = CommandLine.Verbs().Single(v => v.Help.Name == verb);
        Assert.All(asked.Command.Options.Where(o => !o.Hidden && o.Name != "--help"), o => Assert.Single(lines, l => l == $"  {o.Name} {o.HelpName}".TrimEnd()));
        Assert.All(asked.Command.Arguments, a => Assert.Single(lines, l => l == "  " + a.Name));
        Assert.All(asked.Command.Options.Where(o => !o.Hidden), o => Assert.NotEqual("", o.Description));
    }

    [Fact]
    public void See_also_names_verbs_that_there_are_and_never_the_page_itself() =>
        Assert.All(CommandLine.Verbs(), v => Assert.All(v.Help.See, s => Assert.Contains(s, s_verbs.Where(n => n != v.Help.Name))));

    [Fact]
    public void Options_of_a_written_usage_line_are_the_verbs() =>
        Assert.All(
            CommandLine.Verbs().SelectMany(v => v.Help.Usage.SelectMany(u => u.Split(' ').Select(w => w.TrimStart('['))).Where(w => w.StartsWith("--", StringComparison.Ordinal)).Select(w => (Verb: v, Word: w))),
            x => Assert.Contains(x.Verb.Command.Options, o => o.Name == x.Word));

    [Fact]
    public void The_programs_page_lists_the_units_that_a_value_may_carry()
    {
        string page = string.Join('\n', Page(""));
        Assert.All((string[])["in, ft, mm, cm, m", "lbf/in, lb/in, N/mm, N/m, kN/m", "mph, ft/s, in/s, m/s, km/h", "degF, degC"], u => Assert.Contains(u, page, StringComparison.Ordinal));
    }

    [Fact]
    public void A_quoted_value_with_its_unit_is_not_broken_over_lines()
    {
        var page = new StringWriter();
        new HelpText(page).Paragraph(string.Concat(Enumerable.Repeat("word ", 14)) + "--set a='1.6 in' more");
        Assert.Contains("\n  --set a='1.6 in' more", page.ToString().Replace("--set\n  ", "\n  --set ", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    private static string[] Page(string verb) => Asked.Of([.. verb.Split(' ', StringSplitOptions.RemoveEmptyEntries), "--help"]).Out.Split('\n');
}
