using System.Collections.Immutable;

using QuarterCar.Model;
using QuarterCar.Model.Statics;
using QuarterCar.Studies.Setups;

namespace QuarterCar.Studies.Sweeps;

/// <summary>What one realistic step of each adjustable thing does to the goal, with its side effects: steps are run, not extrapolated.</summary>
public static class TweakStudy
{
    private static readonly ImmutableArray<(string Name, Func<StandingResult, double?> Value)> Effects =
    [
        ("static.ride_height_m", s => s.Figures.RideHeight),
        ("static.bind_clearance_full_bump_m", s => s.Figures.BindClearanceFullBump),
        ("static.crossover_shaft_showing_m", s => s.Figures.CrossoverShaftShowing),
        ("static.stop_nut_gap_ride_height_m", s => s.Figures.StopNutGapRideHeight),
        ("static.ride_frequency_hz", s => s.Figures.RideFrequency),
        ("fit.nut_from_top_m", s => s.Fit?.NutFromTop),
        ("fit.thread_left_m", s => s.Fit?.ThreadLeft),
        ("fit.radial_clearance_m", s => s.Fit?.RadialClearance),
        ("fit.least_preload_m", s => s.Fit?.LeastPreload),
    ];

    // What begins a contact or changes the rate; what ends it says nothing new.
    private static readonly ImmutableArray<CornerEvent> Touches =
    [
        CornerEvent.BumpStop, CornerEvent.BottomOut, CornerEvent.CoilBind, CornerEvent.TopOut, CornerEvent.UpperBind, CornerEvent.LowerBind,
        CornerEvent.Crossover, CornerEvent.TenderSolid, CornerEvent.Liftoff,
    ];

    /// <summary>Runs it.</summary>
    /// <param name="study">The base.</param>
    /// <param name="goal">What is looked for.</param>
    /// <param name="shelf">Springs to take the next one from.</param>
    /// <param name="options">How; parts do not apply.</param>
    /// <param name="progress">Told how many of how many are done.</param>
    /// <param name="cancel">Stops within one run's time with <see cref="OperationCanceledException"/>.</param>
    public static TweakResult Run(
        StudyBase study, Goal goal, TweakShelf shelf, StudyOptions options, Action<long, long>? progress = null, CancellationToken cancel = default)
    {
        ImmutableArray<TweakStep> steps = new TweakSteps(study.Scenario, StandingWork.Figures(study.Corner), shelf).All();
        var rows = new StudyRow[steps.Length + 1];
        var plan = SetupPlan.List([], [new SetupRequest("as written", []), .. steps.Select(s => new SetupRequest(s.What, [s.Change]))]);
        StudyEngine.Run(study, plan, options with { Part = 1, Parts = 1, KeepRuns = StudyOptions.All }, row => rows[row.Index] = row, progress, cancel);
        StudyRow written = rows[0];
        if (written.Run is null)
            throw new CornerException("coilover", "a scenario that cannot be run as written: " + written.Note, "a scenario that runs");
        double? before = goal.Of(written.Figures);
        ImmutableArray<TweakOutcome> outcomes = [.. steps.Select((s, i) => Outcome(s, written, rows[i + 1], goal))];
        return new TweakResult(study.Scenario, goal, before, shelf.Invented && outcomes.Any(o => o.Step.Spring is not null), [.. Ranked(outcomes, goal)]) { Rest = written.Rest, MeetsMetal = written.MeetsMetal };
    }

    private static IEnumerable<TweakOutcome> Ranked(IEnumerable<TweakOutcome> outcomes, Goal goal) =>
        outcomes.OrderBy(o => o.Goal is null).ThenBy(o => goal.Most ? -o.Goal : o.Goal);

    private static TweakOutcome Outcome(TweakStep step, StudyRow written, StudyRow row, Goal goal)
    {
        if (row.Run is not { } run)
            return new TweakOutcome(step, null, null, [], [], [], row.Note) { Ran = false };
        RunResult before = written.Run!;
        double? value = goal.Of(row.Figures), was = goal.Of(written.Figures);
        // A stop that it leans on at rest breaks a limit on touches of it, which no count tells.
        bool Breaks(RunResult of, int i) => of.Limits[i].Broken || AtRest.StandsOn(of, of.Limits[i].Figure);
        IEnumerable<string> Broken(bool already) => run.Limits.Where((_, i) => Breaks(run, i) && Breaks(before, i) == already).Select(l => l.Figure);
        return new TweakOutcome(step, value, value - was, [.. SideEffects(before.Standing, run.Standing)], [.. Broken(false)], [.. Events(before, run)], Hindrance(written, row))
        {
            Rest = row.Rest,
            MeetsMetal = row.MeetsMetal,
            LimitsStillBroken = [.. Broken(true)],
            Nut = row.Nut,
        };
    }

    private static IEnumerable<KeyValuePair<string, double>> SideEffects(StandingResult before, StandingResult after)
    {
        foreach ((string name, Func<StandingResult, double?> value) in Effects)
        {
            if (value(after) - value(before) is { } change)
                yield return KeyValuePair.Create(name, change);
        }
    }

    private static IEnumerable<EventChange> Events(RunResult before, RunResult after)
    {
        foreach (CornerEvent e in Touches)
        {
            // A touch from the start on is not counted: it neither appears nor vanishes.
            if (AtRest.StandsOn(before, "counts." + EventNames.Of(e)) || AtRest.StandsOn(after, "counts." + EventNames.Of(e)))
                continue;
            int was = before.Figures.Counts[(int)e].Value, now = after.Figures.Counts[(int)e].Value;
            if (was == 0 != (now == 0))
                yield return new EventChange(EventNames.Of(e), was, now);
        }
    }

    // Only what the step itself brings about: a base that has the fault already is not the step's doing.
    private static string? Hindrance(StudyRow written, StudyRow row)
    {
        // No figure of the run tells of it: what holds at its start is no event, and up-travel has no share there.
        if (row.Rest is { } rest && written.Rest is null)
            return $"with it the corner {rest}";
        (StandingResult before, StandingResult after) = (written.Run!.Standing, row.Run!.Standing);
        var units = after.Scenario.Units;
        (double preload, double was) = (after.Figures.Preload, before.Figures.Preload);
        if (preload < 0 && preload < was)
            return $"the springs hang loose by {Words.Length(-preload, units)} at full droop";
        if (after.Fit?.LeastPreload is { } least && preload < least && !(was < before.Fit?.LeastPreload))
            return $"the coil nut is above its thread: the least preload is {Words.Length(least, units)}";
        if (after.Fit?.ThreadLeft is < 0 and var left && !(before.Fit?.ThreadLeft < 0))
            return $"the coil nut runs off its thread by {Words.Length(-left, units)}";
        if (!(after.Figures.BindClearanceFullBump < 0) || before.Figures.BindClearanceFullBump < 0)
            return null;
        SpringStanding binds = after.Springs.Where(s => s.Position != "tender").MinBy(s => s.BindClearanceFullBump)!;
        return $"the {binds.Position} spring binds, short by {Words.Length(-binds.BindClearanceFullBump, units)} at full bump";
    }
}
