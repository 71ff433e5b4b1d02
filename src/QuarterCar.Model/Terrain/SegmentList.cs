namespace QuarterCar.Model.Terrain;

/// <summary>Gathers road formulas in order of distance and leaves out breaks at which nothing changes; has one owner.</summary>
internal sealed class SegmentList
{
    private readonly List<(double Start, RoadFormula Formula, bool Jumps)> _items = [];

    /// <summary>
    /// Shortest segment that is kept, m: two breaks closer than the rounding of their distances are one
    /// (a corner entering a footprint while another leaves it).
    /// </summary>
    public static double ShortestLength(double s) => 1e-12 + 16 * (Math.BitIncrement(Math.Abs(s)) - Math.Abs(s));

    /// <summary>The road follows <paramref name="formula"/> from <paramref name="start"/> on.</summary>
    /// <param name="start">m; not below the last one's.</param>
    /// <param name="formula">What holds from there.</param>
    /// <param name="jumps">Whether the height may jump there.</param>
    public void Add(double start, in RoadFormula formula, bool jumps = false)
    {
        while (_items.Count > 1 && start - _items[^1].Start < ShortestLength(start))
        {
            jumps |= _items[^1].Jumps;
            start = _items[^1].Start;
            _items.RemoveAt(_items.Count - 1);
        }
        if (_items.Count > 0 && !jumps && _items[^1].Formula == formula)
            return;
        _items.Add((start, formula, jumps));
    }

    /// <summary>The finished segments and the jump of the height at each break between them, m.</summary>
    public (RoadSegment[] Segments, double[] Jumps) Finish()
    {
        var segments = new RoadSegment[_items.Count];
        var jumps = new double[_items.Count - 1];
        for (var i = 0; i < segments.Length; i++)
        {
            var end = i + 1 < segments.Length ? _items[i + 1].Start : double.PositiveInfinity;
            segments[i] = new RoadSegment(_items[i].Start, end, _items[i].Formula);
            if (i == 0 || !_items[i].Jumps)
                continue;
            jumps[i - 1] = Limit(i, segments[i]) - Limit(i, segments[i - 1]);
        }
        return (segments, jumps);

        // At the end of an arc the height is a root of zero: rounding of the distance by 1e-16 m would be 1e-8 m of height.
        double Limit(int item, in RoadSegment segment)
        {
            var s = _items[item].Start;
            var formula = _items[segment.Start == s ? item : item - 1].Formula;
            if (formula.Form == RoadForm.Arc && formula.C1 - Math.Abs(s - formula.Origin) < ShortestLength(s))
                return formula.C0;
            segment.Evaluate(s, out var height, out _);
            return height;
        }
    }
}
