using System.Collections.Immutable;
using System.CommandLine;

using QuarterCar.Cli.Help;
using QuarterCar.Cli.Options;
using QuarterCar.Reports.Files;
using QuarterCar.Reports.Json;
using QuarterCar.Reports.Words;
using QuarterCar.Studies;

namespace QuarterCar.Cli.Verbs;

/// <summary>`check`: how the corner stands, without a run.</summary>
internal sealed class CheckVerb : Verb
{
    private readonly ScenarioOptions _scenario;
    private readonly OutOptions _out;
    private readonly AlsoOptions _also;

    public CheckVerb()
        : base(HelpTexts.Check)
    {
        _scenario = new ScenarioOptions(Command);
        _out = new OutOptions(Command, "curve.csv and plots");
        _also = new AlsoOptions(Command);
    }

    public override ExitCode Run(ParseResult parsed, Session session)
    {
        ScenarioInput input = _scenario.Input(parsed);
        var scenario = input.Read(session);
        var cases = input.Cases(scenario);
        string? folder = _out.Folder(parsed);
        ImmutableArray<AlsoFormat> formats = _also.Formats(parsed, folder, 0);
        StandingResult result = input.Ask(() => StandingStudy.Of(scenario, cases), cases);
        session.Cancel.ThrowIfCancellationRequested();
        if (folder is not null) CheckFiles.Write(result, folder, AlsoFiles.Of(formats, result, session.Cancel), session.Cancel);
        if (_out.Json(parsed)) CheckJson.Write(result, session.Results);
        else CheckText.Write(result, session.Out, session.Colour);
        session.Out.Flush();
        if (folder is not null) session.Messages.WriteLine($"Curve and plots are in {folder}.");
        return ExitCode.Done;
    }
}
