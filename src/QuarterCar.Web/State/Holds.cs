using System.Collections.Immutable;
using System.Globalization;

using QuarterCar.Model;
using QuarterCar.Model.Statics;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Quantities;
using QuarterCar.Studies.Setups;

namespace QuarterCar.Web.State;

/// <summary>
/// What stays while something else is turned: the stop nut on the body, the ride height, the ride height and the crossover. A hold becomes plain
/// values of preload and stop nut at once, so that what is shown, kept and saved is one and the same setup.
/// </summary>
internal static class Holds
{
    /// <summary>The setup that keeps what is held of the base; with what was set in words.</summary>
    /// <param name="library">Reads it.</param>
    /// <param name="setup">The setup after this turn.</param>
    /// <param name="hold">none, nut, ride_height or crossover.</param>
    /// <param name="changes">The base's changes.</param>
    /// <exception cref="CornerException">It cannot be kept.</exception>
    public static SetupState Apply(Library library, SetupState setup, string? hold, ImmutableArray<Change> changes)
    {
        if (hold is not ("nut" or "ride_height" or "crossover")) return setup;
        SetupState before = setup with { Changes = [.. changes] };
        if (library.Read(setup.Own, null).Scenario is not { } own) return setup;
        if (hold == "nut")
        {
            // A load case leaves the nut on the body too: what is held without the case is held with it.
            return own.Corner.Coilover.StopNut is not null && library.Read(before.Own, null).Scenario is { } first && Corner.Build(first.Corner).Stack.HeldTravel is { } held
                ? WithNut(setup, HoldWork.NutOnBody(own.Corner, OnBody(first.Corner, held), held), own.Units)
                : setup;
        }

        if ((setup.LoadCase is null ? own : library.Read(setup, null).Scenario) is not { } now || library.Read(before, null).Scenario is not { } written) return setup;
        Corner kept = Corner.Build(written.Corner);
        if (hold == "crossover" && kept.Stack.CrossoverForce is null) hold = "ride_height";
        CornerData corner = HoldWork.Apply(Weighed(now.Corner), kept, hold == "crossover" ? HoldRule.RideHeightAndCrossover : HoldRule.RideHeight, now.Units).Corner;

        // What is written is the scenario's own: the case adds to the preload on top of it, and the nut goes along on the body.
        double preload = corner.Coilover.Preload - (now.Corner.Coilover.Preload - own.Corner.Coilover.Preload);
        setup = Changes.With(setup, "coilover.preload", Text(preload, now.Units));
        CornerData bare = Weighed(own.Corner) with { Coilover = own.Corner.Coilover with { Preload = preload } };
        if (hold == "crossover") setup = WithNut(setup, HoldWork.NutOnBody(bare, corner, corner.Coilover.StopNut!.Length), now.Units);
        return IsHeld(library, setup, corner.Coilover.Preload) ? setup : throw new CornerException("coilover.preload", "a load case that sets it whatever the scenario says", "the scenario as written, or nothing held");
    }

    private static bool IsHeld(Library library, SetupState setup, double preload)
    {
        const double asWritten = 2e-6; // m: half of the 0.0001 in that is written, and the rounding of a sum
        return setup.LoadCase is null || library.Read(setup, null).Scenario is not { } again || Math.Abs(again.Corner.Coilover.Preload - preload) <= asWritten;
    }

    private static CornerData Weighed(CornerData corner) => corner with { SpringLoad = null, SprungWeight = corner.SprungWeight ?? Corner.Build(corner).SprungWeight };

    // The base with its nut where it stands on the body, so that preload and lower spring alone move the slider below it.
    private static CornerData OnBody(CornerData corner, double held) =>
        corner with { Coilover = corner.Coilover with { StopNut = new StopNutData(held, StopNutReference.UpperTravel) } };

    private static SetupState WithNut(SetupState setup, CornerData corner, UnitSystem units)
    {
        double gap = StandingWork.Figures(Corner.Build(corner)).StopNutGapFullDroop ?? 0;
        return Changes.With(setup, "coilover.stop_nut", $"{{ gap: {Text(gap, units)}, at: full_droop }}");
    }

    /// <summary>A length that a tape can be held against, finer than anyone can set.</summary>
    public static string Text(double metres, UnitSystem units) => units == UnitSystem.Us
        ? Math.Round(metres / ExactUnits.Inch, 4).ToString("R", CultureInfo.InvariantCulture) + " in"
        : Math.Round(metres * 1e3, 3).ToString("R", CultureInfo.InvariantCulture) + " mm";
}

/// <summary>Edits of a setup's list of changes.</summary>
internal static class Changes
{
    /// <summary>A value set: what stood at the path or below it before is gone, and it comes last.</summary>
    public static SetupState With(SetupState setup, string path, string text) => setup with
    {
        Changes = [.. setup.Changes.Where(c => c.Path != path && !c.Path.StartsWith(path + ".", StringComparison.Ordinal) && !c.Path.StartsWith(path + "[", StringComparison.Ordinal)), new Change(path, text)],
    };
}
