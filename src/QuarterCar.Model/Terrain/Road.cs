using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace QuarterCar.Model.Terrain;

/// <summary>
/// The road h(s) that the tyre feels: the ground after the tyre's contact model (physics.md section 2). Metres, up positive.
/// Immutable; safe to share between threads.
/// </summary>
public sealed class Road
{
    private readonly RoadSegment[] _segments;
    private readonly double[] _breaks;
    private readonly double[] _jumps;

    private Road(SegmentList list, ImmutableArray<HubStop> hubStops)
    {
        (_segments, _jumps) = list.Finish();
        _breaks = new double[_segments.Length - 1];
        for (var i = 0; i < _breaks.Length; i++)
            _breaks[i] = _segments[i].End;
        Findings = RoadSlopes.Look(this, hubStops);
        IsTabulated = _segments.All(s => s.IsTabulated);
    }

    /// <summary>Builds the road of one tyre over one ground.</summary>
    /// <param name="ground">The ground.</param>
    /// <param name="contact">How the tyre feels it.</param>
    /// <param name="radius">Free radius, m; needed (positive) by the rolling circle alone.</param>
    /// <param name="footprint">Footprint length, m; needed (positive) by the footprint alone.</param>
    /// <param name="cancel">Stops the rolling of a circle over a long course with <see cref="OperationCanceledException"/>.</param>
    public static Road Build(Ground ground, TyreContact contact, double radius, double footprint, CancellationToken cancel = default)
    {
        switch (contact)
        {
            case TyreContact.Point:
                return new Road(PointRoad.Build(ground), []);
            case TyreContact.Footprint:
                ArgumentOutOfRangeException.ThrowIfNegativeOrZero(footprint);
                return new Road(FootprintRoad.Build(ground, footprint), []);
            case TyreContact.RollingCircle:
                ArgumentOutOfRangeException.ThrowIfNegativeOrZero(radius);
                var (list, hubStops) = CircleRoad.Build(ground, radius, cancel);
                return new Road(list, hubStops);
            default:
                throw new ArgumentOutOfRangeException(nameof(contact));
        }
    }

    /// <summary>The stretches of one formula, in order; the first starts at −∞, the last ends at +∞.</summary>
    public ReadOnlySpan<RoadSegment> Segments => _segments;

    /// <summary>Where the formula changes, m, ascending: break i lies between segments i and i + 1.</summary>
    public ReadOnlySpan<double> Breaks => _breaks;

    /// <summary>What a caller may have to refuse or warn about.</summary>
    public RoadFindings Findings { get; }

    /// <summary>True where every segment is polynomial, arc or table; false where some curve is too sharp for a table and is asked itself.</summary>
    public bool IsTabulated { get; }

    /// <summary>True where a place is reached but for the rounding of a product: speed times time falls short of a break by a last bit or two.</summary>
    /// <param name="place">m.</param>
    /// <param name="s">m, not negative.</param>
    public static bool IsReached(double place, double s) => place - s <= 4e-16 * s;

    /// <summary>Index of the segment at <paramref name="s"/>; at a break the one after it.</summary>
    public int IndexAt(double s)
    {
        var i = Array.BinarySearch(_breaks, s);
        return i >= 0 ? i + 1 : ~i;
    }

    /// <summary>Height after less height before a break, m; exactly 0 where the road is continuous.</summary>
    public double Jump(int breakIndex) => _jumps[breakIndex];

    /// <summary>Whether the height jumps at a break.</summary>
    public bool Jumps(int breakIndex) => _jumps[breakIndex] != 0;

    /// <summary>Height (m) and slope at <paramref name="s"/>, at a break those after it. A loop that knows its segment asks that instead.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Evaluate(double s, out double h, out double slope) => _segments[IndexAt(s)].Evaluate(s, out h, out slope);

    /// <summary>Height at <paramref name="s"/>, m; at a jump the one after it.</summary>
    public double Height(double s)
    {
        Evaluate(s, out var h, out _);
        return h;
    }
}
