using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;

using QuarterCar.Model.Motion;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Studies;
using QuarterCar.Studies.Setups;
using QuarterCar.Studies.Sweeps;

namespace QuarterCar.Benchmarks;

/// <summary>A sweep of the ledge's setups against a bare loop over the same runs with their figures, in turn, in one process: rates, allocation, scaling.</summary>
internal sealed class SetupRates
{
    private const string Name = "quarry_ledge";
    private const int WarmRounds = 8, Rounds = 21;

    private readonly StudyBase _study;
    private readonly SetupPlan _plan;
    private readonly (Scenario Scenario, CourseModel Course)[] _made;
    private readonly MotionRun _run = new();

    private SetupRates(int rates, int gaps)
    {
        var problems = new ProblemList();
        ScenarioDocument document = ScenarioDocument.Load(Path.Combine(Yard.Folder, Name + ".yaml"), problems)!;
        var options = new ReadOptions(null, [], null, null, StandingBase.Instance);
        _study = new StudyBase(document, options, ScenarioReader.Read(document, options).Scenario!);
        _plan = new RangeText(document, [], problems).Sweep([
            string.Create(CultureInfo.InvariantCulture, $"coilover.springs.upper.rate=150:200:{rates} lbf/in"),
            string.Create(CultureInfo.InvariantCulture, $"coilover.stop_nut.gap=0.5:2:{gaps} in")])!.Plan();
        Scenario[] scenarios = [.. Enumerable.Range(0, (int)_plan.Count).Select(i => _study.Make(_plan.At(i)).Scenario)];
        _made = [.. scenarios.Select(s => (s, _study.Course(s)))];
    }

    /// <summary>Prints the lines.</summary>
    public static void Print()
    {
        var rates = new SetupRates(10, 40);
        for (int i = 0; i < WarmRounds; i++)
            (_, _, _) = (rates.Bare(), rates.Study(1), rates.Study(2));
        var rows = Enumerable.Range(0, Rounds).Select(_ => (Bare: rates.Bare(), One: rates.Study(1), Two: rates.Study(2))).ToList();
        double n = rates._plan.Count, one = Median(rows.Select(r => r.One)), two = Median(rows.Select(r => r.Two));
        Line($"{Name} setups_per_s_1={n / one:0} setups_per_s_2={n / two:0} scaling={Median(rows.Select(r => r.One / r.Two)):0.00}");
        Line($"{Name} study_over_bare_loop={Median(rows.Select(r => r.One / r.Bare)):0.000} bytes_per_setup={rates.Bytes(() => rates.Study(1)):0} bytes_per_bare_run={rates.Bytes(() => rates.Bare()):0}");
    }

    // The runs and their figures with nothing around them, s.
    private double Bare()
    {
        long start = Stopwatch.GetTimestamp();
        foreach ((Scenario scenario, CourseModel course) in _made)
        {
            RunResult result = SingleRun.Of(scenario, course, _run, keep: false);
            ImmutableArray<double?> figures = FigureTable.Values(result.Standing.Figures, result.Figures);
            GC.KeepAlive(figures.Length);
        }

        return Stopwatch.GetElapsedTime(start).TotalSeconds;
    }

    // The same as a study, s.
    private double Study(int jobs)
    {
        long start = Stopwatch.GetTimestamp(), rows = 0;
        StudyEngine.Run(_study, _plan, new StudyOptions(jobs), row => rows += row.Figures is null ? 0 : 1, null, CancellationToken.None);
        return rows == _plan.Count ? Stopwatch.GetElapsedTime(start).TotalSeconds : throw new InvalidOperationException("a setup could not be run");
    }

    private double Bytes(Action action)
    {
        long before = GC.GetTotalAllocatedBytes(precise: true);
        action();
        return (GC.GetTotalAllocatedBytes(precise: true) - before) / (double)_plan.Count;
    }

    private static double Median(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return sorted[sorted.Length / 2];
    }

    private static void Line(FormattableString line) => Console.WriteLine(line.ToString(CultureInfo.InvariantCulture));
}
