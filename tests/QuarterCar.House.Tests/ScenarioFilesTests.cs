using System.Text.Json;

using QuarterCar.TestKit;
using QuarterCar.TestKit.Programs;

namespace QuarterCar.House.Tests;

/// <summary>Every scenario that ships can be checked, runs to its end, and its energy closes.</summary>
public sealed class ScenarioFilesTests
{
    private static readonly Tolerance s_closes = new(1e-5, "the default tolerance leaves less than 1e-6 of the energy on every reference run; a lost term leaves a hundred times more than this");

    public static TheoryData<string> Files =>
        [.. Directory.EnumerateFiles(Checkout.At("scenarios"), "*.yaml").Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Files))]
    public void Scenario_runs_to_its_end_and_its_energy_closes(string file)
    {
        var result = ProgramProcess.Run(Checkout.Root, "run", "scenarios/" + file, "--json");
        Assert.True(result.Code is 0 or 1, result.Messages);
        using var summary = JsonDocument.Parse(result.Out);
        Assert.Equal("finished", summary.RootElement.GetProperty("run").GetProperty("end").GetString());
        s_closes.Holds(0, summary.RootElement.GetProperty("energy").GetProperty("residual_relative").GetDouble(), file);
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Scenario_can_be_checked(string file)
    {
        var result = ProgramProcess.Run(Checkout.Root, "check", "scenarios/" + file);
        Assert.Equal((0, ""), (result.Code, result.Messages));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Scenario_names_its_schema_in_the_first_line(string file) =>
        Assert.Equal("# yaml-language-server: $schema=scenario.schema.json", File.ReadLines(Checkout.At("scenarios/" + file)).First());

    [Fact]
    public void Schema_beside_the_scenarios_is_what_the_program_prints()
    {
        var result = ProgramProcess.Run(Checkout.Root, "schema");
        Assert.Equal((0, ""), (result.Code, result.Messages));
        Assert.Equal(File.ReadAllText(Checkout.At("scenarios/scenario.schema.json")), result.Out);
    }
}
