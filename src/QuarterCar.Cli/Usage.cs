using System.Collections.Immutable;
using System.CommandLine;
using System.CommandLine.Parsing;

using QuarterCar.Cli.Verbs;
using QuarterCar.Scenarios.Keys;

namespace QuarterCar.Cli;

/// <summary>What is wrong with a command line, in plain words.</summary>
internal static class Usage
{
    /// <summary>Every mistake, and where help is.</summary>
    public static ImmutableArray<string> Mistakes(ParseResult parsed, ImmutableArray<Verb> verbs)
    {
        string verb = parsed.CommandResult.Command is RootCommand ? "" : " " + parsed.CommandResult.Command.Name;
        if (verb.Length == 0 && parsed.UnmatchedTokens is [var word, ..] && !word.StartsWith('-'))
            return [UnknownVerb(word, verbs)];
        return [.. Errors(parsed), $"see 'quartercar{verb} --help'"];
    }

    private static string UnknownVerb(string word, ImmutableArray<Verb> verbs)
    {
        string[] names = [.. verbs.Select(v => v.Command.Name)];
        string near = Near(word, names) is { } name ? $"; '{name}' is near" : "";
        return $"there is no verb '{word}'{near}. Verbs: {string.Join(", ", names)}; see 'quartercar --help'";
    }

    private static IEnumerable<string> Errors(ParseResult parsed)
    {
        foreach (string word in parsed.UnmatchedTokens)
            yield return Unknown(word, parsed.CommandResult.Command);
        foreach (var error in parsed.Errors.Where(e => !parsed.UnmatchedTokens.Any(w => e.Message.Contains($"'{w}'", StringComparison.Ordinal))))
            yield return Plain(error);
    }

    private static string Plain(ParseError error) => error.SymbolResult switch
    {
        OptionResult { Tokens.Count: 0, Option: { } option } => $"{option.Name} lacks its value: {option.Name} {option.HelpName}",
        ArgumentResult { Tokens.Count: 0, Parent: OptionResult { Option: { } option } } => $"{option.Name} lacks its value: {option.Name} {option.HelpName}",
        ArgumentResult { Tokens.Count: 0, Argument: { } argument } => $"{argument.Name} is missing: {argument.Description}".TrimEnd('.'),
        CommandResult { Command: RootCommand } => "a verb is missing",
        _ => error.Message.TrimEnd('.'),
    };

    private static string Unknown(string word, Command command)
    {
        if (!word.StartsWith('-')) return $"'{word}' is one argument too many" + (char.IsAsciiDigit(word.FirstOrDefault()) ? "; a value with its unit stands in quotes, like PATH='1.8 in'" : "");
        string? near = Near(word.TrimStart('-'), command.Options.Select(o => o.Name.TrimStart('-')));
        return $"there is no option '{word}'" + (near is null ? "" : $"; '--{near}' is near");
    }

    /// <summary>The nearest name; none where the first letter differs too, for then the words have nothing to do with each other.</summary>
    private static string? Near(string word, IEnumerable<string> names) => Nearest.Find(word, names.Where(n => word.Length > 0 && n[0] == word[0]));
}
