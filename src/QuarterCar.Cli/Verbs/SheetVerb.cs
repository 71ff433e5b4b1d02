using System.CommandLine;

using QuarterCar.Cli.Help;
using QuarterCar.Cli.Options;
using QuarterCar.Reports.SetupSheet;
using QuarterCar.Studies;

namespace QuarterCar.Cli.Verbs;

/// <summary>`sheet`: the one-page setup sheet for the person with the wrench. Replaces only an earlier sheet.</summary>
internal sealed class SheetVerb : Verb
{
    private readonly ScenarioOptions _scenario;
    private readonly Option<string> _out = new("--out") { HelpName = "FILE.html", Description = "The file to write; an earlier sheet there is replaced, nothing else.", Required = true };

    public SheetVerb()
        : base(HelpTexts.Sheet)
    {
        _scenario = new ScenarioOptions(Command);
        Command.Add(_out);
    }

    public override ExitCode Run(ParseResult parsed, Session session)
    {
        ScenarioInput input = _scenario.Input(parsed);
        var scenario = input.Read(session);
        var cases = input.Cases(scenario);
        string file = parsed.GetRequiredValue(_out);
        if (SheetFile.Objection(file) is { } objection) throw new BadInputException("--out: " + objection);
        StandingResult result = input.Ask(() => StandingStudy.Of(scenario, cases), cases);
        var today = DateOnly.FromDateTime(TimeProvider.System.GetLocalNow().DateTime);
        string page = SheetPage.Write(new SheetSubject(result, today, input.Options.Case, input.Options.Sets, Nut: input.Options.Nut));
        session.Cancel.ThrowIfCancellationRequested();
        SheetFile.Write(file, page);
        session.Out.WriteLine($"Wrote {file}: one page to print, A4 or Letter.");
        if (result.Warnings.Length > 0) session.Messages.WriteLine($"{(result.Warnings.Length == 1 ? "One warning is" : $"{result.Warnings.Length} warnings are")} on it; 'quartercar check {input.File}'{(input.Options.Case is null && input.Options.Sets.Length == 0 ? "" : input.Options.Nut is null ? " with the same --case and --set" : " with the same --case, --set and --nut")} shows all.");
        return ExitCode.Done;
    }
}
