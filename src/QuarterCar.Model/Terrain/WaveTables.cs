namespace QuarterCar.Model.Terrain;

/// <summary>Tables of the circle's tangent road over haversines, one for all haversines of one height and length.</summary>
internal sealed class WaveTables
{
    private readonly Dictionary<(double Height, double Length), (RoadTable Table, double From)> _tables = [];

    private WaveTables()
    {
    }

    /// <summary>
    /// An open train repeats over its length. A tight one is tabled only where its elements rule the road: toward the end of the flank, which the
    /// next flank always hides, the contact runs away from the wheel and no polynomial follows.
    /// </summary>
    public static WaveTables Build(IEnumerable<RuledSpan> spans, double radius)
    {
        var ranges = new Dictionary<(double, double), (WaveContact Contact, double From, double To)>();
        foreach (var (element, start, end, _) in spans)
        {
            var (from, to) = (Math.Max(start, element.TangentFrom) - element.Crest, Math.Min(end, element.TangentTo) - element.Crest);
            if (element.Part.Wave is not { } wave || from >= to)
                continue;
            var known = ranges.GetValueOrDefault((wave.Height, wave.Length), (Contact: new WaveContact(wave, radius), From: from, To: to));
            ranges[(wave.Height, wave.Length)] = (known.Contact, Math.Min(known.From, from), Math.Max(known.To, to));
        }
        var tables = new WaveTables();
        foreach (var (key, (contact, from, to)) in ranges)
            tables._tables.Add(key, contact.IsTight ? Flanks(contact, from, to) : Train(contact));
        return tables;
    }

    /// <summary>The road while the circle touches the element tangentially.</summary>
    public RoadFormula Tangent(CircleElement element)
    {
        if (element.Part.Wave is not { } wave)
            return PointRoad.Line(element.Part, element.LineLift);
        var (table, from) = _tables[(wave.Height, wave.Length)];
        return new RoadFormula(RoadForm.Table, element.Crest + from, wave.Top, Table: table);
    }

    private static (RoadTable, double) Train(WaveContact contact)
    {
        var half = contact.Wave.Length / 2;
        return (RoadTable.Build(x => contact.At(contact.ContactAt(x - half, -half, half)), contact.Wave.Length, periodic: true), -half);
    }

    private static (RoadTable, double) Flanks(WaveContact contact, double from, double to)
    {
        var reach = contact.Wave.Length / 2 - contact.UntouchedHalfWidth();
        return (RoadTable.Build(x => contact.At(contact.ContactAt(from + x, -reach, reach)), to - from, periodic: false), from);
    }
}
