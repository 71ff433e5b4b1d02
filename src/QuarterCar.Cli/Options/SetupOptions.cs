using System.Collections.Immutable;
using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;

using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Scenarios.SpringLists;
using QuarterCar.Studies.Setups;

namespace QuarterCar.Cli.Options;

/// <summary>What the studies take beside a scenario: how its setups differ (--vary, --split, --setups), what each keeps (--hold), threads and part.</summary>
internal sealed class SetupOptions
{
    private readonly Option<string[]> _vary = new("--vary") { HelpName = "PATH=V1,V2,…", Description = "Values of a path; one unit at the end may serve all: --vary coilover.stop_nut.gap='0.8,1.3,1.9 in'. Several make a grid, the last fastest." };
    private readonly Option<string[]> _split = new("--split") { HelpName = "U1/L1,U2/L2,…", Description = "Upper and lower spring rate together, like '150/250,175/225 lbf/in'." };
    private readonly Option<string?> _springs = new("--springs") { HelpName = "LIST.csv", Description = "With --split: the lengths come from the list's spring of that rate, the one nearest in free length to the scenario's. [default: lengths stay]" };
    private readonly Option<string[]> _setups = new("--setups") { HelpName = "FILE.csv", Description = "A list of setups: a column a path ('title' optional), a row a setup." };
    private readonly Option<string?> _hold = new("--hold") { HelpName = "ride_height[,crossover]", Description = "Finds for each setup the preload that keeps the scenario's ride height, and the stop-nut gap that keeps its crossover." };
    private readonly Option<string?> _jobs = new("--jobs") { HelpName = "N", Description = "How many at a time, at most four for each core. [default: one for each core]" };
    private readonly Option<string?> _part = new("--part") { HelpName = "K/N", Description = "Runs every N-th setup from the K-th; 'gather' puts the parts together." };

    /// <summary>Adds them to a verb.</summary>
    /// <param name="command">The verb.</param>
    /// <param name="parts">False for a verb that cannot be done in parts.</param>
    /// <param name="vary">The help line of --vary where this verb reads it in another way.</param>
    /// <param name="setups">False for a verb that makes its setups itself.</param>
    public SetupOptions(Command command, bool parts = true, string? vary = null, bool setups = true)
    {
        if (vary is not null) _vary.Description = vary;
        PathCompletions.Paths(_vary);
        _hold.CompletionSources.Add("ride_height", "ride_height,crossover");
        foreach (Option option in setups ? new Option[] { _vary, _split, _springs, _setups } : []) command.Add(option);
        if (setups || parts) command.Add(_hold);
        command.Add(_jobs);
        if (parts) command.Add(_part);
    }

    /// <summary>True where anything is given that makes setups of one scenario.</summary>
    public bool AnySetups(ParseResult parsed) =>
        new Option[] { _vary, _split, _setups, _springs, _hold }.Any(o => parsed.GetResult(o) is OptionResult { Implicit: false });

    /// <summary>The study that is asked for.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="input">The scenario.</param>
    /// <param name="readVary">Reads one --vary in place of <see cref="VaryText.Read"/>.</param>
    /// <exception cref="BadInputException">With every mistake of scenario, values and lists.</exception>
    public StudySetups Read(ParseResult parsed, ScenarioInput input, Func<string, ValueCheck, SetupAxis?>? readVary = null)
    {
        var problems = new ProblemList();
        var document = input.Load(problems);
        ReadResult? read = document is null ? null : ScenarioReader.Read(document, input.Options);
        foreach (Problem problem in read?.Problems ?? []) problems.Note(problem);
        var check = new ValueCheck(read?.Scenario is null ? null : document, input.Options, problems);
        ImmutableArray<SetupAxis> axes = Axes(parsed, input, check, readVary ?? VaryText.Read, read?.Scenario);
        HoldRule hold = Hold(parsed, problems);
        StudyOptions options = Engine(parsed, problems);
        if (problems.Count > 0) throw new BadInputException(problems.ToImmutable());
        return new(input.Ask(() => new StudyBase(document!, input.Options, read!.Scenario!, hold)), SetupAxis.Product(axes), options) { Axes = axes };
    }

    /// <summary>The base of a study that makes its setups itself, with the setups that it makes.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="input">The scenario.</param>
    /// <param name="plan">Makes them, or notes why it cannot; asked only where the scenario is good.</param>
    /// <exception cref="BadInputException">With every mistake.</exception>
    public StudySetups ReadBase(ParseResult parsed, ScenarioInput input, Func<Scenario, ProblemList, SetupPlan?> plan)
    {
        var problems = new ProblemList();
        var document = input.Load(problems);
        ReadResult? read = document is null ? null : ScenarioReader.Read(document, input.Options);
        foreach (Problem problem in read?.Problems ?? []) problems.Note(problem);
        HoldRule hold = Hold(parsed, problems);
        StudyOptions options = Engine(parsed, problems);
        SetupPlan? setups = read?.Scenario is { } scenario ? plan(scenario, problems) : null;
        if (problems.Count > 0 || setups is null) throw new BadInputException(problems.ToImmutable());
        return new(input.Ask(() => new StudyBase(document!, input.Options, read!.Scenario!, hold)), setups, options);
    }

