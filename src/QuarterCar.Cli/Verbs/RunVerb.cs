using System.Collections.Immutable;
using System.CommandLine;

using QuarterCar.Cli.Help;
using QuarterCar.Cli.Options;
using QuarterCar.Reports.Files;
using QuarterCar.Reports.Json;
using QuarterCar.Reports.Words;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Studies;

namespace QuarterCar.Cli.Verbs;

/// <summary>`run`: one run over the course or one drop.</summary>
internal sealed class RunVerb : Verb
{
    private readonly ScenarioOptions _scenario;
    private readonly OutOptions _out;
    private readonly AlsoOptions _also;

    public RunVerb()
        : base(HelpTexts.Run)
    {
        _scenario = new ScenarioOptions(Command);
        _out = new OutOptions(Command, "trace.csv, events.csv, summary.json, report.html and plots");
        _also = new AlsoOptions(Command);
    }

    public override ExitCode Run(ParseResult parsed, Session session)
    {
        ScenarioInput input = _scenario.Input(parsed);
        var scenario = input.Read(session);
        string? folder = _out.Folder(parsed);
        ImmutableArray<AlsoFormat> formats = _also.Formats(parsed, folder, TraceRows.Count(scenario.Run, scenario.Excitation));
        RunResult result = input.Ask(() => SingleRun.Of(scenario, session.Cancel));
        session.Cancel.ThrowIfCancellationRequested();
        bool finished = result.Figures.Run.End == RunEnds.Finished;
        if (folder is not null && finished) RunFiles.Write(result, folder, new RunFilesOptions(Also: AlsoFiles.Of(formats, result, session.Cancel)), session.Cancel);
        if (_out.Json(parsed)) SummaryJson.Write(result, session.Results);
        else RunText.Write(result, session.Out, session.Colour);
        session.Out.Flush();
        if (!finished) return NotFinished(result, folder, session);
        session.SayWhere(folder);
        return result.Limits.Any(l => l.Broken) ? ExitCode.Broken : ExitCode.Done;
    }

    /// <summary>Half a run is shown, so that it can be mended, but never takes the place of earlier results.</summary>
    private static ExitCode NotFinished(RunResult result, string? folder, Session session)
    {
        session.Messages.WriteLine("quartercar: " + result.Figures.Run.Message);
        if (folder is not null) session.Messages.WriteLine($"quartercar: no results were written to {folder}.");
        return ExitCode.Failed;
    }
}
