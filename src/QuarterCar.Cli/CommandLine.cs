using System.Collections.Immutable;
using System.CommandLine;
using System.CommandLine.Help;

using QuarterCar.Cli.Verbs;

namespace QuarterCar.Cli;

/// <summary>The command line: verbs under one root, parsed, and either run or answered with what is wrong.</summary>
internal static class CommandLine
{
    private const string Does =
        "Quarter-car dynamics for coilover setups: where a corner stands, how it takes an obstacle, what to set.";

    private const string Epilogue =
        """
        Results go to standard output, messages to standard error.
        Exit codes: 0 done; 1 a limit set in the scenario is broken, or a setup could not be run; 2 bad input or usage; 3 failed; 130 interrupted.
        """;

    /// <summary>Every verb, in the order of the help page.</summary>
    public static ImmutableArray<Verb> Verbs() =>
    [
        new NewVerb(), new CheckVerb(), new RunVerb(), new WeighVerb(), new PickVerb(), new CompareVerb(),
        new SweepVerb(), new ReachVerb(), new TweakVerb(), new SpreadVerb(), new GatherVerb(), new SheetVerb(), new SchemaVerb(),
        new ServeVerb(),
    ];

    /// <summary>Runs one command line.</summary>
    public static ExitCode Run(string[] args, Session session) => Outcome.Of(() => Parsed(args, session), session);

    private static ExitCode Parsed(string[] args, Session session)
    {
        ImmutableArray<Verb> verbs = Verbs();
        RootCommand root = Root(verbs, session);
        if (args.Length == 0)
        {
            root.Parse("--help").Invoke(Streams(session.Messages, session));
            return ExitCode.BadInput;
        }

        // No response files (@name) and no bundling of letters: every argument means itself.
        var parsed = root.Parse(UnitWords.Joined(args), new ParserConfiguration { ResponseFileTokenReplacer = null, EnablePosixBundling = false });
        if (parsed.Errors.Count > 0) throw new BadInputException(Usage.Mistakes(parsed, verbs));
        return (ExitCode)parsed.Invoke(Streams(session.Out, session));
    }

    private static RootCommand Root(ImmutableArray<Verb> verbs, Session session)
    {
        var root = new RootCommand(Does);
        root.Directives.Clear();
        foreach (Verb verb in verbs)
        {
            verb.Command.SetAction(parsed => (int)verb.Run(parsed, session));
            root.Add(verb.Command);
        }

        foreach (HelpOption help in root.Options.OfType<HelpOption>())
            help.Action = new HelpWithExamples((HelpAction)help.Action!, verbs, Epilogue);
        return root;
    }

    private static InvocationConfiguration Streams(TextWriter output, Session session) =>
        new() { Output = output, Error = session.Messages, EnableDefaultExceptionHandler = false, ProcessTerminationTimeout = null };
}
