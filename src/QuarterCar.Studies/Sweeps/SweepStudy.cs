using System.Collections.Immutable;

using QuarterCar.Scenarios;
using QuarterCar.Studies.Setups;

namespace QuarterCar.Studies.Sweeps;

/// <summary>Figures over a grid, the best point inside the limits, and what broke where. Memory does not grow with the grid.</summary>
public static class SweepStudy
{
    /// <summary>Runs a sweep.</summary>
    /// <param name="study">The base.</param>
    /// <param name="grid">The grid.</param>
    /// <param name="goal">What is looked for.</param>
    /// <param name="options">How.</param>
    /// <param name="take">Takes every row in order, on the calling thread.</param>
    /// <param name="progress">Told how many of how many are done.</param>
    /// <param name="cancel">Stops within one run's time with <see cref="OperationCanceledException"/>.</param>
    public static SweepResult Run(
        StudyBase study, SweepGrid grid, Goal goal, StudyOptions options, Action<StudyRow> take, Action<long, long>? progress = null, CancellationToken cancel = default)
    {
        return Of(study.Scenario, grid, goal, rows => StudyEngine.Run(study, grid.Plan(), options, rows, progress, cancel), take);
    }

    /// <summary>A sweep whose rows come from elsewhere, for example from its parts.</summary>
    /// <param name="scenario">The scenario as written.</param>
    /// <param name="grid">The grid.</param>
    /// <param name="goal">What is looked for.</param>
    /// <param name="produce">Hands on the rows, in order.</param>
    /// <param name="take">Takes every row, too.</param>
    public static SweepResult Of(Scenario scenario, SweepGrid grid, Goal goal, Action<Action<StudyRow>> produce, Action<StudyRow> take)
    {
        var work = new SweepWork(scenario, grid, goal);
        produce(row =>
        {
            work.Take(row);
            take(row);
        });
        return work.Result();
    }
}

/// <summary>Gathers what a sweep keeps of its rows.</summary>
internal sealed class SweepWork
{
    private readonly Scenario _scenario;
    private readonly SweepGrid _grid;
    private readonly Goal _goal;
    private readonly LimitSet _limits;
    private readonly MapWork? _map;
    private readonly BreakWork[] _breaks;
    private readonly BreakWork[] _onStop;
    private readonly BreakWork _onMetal;
    private readonly List<(double Goal, StudyRow Row)> _leaders = [];
    private (double Goal, StudyRow Row)? _unlimited;
    private SweepField? _inside, _all;
    private long _rows, _holding, _failed;
    private string? _failure;

    public SweepWork(Scenario scenario, SweepGrid grid, Goal goal)
    {
        (_scenario, _grid, _goal, _limits) = (scenario, grid, goal, LimitSet.Of(scenario));
        _map = grid.Axes.Length <= 2 ? new MapWork(grid, _limits.Limits.Length) : null;
        _breaks = [.. _limits.Limits.Select(_ => new BreakWork(grid.Paths.Length))];
        _onStop = [.. _limits.Limits.Select(_ => new BreakWork(grid.Paths.Length))];
        _onMetal = new BreakWork(grid.Paths.Length);
    }

    public void Take(StudyRow row)
    {
        _rows++;
        if (row.Figures is not { } figures)
        {
            _failed++;
            _failure ??= $"{row.Request.Title}: {row.Note}";
            return;
        }

        ImmutableArray<LimitVerdict> verdicts = _limits.Check(row);
        int broken = -1;
        for (int i = verdicts.Length - 1; i >= 0; i--)
        {
            if (!verdicts[i].Broken)
                continue;
            broken = i;
            double value = verdicts[i].Value!.Value;
            if (value > verdicts[i].Largest)
                _breaks[i].Take(value, row.Request);
            else
                _onStop[i].Take(double.NaN, row.Request);
        }

        if (row.Rest is not null)
        {
            _onMetal.Take(double.NaN, row.Request);
            broken = broken < 0 ? _limits.MetalPlace : broken;
        }

        _holding += broken < 0 ? 1 : 0;
        double? goal = _goal.Of(figures);
        _map?.Take(row.Index, goal, broken, verdicts);
        if (goal is { } reached)
            Rank(reached, row, broken < 0);
    }

    public SweepResult Result() => new(
        _scenario,
        _grid,
        _goal,
        _limits,
        _rows,
        _holding,
        _failed,
        _failure,
        [.. _leaders.Select(l => l.Row)],
        _leaders.Count == 0 ? null : _limits.Nearest(_leaders[0].Row.Figures!.Value),
        _unlimited?.Row,
        _inside ?? _all,
        [.. _limits.Limits.SelectMany((l, i) => new[] { _onStop[i].Of(l), _breaks[i].Of(l) }).Prepend(_onMetal.Of(null)).OfType<SweepBreak>()],
        _map?.Map());

