namespace QuarterCar.TestKit;

/// <summary>What an action takes from the heap.</summary>
public static class Heap
{
    private const int Rounds = 10;

    /// <summary>Bytes that the action takes on this thread: the least of some rounds, because what the runtime takes meanwhile, to compile anew what is called often, only adds.</summary>
    public static long Taken(Action action)
    {
        long least = long.MaxValue;
        for (int i = 0; i < Rounds; i++)
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            action();
            least = Math.Min(least, GC.GetAllocatedBytesForCurrentThread() - before);
        }

        return least;
    }
}
