using System.Diagnostics;
using System.Globalization;

namespace QuarterCar.Cli;

/// <summary>How far a study is, on standard error: a bar with the time left on a terminal, now and then a plain line elsewhere, nothing beside JSON that goes to a pipe.</summary>
internal sealed class StudyProgress : IDisposable
{
    private const int Cells = 30;

    private static readonly TimeSpan s_quick = TimeSpan.FromSeconds(0.1), s_seldom = TimeSpan.FromSeconds(10);

    private readonly Session _session;
    private readonly Stopwatch _clock = Stopwatch.StartNew();
    private readonly bool _quiet;
    private TimeSpan _last;
    private (TimeSpan At, long Done) _since, _next;
    private int _shown;

    /// <summary>Starts the clock.</summary>
    /// <param name="session">Where it shows.</param>
    /// <param name="json">True where the results are JSON.</param>
    public StudyProgress(Session session, bool json) => (_session, _quiet) = (session, json && !session.ResultsOnTerminal);

    /// <summary>So many of so many are done.</summary>
    public void Report(long done, long count)
    {
        TimeSpan now = _clock.Elapsed;
        Mark(now, done);
        if (_quiet || now - _last < (_session.MessagesOnTerminal ? s_quick : s_seldom) || done >= count) return;
        _last = now;
        string words = string.Create(CultureInfo.InvariantCulture, $"{done:#,0} of {count:#,0} setups, {Left((now - _since.At) * ((double)(count - done) / Math.Max(1, done - _since.Done)))} left");
        if (!_session.MessagesOnTerminal)
        {
            _session.Messages.WriteLine(words);
            return;
        }

        int full = (int)(Cells * done / count);
        string line = $"[{new string('#', full)}{new string('.', Cells - full)}] {words}";
        _session.Messages.Write("\r" + line.PadRight(_shown));
        _shown = line.Length;
    }

    /// <summary>Takes the bar away.</summary>
    public void Dispose()
    {
        if (_shown > 0) _session.Messages.Write("\r" + new string(' ', _shown) + "\r");
        _shown = 0;
    }

    // What is left goes as fast as the last half to three quarters of the time did: in the first seconds the code is still being compiled.
    private void Mark(TimeSpan now, long done)
    {
        if (now > 2 * _next.At && now > s_quick)
            (_since, _next) = (_next, (now, done));
    }

    private static string Left(TimeSpan time) => time.TotalSeconds < 90
        ? string.Create(CultureInfo.InvariantCulture, $"{Math.Max(1, Math.Ceiling(time.TotalSeconds)):0} s")
        : time.TotalMinutes < 90 ? string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(time.TotalMinutes):0} min")
        : string.Create(CultureInfo.InvariantCulture, $"{time.TotalHours:0.0} h");
}