    /// <summary>Threads and part alone, for studies of several scenarios.</summary>
    /// <exception cref="BadInputException">With every mistake.</exception>
    public StudyOptions Engine(ParseResult parsed)
    {
        var problems = new ProblemList();
        StudyOptions options = Engine(parsed, problems);
        return problems.Count == 0 ? options : throw new BadInputException(problems.ToImmutable());
    }

    private ImmutableArray<SetupAxis> Axes(ParseResult parsed, ScenarioInput input, ValueCheck check, Func<string, ValueCheck, SetupAxis?> readVary, Scenario? scenario)
    {
        int before = check.Problems.Count;
        ImmutableArray<SetupAxis> axes =
        [
            .. (parsed.GetValue(_setups) ?? []).Select(t => SetupsFile.Read(input.At(t), check, input.Copy(t))).OfType<SetupAxis>(),
            .. (parsed.GetValue(_split) ?? []).Select(t => WithSprings(parsed, input, SplitText.Read(t, check), scenario, check.Problems)).OfType<SetupAxis>(),
            .. (parsed.GetValue(_vary) ?? []).Select(t => readVary(t, check)).OfType<SetupAxis>(),
        ];
        foreach (string twice in axes.SelectMany(a => a.Paths).GroupBy(VariedPaths.Canonical, StringComparer.Ordinal).Where(g => g.Count() > 1).Select(g => g.Key))
            check.Problems.Note(new Place("the setups", 0, 0), twice, "a path that is varied twice", "each path once among --vary, --split and --setups");
        if (parsed.GetValue(_springs) is not null && parsed.GetResult(_split) is not { Implicit: false })
            check.Problems.Note(new Place("--springs", 0, 0), "", "a list of springs without --split", "--split with rates that are looked up in it, or no list");
        double count = SetupAxis.Count(axes);
        if (count > SetupAxis.Most)
            check.Problems.Note(new Place("the setups", 0, 0), "", $"a grid of {count.ToString("#,0", CultureInfo.InvariantCulture)} setups", $"at most {SetupAxis.Most.ToString("#,0", CultureInfo.InvariantCulture)}: fewer values or fewer paths");
        else if (axes.IsEmpty && check.Problems.Count == before)
            check.Problems.Note(new Place("the setups", 0, 0), "", Texts.Nothing, "at least one of --vary, --split and --setups" + (parsed.CommandResult.Command.Arguments[0].Arity.MaximumNumberOfValues > 1 ? ", or a second scenario" : ""));
        return axes;
    }

    private SetupAxis? WithSprings(ParseResult parsed, ScenarioInput input, SetupAxis? split, Scenario? scenario, ProblemList problems)
    {
        if (split is null || scenario is null || parsed.GetValue(_springs) is not { } file) return split;
        return SpringListReader.Read(input.At(file), problems, input.Copy(file)) is { } list ? SplitSprings.Of(split, list, scenario.Corner.Coilover.Springs, problems) : null;
    }

    private HoldRule Hold(ParseResult parsed, ProblemList problems)
    {
        if (parsed.GetValue(_hold) is not { } text) return HoldRule.None;
        switch (text.Replace(" ", "", StringComparison.Ordinal))
        {
            case "ride_height":
                return HoldRule.RideHeight;
            case "ride_height,crossover" or "crossover,ride_height":
                return HoldRule.RideHeightAndCrossover;
            default:
                problems.Note(new Place("--hold", 0, 0), "", Texts.Quote(text), "ride_height or ride_height,crossover");
                return HoldRule.None;
        }
    }

    private StudyOptions Engine(ParseResult parsed, ProblemList problems)
    {
        int jobs = Environment.ProcessorCount, part = 1, parts = 1;
        if (parsed.GetValue(_jobs) is { } text && !(Whole(text, out jobs) && jobs >= 1))
            problems.Note(new Place("--jobs", 0, 0), "", Texts.Quote(text), "a whole number of 1 or more");
        if (parsed.CommandResult.Command.Options.Contains(_part) && parsed.GetValue(_part) is { } share)
        {
            string[] two = share.Split('/');
            if (two.Length != 2 || !Whole(two[0], out part) || !Whole(two[1], out parts) || part < 1 || part > parts)
            {
                problems.Note(new Place("--part", 0, 0), "", Texts.Quote(share), "K/N with K from 1 to N, like 2/4");
                (part, parts) = (1, 1);
            }
        }

        return new StudyOptions(Math.Max(1, jobs), part, parts);
    }

    private static bool Whole(string text, out int number) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out number);
}
