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

    private static readonly ImmutableArray<string> Words = [OnMetal, OnBoundCoils];

    /// <summary>In words; null where the springs hold the corner up.</summary>
    public static string? Of(Corner corner) =>
        corner.StandingShaftTravel >= corner.Stroke ? OnMetal
        : corner.StandingShaftTravel + corner.Preload > corner.Stack.Breaks[^1].Compression ? OnBoundCoils
        : null;

    /// <summary>What a note says of it, last of all; null where it says nothing.</summary>
    internal static string? In(string note) => Words.FirstOrDefault(w => note.EndsWith(w, StringComparison.Ordinal));
}
