using System.CommandLine;

using QuarterCar.Cli.Help;

namespace QuarterCar.Cli.Verbs;

/// <summary>One verb of the command line: its words, its options (added to <see cref="Command"/> by the verb itself) and what it does.</summary>
/// <param name="help">Its name and its help page.</param>
internal abstract class Verb(VerbHelp help)
{
    /// <summary>For the parser.</summary>
    public Command Command { get; } = new(help.Name, help.Does);

    /// <summary>What the help page says beside the options.</summary>
    public VerbHelp Help { get; } = help;

    /// <summary>Does it. Bad input and failures are thrown; <see cref="Outcome"/> turns them into words and exit codes.</summary>
    public abstract ExitCode Run(ParseResult parsed, Session session);
}
