using System.Collections.Immutable;

using QuarterCar.Studies.Setups;

namespace QuarterCar.Studies.Sweeps;

/// <summary>
/// How far a path can go before a limit first breaks. The answer need not be monotone (a step that bottoms at 4 mph may clear at 10), so the
/// whole way is scanned first; the first break is then closed in on by halving.
/// </summary>
public static class ReachStudy
{
    /// <summary>Points of the scan.</summary>
    public const int ScanPoints = 33;

    // 32 pieces halved 5 times: 1/1024 of the way, within the 1e-3 that is promised.
    private const int Halvings = 5;
    private const long ScanPiece = 1 << Halvings;
    private const long Pieces = (ScanPoints - 1) * ScanPiece;

    /// <summary>Runs it for every setup.</summary>
    /// <param name="study">The base.</param>
    /// <param name="axis">The way.</param>
    /// <param name="setups">Setups, the way's path not in them; one without changes where only the base is asked about.</param>
    /// <param name="options">How; parts do not apply.</param>
    /// <param name="progress">Told how many of how many runs are done; the count grows with what has to be halved.</param>
    /// <param name="cancel">Stops within one run's time with <see cref="OperationCanceledException"/>.</param>
    public static ReachResult Run(StudyBase study, SweepAxis axis, SetupPlan setups, StudyOptions options, Action<long, long>? progress = null, CancellationToken cancel = default)
    {
        var limits = LimitSet.Of(study.Scenario);
        var work = Enumerable.Range(0, checked((int)setups.Count)).Select(i => new ReachWork(setups.At(i), axis, limits)).ToArray();
        long done = 0, all = work.Length * (long)(ScanPoints + Halvings);
        Round([.. work.SelectMany(w => Enumerable.Range(0, ScanPoints).Select(i => (w, i * ScanPiece)))]);
        for (int i = 0; i < Halvings; i++)
            Round([.. work.Where(w => w.Halves).Select(w => (w, w.Middle))]);
        return new ReachResult(study.Scenario, axis, limits, [.. work.Select(w => w.Result())]) { Held = study.Hold != HoldRule.None };

        void Round(ImmutableArray<(ReachWork Work, long At)> points)
        {
            long before = done;
            var plan = SetupPlan.List([], [.. points.Select(p => p.Work.Request(p.At))]);
            StudyEngine.Run(
                study,
                plan,
                options with { Part = 1, Parts = 1, KeepRuns = 0 },
                row => points[(int)row.Index].Work.Take(points[(int)row.Index].At, row),
                (n, _) => progress?.Invoke(before + n, all),
                cancel);
            done += points.Length;
        }
    }

    /// <summary>What is known of one setup.</summary>
    private sealed class ReachWork(SetupRequest setup, SweepAxis axis, LimitSet limits)
    {
        private readonly ReachPoint[] _scan = new ReachPoint[ScanPoints];
        private long _holds = -1, _breaks = Pieces + 1;
        private StudyRow? _last, _first;
        private string _nut = "";

        public bool Halves => _holds >= 0 && _breaks <= Pieces && _breaks - _holds > 1;

        public long Middle => (_holds + _breaks) / 2;

        public SetupRequest Request(long at) => SweepAxis.Request([.. setup.Values, axis.At(at, Pieces)]);

        // Rows come in rising order while scanning: the first break closes the bracket, what comes after belongs to the scan alone.
        public void Take(long at, StudyRow row)
        {
            bool holds = limits.Holds(row);
            _nut = row.NutWord.Length > 0 ? row.NutWord : _nut;
            if (at % ScanPiece == 0)
                _scan[at / ScanPiece] = new ReachPoint(axis.At(at, Pieces).Si!.Value, holds, row.Figures is null ? row.Note : null, row.Rest ?? Stop(row));
            if (at > _breaks || at < _holds)
                return;
            if (holds)
                (_holds, _last) = (at, row);
            else
                (_breaks, _first) = (at, row);
        }

        public ReachSetup Result() => new(
            setup,
            _nut,
            _holds < 0 ? null : axis.At(_holds, Pieces).Si,
            _first is { } first ? Broken(first) : null,
            (_first is null ? ScanPiece : _holds < 0 ? 1 : _breaks - _holds) * axis.Range / Pieces,
            [.. _scan],
            _last?.Figures)
        {
            HeldBy = _last?.HeldBy ?? "",
        };

        private ReachBreak Broken(StudyRow row) => new(
            axis.At(_breaks, Pieces).Si!.Value,
            limits.Check(row).FirstOrDefault(v => v.Broken),
            row.Figures is null ? row.Note : null,
            row.Rest ?? Stop(row));

        // Leaning on a stop is said only where a limit on its touches breaks by it.
        private string? Stop(StudyRow row) => limits.Limits.Any(l => row.StandsOn(l.Figure)) ? row.Stop : null;
    }
}
