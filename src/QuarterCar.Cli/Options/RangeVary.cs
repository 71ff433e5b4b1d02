using System.CommandLine;

using QuarterCar.Scenarios;
using QuarterCar.Studies.Setups;
using QuarterCar.Studies.Sweeps;

namespace QuarterCar.Cli.Options;

/// <summary>--vary where it may be a range: FROM:TO:COUNT for a sweep, FROM:TO for a reach; lists of values stay lists.</summary>
internal sealed class RangeVary(SetupOptions options, bool reach)
{
    // A range stands in the plan as one setup without changes, and is put in its place afterwards: a grid of millions is never listed.
    private readonly Dictionary<SetupAxis, SweepGridAxis> _grid = new(ReferenceEqualityComparer.Instance);
    private readonly List<SweepAxis> _ways = [];

    /// <summary>The study that is asked for, its ranges read.</summary>
    /// <exception cref="BadInputException">With every mistake.</exception>
    public StudySetups Read(ParseResult parsed, ScenarioInput input)
    {
        var document = input.Load(new ProblemList());
        int ranges = 0;
        StudySetups setups = options.Read(parsed, input, (text, check) =>
        {
            if (!RangeText.IsRange(text)) return VaryText.Read(text, check);
            ranges++;
            return document is null ? null : Range(text, new RangeText(document, input.Options.Sets, check.Problems));
        });
        return (reach, ranges) switch
        {
            (false, 0) => throw new BadInputException("--vary: found no range; wanted at least one --vary PATH=FROM:TO:COUNT, like speed=2:10:9 mph"),
            (true, not 1) => throw new BadInputException($"--vary: found {(ranges == 0 ? "no range" : $"{ranges} ranges")}; wanted one --vary PATH=FROM:TO, like speed=2:10 mph; other paths take values: PATH=V1,V2"),
            _ => setups,
        };
    }

    /// <summary>The grid of a sweep.</summary>
    /// <exception cref="BadInputException">It is too large.</exception>
    public SweepGrid Grid(StudySetups setups)
    {
        var grid = new SweepGrid([.. setups.Axes.Select(a => _grid.TryGetValue(a, out SweepGridAxis? range) ? range : SweepGridAxis.Of(a.Paths, a.Points))]);
        return grid.TooLarge is { } words ? throw new BadInputException("--vary: " + words) : grid;
    }

    /// <summary>The way of a reach and the setups to try it with.</summary>
    public (SweepAxis Way, SetupPlan Setups) Reach(StudySetups setups)
    {
        SweepAxis way = _ways[0];
        SetupAxis[] others = [.. setups.Axes.Where(a => !a.Points[0].Values.IsEmpty)];
        return (way, others.Length == 0 ? SetupPlan.List([], [new SetupRequest("as written", [])]) : SetupAxis.Product([.. others]));
    }

    private SetupAxis? Range(string text, RangeText ranges)
    {
        if (reach)
        {
            if (ranges.Reach(text) is not { } way) return null;
            _ways.Add(way);
            return Placeholder(way.Path);
        }

        if (ranges.GridAxis(text) is not { } axis) return null;
        SetupAxis stand = Placeholder(axis.Paths[0]);
        _grid.Add(stand, axis);
        return stand;
    }

    private static SetupAxis Placeholder(string path) => new([path], [new SetupRequest("", [])]);
}
