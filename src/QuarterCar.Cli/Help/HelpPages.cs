using System.Collections.Immutable;
using System.CommandLine;
using System.CommandLine.Invocation;

using QuarterCar.Cli.Verbs;

namespace QuarterCar.Cli.Help;

/// <summary>--help: the page of a verb in the order of a manual page, and the page of the program.</summary>
internal sealed class HelpPages(ImmutableArray<Verb> verbs) : SynchronousCommandLineAction
{
    private const string Program = "quartercar";

    private static readonly HelpEntry s_help = new("-?, -h, --help", "Shows this page.");

    public override bool Terminating => true;

    public override bool ClearsParseErrors => true;

    public override int Invoke(ParseResult parseResult)
    {
        Command command = parseResult.CommandResult.Command;
        var page = new HelpText(parseResult.InvocationConfiguration.Output);
        if (verbs.FirstOrDefault(v => v.Command == command) is { } verb) OfVerb(verb, page);
        else OfProgram(page);
        return (int)ExitCode.Done;
    }

    private static void OfVerb(Verb verb, HelpText page)
    {
        VerbHelp help = verb.Help;
        page.Paragraph($"{Program} {help.Name}: {help.Does}", 0);
        page.Heading("Usage");
        foreach (string line in help.Usage.IsEmpty ? [Usage(verb.Command)] : help.Usage) page.Line($"{Program} {line}");
        page.Heading("What it does");
        page.Paragraphs(help.About);
        if (verb.Command.Arguments.Count > 0) page.Heading("Arguments").Below(verb.Command.Arguments.Select(a => new HelpEntry(a.Name, a.Description ?? "")));
        page.Heading("Options").Below(verb.Command.Options.Where(o => !o.Hidden && o is not System.CommandLine.Help.HelpOption).Select(Entry).Append(s_help));
        if (help.Files.Length > 0) page.Heading("Files").Beside(help.Files);
        page.Heading("Exit codes").Beside(Codes(help));
        page.Heading(help.Examples.Length == 1 ? "Example" : "Examples");
        foreach (string example in help.Examples) page.Line(example);
        if (help.See.Length > 0) page.Heading("See also").Paragraph($"{string.Join(", ", help.See)}: {Program} VERB --help");
    }

    private void OfProgram(HelpText page)
    {
        page.Paragraph(HelpTexts.Program, 0);
        page.Heading("Usage").Line($"{Program} VERB [ARGUMENTS] [OPTIONS]").Line($"{Program} VERB --help");
        page.Heading("What it does");
        page.Paragraphs(HelpTexts.ProgramAbout);
        page.Heading("Commands").Beside([.. verbs.Select(v => new HelpEntry(v.Help.Name, v.Help.Does))]);
        page.Heading("Options").Below([s_help, new("--version", "Shows the version, and the commit where it was built in a checkout.")]);
        page.Heading("Units").Beside(HelpTexts.Units);
        page.Heading("Exit codes").Beside(HelpTexts.ProgramCodes);
        page.Heading("Examples");
        foreach (string example in HelpTexts.ProgramExamples) page.Line(example);
    }

    private static string Usage(Command command) =>
        string.Join(' ', [command.Name, .. command.Arguments.Select(Usage), .. command.Options.Where(o => o.Required).Select(o => $"{o.Name} {o.HelpName}"), .. command.Options.Any(o => !o.Hidden && !o.Required) ? ["[OPTIONS]"] : Array.Empty<string>()]);

    private static string Usage(Argument argument) => (argument.Arity.MinimumNumberOfValues, argument.Arity.MaximumNumberOfValues) switch
    {
        (0, _) => $"[{argument.Name}]",
        (_, > 1) => $"{argument.Name}...",
        _ => argument.Name,
    };

    private static HelpEntry Entry(Option option) =>
        new(option.HelpName is null ? option.Name : $"{option.Name} {option.HelpName}", (option.Required ? "Required. " : "") + option.Description);

    private static ImmutableArray<HelpEntry> Codes(VerbHelp help) =>
    [
        Code(ExitCode.Done, help.Done),
        .. help.Broken.Length == 0 ? [] : ImmutableArray.Create(Code(ExitCode.Broken, help.Broken)),
        Code(ExitCode.BadInput, HelpTexts.BadInput),
        Code(ExitCode.Failed, HelpTexts.Failed),
        Code(ExitCode.Interrupted, help.Interrupted),
    ];

    private static HelpEntry Code(ExitCode code, string words) => new(((int)code).ToString(System.Globalization.CultureInfo.InvariantCulture), words);
}
