using System.Collections.Immutable;
using System.Globalization;

using QuarterCar.Model;
using QuarterCar.Model.Springs;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Quantities;
using QuarterCar.Studies.Setups;

namespace QuarterCar.Web.State;

/// <summary>
/// What stays while something else is turned: the stop nut on the body, the ride height, the ride height and the crossover. A hold becomes plain
/// values of preload and stop nut at once, so that what is shown, kept and saved is one and the same setup. Whatever it promises is asked of a
/// reading of those values before they are rounded to what can be set: a load case comes on top of them and may set the same keys itself.
/// </summary>
internal static class Holds
{
    // What such a reading must come back to, m: sums and a balance.
    private const double Close = 1e-8;

    private const string Preload = "coilover.preload", StopNut = "coilover.stop_nut";

    /// <summary>The setup that keeps what is held of the base; with what was set in words.</summary>
    /// <param name="library">Reads it.</param>
    /// <param name="setup">The setup after this turn.</param>
    /// <param name="hold">none, nut, ride_height or crossover.</param>
    /// <param name="changes">The base's changes.</param>
    /// <param name="cancel">Stops it between two readings.</param>
    /// <exception cref="CornerException">It cannot be kept.</exception>
    public static SetupState Apply(Library library, SetupState setup, string? hold, ImmutableArray<Change> changes, CancellationToken cancel)
    {
        if (hold is not ("nut" or "ride_height" or "crossover")) return setup;
        SetupState before = setup with { Changes = [.. changes] };
        if (library.Read(setup.Own, null).Scenario is not { } own) return setup;
        if (hold == "nut") return Nut(library, setup, before, own);
        if ((setup.LoadCase is null ? own : library.Read(setup, null).Scenario) is not { } now || library.Read(before, null).Scenario is not { } written) return setup;
        Corner kept = Corner.Build(written.Corner);
        if (hold == "crossover" && kept.Stack.CrossoverForce is not null) return Crossover(library, setup, own, now, kept, cancel);
        if (hold == "crossover" && setup.LoadCase is not null && Built(library.Read(before.Own, null).Scenario) is { Stack.CrossoverForce: not null })
            throw Lost(now, setup, StopNut, "a load case under which the slider never meets the stop nut", "the scenario as written, or another hold");
        return RideHeight(library, setup, own, now, kept, cancel);
    }

    /// <summary>What was set at a path and has given way to what is held; null where it has not.</summary>
    /// <param name="typed">The setup before the hold was applied.</param>
    /// <param name="held">The setup after it.</param>
    /// <param name="path">Dotted path of an input.</param>
    public static Change? GivenWay(SetupState typed, SetupState held, string path) => typed.Changes.FirstOrDefault(c => c.Path == path && !held.Changes.Contains(c));

    // A load case leaves the nut on the body too: what is held without the case is held with it, unless the case sets the nut itself.
    private static SetupState Nut(Library library, SetupState setup, SetupState before, Scenario own)
    {
        SetupState kept = setup, exact = setup;
        if (own.Corner.Coilover.StopNut is not null && Built(library.Read(before.Own, null).Scenario) is { Stack.HeldTravel: { } held } first)
        {
            CornerData corner = HoldWork.NutOnBody(own.Corner, first.Data, held);
            (kept, exact) = (WithNut(setup, corner, own.Units), WithNut(setup, corner, null));
        }

        if (setup.LoadCase is not null
            && Built(library.Read(before, null).Scenario) is { Stack.HeldTravel: { } body } loaded
            && library.Read(exact, null).Scenario is { Corner.Coilover.StopNut: not null } again
            && !AreClose(Corner.Build(again.Corner).Stack.HeldTravel, HoldWork.NutOnBody(again.Corner, loaded.Data, body).Coilover.StopNut!.Length))
            throw Lost(again, setup, StopNut, "a load case that moves it on the body", "the scenario as written, or nothing held");
        return kept;
    }

    // The scenario sets the gap of its nut anew with every preload, and a load case may bring the slider onto it: so the preload is sought on
    // readings, from the one that holds with a free slider on. Preload lifts the corner, on the nut by as much as it grows.
    private static SetupState RideHeight(Library library, SetupState setup, Scenario own, Scenario now, Corner kept, CancellationToken cancel)
    {
        const int most = 40;
        double onTop = now.Corner.Coilover.Preload - own.Corner.Coilover.Preload, wanted = Showing(kept);
        CornerData free = Weighed(now.Corner with { Coilover = now.Corner.Coilover with { StopNut = null } });
        double preload = HoldWork.Apply(free, kept, HoldRule.RideHeight, now.Units).Corner.Coilover.Preload - onTop, step = double.NaN, last = double.NaN;
        for (int i = 0; i < most && double.IsFinite(preload); i++)
        {
            cancel.ThrowIfCancellationRequested();
            if (library.Read(WithPreload(setup, preload, null), null).Scenario is not { } again) return WithPreload(setup, preload, now.Units);
            double miss = Showing(Corner.Build(again.Corner)) - wanted;
            if (Math.Abs(miss) <= Close) return WithPreload(setup, preload, now.Units);
            if (!AreClose(again.Corner.Coilover.Preload, preload + onTop)) throw Lost(again, setup, Preload, "a preload that is not the one that was set", "nothing held");
            step = i == 0 ? -miss : -step * miss / (miss - last);
            (preload, last) = (preload + step, miss);
        }

        throw new CornerException(Preload, "no preload that gives this ride height", "a higher stop nut or other springs");
    }

