using QuarterCar.Model.Shaft;
using QuarterCar.Model.Springs;
using QuarterCar.Model.Statics;

namespace QuarterCar.Model.Selection;

/// <summary>What ranks a set.</summary>
/// <param name="Preload">For the wanted ride height, m.</param>
/// <param name="UpperClearance">At full bump, m.</param>
/// <param name="LowerClearance">At full bump, m.</param>
/// <param name="Failed">Checks that it fails.</param>
/// <param name="Short">What it lacks for them, lengths added up, m.</param>
/// <param name="Remarks">What is to be said of it where it passes.</param>
internal readonly record struct PickVerdict(double Preload, double UpperClearance, double LowerClearance, PickChecks Failed, double Short, PickRemarks Remarks);

/// <summary>
/// Figures of one set of springs under the wanted load, on the stack that `check` and `run` stand on (physics.md section 3).
/// The gas depends on the shaft position alone, so at the wanted ride height every set carries the same spring force.
/// </summary>
internal sealed class PickWork
{
    // Lengths nearer than this to a limit of the body are at it, m: the same rounding that the check of fit allows.
    private const double AtLimit = 1e-9;

    // A force or a length is solved for to this share of itself: a few roundings.
    private const double RelativeRounding = 1e-15;

    private readonly PickData _data;
    private readonly GasLaw? _gas;

    public PickWork(PickData data)
    {
        _data = data;
        _gas = data.Gas is { } gas ? GasLaw.Of(gas) : null;
        SpringForce = data.Load - (_gas?.Standing(data.Travel) ?? 0);
        if (!(SpringForce > 0))
            throw new ArgumentException("The gas alone carries the load.", nameof(data));
    }

    /// <summary>Load less gas at the wanted ride height, N.</summary>
    public double SpringForce { get; }

    /// <summary>What ranks a set.</summary>
    public PickVerdict Verdict(SpringSetData set) => Verdict(set, SpringStack.Build(set, null));

    /// <summary>Every figure of a set.</summary>
    public PickSet Figures(SpringSetData set)
    {
        var free = SpringStack.Build(set, null);
        PickVerdict v = Verdict(set, free);
        SpringStack held = Held(set, free, SpringForce);
        double full = held.Force(_data.Stroke + v.Preload);
        return new PickSet(
            set,
            free.FreeSeriesRate(SpringForce),
            Travel(free, 0, _data.Load),
            v.Preload,
            v.UpperClearance,
            v.LowerClearance,
            Range(set, free),
            held.HeldTravel is null ? null : held.CrossoverForce <= full,
            TenderSolid(set),
            BowsFrom(set, held, full),
            v.Failed);
    }

    private bool? TenderSolid(SpringSetData set) => set.Tender is { } tender ? SpringForce >= tender.Rate * tender.Travel : null;

    // Compression at which the lower spring buckles, m, where the force at full bump compresses it further.
    private static double? BowsFrom(SpringSetData set, SpringStack held, double full) =>
        Buckling.Deflection(set.Lower) is { } bows && held.LowerCompression(full) > bows ? bows : null;

    /// <summary>Ride height of a set under a changed load, preload and stop nut left alone.</summary>
    public PickLoadRow UnderLoad(PickSet set, double share)
    {
        double load = _data.Load * (1 + share);
        SpringStack held = Held(set.Springs, SpringStack.Build(set.Springs, null), SpringForce);
        return new PickLoadRow(share, load, Showing(held, set.Preload, load));
    }

    /// <summary>Shaft showing of springs at a preload under the wanted load, slider free, m.</summary>
    public double RideHeight(SpringSetData springs, double preload) => Showing(SpringStack.Build(springs, null), preload, _data.Load);

    /// <summary>Shaft travel at which springs and gas carry a load, stops left out, m.</summary>
    /// <param name="stack">The springs.</param>
    /// <param name="preload">m.</param>
    /// <param name="load">N, gas included.</param>
    public double Travel(SpringStack stack, double preload, double load)
    {
        if (_gas is not { } gas)
            return stack.Compression(load) - preload;
        double end = gas.Volume / gas.Area, loose = -preload;
        if (loose >= end || gas.Standing(loose) >= load) // the gas alone carries it, springs loose: the law solved for x
            return end - gas.ChargedPressure * gas.Volume / (load + gas.Area * GasLaw.Atmosphere);
        double deep = Math.Min(stack.Compression(load - gas.Standing(loose)) - preload, end * (1 - 1e-12));
        return FirstRoot.Rising(x => stack.Force(x + preload) + gas.Standing(x) - load, loose, deep, RelativeRounding * load);
    }

