using Xunit;

namespace QuarterCar.Studies.Tests;

/// <summary>What holds for every scenario that ships.</summary>
public class ScenarioFolderTests
{
    // The one that shows what a broken limit looks like; its opening comment says so.
    private const string BrokenOnPurpose = "quarry-ledge-late-crossover";

    public static TheoryData<string> Names => [.. Scenes.Names];

    [Theory, MemberData(nameof(Names))]
    public void Opens_with_what_it_teaches_and_where_to_look(string name)
    {
        string[] opening = [.. File.ReadLines(Scenes.PathOf(name)).TakeWhile(l => l.StartsWith('#'))];
        Assert.True(opening.Length >= 3, $"{opening.Length} lines of comment");
        Assert.Contains(opening, l => l.Contains("invented", StringComparison.Ordinal));
        Assert.Contains(opening, l => l.Contains("Look at:", StringComparison.Ordinal));
    }

    [Theory, MemberData(nameof(Names))]
    public void Runs_to_its_end_inside_its_limits(string name)
    {
        RunResult run = Scenes.Run(name);
        Assert.Equal(RunEnds.Finished, run.Figures.Run.End);
        Assert.Equal(name == BrokenOnPurpose, run.Limits.Any(l => l.Broken));
    }

    [Theory, MemberData(nameof(Names))]
    public void Energy_closes_within_1e_5_at_the_default_tolerance(string name) =>
        Assert.InRange(Math.Abs(Scenes.Run(name).Figures.Energy.ResidualRelative), 0, 1e-5);

    [Theory, MemberData(nameof(Names))]
    public void Energy_closes_within_1e_7_at_a_tolerance_of_1e_9(string name) =>
        Assert.InRange(Math.Abs(Scenes.Run(name, "run.tolerance=1e-9").Figures.Energy.ResidualRelative), 0, 1e-7);

    [Theory, MemberData(nameof(Names))]
    public void Every_load_case_stands_within_the_stroke(string name)
    {
        foreach (string c in Scenes.Read(name).Cases.Select(c => c.Name))
            Assert.InRange(Scenes.CheckCase(name, c).Figures.RideHeight, 0, Scenes.Check(name).Corner.Stroke);
    }
}
