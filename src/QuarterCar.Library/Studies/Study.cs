using QuarterCar.Reports.Plots;
using QuarterCar.Scenarios;
using QuarterCar.Studies.Setups;
using QuarterCar.Studies.Spreads;
using QuarterCar.Studies.Sweeps;

namespace QuarterCar;

/// <summary>
/// Setup against setup over the same obstacle, on all cores, the same bits for any number of threads. "Best" and "largest" are what one model corner
/// survives: no safe speed and no safe height.
/// </summary>
public static class Study
{
    /// <summary>Runs setups of one scenario. A setup that cannot be keeps its row and says why; one bad setup never loses the others.</summary>
    /// <param name="scenario">The base; as written it is no row unless a setup without changes asks for it.</param>
    /// <param name="setups">At least one.</param>
    /// <param name="hold">What each setup keeps of the base.</param>
    /// <param name="keepRuns">True to have each row's run, its trace among it; takes memory a setup.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="ScenarioException">A path or a value is wrong, or there is nothing to hold.</exception>
    public static IReadOnlyList<SetupRow> Compare(
        Scenario scenario, IEnumerable<SetupDraft> setups, Hold hold = Hold.Nothing, bool keepRuns = false, CancellationToken cancel = default)
    {
        var plan = SetupDraft.Plan(scenario, setups);
        var rows = new List<SetupRow>();
        StudyEngine.Run(Base(scenario, hold), plan, StudyOptions.Default with { KeepRuns = keepRuns ? StudyOptions.All : 0 }, row => rows.Add(new SetupRow(row)), null, cancel);
        return rows;
    }

    /// <summary>The pictures of `compare`, setups laid over each other and lettered from A: shaft_travel, travel_use, force_travel. None where no row has its run.</summary>
    /// <param name="rows">Rows that keep their run; the first six are drawn, more could not be told apart.</param>
    public static IReadOnlyList<Picture> Pictures(IEnumerable<SetupRow> rows) =>
        Picture.All(DrawnPicture.Of([.. rows.Where(r => r.Run is not null).Select(r => (r.Title, r.Run!.Result))]));

    /// <summary>Figures over a grid, both ends of every way included, and the best point inside the limits.</summary>
    /// <param name="scenario">The base.</param>
    /// <param name="ways">Ways in the form of the command line: "coilover.stop_nut.gap=0.5:2:16 in"; the last is fastest.</param>
    /// <param name="goal">"FIGURE:least" or "FIGURE:most".</param>
    /// <param name="hold">What each setup keeps of the base.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="ScenarioException">A way or the goal is wrong, or there is nothing to hold.</exception>
    public static SweepAnswer Sweep(
        Scenario scenario, IReadOnlyList<string> ways, string goal = "acceleration.peak_g:least", Hold hold = Hold.Nothing, CancellationToken cancel = default)
    {
        var problems = new ProblemList();
        SweepGrid? grid = new RangeText(scenario.Document, scenario.Options.Sets, problems).Sweep(ways);
        Goal? wanted = Goal.Parse(goal, out string found, out string wants);
        if (wanted is null) problems.Note(new Place("goal", 0, 0), "", found, wants);
        if (grid is null || wanted is null || problems.Count > 0) throw new ScenarioException(problems.ToImmutable());
        var rows = new List<SetupRow>();
        SweepResult result = SweepStudy.Run(Base(scenario, hold), grid, wanted, StudyOptions.Default, row => rows.Add(new SetupRow(row)), null, cancel);
        return new SweepAnswer(rows, result.Best is { } best ? new SetupRow(best) : null, result.Nearest?.Figure)
        {
            Picture = DrawnPicture.Of(result) is { } drawn ? new Picture(drawn) : null,
        };
    }

    /// <summary>How far a path can go before a limit first breaks: scanned first, then closed in on by halving.</summary>
    /// <param name="scenario">The base.</param>
    /// <param name="way">In the form of the command line: "terrain[1].step=-10:-40 in".</param>
    /// <param name="setups">Setups to ask it of; none for the base alone.</param>
    /// <param name="hold">What each setup keeps of the base.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="ScenarioException">The way or a setup is wrong, or there is nothing to hold.</exception>
    public static IReadOnlyList<ReachAnswer> Reach(
        Scenario scenario, string way, IEnumerable<SetupDraft>? setups = null, Hold hold = Hold.Nothing, CancellationToken cancel = default)
    {
        var problems = new ProblemList();
        SweepAxis? axis = new RangeText(scenario.Document, scenario.Options.Sets, problems).Reach(way);
        if (axis is null) throw new ScenarioException(problems.ToImmutable());
        ReachResult result = ReachStudy.Run(Base(scenario, hold), axis, SetupDraft.Plan(scenario, setups ?? [new SetupDraft("as written")], axis.Path), StudyOptions.Default, null, cancel);
        return [.. result.Setups.Select(s => new ReachAnswer(s.Request.Title, s.Largest, s.FirstBroken?.Verdict?.Figure, s.Resolution))];
    }

    /// <summary>How sure is it? The scenario again and again with its uncertain values drawn from their tolerances, by a Latin hypercube.</summary>
    /// <param name="scenario">The base, with tolerances.</param>
    /// <param name="samples">2 or more.</param>
    /// <param name="seed">The same seed gives the same samples in every version.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="ScenarioException">The scenario has no tolerances.</exception>
    public static SpreadAnswer Spread(Scenario scenario, int samples = 1000, ulong seed = 1, CancellationToken cancel = default)
    {
        if (scenario.Read.Tolerances.IsEmpty)
            throw new ScenarioException([new Problem(scenario.Read.File, 0, "tolerances", "nothing", "tolerances of the values that are uncertain")]);
        SetupPlan plan = SpreadPlan.Of(scenario.Read.Tolerances, samples, seed);
        var kept = new SpreadSamples(plan.Paths);
        StudyEngine.Run(Base(scenario, Hold.Nothing), plan, StudyOptions.Default, kept.Add, null, cancel);
        return new SpreadAnswer(SpreadStudy.Of(kept), scenario.Read.Units);
    }

    private static StudyBase Base(Scenario scenario, Hold hold)
    {
        var rule = hold switch { Hold.RideHeight => HoldRule.RideHeight, Hold.RideHeightAndCrossover => HoldRule.RideHeightAndCrossover, _ => HoldRule.None };
        return scenario.Ask(() => new StudyBase(scenario.Document, scenario.Options, scenario.Read, rule));
    }
}

/// <summary>What each setup of a study keeps of the base.</summary>
public enum Hold
{
    /// <summary>Nothing: preload and stop nut as the setup says.</summary>
    Nothing,

    /// <summary>Ride height, by the preload.</summary>
    RideHeight,

    /// <summary>Ride height by the preload, and the crossover's shaft showing by the stop nut.</summary>
    RideHeightAndCrossover,
}
