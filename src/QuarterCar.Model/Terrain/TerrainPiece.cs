using System.Collections.Immutable;

namespace QuarterCar.Model.Terrain;

/// <summary>One piece of the ground, laid after the one before, SI (physics.md section 2).</summary>
public abstract record TerrainPiece;

/// <summary>Level ground.</summary>
/// <param name="Length">m.</param>
public sealed record FlatPiece(double Length) : TerrainPiece;

/// <summary>A vertical step.</summary>
/// <param name="Height">m, up positive.</param>
public sealed record StepPiece(double Height) : TerrainPiece;

/// <summary>A straight slope.</summary>
/// <param name="Rise">m, up positive.</param>
/// <param name="Length">m along the level.</param>
public sealed record RampPiece(double Rise, double Length) : TerrainPiece;

/// <summary>Haversines end to end: one for a bump.</summary>
/// <param name="Height">Trough to crest, m; negative is a dip.</param>
/// <param name="Spacing">Length of one, m.</param>
/// <param name="Count">How many.</param>
public sealed record HaversinePiece(double Height, double Spacing, int Count) : TerrainPiece;

/// <summary>A random ISO 8608 course.</summary>
/// <param name="Class">A to H.</param>
/// <param name="Length">m.</param>
/// <param name="Seed">Of the phases.</param>
public sealed record RandomPiece(char Class, double Length, ulong Seed) : TerrainPiece;

/// <summary>A measured profile: straight lines between its points; two points at one distance are a vertical step.</summary>
/// <param name="File">The name as the scenario gives it.</param>
/// <param name="Points">Distance and height, m, as in the file; taken relative to the first.</param>
public sealed record ProfilePiece(string File, ImmutableArray<TablePoint> Points) : TerrainPiece;
