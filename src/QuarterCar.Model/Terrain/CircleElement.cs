namespace QuarterCar.Model.Terrain;

/// <summary>
/// One stretch [From, To] of ground as a rolling circle feels it alone: <c>g(s) = max over u of [y(u) + √(R² − (s − u)²)] − R</c>.
/// The maximiser is unique: the circle turns about the near end, then touches tangentially, then turns about the far end. Lengths in m.
/// </summary>
internal sealed record CircleElement
{
    public CircleElement(in GroundPart part, double from, double to, double radius, double crest)
    {
        (Part, From, To, Radius, Crest) = (part, from, to, radius, crest);
        FromHeight = from == part.Start ? part.StartHeight : part.Height(from);
        ToHeight = to == part.End ? part.EndHeight : part.Height(to);
        TangentFrom = double.IsInfinity(from) ? from : from - radius * WaveContact.Sine(part.Slope(from));
        TangentTo = double.IsInfinity(to) ? to : to - radius * WaveContact.Sine(part.Slope(to));
    }

    public GroundPart Part { get; }

    public double From { get; }

    public double To { get; }

    public double FromHeight { get; }

    public double ToHeight { get; }

    public double Radius { get; }

    /// <summary>Nearest crest where a tight trough bounds a haversine element; a smooth train takes any of its crests.</summary>
    public double Crest { get; }

    /// <summary>Wheel centre at which the circle leaves the near end.</summary>
    public double TangentFrom { get; }

    /// <summary>Wheel centre at which the circle comes to the far end.</summary>
    public double TangentTo { get; }

    /// <summary>Where the element can first be felt: the hub would be beside its near end.</summary>
    public double DomainStart => From - Radius;

    /// <summary>Where it can last be felt.</summary>
    public double DomainEnd => To + Radius;

    public RoadFormula NearArc => new(RoadForm.Arc, From, FromHeight - Radius, Radius);

    public RoadFormula FarArc => new(RoadForm.Arc, To, ToHeight - Radius, Radius);

    /// <summary>Height and slope at <paramref name="s"/> within the domain.</summary>
    public (double Height, double Slope) At(double s)
    {
        if (s <= TangentFrom)
            return Arc(From, FromHeight, s);
        if (s >= TangentTo)
            return Arc(To, ToHeight, s);
        if (Part.Wave is not { } wave)
            return (Part.Height(s) + LineLift, Part.LineSlope);
        var contact = new WaveContact(wave, Radius);
        var half = wave.Length / 2;
        var smooth = !contact.IsTight;
        var u = smooth ? contact.ContactAt(wave.Local(s), -half, half) : contact.ContactAt(s - Crest, From - Crest, To - Crest);
        var point = contact.At(u);
        return (wave.Top + point.Height, point.Slope);
    }

    /// <summary>Height of a circle above a straight slope, R/cos θ − R, m (check-values EN-1).</summary>
    public double LineLift
    {
        get
        {
            // √(1 + m²) − 1 without cancellation.
            var square = Part.LineSlope * Part.LineSlope;
            return Radius * square / (1 + Math.Sqrt(1 + square));
        }
    }

    private (double Height, double Slope) Arc(double corner, double height, double s)
    {
        var x = s - corner;
        var depth = Math.Sqrt(Math.Max((Radius - x) * (Radius + x), 0));
        return (height - Radius + depth, -x / Math.Max(depth, RoadSegment.LeastDepth * Radius));
    }
}
