namespace QuarterCar.Reports.Files;

/// <summary>What this process has begun and would leave lying about if it ended at once: part folders, files on their way in, temporary folders. Whoever ends the process does it through <see cref="End"/>.</summary>
public static class InHand
{
    private static readonly Lock s_gate = new();
    private static readonly HashSet<IDisposable> s_begun = new(ReferenceEqualityComparer.Instance);
    private static string? s_last;

    /// <summary>Keeps a thing that has to be taken away when the process ends before <see cref="Release"/>.</summary>
    public static void Keep(IDisposable begun)
    {
        lock (s_gate) s_begun.Add(begun);
    }

    /// <summary>It is done with.</summary>
    public static void Release(IDisposable begun)
    {
        lock (s_gate) s_begun.Remove(begun);
    }

    /// <summary>Does what must not be broken off, for example the moves that bring results in.</summary>
    /// <param name="action">Takes milliseconds.</param>
    public static void Whole(Action action)
    {
        lock (s_gate) action();
    }

    /// <summary>Ends the process between two such actions, with everything taken away that is not done.</summary>
    /// <param name="end">Ends it and does not come back; gets the folder that results were moved into, null where there are none.</param>
    public static void End(Action<string?> end)
    {
        lock (s_gate)
        {
            foreach (IDisposable begun in s_begun.ToList()) begun.Dispose();
            end(s_last);
        }
    }

    /// <summary>Results are in.</summary>
    internal static void Moved(string folder) => s_last = folder;
}
