using QuarterCar.Scenarios;
using QuarterCar.Studies;

namespace QuarterCar.Web.State;

/// <summary>Runs of setups, the last few remembered: what is kept beside the current setup is not computed again at every turn.</summary>
internal sealed class Runs
{
    private readonly LastFew<RunResult> _known = new();

    /// <summary>The run of a setup.</summary>
    /// <exception cref="QuarterCar.Model.CornerException">It cannot stand or drive.</exception>
    public RunResult Of(UnitSystem units, Scenario scenario, CancellationToken cancel) =>
        _known.Of($"{units}|{scenario.File}|{scenario.Hash}|{scenario.Title}", () => SingleRun.Of(scenario, cancel));
}
