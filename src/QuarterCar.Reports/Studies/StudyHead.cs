using System.Collections.Immutable;

using QuarterCar.Reports.Words;
using QuarterCar.Scenarios;
using QuarterCar.Studies.Setups;

namespace QuarterCar.Reports.Studies;

/// <summary>What a study's files say about all of its setups.</summary>
/// <param name="Study">compare, sweep or spread: also the name of its files.</param>
/// <param name="Title">Of the base, or of all scenarios.</param>
/// <param name="Hash">Of the base's content; of several scenarios, joined with '+'.</param>
/// <param name="Units">Of report and screen.</param>
/// <param name="Paths">Varied paths, in order.</param>
/// <param name="Hold">none, ride_height, ride_height,crossover.</param>
/// <param name="Setups">How many in the whole study.</param>
/// <param name="Part">This part, from 1.</param>
/// <param name="Parts">Of so many.</param>
/// <param name="Seed">Of drawn setups; null where nothing is drawn.</param>
public sealed record StudyHead(
    string Study, string Title, string Hash, UnitSystem Units, ImmutableArray<string> Paths, string Hold, long Setups, int Part = 1, int Parts = 1, ulong? Seed = null)
{
    /// <summary>False where several scenarios drive another ground or at another speed: their figures do not tell which setup is better.</summary>
    public bool OneObstacle { get; init; } = true;

    /// <summary>The verdict of a part to which no setup fell.</summary>
    internal const string NoSetups = "This part has no setups: there are more parts than setups.";

    /// <summary>Says that this is not the whole study; empty where it is.</summary>
    internal string PartWords => Parts == 1 ? "" : FormattableString.Invariant($"This is part {Part} of {Parts}: everything here is about its own setups alone; 'gather' puts the parts together.");

    /// <summary>True where <see cref="Cautions.Springs"/> belongs to the answer.</summary>
    internal bool Wrenched => Cautions.Wrenched(Paths, Hold != HoldWord(HoldRule.None));

    /// <summary>Of a study over one base.</summary>
    public static StudyHead Of(string study, StudyBase from, SetupPlan plan, StudyOptions options) => new(
        study, from.Scenario.Title, from.Scenario.Hash, from.Scenario.Units, plan.Paths, HoldWord(from.Hold), plan.Count, options.Part, options.Parts);

    /// <summary>The hold as on the command line.</summary>
    public static string HoldWord(HoldRule hold) => hold switch
    {
        HoldRule.RideHeight => "ride_height",
        HoldRule.RideHeightAndCrossover => "ride_height,crossover",
        _ => "none",
    };
}
