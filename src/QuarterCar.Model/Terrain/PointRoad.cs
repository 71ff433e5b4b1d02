namespace QuarterCar.Model.Terrain;

/// <summary>The road of a tyre that touches in a point: h = y.</summary>
internal static class PointRoad
{
    public static SegmentList Build(Ground ground)
    {
        var list = new SegmentList();
        var tables = new Dictionary<(double Height, double Length), RoadTable>();
        var parts = ground.Parts;
        for (var i = 0; i < parts.Length; i++)
        {
            ref readonly var part = ref parts[i];
            list.Add(part.Start, Formula(part, tables), i > 0 && parts[i - 1].EndHeight != part.StartHeight);
        }
        return list;
    }

    private static RoadFormula Formula(in GroundPart part, Dictionary<(double, double), RoadTable> tables)
    {
        if (part.Wave is not { } wave)
            return Line(part, 0);
        var key = (wave.Height, wave.Length);
        if (!tables.TryGetValue(key, out var table))
        {
            table = RoadTable.Build(x => new CurvePoint(wave.Below(x), wave.Slope(x), wave.Bend(x)), wave.Length, periodic: true);
            tables.Add(key, table);
        }
        return new RoadFormula(RoadForm.Table, wave.Crest, wave.Top, Table: table);
    }

    /// <summary>A straight part raised by <paramref name="lift"/>, m.</summary>
    public static RoadFormula Line(in GroundPart part, double lift) =>
        new(RoadForm.Polynomial, part.Anchor, part.AnchorHeight + lift, part.LineSlope);
}
