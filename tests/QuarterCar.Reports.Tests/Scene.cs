using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Studies;
using QuarterCar.TestKit.Programs;

namespace QuarterCar.Reports.Tests;

/// <summary>The scenarios that ship, with overrides: for words and pictures that no reference run calls for.</summary>
internal static class Scene
{
    public static StandingResult Check(string name, params string[] sets) => StandingStudy.Of(Read(name, sets));

    public static RunResult Run(string name, params string[] sets) => SingleRun.Of(Read(name, sets));

    public static string Plain(string text) => text.Replace('\u00a0', ' ');

    private static Scenario Read(string name, string[] sets)
    {
        var read = ScenarioReader.Read(Checkout.At("scenarios", name + ".yaml"), ReadOptions.Plain with { Sets = [.. sets], Base = StandingBase.Instance });
        return read.Scenario ?? throw new InvalidOperationException(string.Join('\n', read.Problems));
    }
}
