using System.Collections.Immutable;
using System.CommandLine;

namespace QuarterCar.Cli.Verbs;

/// <summary>One verb of the command line: its words, its options (added to <see cref="Command"/> by the verb itself) and what it does.</summary>
/// <param name="name">The verb.</param>
/// <param name="does">One sentence for the help page.</param>
/// <param name="examples">Command lines that run in a checkout.</param>
internal abstract class Verb(string name, string does, params ImmutableArray<string> examples)
{
    /// <summary>For the parser.</summary>
    public Command Command { get; } = new(name, does);

    /// <summary>Command lines that run in a checkout.</summary>
    public ImmutableArray<string> Examples { get; } = examples;

    /// <summary>Does it. Bad input and failures are thrown; <see cref="Outcome"/> turns them into words and exit codes.</summary>
    public abstract ExitCode Run(ParseResult parsed, Session session);
}
