namespace QuarterCar.Cli.Tests;

/// <summary>Mistakes on the command line: exit code 2, every mistake in plain words on standard error, nothing on standard output.</summary>
public sealed class UsageTests
{
    [Theory]
    [InlineData("check", "SCENARIO is missing")]
    [InlineData("new", "FILE is missing")]
    [InlineData("chek a.yaml", "there is no verb 'chek'; 'check' is near")]
    [InlineData("frobnicate", "there is no verb 'frobnicate'. Verbs: ")]
    [InlineData("run a.yaml --jsn", "there is no option '--jsn'; '--json' is near")]
    [InlineData("run a.yaml b.yaml", "'b.yaml' is one argument too many")]
    [InlineData("run a.yaml --set coilover.preload 1.8 in", "'1.8' is one argument too many; a value with its unit stands in quotes, like PATH='1.8 in'")]
    [InlineData("run a.yaml --nut", "--nut lacks its value: --nut stays|reset")]
    [InlineData("run a.yaml --nut leaves", "--nut: found 'leaves'; wanted stays or reset")]
    [InlineData("check a.yaml --units imperial", "--units: found 'imperial'; wanted us or si")]
    [InlineData("run a.yaml --set", "--set lacks its value: --set PATH=VALUE")]
    [InlineData("--frob", "a verb is missing")]
    public void A_wrong_command_line_is_answered_in_plain_words(string line, string words)
    {
        Asked asked = Asked.Of(line.Split(' '));
        Assert.Equal(ExitCode.BadInput, asked.Code);
        Assert.Contains(words, asked.Messages, StringComparison.Ordinal);
        Assert.Equal("", asked.Out);
        Assert.DoesNotContain("   at ", asked.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void All_mistakes_are_said_at_once()
    {
        Asked asked = Asked.Of("check", "a.yaml", "b.yaml", "--frob", "--nut", "x", "--units", "y");
        foreach (string word in (string[])["b.yaml", "--frob", "--nut", "--units", "see 'quartercar check --help'"])
            Assert.Contains(word, asked.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void An_empty_folder_name_is_refused() => Assert.Equal(ExitCode.BadInput, Asked.Of("run", Scenarios.QuarryLedge, "--out", "").Code);

    [Fact]
    public void Without_a_verb_the_help_page_comes_as_a_message()
    {
        Asked asked = Asked.Of();
        Assert.Equal((ExitCode.BadInput, ""), (asked.Code, asked.Out));
        Assert.Contains("Usage:", asked.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void The_help_page_names_every_verb_and_every_exit_code()
    {
        Asked asked = Asked.Of("--help");
        Assert.Equal((ExitCode.Done, ""), (asked.Code, asked.Messages));
        foreach (var verb in CommandLine.Verbs()) Assert.Contains("  " + verb.Command.Name + " ", asked.Out, StringComparison.Ordinal);
        foreach (ExitCode code in Enum.GetValues<ExitCode>()) Assert.Contains($" {(int)code} ", asked.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_name_that_starts_with_an_at_sign_is_a_file_like_any_other() =>
        Assert.Contains("@none.yaml: found no such file", Asked.Of("check", "@none.yaml").Messages, StringComparison.Ordinal);
}
