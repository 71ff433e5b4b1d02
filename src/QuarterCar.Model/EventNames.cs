using System.Collections.Immutable;

namespace QuarterCar.Model;

/// <summary>What can happen in a run; the order is that of summary.json's counts.</summary>
public enum CornerEvent
{
    /// <summary>Slider meets the stop nut.</summary>
    Crossover,

    /// <summary>Slider leaves the stop nut.</summary>
    CrossoverRelease,

    /// <summary>The tender's coils close.</summary>
    TenderSolid,

    /// <summary>The tender's coils open.</summary>
    TenderFree,

    /// <summary>The upper spring goes solid.</summary>
    UpperBind,

    /// <summary>The upper spring opens.</summary>
    UpperUnbind,

    /// <summary>The lower spring goes solid.</summary>
    LowerBind,

    /// <summary>The lower spring opens.</summary>
    LowerUnbind,

    /// <summary>Nothing is left to compress.</summary>
    CoilBind,

    /// <summary>Something can compress again.</summary>
    CoilUnbind,

    /// <summary>The bump stop touches.</summary>
    BumpStop,

    /// <summary>The bump stop releases.</summary>
    BumpStopRelease,

    /// <summary>Metal on metal at full bump.</summary>
    BottomOut,

    /// <summary>Metal releases.</summary>
    BottomOutRelease,

    /// <summary>The shaft meets its end at full droop.</summary>
    TopOut,

    /// <summary>The shaft leaves its end at full droop.</summary>
    TopOutRelease,

    /// <summary>The tyre leaves the ground.</summary>
    Liftoff,

    /// <summary>The tyre lands.</summary>
    Touchdown,
}

/// <summary>The event names of the result files.</summary>
public static class EventNames
{
    /// <summary>In the order of <see cref="CornerEvent"/>.</summary>
    public static readonly ImmutableArray<string> All = [.. Enum.GetValues<CornerEvent>().Select(Of)];

    /// <summary>The name of one event.</summary>
    public static string Of(CornerEvent e) => e switch
    {
        CornerEvent.Crossover => "crossover",
        CornerEvent.CrossoverRelease => "crossover_release",
        CornerEvent.TenderSolid => "tender_solid",
        CornerEvent.TenderFree => "tender_free",
        CornerEvent.UpperBind => "upper_bind",
        CornerEvent.UpperUnbind => "upper_unbind",
        CornerEvent.LowerBind => "lower_bind",
        CornerEvent.LowerUnbind => "lower_unbind",
        CornerEvent.CoilBind => "coil_bind",
        CornerEvent.CoilUnbind => "coil_unbind",
        CornerEvent.BumpStop => "bump_stop",
        CornerEvent.BumpStopRelease => "bump_stop_release",
        CornerEvent.BottomOut => "bottom_out",
        CornerEvent.BottomOutRelease => "bottom_out_release",
        CornerEvent.TopOut => "top_out",
        CornerEvent.TopOutRelease => "top_out_release",
        CornerEvent.Liftoff => "liftoff",
        CornerEvent.Touchdown => "touchdown",
        _ => throw new ArgumentOutOfRangeException(nameof(e)),
    };
}

/// <summary>What the spring stack is doing (physics.md section 3).</summary>
public enum RateRegion
{
    /// <summary>No spring force.</summary>
    Loose,

    /// <summary>A tender is still working.</summary>
    Tender,

    /// <summary>Upper and lower in series, slider free.</summary>
    Primary,

    /// <summary>The slider is on the stop nut.</summary>
    Secondary,

    /// <summary>Upper or lower spring solid.</summary>
    Bound,
}
