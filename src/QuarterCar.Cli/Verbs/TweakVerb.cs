using System.CommandLine;

using QuarterCar.Cli.Help;
using QuarterCar.Cli.Options;
using QuarterCar.Reports.Studies;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.SpringLists;
using QuarterCar.Studies.Setups;
using QuarterCar.Studies.Sweeps;

namespace QuarterCar.Cli.Verbs;

/// <summary>`tweak`: one realistic step of each adjustable thing, ranked.</summary>
internal sealed class TweakVerb : Verb
{
    private readonly ScenarioOptions _scenario;
    private readonly SetupOptions _setups;
    private readonly GoalOption _goal;
    private readonly OutOptions _out;
    private readonly Option<string?> _springs = new("--springs") { HelpName = "LIST.csv", Description = "Where the next stiffer and softer springs come from. [default: invented, the lists that ship: to try things out with, not to be bought from]" };

    public TweakVerb()
        : base(HelpTexts.Tweak)
    {
        _scenario = new ScenarioOptions(Command);
        _setups = new SetupOptions(Command, parts: false, setups: false);
        _goal = new GoalOption(Command);
        Command.Add(_springs);
        _out = new OutOptions(Command, "tweak.json and report.html");
    }

    public override ExitCode Run(ParseResult parsed, Session session)
    {
        ScenarioInput input = _scenario.Input(parsed);
        Goal? goal = _goal.Read(parsed, out string mistake);
        TweakShelf? shelf = Shelf(parsed, out string listMistakes);
        (StudyBase from, StudyOptions options) = Mistakes.With(mistake, () => Mistakes.With(listMistakes, () => (Base(input, session), _setups.Engine(parsed))));
        string? folder = _out.Folder(parsed);
        bool json = _out.Json(parsed);
        TweakResult result;
        using (var progress = new StudyProgress(session, json))
            result = input.Ask(() => TweakStudy.Run(from, goal!, shelf!, options, progress.Report, session.Cancel));
        if (folder is not null) SweepFiles.Write(result, folder, session.Cancel);
        if (json) SweepJson.Write(result, session.Results);
        else TweakText.Write(result, session.Out, session.Colour);
        session.Out.Flush();
        session.SayWhere(folder);
        return result.Failed ? ExitCode.Broken : ExitCode.Done;
    }

    private TweakShelf? Shelf(ParseResult parsed, out string mistakes)
    {
        mistakes = "";
        if (parsed.GetValue(_springs) is not { } file || file == InventedSprings.Name) return TweakShelf.Shipped();
        var problems = new ProblemList();
        if (SpringListReader.Read(file, problems) is { } list && problems.Count == 0) return TweakShelf.Of(list);
        mistakes = string.Join('\n', problems.ToImmutable());
        return null;
    }

    private static StudyBase Base(ScenarioInput input, Session session)
    {
        Scenario scenario = input.Read(session);
        var document = input.Load(new ProblemList());
        return input.Ask(() => new StudyBase(document!, input.Options, scenario));
    }
}
