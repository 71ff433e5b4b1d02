using System.CommandLine;

using QuarterCar.Cli.Help;
using QuarterCar.Cli.Options;
using QuarterCar.Reports.Files;
using QuarterCar.Reports.Studies;
using QuarterCar.Studies.Setups;
using QuarterCar.Studies.Sweeps;

namespace QuarterCar.Cli.Verbs;

/// <summary>`sweep`: figures over a grid, and the best point inside the limits.</summary>
internal sealed class SweepVerb : StudyVerb
{
    private readonly ScenarioOptions _scenario;
    private readonly SetupOptions _setups;
    private readonly GoalOption _goal;
    private readonly OutOptions _out;
    private readonly AlsoOptions _also;

    public SweepVerb()
        : base(HelpTexts.Sweep)
    {
        _scenario = new ScenarioOptions(Command);
        _setups = new SetupOptions(Command, vary: "A range, PATH=FROM:TO:COUNT, both ends included, or values, PATH=V1,V2; one unit at the end may serve all. Several make a grid, the last fastest.");
        _goal = new GoalOption(Command);
        _out = new OutOptions(Command, "sweep.csv, sweep.json, report.html and a picture");
        _also = new AlsoOptions(Command);
    }

    public override ExitCode Run(ParseResult parsed, Gathering? gathering, Session session)
    {
        ScenarioInput input = _scenario.Input(parsed, gathering);
        var vary = new RangeVary(_setups, reach: false);
        Goal? goal = _goal.Read(parsed, out string mistake);
        StudySetups setups = Mistakes.With(mistake, () => vary.Read(parsed, input));
        SweepGrid grid = vary.Grid(setups);
        string? folder = gathering?.Folder ?? _out.Folder(parsed);
        Action<ResultFolder>? also = AlsoFiles.Of(_also.Formats(parsed, folder, grid.Points, gathering), setups.Scenario, session.Cancel) + Kept(parsed, [input]);
        bool json = gathering?.Json ?? _out.Json(parsed);
        using var written = new WrittenJson("sweep.json");
        if (json) also += written.Open;
        SweepResult? result = null;
        var head = StudyHead.Of("sweep", setups.Base, grid.Plan(), setups.Options);
        using (var progress = new StudyProgress(session, json))
        {
            void Produce(Action<StudyRow> take) => result = gathering is null
                ? SweepStudy.Run(setups.Base, grid, goal!, setups.Options, take, progress.Report, session.Cancel)
                : SweepStudy.Of(setups.Scenario, grid, goal!, rows => gathering.Produce(grid.Plan(), rows, session.Cancel), take);
            if (folder is not null) Files(folder, head, Produce, () => result!, also, session);
            else if (json) StudyFiles.WriteWhole(session.Results, head, Produce, () => More(result!));
            else Produce(_ => { });
        }

        if (!json) SweepText.Write(head, result!, session.Out, session.Colour);
        written.CopyTo(session.Results);
        session.Out.Flush();
        session.SayWhere(folder);
        return result!.Failed > 0 ? ExitCode.Broken : ExitCode.Done;
    }

    private static void Files(string folder, StudyHead head, Action<Action<StudyRow>> produce, Func<SweepResult> result, Action<ResultFolder>? also, Session session)
    {
        using var files = ResultFolder.Open(folder);
        StudyFiles.Write(files, head, produce, () => More(result()));
        SweepFiles.Write(head, result(), files, session.Cancel);
        also?.Invoke(files);
        session.Cancel.ThrowIfCancellationRequested();
        files.Commit();
    }

    private static JsonMore[] More(SweepResult result) =>
        [new("goal", json => json.WriteStringValue(result.Goal.ToString())), new("best", json => SweepJson.Best(json, result))];
}
