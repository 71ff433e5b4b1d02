using System.CommandLine;
using System.Globalization;

using QuarterCar.Cli.Help;
using QuarterCar.Cli.Options;
using QuarterCar.Reports.Files;
using QuarterCar.Reports.Studies;
using QuarterCar.Scenarios;
using QuarterCar.Studies.Setups;
using QuarterCar.Studies.Spreads;

namespace QuarterCar.Cli.Verbs;

/// <summary>`spread`: how sure are we, given what is uncertain?</summary>
internal sealed class SpreadVerb : StudyVerb
{
    private readonly ScenarioOptions _scenario;
    private readonly SetupOptions _setups;
    private readonly OutOptions _out;
    private readonly AlsoOptions _also;
    private readonly Option<string?> _samples = new("--samples") { HelpName = "N", Description = "How many samples. [default: 1000]" };
    private readonly Option<string?> _seed = new("--seed") { HelpName = "S", Description = "Which samples: the same number gives the same ones. [default: 1]" };

    public SpreadVerb()
        : base(HelpTexts.Spread)
    {
        _scenario = new ScenarioOptions(Command);
        Command.Add(_samples);
        Command.Add(_seed);
        _setups = new SetupOptions(Command, setups: false);
        _out = new OutOptions(Command, "spread.csv, spread.json, report.html and plots");
        _also = new AlsoOptions(Command);
    }

    public override ExitCode Run(ParseResult parsed, Gathering? gathering, Session session)
    {
        ScenarioInput input = _scenario.Input(parsed, gathering);
        ulong seed = 1;
        StudySetups study = _setups.ReadBase(parsed, input, (scenario, problems) => Plan(parsed, scenario, problems, ref seed));
        string? folder = gathering?.Folder ?? _out.Folder(parsed);
        Action<ResultFolder>? also = AlsoFiles.Of(_also.Formats(parsed, folder, study.Plan.Count, gathering), study.Scenario, session.Cancel) + Kept(parsed, [input]);
        bool json = gathering?.Json ?? _out.Json(parsed);
        using var written = new WrittenJson("spread.json");
        if (json) also += written.Open;
        var head = StudyHead.Of("spread", study.Base, study.Plan, study.Options) with { Seed = seed };
        SpreadResult result;
        using (var progress = new StudyProgress(session, json))
        {
            void Produce(Action<StudyRow> take)
            {
                if (gathering is not null) gathering.Produce(study.Plan, take, session.Cancel);
                else StudyEngine.Run(study.Base, study.Plan, study.Options, take, progress.Report, session.Cancel);
            }

            if (folder is not null) result = SpreadFiles.Write(folder, head, Produce, also, session.Cancel);
            else if (json) result = SpreadFiles.WriteJson(session.Results, head, Produce);
            else result = SpreadFiles.None(head, Produce);
        }

        if (!json) SpreadText.Write(head, result, session.Out, session.Colour);
        written.CopyTo(session.Results);
        session.Out.Flush();
        session.SayWhere(folder);
        return result.Samples.Failed > 0 ? ExitCode.Broken : ExitCode.Done;
    }

    private SetupPlan? Plan(ParseResult parsed, Scenario scenario, ProblemList problems, ref ulong seed)
    {
        if (scenario.Tolerances.IsEmpty)
            problems.Note(new Place(scenario.File, 0, 0), "tolerances", Texts.Nothing, "what is uncertain and by how much, like tolerances: { corner.sprung_weight: 4 % }");
        int samples = 1000;
        if (parsed.GetValue(_samples) is { } count && !(int.TryParse(count, NumberStyles.None, CultureInfo.InvariantCulture, out samples) && samples is >= 2 and <= SpreadPlan.MostSamples))
            problems.Note(new Place("--samples", 0, 0), "", Texts.Quote(count), $"a whole number from 2 to {SpreadPlan.MostSamples.ToString("#,0", CultureInfo.InvariantCulture)}");
        if (parsed.GetValue(_seed) is { } start && !ulong.TryParse(start, NumberStyles.None, CultureInfo.InvariantCulture, out seed))
            problems.Note(new Place("--seed", 0, 0), "", Texts.Quote(start), "a whole number of 0 or more, below 2^64");
        return problems.Count > 0 ? null : SpreadPlan.Of(scenario.Tolerances, samples, seed);
    }
}
