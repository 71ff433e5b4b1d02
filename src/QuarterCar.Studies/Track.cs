namespace QuarterCar.Studies;

/// <summary>The motion of one run, to be sampled at any time. Immutable.</summary>
public abstract class Track
{
    /// <summary>Time reached, s.</summary>
    public abstract double EndTime { get; }

    /// <summary>Everything about the corner at a time, s; on an event the values after it.</summary>
    public abstract Sample At(double time);

    /// <summary>Number of rows of the trace: k·sample ≤ duration.</summary>
    public abstract long RowCount { get; }

    /// <summary>Rows of the trace in order, at k·sample.</summary>
    public abstract IEnumerable<Sample> Rows();
}
