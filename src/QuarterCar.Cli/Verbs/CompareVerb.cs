using System.Collections.Immutable;
using System.CommandLine;

using QuarterCar.Cli.Help;
using QuarterCar.Cli.Options;
using QuarterCar.Model;
using QuarterCar.Model.Motion;
using QuarterCar.Reports.Files;
using QuarterCar.Reports.Studies;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Studies;
using QuarterCar.Studies.Setups;
using QuarterCar.Studies.Sweeps;

namespace QuarterCar.Cli.Verbs;

/// <summary>`compare`: the same obstacle, setup against setup.</summary>
internal sealed class CompareVerb : StudyVerb
{
    private readonly ScenarioOptions _scenarios;
    private readonly SetupOptions _setups;
    private readonly OutOptions _out;
    private readonly AlsoOptions _also;
    private readonly Option<bool> _traces = new("--traces") { Description = "With --out: also each setup's trace.csv and events.csv in setups/NN/." };

    public CompareVerb()
        : base(HelpTexts.Compare)
    {
        _scenarios = new ScenarioOptions(Command, several: true);
        _setups = new SetupOptions(Command);
        _out = new OutOptions(Command, "compare.csv, compare.json, report.html and overlaid plots");
        _also = new AlsoOptions(Command);
        Command.Add(_traces);
    }

    public override ExitCode Run(ParseResult parsed, Gathering? gathering, Session session)
    {
        ImmutableArray<ScenarioInput> inputs = _scenarios.Inputs(parsed, gathering);
        if (inputs.Length > 1 && _setups.AnySetups(parsed))
            throw new BadInputException("compare: found several scenarios together with --vary, --split, --setups, --springs or --hold; wanted either several scenarios, or one and what varies");
        bool traces = parsed.GetValue(_traces);
        if (traces && gathering is null && parsed.GetResult("--out") is null) throw new BadInputException("--traces: found no --out; wanted a folder for the traces");
        Comparison comparison = inputs.Length > 1 ? OfScenarios(parsed, inputs) : OfOne(parsed, inputs[0]);
        string? folder = gathering?.Folder ?? _out.Folder(parsed);
        ImmutableArray<AlsoFormat> formats = _also.Formats(parsed, folder, comparison.Plan.Count, gathering, traces ? comparison.TraceRows : null);
        bool json = gathering?.Json ?? _out.Json(parsed);
        long runs = folder is null ? 0 : traces ? StudyOptions.All : CompareFiles.MostDrawn;
        using var written = new WrittenJson("compare.json");
        var tally = new CompareTally(comparison.Head.Units, comparison.Limits);
        var ran = new List<long>();
        using (var progress = new StudyProgress(session, json))
        {
            void Produce(Action<StudyRow> take)
            {
                void Take(StudyRow row)
                {
                    take(row);
                    tally.Take(row);
                    if (traces && gathering is not null && row.Figures is not null) ran.Add(row.Index);
                }

                if (gathering is not null) comparison.Gather(gathering, Take, session.Cancel);
                else StudyEngine.Rows(comparison.Plan.Count, comparison.Options with { KeepRuns = runs }, (i, run, keep) => comparison.One(i, run, keep, session.Cancel), Take, progress.Report, session.Cancel);
            }

            Action<ResultFolder>? before = Kept(parsed, inputs);
            if (traces && gathering is not null) before += files => CompareFiles.CopyTraces(files, gathering.Parts, ran);
            Action<ResultFolder>? also = before + AlsoFiles.Of(formats, comparison.Base, session.Cancel) + (json ? written.Open : null);
            if (folder is not null) CompareFiles.Write(folder, comparison.Head, tally, traces && gathering is null, Produce, also, session.Cancel);
            else if (json) StudyFiles.WriteWhole(session.Results, comparison.Head, Produce);
            else Produce(_ => { });
        }

        if (!json) CompareText.Write(comparison.Head, tally, session.Out, session.Colour);
        written.CopyTo(session.Results);
        session.Out.Flush();
        session.SayWhere(folder);
        return tally.Failed > 0 ? ExitCode.Broken : ExitCode.Done;
    }

