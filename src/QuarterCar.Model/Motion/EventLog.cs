using System.Runtime.Intrinsics;

namespace QuarterCar.Model.Motion;

/// <summary>One event of a run.</summary>
/// <param name="Event">What.</param>
/// <param name="Time">When, s.</param>
/// <param name="State">See <see cref="CornerState"/>.</param>
public readonly record struct NotedEvent(CornerEvent Event, double Time, Vector256<double> State);

/// <summary>The events of a run in order of time. Keeps its memory when cleared.</summary>
public sealed class EventLog
{
    private NotedEvent[] _events = new NotedEvent[64];

    /// <summary>How many.</summary>
    public int Count { get; private set; }

    /// <summary>The events.</summary>
    public ReadOnlySpan<NotedEvent> Events => _events.AsSpan(0, Count);

    /// <summary>The same as memory, good until the log is cleared.</summary>
    public ReadOnlyMemory<NotedEvent> Memory => _events.AsMemory(0, Count);

    internal void Clear() => Count = 0;

    internal void Add(CornerEvent e, double time, Vector256<double> state)
    {
        if (Count == _events.Length)
            Array.Resize(ref _events, 2 * _events.Length);
        _events[Count++] = new NotedEvent(e, time, state);
    }
}
