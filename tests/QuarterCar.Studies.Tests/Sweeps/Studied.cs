using System.Collections.Immutable;

using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Studies.Setups;
using QuarterCar.Studies.Sweeps;

using Xunit;

namespace QuarterCar.Studies.Tests.Sweeps;

/// <summary>A scenario's text as the base of a study.</summary>
internal sealed class Studied
{
    private readonly string _text;

    public Studied(string text)
    {
        _text = text;
        Document = ScenarioDocument.Parse("test.yaml", text, null, new ProblemList())!;
        ReadResult read = ScenarioReader.Read(Document, Options);
        Assert.Empty(read.Problems);
        Base = new StudyBase(Document, Options, read.Scenario!);
    }

    public ScenarioDocument Document { get; }

    public StudyBase Base { get; }

    private static ReadOptions Options => new(null, [], null, null, StandingBase.Instance);

    public static StudyOptions Jobs(int jobs) => new(jobs);

    public SweepGrid Grid(params string[] vary)
    {
        var problems = new ProblemList();
        SweepGrid? grid = new RangeText(Document, [], problems).Sweep(vary);
        Assert.Empty(problems.ToImmutable());
        return grid!;
    }

    public ImmutableArray<Problem> Mistakes(params string[] vary)
    {
        var problems = new ProblemList();
        Assert.Null(new RangeText(Document, [], problems).Sweep(vary));
        return problems.ToImmutable();
    }

    public ReachSetup Reach(string way, int jobs = 2) => Reach(way, new SetupPlan([], 1, _ => new SetupRequest("", [])), jobs).Setups.Single();

    public ReachResult Reach(string way, SetupPlan setups, int jobs = 2)
    {
        var problems = new ProblemList();
        SweepAxis? axis = new RangeText(Document, [], problems).Reach(way);
        Assert.Empty(problems.ToImmutable());
        return ReachStudy.Run(Base, axis!, setups, Jobs(jobs));
    }

    public (SweepResult Result, List<StudyRow> Rows) Sweep(Goal goal, StudyOptions options, params string[] vary)
    {
        var rows = new List<StudyRow>();
        return (SweepStudy.Run(Base, Grid(vary), goal, options, rows.Add), rows);
    }

    /// <summary>The scenario run alone with some overrides, by no study.</summary>
    public RunResult Alone(params string[] sets)
    {
        ReadResult read = ScenarioReader.ReadText("test.yaml", _text, Options with { Sets = [.. sets] });
        Assert.Empty(read.Problems);
        return SingleRun.Of(read.Scenario!);
    }
}
