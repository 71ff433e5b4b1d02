using System.Collections.Immutable;

using QuarterCar.Model;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Reading;

namespace QuarterCar.Studies.Sweeps;

/// <summary>One realistic step of each adjustable thing, ranked by what it does to the goal.</summary>
/// <param name="Scenario">The scenario as written.</param>
/// <param name="Goal">What is looked for.</param>
/// <param name="Base">The goal's figure as written; null where it does not apply.</param>
/// <param name="Invented">True where springs come from the lists that ship.</param>
/// <param name="Steps">Best first; steps without a figure last.</param>
public sealed record TweakResult(Scenario Scenario, Goal Goal, double? Base, bool Invented, ImmutableArray<TweakOutcome> Steps)
{
    /// <summary>Metal or bound coils that the corner stands on as written, in words; null where its springs hold it up.</summary>
    public string? Rest { get; init; }

    /// <summary>True where the corner meets metal or binds its coils as written, or stands so.</summary>
    public bool MeetsMetal { get; init; }

    /// <summary>True where a step could not be run.</summary>
    public bool Failed => Steps.Any(s => !s.Ran);
}

/// <summary>A step that a hand or a wrench can make.</summary>
/// <param name="Path">What is set, as the scenario names it.</param>
/// <param name="What">The step in words ("coil nut one turn down, 1.5 mm").</param>
/// <param name="From">Before, SI; 1 for a table that is multiplied.</param>
/// <param name="To">After, SI; the factor for a table that is multiplied.</param>
/// <param name="Change">What the scenario changes for it.</param>
/// <param name="UnderLoad">True where springs are touched: the caution about springs and gas belongs to it.</param>
public sealed record TweakStep(string Path, string What, double From, double To, Setups.SetupValue Change, bool UnderLoad)
{
    /// <summary>The spring that is fitted by the step; null where none is.</summary>
    public SpringData? Spring { get; init; }
}

/// <summary>What a step does.</summary>
/// <param name="Step">The step.</param>
/// <param name="Goal">The goal's figure after it; null where it could not be run or the figure does not apply.</param>
/// <param name="Change">After less before.</param>
/// <param name="SideEffects">Changes of ride height, clearance and fit by dotted name, SI; only those that apply before and after.</param>
/// <param name="LimitsBroken">Limits that the step newly breaks.</param>
/// <param name="EventChanges">Contacts and changes of rate that appear or vanish.</param>
/// <param name="Reason">Why it cannot be done; null where it can.</param>
public sealed record TweakOutcome(
    TweakStep Step,
    double? Goal,
    double? Change,
    ImmutableArray<KeyValuePair<string, double>> SideEffects,
    ImmutableArray<string> LimitsBroken,
    ImmutableArray<EventChange> EventChanges,
    string? Reason)
{
    /// <summary>Metal or bound coils that the corner stands on with it, in words; null where its springs hold it up.</summary>
    public string? Rest { get; init; }

    /// <summary>True where the corner meets metal or binds its coils with it, or stands so.</summary>
    public bool MeetsMetal { get; init; }

    /// <summary>Limits that are broken with it as they are without.</summary>
    public ImmutableArray<string> LimitsStillBroken { get; init; } = [];

    /// <summary>Where the stop nut then stands: set anew, or where it was; null without one.</summary>
    public NutRule? Nut { get; init; }

    /// <summary>False where it could not be run.</summary>
    public bool Ran { get; init; } = true;

    /// <summary>True where parts and lengths allow the step.</summary>
    public bool Feasible => Reason is null;
}

/// <summary>An event that happens only before or only after a step, so that no slope describes what the step does.</summary>
/// <param name="Event">Event name.</param>
/// <param name="Before">How often before.</param>
/// <param name="After">How often after.</param>
public sealed record EventChange(string Event, int Before, int After);
