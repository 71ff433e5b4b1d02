using System.Collections.Immutable;
using System.CommandLine;
using System.CommandLine.Parsing;

using QuarterCar.Cli.Help;
using QuarterCar.Reports.Files;
using QuarterCar.Reports.Studies;

namespace QuarterCar.Cli.Verbs;

/// <summary>A verb whose study can be done in parts: it either runs its setups or takes their rows from the parts.</summary>
internal abstract class StudyVerb(VerbHelp help) : Verb(help)
{
    // What belongs to a single part, or to how it is carried out.
    private static readonly ImmutableArray<string> s_own = ["--out", "--json", "--jobs", "--part"];

    public sealed override ExitCode Run(ParseResult parsed, Session session) => Run(parsed, null, session);

    /// <summary>Does it.</summary>
    /// <param name="parsed">The command line; the parts' own where they are put together.</param>
    /// <param name="gathering">The parts; null to run.</param>
    /// <param name="session">Where it writes.</param>
    public abstract ExitCode Run(ParseResult parsed, Gathering? gathering, Session session);

    /// <summary>True where a command line says what belongs to a single part, which no part keeps.</summary>
    public static bool SaysOwn(ParseResult parsed) => s_own.Any(o => parsed.GetResult(o) is OptionResult { Implicit: false });

    /// <summary>Writes into a part's folder what the part was asked; null for a whole study, also for one that is put together: its arguments may be a stranger's, and nothing of this machine goes with them. Asked when all is read and before the study runs, so that every part keeps the same.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="inputs">Scenarios; they know whether they are kept.</param>
    protected static Action<ResultFolder>? Kept(ParseResult parsed, ImmutableArray<ScenarioInput> inputs)
    {
        if (!inputs[0].Keeps) return null;
        var asked = new PartAsked([.. Arguments(parsed)], [.. inputs.SelectMany(i => i.Kept()).Distinct()]);
        return asked.Write;
    }

    private static IEnumerable<string> Arguments(ParseResult parsed)
    {
        Command command = parsed.CommandResult.Command;
        foreach (Argument argument in command.Arguments)
        {
            foreach (Token token in parsed.GetResult(argument)?.Tokens ?? []) yield return token.Value;
        }

        foreach (Option option in command.Options.Where(o => !s_own.Contains(o.Name)))
        {
            if (parsed.GetResult(option) is not { Implicit: false } given) continue;
            if (given.Tokens.Count == 0) yield return option.Name;
            foreach (Token token in given.Tokens)
            {
                yield return option.Name;
                yield return token.Value;
            }
        }
    }
}
