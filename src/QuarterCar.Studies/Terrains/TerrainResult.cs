using System.Collections.Immutable;

using QuarterCar.Model.Terrain;
using QuarterCar.Numerics.Signals;
using QuarterCar.Scenarios;

namespace QuarterCar.Studies.Terrains;

/// <summary>What `terrain` says of a ground. SI; null where it does not apply.</summary>
/// <param name="Length">m.</param>
/// <param name="Fit">ISO 8608 density and class; null on level ground, or where no wave of the range fits the course.</param>
/// <param name="RoughnessIndex">International Roughness Index, m/km; null on a course shorter than 30 m.</param>
/// <param name="LargestSlope">Of the ground, absolute; null at a vertical step.</param>
/// <param name="Lowest">Lowest ground, m above its start.</param>
/// <param name="Highest">Highest ground, m above its start.</param>
public sealed record TerrainFigures(double Length, RoughnessFit? Fit, double? RoughnessIndex, double? LargestSlope, double Lowest, double Highest);

/// <summary>One row of terrain.csv.</summary>
/// <param name="Distance">m from the start of the course.</param>
/// <param name="Ground">m above its start.</param>
/// <param name="Road">What the tyre feels, m; NaN where no tyre is known.</param>
public readonly record struct TerrainRow(double Distance, double Ground, double Road);

/// <summary>A ground, what a tyre feels of it, and its numbers. Immutable.</summary>
/// <param name="Title">Of the scenario, or the profile's file name.</param>
/// <param name="Units">Of what is written.</param>
/// <param name="Ground">The ground.</param>
/// <param name="Road">What the tyre feels; null for a profile alone.</param>
/// <param name="Pieces">What the ground is laid from.</param>
/// <param name="Figures">The numbers.</param>
/// <param name="Spectrum">Of the ground, m³ over cycles/m; null where the course has no length.</param>
/// <param name="Warnings">Remarks.</param>
public sealed record TerrainResult(
    string Title,
    UnitSystem Units,
    Ground Ground,
    Road? Road,
    ImmutableArray<TerrainPiece> Pieces,
    TerrainFigures Figures,
    Spectrum? Spectrum,
    ImmutableArray<Warning> Warnings)
{
    /// <summary>True for ground that is rough all along, as far as its words say: a profile or a random course is in it. Class and index mean nothing else.</summary>
    public bool IsRough => Pieces.Any(p => p is RandomPiece or ProfilePiece);

    /// <summary>The rows of terrain.csv: at the profile's own points, else every 0.05 m and at every corner; a vertical step has a row before and one after it.</summary>
    public IEnumerable<TerrainRow> Rows() => TerrainPlaces.Of(Ground, Pieces).Select(p => new TerrainRow(p.Distance, p.Height, Road?.Height(p.Distance) ?? double.NaN));
}
