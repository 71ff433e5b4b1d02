using System.Collections.Immutable;

using QuarterCar.Model;

namespace QuarterCar.Studies;

/// <summary>
/// What a corner comes to rest on where its springs do not hold it up. What already holds at the start is no event (physics.md section 5), so no count of contacts
/// tells of it: the note of its row does, and is read back from there, for the parts of a study keep nothing else of it.
/// </summary>
public static class AtRest
{
    private const string OnMetal = "stands on metal at full bump";
    private const string OnBoundCoils = "stands on bound coils";

    /// <summary>Both of them in a sentence.</summary>
    public const string Either = "stands on metal or bound coils";

    /// <summary>Both of them in a sentence on several.</summary>
    public const string EitherOfMany = "stand on metal or bound coils";

    private static readonly ImmutableArray<string> Words = [OnMetal, OnBoundCoils];

    /// <summary>In words; null where the springs hold the corner up.</summary>
    public static string? Of(Corner corner) =>
        IsOnMetal(corner, corner.StandingShaftTravel) ? OnMetal
        : AreCoilsBound(corner, corner.StandingShaftTravel) ? OnBoundCoils
        : null;

    /// <summary>True where metal carries a part of the corner.</summary>
    /// <param name="corner">The corner.</param>
    /// <param name="shaftTravel">m.</param>
    public static bool IsOnMetal(Corner corner, double shaftTravel) => shaftTravel >= corner.Stroke;

    /// <summary>True where nothing of the springs is left to compress.</summary>
    /// <param name="corner">The corner.</param>
    /// <param name="shaftTravel">m.</param>
    public static bool AreCoilsBound(Corner corner, double shaftTravel) => shaftTravel + corner.Preload > corner.Stack.Breaks[^1].Compression;

    /// <summary>What a note says of it, last of all; null where it says nothing.</summary>
    internal static string? In(string note) => Words.FirstOrDefault(w => note.EndsWith(w, StringComparison.Ordinal));
}
