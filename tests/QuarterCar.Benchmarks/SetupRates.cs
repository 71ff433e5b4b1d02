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

/// <summary>A study of the ledge's setups against a bare loop over the same runs and their figures, in turn, in one process: rates, allocation, scaling.</summary>
internal sealed class SetupRates
{
    private const string Name = "quarry_ledge";

    private readonly StudyBase _study;
    private readonly SetupPlan _plan;
    private readonly ImmutableArray<SetupRequest> _requests;
    private readonly Scenario[] _scenarios;

    private SetupRates(int rates, int gaps)
    {
        var problems = new ProblemList();
        ScenarioDocument document = ScenarioDocument.Load(Path.Combine(Yard.Folder, Name + ".yaml"), problems)!;
        var options = new ReadOptions(null, [], null, null, StandingBase.Instance);
        _study = new StudyBase(document, options, ScenarioReader.Read(document, options).Scenario!);
        _plan = new RangeText(document, problems).Sweep([
            string.Create(CultureInfo.InvariantCulture, $"coilover.springs.upper.rate=150:200:{rates} lbf/in"),
            string.Create(CultureInfo.InvariantCulture, $"coilover.stop_nut.gap=0.5:2:{gaps} in")])?.Plan() ?? throw new InvalidOperationException(string.Join('\n', problems.ToImmutable()));
        _requests = [.. Enumerable.Range(0, (int)_plan.Count).Select(i => _plan.At(i))];
        _scenarios = [.. _requests.Select(r => _study.Make(r).Scenario)];
    }

    /// <summary>Where the time of a setup goes, µs.</summary>
    public static void Profile()
    {
        var rates = new SetupRates(10, 50);
        for (int i = 0; i < 12; i++)
            rates.Once(false);
        rates.Once(true);
    }

    private void Once(bool print)
    {
        var run = new MotionRun();
        double plan = 0, make = 0, course = 0, standing = 0, move = 0, figures = 0, values = 0, single = 0;
        long allMake = 0, allStanding = 0, allMove = 0, allFigures = 0, allValues = 0;
        for (int i = 0; i < _scenarios.Length; i++)
        {
            long t0 = Stopwatch.GetTimestamp();
            SetupRequest request = _plan.At(i);
            long t1 = Stopwatch.GetTimestamp(), a1 = GC.GetAllocatedBytesForCurrentThread();
            Setup setup = _study.Make(request);
            long t2 = Stopwatch.GetTimestamp(), a2 = GC.GetAllocatedBytesForCurrentThread();
            CourseModel c = _study.Course(setup.Scenario);
            long t3 = Stopwatch.GetTimestamp(), a3 = GC.GetAllocatedBytesForCurrentThread();
            StandingResult s = StandingStudy.FiguresOf(setup.Scenario);
            long t4 = Stopwatch.GetTimestamp(), a4 = GC.GetAllocatedBytesForCurrentThread();
            RunTrack track = SingleRun.Move(s, c, run, false);
            long t5 = Stopwatch.GetTimestamp(), a5 = GC.GetAllocatedBytesForCurrentThread();
            RunResult r = SingleRun.Of(setup.Scenario, c, run, false);
            long t7 = Stopwatch.GetTimestamp(), a7 = GC.GetAllocatedBytesForCurrentThread();
            ImmutableArray<double?> v = FigureTable.Values(r.Standing.Figures, r.Figures);
            long t8 = Stopwatch.GetTimestamp(), a8 = GC.GetAllocatedBytesForCurrentThread();
            plan += t1 - t0; make += t2 - t1; course += t3 - t2; standing += t4 - t3; move += t5 - t4; single += t7 - t5; values += t8 - t7;
            figures += (t7 - t5) - (t5 - t3);
            allMake += a2 - a1; allStanding += a4 - a3; allMove += a5 - a4; allFigures += (a7 - a5) - (a5 - a3); allValues += a8 - a7;
        }

        if (print)
        {
            double n = _scenarios.Length * Stopwatch.Frequency / 1e6;
            Console.WriteLine($"plan {plan / n:0.0} make {make / n:0.0} course {course / n:0.0} standing {standing / n:0.0} move {move / n:0.0} single {single / n:0.0} figures {figures / n:0.0} values {values / n:0.0}");
            Console.WriteLine($"bytes: make {allMake / _scenarios.Length} standing {allStanding / _scenarios.Length} move {allMove / _scenarios.Length} figures {allFigures / _scenarios.Length} values {allValues / _scenarios.Length}");
        }
    }
}
