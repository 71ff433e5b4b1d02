using System.Runtime.InteropServices;

using QuarterCar.Reports.Files;

namespace QuarterCar.Cli;

/// <summary>Ctrl-C, a polite request to end and a terminal that is closed: what runs is asked to stop, and what does not listen in time is ended.</summary>
internal sealed class Interrupt : IDisposable
{
    // Below the second within which the shell must have its prompt back; results that are being moved into place need milliseconds, and are waited for.
    private static readonly TimeSpan s_patience = TimeSpan.FromMilliseconds(800);

    private readonly CancellationTokenSource _stop = new();
    private readonly PosixSignalRegistration[] _signals;

    public Interrupt() => _signals = [.. ((PosixSignal[])[PosixSignal.SIGINT, PosixSignal.SIGTERM, PosixSignal.SIGHUP]).Select(s => PosixSignalRegistration.Create(s, Stop))];

    /// <summary>Cancelled on the first such signal.</summary>
    public CancellationToken Token => _stop.Token;

    public void Dispose()
    {
        foreach (PosixSignalRegistration signal in _signals) signal.Dispose();
        _stop.Dispose();
    }

    private void Stop(PosixSignalContext signal)
    {
        signal.Cancel = true;
        bool again = _stop.IsCancellationRequested;
        _stop.CancelAsync();
        _ = Task.Delay(again ? TimeSpan.Zero : s_patience).ContinueWith(_ => End(), TaskScheduler.Default);
    }

    private static void End() => InHand.End(folder =>
    {
        using (TextWriter messages = Session.MessagesOfProcess())
            messages.WriteLine("quartercar: " + (folder is null ? Outcome.InterruptedWords : $"interrupted; the results in {folder} are whole"));
        Environment.Exit((int)ExitCode.Interrupted);
    });
}
