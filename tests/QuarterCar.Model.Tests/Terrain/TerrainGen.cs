using System.Collections.Immutable;
using System.Globalization;

using CsCheck;

using QuarterCar.Model.Terrain;

namespace QuarterCar.Model.Tests.Terrain;

/// <summary>Random terrains for a tyre about 0.4 m in radius: kerbs, ledges, ramps both ways, bumps, dips and whoops with open and tight troughs.</summary>
public static class TerrainGen
{
    private static readonly int s_fewer = int.Parse(Environment.GetEnvironmentVariable("QUARTERCAR_FEWER") ?? "1", CultureInfo.InvariantCulture);

    /// <summary>So many random grounds, or the part of them that QUARTERCAR_FEWER leaves: a run of mutants tries each ground thousands of times.</summary>
    public static int Times(int all) => Math.Max(1, all / s_fewer);

    private static readonly Gen<TerrainPiece> Flat = Gen.Double[0.01, 1.5].Select(length => (TerrainPiece)new FlatPiece(length));

    // Drops of up to three radii; rises stay below the radius but may pile up on each other.
    private static readonly Gen<TerrainPiece> Step = Gen.Double[-1.2, 0.35].Select(height => (TerrainPiece)new StepPiece(height));

    private static readonly Gen<TerrainPiece> Ramp =
        Gen.Select(Gen.Double[-0.6, 0.6], Gen.Double[0.05, 2]).Select((rise, length) => (TerrainPiece)new RampPiece(rise, length));

    private static readonly Gen<TerrainPiece> Wave =
        Gen.Select(Gen.Double[-0.5, 0.5], Gen.Double[0.2, 5], Gen.Int[1, 4]).Select((height, spacing, count) =>
            (TerrainPiece)new HaversinePiece(height, spacing, count));

    public static readonly Gen<ImmutableArray<TerrainPiece>> Terrain =
        Gen.Frequency((3, Flat), (2, Step), (3, Ramp), (3, Wave)).Array[1, 8].Select(pieces => pieces.ToImmutableArray());
}
