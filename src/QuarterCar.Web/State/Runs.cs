using QuarterCar.Scenarios;
using QuarterCar.Studies;

namespace QuarterCar.Web.State;

/// <summary>Runs of setups, the last few remembered: what is kept beside the current setup is not computed again at every turn.</summary>
internal sealed class Runs
{
    private const int Most = 8;

    private readonly Lock _lock = new();
    private readonly LinkedList<(string Key, RunResult Run)> _known = new();

    /// <summary>The run of a setup.</summary>
    /// <exception cref="QuarterCar.Model.CornerException">It cannot stand or drive.</exception>
    public RunResult Of(UnitSystem units, Scenario scenario, CancellationToken cancel)
    {
        string key = $"{units}|{scenario.File}|{scenario.Hash}|{scenario.Title}";
        lock (_lock)
        {
            for (var at = _known.First; at is not null; at = at.Next)
            {
                if (at.Value.Key != key) continue;
                _known.Remove(at);
                _known.AddFirst(at);
                return at.Value.Run;
            }
        }

        RunResult run = SingleRun.Of(scenario, cancel);
        lock (_lock)
        {
            _known.AddFirst((key, run));
            if (_known.Count > Most) _known.RemoveLast();
        }

        return run;
    }
}
