using System.Collections.Immutable;

using QuarterCar.Model.Terrain;
using QuarterCar.Scenarios;

namespace QuarterCar.Studies.Terrains;

/// <summary>Remarks on the numbers of a ground.</summary>
internal static class TerrainWarnings
{
    // Of the course: a quarter less of a spectrum is a fifth of a class, whose bounds are a factor of 4 apart.
    private const double MostFlat = 0.25;

    /// <summary>The remarks.</summary>
    public static IEnumerable<Warning> Of(TerrainFigures figures, ImmutableArray<TerrainPiece> pieces)
    {
        if (figures.RoughnessIndex is null && figures.Length > TerrainStudy.LongestIndexed)
            yield return new("too_long_for_iri", "The course is longer than 1,000 km, so its International Roughness Index is not worked out: give a shorter one.");
        else if (figures.RoughnessIndex is null)
            yield return new("too_short_for_iri", "The course is shorter than 30 m, so it has no International Roughness Index: give a longer one.");
        if (figures.Fit is null)
            yield return new("no_class", "The ground has no wave from 0.35 m to 91 m: it is straight, too short or known at too few places, so it has no ISO 8608 class.");
        else if (!pieces.Any(p => p is RandomPiece or ProfilePiece))
            yield return new("single_obstacles", "The course is made of single obstacles: class and index describe ground that is rough all along, so read neither as a roughness here.");
        else
        {
            if (pieces.Any(p => p is not (RandomPiece or ProfilePiece or FlatPiece)) || pieces.OfType<FlatPiece>().Sum(f => f.Length) > MostFlat * figures.Length)
                yield return new("mixed_course", "The course has rough ground and pieces that are not: class and index are those of the whole, which a flat makes smoother and a ledge, ramp or whoop rougher than the rough ground in it.");
            if (figures.Length * RoughnessFit.Lowest < 1)
                yield return new("short_for_class", "The course is shorter than the longest wave of the range, 91 m, so its class rests on the shorter waves alone.");
        }
    }
}
