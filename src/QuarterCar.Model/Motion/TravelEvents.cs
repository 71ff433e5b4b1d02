using QuarterCar.Model.Springs;

namespace QuarterCar.Model.Motion;

/// <summary>The events of a kink in wheel travel as bits, one a <see cref="CornerEvent"/>, for the way in. Every event of the way in is followed in the enumeration by its opposite.</summary>
/// <param name="Bits">Bit e stands for the event with that number.</param>
public readonly record struct TravelEvents(uint Bits)
{
    /// <summary>A kink without a name.</summary>
    public static readonly TravelEvents None = new(0);

    /// <summary>Metal at full bump.</summary>
    public static readonly TravelEvents BottomOut = Of(CornerEvent.BottomOut);

    /// <summary>The end at full droop is left.</summary>
    public static readonly TravelEvents TopOutRelease = Of(CornerEvent.TopOutRelease);

    /// <summary>The bump stop touches.</summary>
    public static readonly TravelEvents BumpStop = Of(CornerEvent.BumpStop);

    /// <summary>One event.</summary>
    public static TravelEvents Of(CornerEvent e) => new(1u << (int)e);

    /// <summary>The events of a break of the spring stack.</summary>
    public static TravelEvents Of(StackEvents e)
    {
        uint bits = 0;
        bits |= e.HasFlag(StackEvents.Crossover) ? 1u << (int)CornerEvent.Crossover : 0;
        bits |= e.HasFlag(StackEvents.TenderSolid) ? 1u << (int)CornerEvent.TenderSolid : 0;
        bits |= e.HasFlag(StackEvents.UpperBind) ? 1u << (int)CornerEvent.UpperBind : 0;
        bits |= e.HasFlag(StackEvents.LowerBind) ? 1u << (int)CornerEvent.LowerBind : 0;
        bits |= e.HasFlag(StackEvents.CoilBind) ? 1u << (int)CornerEvent.CoilBind : 0;
        return new TravelEvents(bits);
    }

    /// <summary>The opposite of an event: touch and release, on and off.</summary>
    public static CornerEvent Opposite(CornerEvent e) => (CornerEvent)((int)e ^ 1);
}
