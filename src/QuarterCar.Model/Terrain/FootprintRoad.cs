namespace QuarterCar.Model.Terrain;

/// <summary>
/// The road of a fixed footprint: the mean of the ground over s ± L/2 (physics.md section 2; Captain, Boghani and Wormley 1979, from memory).
/// Its formula changes where a corner of the ground enters or leaves the footprint; with straight ground at both ends it is a parabola.
/// </summary>
internal sealed class FootprintRoad
{
    private readonly GroundPart[] _parts;
    private readonly double _length;
    private readonly double _half;
    private readonly SegmentList _list = new();
    private readonly Dictionary<(double Height, double Length), RoadTable> _tables = [];

    private FootprintRoad(Ground ground, double length) => (_parts, _length, _half) = (ground.Parts.ToArray(), length, length / 2);

    public static SegmentList Build(Ground ground, double length)
    {
        var road = new FootprintRoad(ground, length);
        var corners = ground.Corners;
        // The footprint's ends walk over the parts; at each corner one of them moves on.
        var (rear, front, start) = (0, 0, double.NegativeInfinity);
        while (true)
        {
            var leave = rear < corners.Length ? corners[rear] + road._half : double.PositiveInfinity;
            var enter = front < corners.Length ? corners[front] - road._half : double.PositiveInfinity;
            var end = Math.Min(leave, enter);
            // Two corners that pass the two ends at once make one break; between them the segment has no length.
            if (double.IsInfinity(start) || end - start >= SegmentList.ShortestLength(start))
            {
                road._list.Add(start, road.Formula(start, end, rear, front));
                start = end;
            }
            if (double.IsPositiveInfinity(end))
                return road._list;
            (rear, front) = enter <= leave ? (rear, front + 1) : (rear + 1, front);
        }
    }

    private RoadFormula Formula(double start, double end, int rear, int front)
    {
        if (double.IsInfinity(start))
            return PointRoad.Line(_parts[0], 0); // level before the course
        if (double.IsInfinity(end))
            return PointRoad.Line(_parts[^1], 0); // and after it
        if (_parts[rear].Wave is null && _parts[front].Wave is null)
        {
            var middle = (start + end) / 2;
            var at = At(middle, rear, front);
            return new RoadFormula(RoadForm.Polynomial, middle, at.Height, at.Slope, at.Bend / 2);
        }
        if (rear == front)
            return new RoadFormula(RoadForm.Table, _parts[rear].Wave!.Value.Crest, _parts[rear].Wave!.Value.Top, Table: Inside(_parts[rear].Wave!.Value));
        var floor = _parts[front].StartHeight;
        var table = RoadTable.Build(x => At(start + x, rear, front, floor), end - start, periodic: false);
        return new RoadFormula(RoadForm.Table, start, floor, Table: table);
    }

    /// <summary>Mean, its slope and second derivative at <paramref name="s"/> while the ends stand on the given parts; height above <paramref name="floor"/>.</summary>
    private CurvePoint At(double s, int rear, int front, double floor = 0)
    {
        var (from, to) = (s - _half, s + _half);
        ref readonly var back = ref _parts[rear];
        ref readonly var ahead = ref _parts[front];
        // Heights are summed above a level inside the footprint, so that a course far up loses no digits.
        var level = ahead.StartHeight;
        var area = 0.0;
        for (var i = rear; i <= front; i++)
            area += _parts[i].Integral(i == rear ? from : _parts[i].Start, i == front ? to : _parts[i].End, level);
        return new CurvePoint(
            level - floor + area / _length,
            (ahead.Height(to) - back.Height(from)) / _length,
            (ahead.Slope(to) - back.Slope(from)) / _length);
    }

    /// <summary>
    /// The whole footprint on one train of haversines: the cosine shrinks by sin(πL/λ)/(πL/λ), one table for the whole train
    /// and for every other train of its kind.
    /// </summary>
    private RoadTable Inside(Wave wave)
    {
        var key = (wave.Height, wave.Length);
        if (_tables.TryGetValue(key, out var table))
            return table;
        var angle = Math.PI * _length / wave.Length;
        var gain = Math.Sin(angle) / angle;
        var sunk = wave.Height / 2 * (gain - 1);
        table = RoadTable.Build(
            x => new CurvePoint(sunk + gain * wave.Below(x), gain * wave.Slope(x), gain * wave.Bend(x)), wave.Length, periodic: true);
        _tables.Add(key, table);
        return table;
    }
}