    private double Showing(SpringStack stack, double preload, double load) =>
        _data.Stroke - Math.Clamp(Travel(stack, preload, load), 0, _data.Stroke);

    private PickVerdict Verdict(SpringSetData set, SpringStack free)
    {
        double preload = free.Compression(SpringForce) - _data.Travel;
        SpringStack held = Held(set, free, SpringForce);
        (double upper, double lower) = Clearances(held, preload);
        var checks = new ShortBy();
        checks.Note(PickChecks.Loose, -preload, 0);
        checks.Note(PickChecks.Binds, -Math.Min(upper, lower), 0);
        if (_data.Body is { } body)
        {
            double? top = FitWork.StackFree(set, body) - body.SeatLength;
            if (top > 0) // a shorter stack leaves the nut's least at no preload, which is a check already
                checks.Note(PickChecks.BelowLeastPreload, top.Value - preload, AtLimit);
            if (top + body.Thread is { } end)
                checks.Note(PickChecks.BeyondThread, preload - end, AtLimit);
            foreach (SpringData s in set.All)
            {
                if (body.Diameter - s.CoilInner is { } tight && tight >= 0)
                    checks.Note(PickChecks.OverBody, Math.Max(tight, double.Epsilon), 0);
            }
        }

        PickRemarks remarks = checks.Failed != PickChecks.None ? PickRemarks.None
            : PickSet.RemarksOf(BowsFrom(set, held, held.Force(_data.Stroke + preload)), TenderSolid(set));
        return new PickVerdict(preload, upper, lower, checks.Failed, checks.Sum, remarks);
    }

    // The gap is measured at ride height with the slider free (physics.md section 3).
    private SpringStack Held(SpringSetData set, SpringStack free, double force) =>
        _data.Gap is { } gap ? SpringStack.Build(set, free.GroupCompression(force) + gap) : free;

    private (double Upper, double Lower) Clearances(SpringStack stack, double preload) =>
        (stack.BindClearance(SpringPosition.Upper, _data.Stroke + preload), stack.BindClearance(SpringPosition.Lower, _data.Stroke + preload));

    private PickRange? Range(SpringSetData set, SpringStack free)
    {
        double least = 0, most = double.PositiveInfinity;
        if (_data.Body is { } body)
        {
            least = FitWork.LeastPreload(set, body) ?? 0;
            most = FitWork.StackFree(set, body) - body.SeatLength + body.Thread ?? double.PositiveInfinity;
        }

        if (MostByBind(set, free, least) is not { } bind || Math.Min(most, bind) < least)
            return null;
        most = Math.Min(most, bind);
        return new PickRange(least, most, Showing(free, least, _data.Load), Showing(free, most, _data.Load));
    }

    /// <summary>
    /// The preload at which the lesser bind clearance at full bump reaches 0, m; null where it is below 0 at the least preload.
    /// With a gap, the gap is set anew at every ride height: C* then grows more slowly than the preload, so that neither the
    /// lower spring's compression at full bump, stroke + p − C*, nor the upper group's ever falls, and there is one such preload.
    /// </summary>
    private double? MostByBind(SpringSetData set, SpringStack free, double least)
    {
        if (_data.Gap is null)
            return FitWork.MostByBind(set, _data.Stroke);
        if (!(Clearance(least) >= 0))
            return null;
        // Beyond this full bump asks for more than all springs have, wherever the nut stands: one of them binds.
        double deepest = set.Lower.Travel + free.FreeGroupCompression(double.MaxValue) - _data.Stroke;
        return FirstRoot.Rising(p => -Clearance(p), least, Math.Max(deepest, least), RelativeRounding * _data.Stroke);

        double Clearance(double p)
        {
            double force = free.Force(Math.Clamp(Travel(free, p, _data.Load), 0, _data.Stroke) + p);
            (double upper, double lower) = Clearances(Held(set, free, force), p);
            return Math.Min(upper, lower);
        }
    }

    private struct ShortBy
    {
        public PickChecks Failed { get; private set; }

        public double Sum { get; private set; }

        public void Note(PickChecks check, double lacks, double allowed)
        {
            if (!(lacks > allowed))
                return;
            Failed |= check;
            Sum += lacks;
        }
    }
}
