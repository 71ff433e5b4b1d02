using UnitsNet;

namespace QuarterCar.Drafts;

/// <summary>A part of a scenario built in code: its properties are the keys of the scenario file, in the spelling of C#. What is null is left out.</summary>
public abstract record Draft
{
    private protected Draft()
    {
    }
}

/// <summary>A whole scenario. <see cref="Scenario.Build"/> reads it by the same rules as a file.</summary>
public sealed record ScenarioDraft : Draft
{
    /// <summary>Name of the scenario, in every report.</summary>
    public required string Title { get; init; }

    /// <summary>What this corner carries.</summary>
    public required CornerDraft Corner { get; init; }

    /// <summary>The tyre.</summary>
    public required TyreDraft Tyre { get; init; }

    /// <summary>Springs, shock and stops.</summary>
    public required CoiloverDraft Coilover { get; init; }

    /// <summary>The ground, pieces one after another from the wheel forward; null for a drop.</summary>
    public IReadOnlyList<Ground>? Terrain { get; init; }

    /// <summary>Driving speed; with terrain.</summary>
    public Speed? Speed { get; init; }

    /// <summary>A drop test from full droop, instead of terrain and speed.</summary>
    public DropDraft? Drop { get; init; }

    /// <summary>How the run is computed.</summary>
    public RunDraft? Run { get; init; }

    /// <summary>Largest allowed figures, by dotted name or unambiguous last part.</summary>
    public IReadOnlyDictionary<string, double>? Limits { get; init; }

    /// <summary>Load cases: each a name and dotted paths with new values, or with changes where a sign leads ("+120 lbf").</summary>
    public IReadOnlyList<CaseDraft>? Cases { get; init; }

    /// <summary>For a spread: 95 % half-widths by dotted path ("4 %", "3 mm").</summary>
    public IReadOnlyDictionary<string, string>? Tolerances { get; init; }
}

/// <summary>What the corner carries.</summary>
public sealed record CornerDraft : Draft
{
    /// <summary>What this wheel carries through its spring; this or <see cref="SpringLoad"/>.</summary>
    public Force? SprungWeight { get; init; }

    /// <summary>Load on the springs at ride height, gas not in it.</summary>
    public Force? SpringLoad { get; init; }

    /// <summary>Wheel, hub and what moves with them.</summary>
    public required Force UnsprungWeight { get; init; }

    /// <summary>Shaft travel per wheel travel: a number, or a table over wheel travel. Left out: 1.</summary>
    public MotionRatio? MotionRatio { get; init; }
}

/// <summary>The tyre.</summary>
public sealed record TyreDraft : Draft
{
    /// <summary>Vertical rate.</summary>
    public required ForcePerLength Rate { get; init; }

    /// <summary>Vertical damping. Left out: 0.</summary>
    public DampingRate? Damping { get; init; }

    /// <summary>Free radius; needed by a rolling circle.</summary>
    public Length? Radius { get; init; }

    /// <summary>How the tyre feels the ground. Left out: in a point.</summary>
    public TyreContact? Contact { get; init; }

    /// <summary>Length of the footprint; with that contact.</summary>
    public Length? Footprint { get; init; }

    /// <summary>Deflection at which the rim takes part; with <see cref="RimRate"/>.</summary>
    public Length? Sidewall { get; init; }

    /// <summary>Rate that the rim adds beyond it.</summary>
    public ForcePerLength? RimRate { get; init; }
}

/// <summary>How the tyre feels the ground.</summary>
public enum TyreContact
{
    /// <summary>In one point.</summary>
    Point,

    /// <summary>As a circle that rolls over it.</summary>
    RollingCircle,

    /// <summary>As the mean over its footprint.</summary>
    Footprint,
}

/// <summary>A drop test.</summary>
public sealed record DropDraft : Draft
{
    /// <summary>Of the unloaded tyre above the ground.</summary>
    public required Length Height { get; init; }
}

/// <summary>How the run is computed.</summary>
public sealed record RunDraft : Draft
{
    /// <summary>Left out: until 3 s after the terrain's end, or 6 s for a drop.</summary>
    public Duration? Duration { get; init; }

    /// <summary>Between rows of the trace. Left out: 1 ms.</summary>
    public Duration? Sample { get; init; }

    /// <summary>Relative accuracy of the integration. Left out: 1e-6.</summary>
    public double? Tolerance { get; init; }
}

/// <summary>A load case.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Changes">New values by dotted path, or changes where a sign leads.</param>
public sealed record CaseDraft(string Name, IReadOnlyDictionary<string, string> Changes);
