using System.Collections.Immutable;

namespace QuarterCar.Model.Terrain;

/// <summary>A vertical step of the ground.</summary>
/// <param name="Distance">Where, m.</param>
/// <param name="Before">Height before it, m.</param>
/// <param name="After">Height after it, m.</param>
/// <param name="Piece">Index of the terrain piece.</param>
/// <param name="Row">Row of the profile (from 0) that stands at its far side; null where it is no profile.</param>
public readonly record struct GroundStep(double Distance, double Before, double After, int Piece, int? Row);

/// <summary>
/// The ground y(s) in metres, distance and height, up positive (physics.md section 2): level before s = 0 and after its end.
/// Immutable; safe to share between threads.
/// </summary>
public sealed class Ground
{
    private readonly double[] _starts;
    private readonly GroundPart[] _parts;

    internal Ground(GroundPart[] parts, ImmutableArray<GroundStep> steps, double length)
    {
        _parts = parts;
        _starts = Array.ConvertAll(parts, part => part.Start);
        Steps = steps;
        Length = length;
    }

    /// <summary>Lays the pieces one after another.</summary>
    /// <param name="pieces">As read and checked: lengths not negative, profile distances not falling.</param>
    /// <param name="cancel">Stops the laying of a long course.</param>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static Ground Build(ImmutableArray<TerrainPiece> pieces, CancellationToken cancel = default) => GroundBuilder.Lay(pieces, cancel);

    /// <summary>Distance from s = 0 to the end of the last piece, m.</summary>
    public double Length { get; }

    /// <summary>Its lines and haversines in order, the first from −∞, the last to +∞. Neighbours differ: lines that go on straight are one part.</summary>
    public ReadOnlySpan<GroundPart> Parts => _parts;

    /// <summary>Its vertical steps in order.</summary>
    public ImmutableArray<GroundStep> Steps { get; }

    /// <summary>Distances where one part meets the next, m, ascending: every kink and step, and where haversines begin and end.</summary>
    public ReadOnlySpan<double> Corners => _starts.AsSpan(1);

    /// <summary>Height at <paramref name="s"/>, m; at a vertical step the height after it.</summary>
    public double Height(double s) => _parts[IndexAt(s)].Height(s);

    /// <summary>Slope at <paramref name="s"/>; at a corner the slope after it.</summary>
    public double Slope(double s) => _parts[IndexAt(s)].Slope(s);

    /// <summary>Index of the part at <paramref name="s"/>; at a corner the one after it.</summary>
    public int IndexAt(double s)
    {
        var i = Array.BinarySearch(_starts, s);
        return i >= 0 ? i : ~i - 1;
    }

    /// <summary>The largest absolute slope; null where the ground has a vertical step.</summary>
    public double? LargestSlope
    {
        get
        {
            if (!Steps.IsEmpty)
                return null;
            var largest = 0.0;
            foreach (ref readonly var part in Parts)
                largest = Math.Max(largest, part.Wave is { } wave ? Math.PI * wave.Height / wave.Length : Math.Abs(part.LineSlope));
            return largest;
        }
    }
}