    // What is written is the scenario's own: the case adds to the preload on top of it, and the nut goes along on the body. Where a load on the
    // springs is given, the weight follows from where they stand: then what was read is asked again.
    private static SetupState Crossover(Library library, SetupState setup, Scenario own, Scenario now, Corner kept, CancellationToken cancel)
    {
        const int most = 40;
        double onTop = now.Corner.Coilover.Preload - own.Corner.Coilover.Preload;
        for (int i = 0; i < most; i++)
        {
            cancel.ThrowIfCancellationRequested();
            CornerData corner = HoldWork.Apply(Weighed(now.Corner), kept, HoldRule.RideHeightAndCrossover, now.Units).Corner;
            double preload = corner.Coilover.Preload, held = corner.Coilover.StopNut!.Length;
            CornerData bare = HoldWork.NutOnBody(own.Corner with { Coilover = own.Corner.Coilover with { Preload = preload - onTop } }, corner, held);
            SetupState Written(UnitSystem? units) => WithNut(WithPreload(setup, preload - onTop, units), bare, units);
            if (library.Read(Written(null), null).Scenario is not { } again) return Written(now.Units);
            var stands = Corner.Build(again.Corner);
            if (!AreClose(again.Corner.Coilover.Preload, preload)) throw Lost(again, setup, Preload, "a preload that is not the one that was set", "nothing held");
            if (!AreClose(stands.Stack.HeldTravel, held)) throw Lost(again, setup, StopNut, "a stop nut that is not where it was set", "nothing held");
            if (AreClose(Showing(stands), Showing(kept)) && AreClose(ShowingAtCrossover(stands), ShowingAtCrossover(kept)!.Value)) return Written(now.Units);
            now = again;
        }

        throw new CornerException(Preload, "no preload and stop-nut gap that give this ride height and crossover", "other springs, or nothing held");
    }

    private static Corner? Built(Scenario? scenario) => scenario is null ? null : Corner.Build(scenario.Corner);

    private static bool AreClose(double? read, double wanted) => read is { } value && Math.Abs(value - wanted) <= Close;

    private static double Showing(Corner corner) => corner.Stroke - corner.StandingShaftTravel;

    private static double? ShowingAtCrossover(Corner corner) => corner.Stroke + corner.Preload - (corner.Stack.CrossoverForce is { } force ? corner.Stack.Compression(force) : null);

    // A promise that the case breaks names what the case sets there.
    private static CornerException Lost(Scenario read, SetupState setup, string path, string found, string wanted) =>
        read.Cases.FirstOrDefault(c => c.Name == setup.LoadCase)?.Changes.Select(c => c.Key).FirstOrDefault(k => Scenarios.Reading.Changes.Within([k], path)) is { } key
            ? new CornerException(key, "a load case that sets it whatever the scenario says", "the scenario as written, or nothing held")
            : new CornerException(path, found, wanted);

    private static CornerData Weighed(CornerData corner) => corner with { SpringLoad = null, SprungWeight = corner.SprungWeight ?? Corner.Build(corner).SprungWeight };

    private static SetupState WithPreload(SetupState setup, double preload, UnitSystem? units) => Changes.With(setup, Preload, Text(preload, units));

    // A nut with its C*, as a gap that a scenario can say.
    private static SetupState WithNut(SetupState setup, CornerData corner, UnitSystem? units)
    {
        var free = SpringStack.Build(corner.Coilover.Springs, null);
        double gap = corner.Coilover.StopNut!.Length - free.GroupCompression(free.Force(corner.Coilover.Preload));
        if (gap < -Close) throw new CornerException(StopNut, "a stop nut that would press on the slider at full droop", "less change, or nothing held");
        return Changes.With(setup, StopNut, $"{{ gap: {Text(Math.Max(0, gap), units)}, at: full_droop }}");
    }

    // A length that a tape can be held against, finer than anyone can set; without units to the last digit that counts.
    private static string Text(double metres, UnitSystem? units) => units switch
    {
        null => metres.ToString("0.###############", CultureInfo.InvariantCulture) + " m",
        UnitSystem.Us => Math.Round(metres / ExactUnits.Inch, 4).ToString("R", CultureInfo.InvariantCulture) + " in",
        _ => Math.Round(metres * 1e3, 3).ToString("R", CultureInfo.InvariantCulture) + " mm",
    };
}

/// <summary>Edits of a setup's list of changes.</summary>
internal static class Changes
{
    /// <summary>What the scenario says at some paths and below them: what was set there is gone.</summary>
    public static SetupState Without(SetupState setup, params string[] paths) => setup with { Changes = [.. setup.Changes.Where(c => !paths.Any(p => Stands(c.Path, p)))] };

    /// <summary>A value set: what stood at the path or below it before is gone, and it comes last.</summary>
    public static SetupState With(SetupState setup, string path, string text) => setup with
    {
        Changes = [.. Without(setup, path).Changes, new Change(path, text)],
    };

    // At a path or below it.
    private static bool Stands(string at, string path) => at == path || at.StartsWith(path + ".", StringComparison.Ordinal) || at.StartsWith(path + "[", StringComparison.Ordinal);
}
