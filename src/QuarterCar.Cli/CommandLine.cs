using System.Collections.Immutable;
using System.CommandLine;
using System.CommandLine.Help;

using QuarterCar.Cli.Help;
using QuarterCar.Cli.Verbs;
using QuarterCar.Reports.Studies;

namespace QuarterCar.Cli;

/// <summary>The command line: verbs under one root, parsed, and either run or answered with what is wrong.</summary>
internal static class CommandLine
{
    /// <summary>Every verb, in the order of the help page.</summary>
    public static ImmutableArray<Verb> Verbs() =>
    [
        new NewVerb(), new CheckVerb(), new RunVerb(), new WeighVerb(), new PickVerb(), new CompareVerb(),
        new SweepVerb(), new ReachVerb(), new TweakVerb(), new SpreadVerb(), new GatherVerb(), new TerrainVerb(), new SheetVerb(),
        new ServeVerb(), new SchemaVerb(), new CompletionVerb(),
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

        var parsed = root.Parse(UnitWords.Joined(args), Plain);
        if (parsed.Errors.Count > 0) throw new BadInputException(Usage.Mistakes(parsed, verbs));
        return (ExitCode)parsed.Invoke(Streams(session.Out, session));
    }

    /// <summary>The words that may stand at a place of a line that is being typed.</summary>
    /// <param name="line">What was typed, without the program's name.</param>
    /// <param name="session">The session.</param>
    public static IEnumerable<string> Words(string line, Session session) =>
        Root(Verbs(), session).Parse(line).GetCompletions(line.Length).Select(c => c.InsertText ?? c.Label).Where(w => !w.StartsWith('/') && w is not ("-?" or "-h"));

    // No response files (@name) and no bundling of letters: every argument means itself.
    private static ParserConfiguration Plain => new() { ResponseFileTokenReplacer = null, EnablePosixBundling = false };

    /// <summary>A study's verb with the arguments that its parts were run with.</summary>
    /// <param name="study">The verb.</param>
    /// <param name="arguments">As a part kept them.</param>
    /// <exception cref="FormatException">They are not what this program takes.</exception>
    public static (StudyVerb Verb, ParseResult Parsed) Study(string study, ImmutableArray<string> arguments)
    {
        StudyVerb verb = Verbs().OfType<StudyVerb>().First(v => v.Command.Name == study);
        ParseResult parsed = verb.Command.Parse(arguments, Plain);
        return parsed.Errors.Count == 0 && !StudyVerb.SaysOwn(parsed) ? (verb, parsed) : throw new FormatException($"{PartAsked.Name}: found arguments that no part of {study} keeps; wanted them as this program writes them");
    }

    private static RootCommand Root(ImmutableArray<Verb> verbs, Session session)
    {
        var root = new RootCommand(HelpTexts.Program);
        root.Directives.Clear();
        root.Options.OfType<VersionOption>().Single().Action = new VersionWithCommit();
        foreach (Verb verb in verbs)
        {
            verb.Command.SetAction(parsed => (int)verb.Run(parsed, session));
            root.Add(verb.Command);
        }

        foreach (HelpOption help in root.Options.OfType<HelpOption>())
            help.Action = new HelpPages(verbs);
        return root;
    }

    private static InvocationConfiguration Streams(TextWriter output, Session session) =>
        new() { Output = output, Error = session.Messages, EnableDefaultExceptionHandler = false, ProcessTerminationTimeout = null };
}
