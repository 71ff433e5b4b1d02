using System.Runtime.InteropServices;

using QuarterCar.Reports.Files;

namespace QuarterCar.Cli;

/// <summary>Ctrl-C and a polite request to end: what runs is asked to stop, and what does not listen in time is ended.</summary>
internal sealed class Interrupt : IDisposable
{
    // Below the second within which the shell must have its prompt back; results that are being moved into place need milliseconds, and are waited for.
    private static readonly TimeSpan s_patience = TimeSpan.FromMilliseconds(800);

    private readonly CancellationTokenSource _stop = new();
    private readonly PosixSignalRegistration _ctrlC, _end;

    public Interrupt()
    {
        _ctrlC = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
        _end = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);
    }

    /// <summary>Cancelled on Ctrl-C.</summary>
    public CancellationToken Token => _stop.Token;

    public void Dispose()
    {
        _ctrlC.Dispose();
        _end.Dispose();
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
