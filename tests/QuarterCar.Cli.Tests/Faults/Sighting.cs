using QuarterCar.TestKit.Programs;

namespace QuarterCar.Cli.Tests.Faults;

/// <summary>Sees, as the system reports it, when the program begins to write into a folder and when it begins to move.</summary>
internal sealed class Sighting : IDisposable
{
    private readonly FileSystemWatcher _watcher;
    private readonly ManualResetEventSlim _part = new(), _moves = new();
    private int _parts;

    /// <summary>Starts to look.</summary>
    /// <param name="folder">A folder that is there.</param>
    /// <param name="probes">Part folders that come before the one that is written to: a command makes one to see whether it may write, before it computes.</param>
    public Sighting(string folder, int probes = 1)
    {
        _watcher = new FileSystemWatcher(folder) { NotifyFilter = NotifyFilters.FileName | NotifyFilters.DirectoryName };
        _watcher.Created += (_, e) => Seen(e.Name, probes);
        _watcher.Renamed += (_, e) => Seen(e.Name, probes);
        _watcher.EnableRaisingEvents = true;
    }

    /// <summary>Waits until writing begins; false where the program ends before.</summary>
    public bool Writing(System.Diagnostics.Process process) => Before(process, _part);

    /// <summary>Waits until moving begins; false where the program ends before.</summary>
    public bool Moving(System.Diagnostics.Process process) => Before(process, _moves);

    /// <inheritdoc/>
    public void Dispose()
    {
        _watcher.Dispose();
        _part.Dispose();
        _moves.Dispose();
    }

    private static bool Before(System.Diagnostics.Process process, ManualResetEventSlim seen)
    {
        using var end = new CancellationTokenSource();
        Task ended = process.WaitForExitAsync(end.Token);
        int first = Task.WaitAny([Task.Run(() => seen.Wait(ProgramProcess.Patience, end.Token)), ended], ProgramProcess.Patience);
        bool before = first == 0 && seen.IsSet;
        end.Cancel();
        return before;
    }

    private void Seen(string? name, int probes)
    {
        if (name is null) return;
        if (name.StartsWith(".quartercar-part-", StringComparison.Ordinal) && Interlocked.Increment(ref _parts) > probes) _part.Set();
        if (name == "quartercar-unfinished.txt") _moves.Set();
    }
}
