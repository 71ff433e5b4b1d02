using System.Collections.Immutable;

using QuarterCar.Scenarios;
using QuarterCar.Studies.Setups;

namespace QuarterCar.Cli.Options;

/// <summary>A study as asked for: its base, its setups, how it is carried out.</summary>
/// <param name="Base">The scenario that the setups change.</param>
/// <param name="Plan">The setups.</param>
/// <param name="Options">Threads and part.</param>
internal sealed record StudySetups(StudyBase Base, SetupPlan Plan, StudyOptions Options)
{
    /// <summary>What the plan is the product of, for studies that go their own way through it.</summary>
    public ImmutableArray<SetupAxis> Axes { get; init; } = [];

    /// <summary>The base's scenario.</summary>
    public Scenario Scenario => Base.Scenario;
}