    private Comparison OfOne(ParseResult parsed, ScenarioInput input)
    {
        StudySetups study = _setups.Read(parsed, input);
        var limits = LimitSet.Own(study.Scenario.Limits);
        return new(
            StudyHead.Of("compare", study.Base, study.Plan, study.Options),
            study.Plan,
            study.Options,
            study.Scenario,
            _ => limits,
            () => Enumerable.Range(0, (int)study.Plan.Count).Max(i => study.Base.TraceLength(study.Plan.At(i))),
            (i, run, keep, cancel) => StudyEngine.One(study.Base, study.Plan, i, run, keep, cancel));
    }

    private Comparison OfScenarios(ParseResult parsed, ImmutableArray<ScenarioInput> inputs)
    {
        StudyOptions options = _setups.Engine(parsed);
        ImmutableArray<ScenarioRow> scenarios = Read(inputs);
        UnitSystem units = scenarios[0].Scenario.Units;
        var head = new StudyHead(
            "compare", string.Join(" against ", scenarios.Select(s => s.Title)), string.Join('+', scenarios.Select(s => s.Scenario.Hash)), units, [], "none", scenarios.Length, options.Part, options.Parts)
        {
            OneObstacle = scenarios.All(s => Obstacle.IsSame(s.Scenario.Excitation, scenarios[0].Scenario.Excitation)),
        };
        var plan = SetupPlan.List([], [.. scenarios.Select(s => new SetupRequest(s.Title, []))]);
        LimitSet[] limits = [.. scenarios.Select(s => LimitSet.Own(s.Scenario.Limits))];
        return new(head, plan, options, null, i => limits[i], () => scenarios.Max(s => TraceRows.Count(s.Scenario.Run, s.Scenario.Excitation)), (i, run, keep, cancel) => scenarios[(int)i].Row(i, run, keep, cancel));
    }

    private static ImmutableArray<ScenarioRow> Read(ImmutableArray<ScenarioInput> inputs)
    {
        ImmutableArray<ReadResult> read = [.. inputs.Select(i => i.ReadAll())];
        if (read.Any(r => r.Scenario is null)) throw new BadInputException(read.SelectMany(r => r.Problems));
        bool alike = read.Select(r => r.Scenario!.Title).Distinct().Count() < read.Length;
        return [.. read.Select((r, i) => new ScenarioRow(alike ? $"{r.Scenario!.Title} ({inputs[i].File})" : r.Scenario!.Title, r.Scenario!, r.Nut))];
    }

    /// <summary>What is compared: the setups, the limits of each one's scenario, the rows of the longest trace among them, and how one of them is run (index, memory used again, whether its row keeps the run).</summary>
    private sealed record Comparison(
        StudyHead Head, SetupPlan Plan, StudyOptions Options, Scenario? Base, Func<long, LimitSet> Limits, Func<double> TraceRows, Func<long, MotionRun, bool, CancellationToken, StudyRow> One)
    {
        // The pictures need the runs of the setups that are drawn: those few are run again.
        public void Gather(Gathering gathering, Action<StudyRow> take, CancellationToken cancel)
        {
            int drawn = 0;
            var run = new MotionRun();
            gathering.Produce(Plan, row => take(row.Figures is not null && drawn++ < CompareFiles.MostDrawn ? row with { Run = One(row.Index, run, true, cancel).Run } : row), cancel);
        }
    }

    /// <summary>One of several scenarios, each its own base.</summary>
    private sealed record ScenarioRow(string Title, Scenario Scenario, NutRule? Nut)
    {
        public StudyRow Row(long index, MotionRun run, bool keep, CancellationToken cancel)
        {
            var request = new SetupRequest(Title, []);
            try
            {
                RunResult result = SingleRun.Of(Scenario, CourseModel.Of(Scenario, cancel), run, keep, cancel);
                return StudyRow.Of(index, request, Nut, "", result, keep);
            }
            catch (CornerException e)
            {
                return new StudyRow(index, request, Nut, $"{e.Key}: {e.Found}; wanted {e.Wanted}", null, null);
            }
        }
    }
}
