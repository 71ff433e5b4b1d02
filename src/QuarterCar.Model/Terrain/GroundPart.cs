namespace QuarterCar.Model.Terrain;

/// <summary>A stretch of ground with one formula: a straight line or haversines end to end; m, up positive.</summary>
public readonly record struct GroundPart
{
    /// <summary>Where it starts, m; −∞ for the level ground before the course.</summary>
    public double Start { get; init; }

    /// <summary>Where it ends, m; +∞ for the level ground after the course.</summary>
    public double End { get; init; }

    /// <summary>Height at its start, m; bit for bit that of the end before where no step lies between.</summary>
    public double StartHeight { get; init; }

    /// <summary>Height at its end, m.</summary>
    public double EndHeight { get; init; }

    /// <summary>A point of a straight line, m.</summary>
    public double Anchor { get; init; }

    /// <summary>Height of the line at <see cref="Anchor"/>, m.</summary>
    public double AnchorHeight { get; init; }

    /// <summary>Slope of a straight line.</summary>
    public double LineSlope { get; init; }

    /// <summary>The haversines; null for a straight line.</summary>
    public Wave? Wave { get; init; }

    /// <summary>Index of the terrain piece that it comes from; −1 before and after the course.</summary>
    public int Piece { get; init; }

    /// <summary>Height at <paramref name="s"/>, m, by this part's formula.</summary>
    public double Height(double s) => Wave is { } wave ? wave.Top + wave.Below(wave.Local(s)) : AnchorHeight + LineSlope * (s - Anchor);

    /// <summary>Slope at <paramref name="s"/>, by this part's formula.</summary>
    public double Slope(double s) => Wave is { } wave ? wave.Slope(wave.Local(s)) : LineSlope;

    /// <summary>Second derivative at <paramref name="s"/>, 1/m, by this part's formula.</summary>
    public double Bend(double s) => Wave is { } wave ? wave.Bend(wave.Local(s)) : 0;

    /// <summary>Integral of height less <paramref name="reference"/> over the given stretch, m²; differences are taken first so that no digits cancel.</summary>
    public double Integral(double from, double to, double reference)
    {
        var width = to - from;
        if (Wave is not { } wave)
            return width * (Height((from + to) / 2) - reference);
        var x = wave.Local(from);
        return width * (wave.Top - reference) + wave.Integral(x, x + width);
    }
}
