using System.Runtime.Intrinsics;

namespace QuarterCar.Numerics.Integration;

/// <summary>The accepted steps of a run in order of time. Grows by doubling and keeps its memory when cleared, so a run that follows another allocates nothing.</summary>
public sealed class StepLog
{
    private DenseStep[] _steps = new DenseStep[256];

    /// <summary>Number of steps.</summary>
    public int Count { get; private set; }

    /// <summary>The steps.</summary>
    public ReadOnlySpan<DenseStep> Steps => _steps.AsSpan(0, Count);

    /// <summary>The same as memory, good until the log is cleared.</summary>
    public ReadOnlyMemory<DenseStep> Memory => _steps.AsMemory(0, Count);

    /// <summary>Forgets the steps, keeps the memory.</summary>
    public void Clear() => Count = 0;

    /// <summary>Place for one more step, to be filled by the caller and counted with <see cref="Keep"/>.</summary>
    internal ref DenseStep Next
    {
        get
        {
            if (Count == _steps.Length)
                Array.Resize(ref _steps, 2 * _steps.Length);
            return ref _steps[Count];
        }
    }

    /// <summary>Counts the step that was filled in.</summary>
    internal void Keep() => Count++;

    /// <summary>A stretch of rest.</summary>
    internal void KeepRest(double from, double to, Vector256<double> y, int piece)
    {
        Next = new DenseStep { Start = from, Length = to - from, End = to, Piece = piece, C0 = y };
        Keep();
    }

    /// <summary>Index of the step that holds a time: the later one at a boundary, the first or last beyond the ends.</summary>
    public int IndexAt(double t) => IndexAt(Steps, t);

    /// <summary>The same among steps in order of time.</summary>
    public static int IndexAt(ReadOnlySpan<DenseStep> steps, double t)
    {
        int low = 0, high = steps.Length - 1;
        while (low < high)
        {
            int mid = (low + high + 1) >> 1;
            if (steps[mid].Start <= t)
                low = mid;
            else
                high = mid - 1;
        }

        return low;
    }
}
