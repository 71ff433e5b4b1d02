using System.Collections.Immutable;

using QuarterCar.Model.Terrain;
using QuarterCar.Scenarios;

namespace QuarterCar.Studies;

/// <summary>Whether setups take the same obstacle: only then do their figures tell which setup is better.</summary>
public static class Obstacle
{
    /// <summary>True where a path of the scenario says what is driven over or how fast.</summary>
    public static bool IsPart(string path) =>
        path == "speed" || path.StartsWith("terrain", StringComparison.Ordinal) || path.StartsWith("drop", StringComparison.Ordinal);

    /// <summary>The same ground at the same speed, or a drop from the same height.</summary>
    public static bool IsSame(Excitation a, Excitation b) =>
        a is Course one && b is Course two ? one.Speed == two.Speed && IsSame(one.Pieces, two.Pieces) : a == b;

    /// <summary>Profiles are read anew for each setup: what counts is where they lead.</summary>
    public static bool IsSame(ImmutableArray<TerrainPiece> a, ImmutableArray<TerrainPiece> b) => a.Length == b.Length
        && a.Zip(b).All(p => p is (ProfilePiece one, ProfilePiece two) ? one.Points.SequenceEqual(two.Points) : p.First == p.Second);
}
