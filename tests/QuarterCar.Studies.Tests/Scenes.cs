using System.Collections.Concurrent;

using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Reading;
using QuarterCar.TestKit.Programs;

namespace QuarterCar.Studies.Tests;

/// <summary>The scenarios that ship under scenarios/, read and run once per test process.</summary>
internal static class Scenes
{
    /// <summary>m an inch (international inch, 1959).</summary>
    public const double Inch = 0.0254;

    /// <summary>N a pound-force (international pound 0.45359237 kg, 1959; 9.80665 m/s², CGPM 1901).</summary>
    public const double Pound = 0.45359237 * 9.80665;

    /// <summary>N/m a pound-force per inch.</summary>
    public const double PoundPerInch = Pound / Inch;

    private static readonly ConcurrentDictionary<string, RunResult> s_runs = new();

    /// <summary>File names without ending.</summary>
    public static IEnumerable<string> Names { get; } =
        [.. Directory.GetFiles(Checkout.At("scenarios"), "*.yaml").Select(f => Path.GetFileNameWithoutExtension(f)).Order(StringComparer.Ordinal)];

    public static string PathOf(string name) => Checkout.At("scenarios", name + ".yaml");

    public static ReadResult Reading(string name, ReadOptions options) => ScenarioReader.Read(PathOf(name), options);

    public static Scenario Read(string name, params string[] sets) => Good(Reading(name, Options(sets)));

    public static Scenario Case(string name, string loadCase) => Good(Reading(name, Options([]) with { Case = loadCase }));

    public static StandingResult Check(string name, params string[] sets) => StandingStudy.Of(Read(name, sets));

    public static StandingResult CheckCase(string name, string loadCase) => StandingStudy.Of(Case(name, loadCase));

    public static RunResult Run(string name, params string[] sets) =>
        s_runs.GetOrAdd(name + "\n" + string.Join('\n', sets), _ => SingleRun.Of(Read(name, sets)));

    /// <summary>The largest peak force among the contacts of one kind, N.</summary>
    public static double Hardest(RunResult run, string kind = "bump_stop") =>
        run.Figures.Bottoming.Where(c => c.Kind == kind).Max(c => c.PeakForce);

    public static int Count(RunResult run, string e) => run.Figures.Counts.Single(c => c.Key == e).Value;

    public static EventRow First(RunResult run, string e) => run.Events.First(r => r.Event == e);

    public static Scenario Good(ReadResult read) => read.Scenario ?? throw new InvalidOperationException(string.Join('\n', read.Problems));

    private static ReadOptions Options(string[] sets) => ReadOptions.Plain with { Sets = [.. sets], Base = StandingBase.Instance };
}
