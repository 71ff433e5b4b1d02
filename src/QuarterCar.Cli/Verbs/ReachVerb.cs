using System.CommandLine;

using QuarterCar.Cli.Help;
using QuarterCar.Cli.Options;
using QuarterCar.Reports.Studies;
using QuarterCar.Studies.Sweeps;

namespace QuarterCar.Cli.Verbs;

/// <summary>`reach`: how far a value can go before a limit first breaks.</summary>
internal sealed class ReachVerb : Verb
{
    private readonly ScenarioOptions _scenario;
    private readonly SetupOptions _setups;
    private readonly OutOptions _out;

    public ReachVerb()
        : base(HelpTexts.Reach)
    {
        _scenario = new ScenarioOptions(Command);
        _setups = new SetupOptions(Command, parts: false, vary: "The way to go, PATH=FROM:TO; one unit at the end may serve both. A second --vary PATH=V1,V2 asks for each value.");
        _out = new OutOptions(Command, "reach.json, report.html and, of several setups, a picture");
    }

    public override ExitCode Run(ParseResult parsed, Session session)
    {
        ScenarioInput input = _scenario.Input(parsed);
        var vary = new RangeVary(_setups, reach: true);
        StudySetups setups = vary.Read(parsed, input);
        var (way, others) = vary.Reach(setups);
        string? folder = _out.Folder(parsed);
        bool json = _out.Json(parsed);
        ReachResult result;
        using (var progress = new StudyProgress(session, json))
            result = ReachStudy.Run(setups.Base, way, others, setups.Options, progress.Report, session.Cancel);
        if (folder is not null) SweepFiles.Write(result, folder, session.Cancel);
        if (json) SweepJson.Write(result, session.Results);
        else ReachText.Write(result, session.Out, session.Colour);
        session.Out.Flush();
        session.SayWhere(folder);
        return result.Setups.Any(s => s.Scan[0].Failure is not null) ? ExitCode.Broken : ExitCode.Done;
    }
}