    // Of equals the earlier row stays ahead, so that the answer does not hang on threads.
    private void Rank(double goal, StudyRow row, bool holds)
    {
        if (_unlimited is not { } u || _goal.Better(goal, u.Goal))
            _unlimited = (goal, row);
        _all = With(_all, goal);
        _inside = holds ? With(_inside, goal) : _inside;
        if (!holds || (_leaders.Count == SweepResult.MostLeaders && !_goal.Better(goal, _leaders[^1].Goal)))
            return;
        int place = _leaders.FindIndex(l => _goal.Better(goal, l.Goal));
        _leaders.Insert(place < 0 ? _leaders.Count : place, (goal, row));
        if (_leaders.Count > SweepResult.MostLeaders)
            _leaders.RemoveAt(SweepResult.MostLeaders);
    }

    private SweepField With(SweepField? field, double goal) =>
        field is { } f ? new SweepField(f.Points + 1, _goal.Better(f.Poorest, goal) ? goal : f.Poorest) : new SweepField(1, goal);

    /// <summary>Where one limit broke.</summary>
    private sealed class BreakWork(int paths)
    {
        private readonly double[] _least = [.. Enumerable.Repeat(double.PositiveInfinity, paths)];
        private readonly double[] _most = [.. Enumerable.Repeat(double.NegativeInfinity, paths)];
        private long _points;
        private double _worst = double.NegativeInfinity;

        public void Take(double value, SetupRequest request)
        {
            _points++;
            _worst = Math.Max(_worst, value);
            for (int k = 0; k < _least.Length; k++)
            {
                _least[k] = Math.Min(_least[k], request.Values[k].Si ?? double.NaN);
                _most[k] = Math.Max(_most[k], request.Values[k].Si ?? double.NaN);
            }
        }

        public SweepBreak? Of(Limit? limit) => _points == 0 ? null : new SweepBreak(limit, _points, _worst, [.. _least], [.. _most]);
    }
}

/// <summary>Keeps the goal of an even choice of points for a picture: a large grid leaves no larger map.</summary>
internal sealed class MapWork
{
    private const int MostAlone = 2001;
    private const int MostEach = 201;

    // Series of a list beside a way: more would be no picture.
    private const int MostOfList = 24;

    private readonly SweepGrid _grid;
    private readonly int[][] _kept;
    private readonly double[] _goal;
    private readonly int[] _broken;
    private readonly double[][] _limited;

    public MapWork(SweepGrid grid, int limits)
    {
        _grid = grid;
        int most = grid.Axes.Length == 1 ? MostAlone : MostEach;
        _kept = [.. grid.Axes.Select(a => a.Numeric ? Kept(a.Count, most) : Kept(Math.Min(a.Count, MostOfList), MostOfList))];
        int points = _kept.Aggregate(1, (n, k) => n * k.Length);
        _goal = Unknown(points);
        _broken = [.. Enumerable.Repeat(-1, points)];
        _limited = [.. Enumerable.Range(0, limits).Select(_ => Unknown(points))];
    }

    public void Take(long index, double? goal, int broken, ImmutableArray<LimitVerdict> verdicts)
    {
        int[] at = _grid.Place(index);
        int place = 0;
        for (int k = 0; k < at.Length; k++)
        {
            int found = Array.BinarySearch(_kept[k], at[k]);
            if (found < 0)
                return;
            place = (place * _kept[k].Length) + found;
        }

        (_goal[place], _broken[place]) = (goal ?? double.NaN, broken);
        for (int i = 0; i < _limited.Length; i++)
            _limited[i][place] = verdicts[i].Value ?? double.NaN;
    }

    public SweepMap Map() => new([.. _kept.Select((k, axis) => Axis(_grid.Axes[axis], k))], [.. _goal], [.. _broken], [.. _limited.Select(l => l.ToImmutableArray())]);

    private static SweepMapAxis Axis(SweepGridAxis axis, int[] kept) =>
        new(axis.Paths, [.. kept.Select(axis.Position)], axis.Numeric ? [] : [.. kept.Select(i => axis.At(i).Title)]);

    private static double[] Unknown(int points) => [.. Enumerable.Repeat(double.NaN, points)];

    private static int[] Kept(int count, int most) =>
        count <= most ? [.. Enumerable.Range(0, count)] : [.. Enumerable.Range(0, most).Select(i => (int)((long)i * (count - 1) / (most - 1)))];
}
