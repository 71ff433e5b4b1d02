using System.Collections.Immutable;

namespace QuarterCar.Model.Terrain;

/// <summary>A vertical rise that would stop a rolling wheel at its hub: bad input (physics.md section 2).</summary>
/// <param name="Distance">Of the rise, m.</param>
/// <param name="Top">Height of its upper edge, m.</param>
/// <param name="Hub">Height of the wheel centre when the wheel meets it, m; not above <paramref name="Top"/>.</param>
/// <param name="Piece">Index of the terrain piece.</param>
/// <param name="Row">Row of the profile, from 0; null where it is no profile.</param>
public sealed record HubStop(double Distance, double Top, double Hub, int Piece, int? Row);

/// <summary>What a caller may have to refuse or warn about; nothing here stops a road from being evaluated.</summary>
/// <param name="HubStops">Rises that would stop the wheel at its hub, in order: bad input.</param>
/// <param name="LargestSlope">Largest |h'|; null where the height jumps.</param>
/// <param name="SteepestRise">Largest h', jumps left aside; at least 0.</param>
/// <param name="SteepFrom">Distance at which h' first passes 1, m: beyond, the speed could not be held; null where it never does.</param>
/// <param name="HeightUnderStart">h(0) less the level of the ground before the course, m: not 0 where the wheel starts on the course already.</param>
public sealed record RoadFindings(
    ImmutableArray<HubStop> HubStops,
    double? LargestSlope,
    double SteepestRise,
    double? SteepFrom,
    double HeightUnderStart);
