using System.CommandLine;

using QuarterCar.Cli.Help;

namespace QuarterCar.Cli.Verbs;

/// <summary>`completion`: a script by which a shell completes verbs, options and paths, and the words that the script asks for.</summary>
internal sealed class CompletionVerb : Verb
{
    private readonly Argument<string> _shell = new("SHELL") { Description = "bash, zsh, fish or pwsh." };
    private readonly Option<string?> _line = new("--line") { HelpName = "LINE", Description = "The line typed so far: prints the words that may follow. The scripts ask this.", Hidden = true };

    public CompletionVerb()
        : base(HelpTexts.Completion)
    {
        _shell.CompletionSources.Add([.. CompletionScripts.Shells]);
        Command.Add(_shell);
        Command.Add(_line);
    }

    public override ExitCode Run(ParseResult parsed, Session session)
    {
        string shell = parsed.GetRequiredValue(_shell);
        if (CompletionScripts.Of(shell) is not { } script)
            throw new BadInputException($"completion: found '{shell}'; wanted {string.Join(", ", CompletionScripts.Shells[..^1])} or {CompletionScripts.Shells[^1]}");
        if (parsed.GetValue(_line) is not { } line) session.Out.Write(script);
        else foreach (string word in CommandLine.Words(line, session)) session.Out.WriteLine(word);
        return ExitCode.Done;
    }
}
