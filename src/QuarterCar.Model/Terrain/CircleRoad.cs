using System.Collections.Immutable;

namespace QuarterCar.Model.Terrain;

/// <summary>
/// The road of a rigid circle rolling over the ground (physics.md section 2; Davis 1974, from memory).
/// With <c>f_u(s) = y(u) + √(R² − (s − u)²) − R</c>, f_v − f_u rises with s for u &lt; v, so the contact never moves back:
/// the elements of the ground appear on the road in their order, each once, and one pass with a stack finds them.
/// </summary>
internal sealed class CircleRoad
{
    private readonly double _radius;
    private readonly Ground _ground;
    private readonly List<Span> _stack = [];
    private readonly ImmutableArray<HubStop>.Builder _hubStops = ImmutableArray.CreateBuilder<HubStop>();

    private CircleRoad(Ground ground, double radius) => (_ground, _radius) = (ground, radius);

    /// <summary>An element that rules the road from a distance on, up to the next one's.</summary>
    private readonly record struct Span(CircleElement Element, double Start, bool Jumps);

    public static (SegmentList Road, ImmutableArray<HubStop> HubStops) Build(Ground ground, double radius, CancellationToken cancel)
    {
        var road = new CircleRoad(ground, radius);
        var step = 0;
        foreach (ref readonly var part in ground.Parts)
        {
            cancel.ThrowIfCancellationRequested();
            while (step < ground.Steps.Length && ground.Steps[step].Distance < part.Start)
                step++;
            GroundStep? wall = step < ground.Steps.Length && ground.Steps[step].Distance == part.Start ? ground.Steps[step] : null;
            foreach (var element in CircleElements.Of(part, radius))
                road.Push(element, element.From == part.Start ? wall : null);
        }
        return (road.Emit(), road._hubStops.ToImmutable());
    }

    private void Push(CircleElement element, GroundStep? wall)
    {
        while (_stack.Count > 0)
        {
            var top = _stack[^1];
            var first = Math.Max(top.Start, element.DomainStart);
            var last = top.Element.DomainEnd;
            if (Gain(first, top.Element, element).Value >= 0)
            {
                if (top.Start >= element.DomainStart)
                {
                    _stack.RemoveAt(_stack.Count - 1);
                    continue;
                }
                // Met by the hub itself before anything else is felt: only a wall can do that.
                if (wall is { } rise && rise.After > rise.Before)
                    _hubStops.Add(new HubStop(rise.Distance, rise.After, top.Element.At(first).Height + _radius, rise.Piece, rise.Row));
                _stack.Add(new Span(element, first, Jumps: true));
                return;
            }
            var fallsOff = Gain(last, top.Element, element).Value <= 0;
            _stack.Add(new Span(element, fallsOff ? last : Crossing(first, last, top.Element, element), fallsOff));
            return;
        }
        _stack.Add(new Span(element, double.NegativeInfinity, Jumps: false));
    }

    private static (double Value, double Slope) Gain(double s, CircleElement old, CircleElement young)
    {
        var (before, after) = (old.At(s), young.At(s));
        return (after.Height - before.Height, after.Slope - before.Slope);
    }

    /// <summary>Where the younger element overtakes: Newton's method on a rising difference, held in its bracket by halving.</summary>
    private static double Crossing(double below, double above, CircleElement old, CircleElement young)
    {
        // At a convex corner both turn about one point for a while, at a smooth joint for an instant: any distance of that stretch will do,
        // and a root search would find no slope there.
        var shared = old.To == young.From && old.ToHeight == young.FromHeight;
        if (shared && old.TangentTo <= young.TangentFrom + SegmentList.ShortestLength(old.To))
            return Math.Clamp((old.TangentTo + young.TangentFrom) / 2, below, above);
        const int mostSteps = 200;
        // The last corner of the old element, where a concave kink is felt, is a better start than the middle of a wide bracket.
        var s = Math.Clamp(old.To, below, above);
        var rounding = 4e-16 * Math.Abs(s);
        for (var step = 0; step < mostSteps; step++)
        {
            var (value, slope) = Gain(s, old, young);
            if (value >= 0)
                above = s;
            else
                below = s;
            var next = s - value / slope;
            if (!(next > below && next < above))
                next = below + (above - below) / 2;
            if (next <= below || next >= above || Math.Abs(next - s) <= rounding)
                return next;
            s = next;
        }
        return s;
    }

    private SegmentList Emit()
    {
        var list = new SegmentList();
        var tables = WaveTables.Build(Spans(), _radius);
        foreach (var (element, start, end, jumps) in Spans())
        {
            var (tangentFrom, tangentTo) = (Math.Max(start, element.TangentFrom), Math.Min(end, element.TangentTo));
            var first = true;
            if (start < element.TangentFrom)
                Add(start, element.NearArc);
            if (tangentFrom < tangentTo)
                Add(tangentFrom, tables.Tangent(element));
            if (end > element.TangentTo)
                Add(Math.Max(start, element.TangentTo), element.FarArc);

            void Add(double at, RoadFormula formula)
            {
                list.Add(at, formula, jumps && first);
                first = false;
            }
        }
        return list;
    }

    private IEnumerable<RuledSpan> Spans()
    {
        for (var i = 0; i < _stack.Count; i++)
            yield return new RuledSpan(_stack[i].Element, _stack[i].Start, i + 1 < _stack.Count ? _stack[i + 1].Start : double.PositiveInfinity, _stack[i].Jumps);
    }
}

/// <summary>The part of the road that one element rules, m.</summary>
internal readonly record struct RuledSpan(CircleElement Element, double Start, double End, bool Jumps);
