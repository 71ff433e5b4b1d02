using System.Collections.Immutable;

using QuarterCar.Model;

namespace QuarterCar.Studies;

/// <summary>
/// What a corner comes to rest on where its springs do not hold it up, or not alone. What already holds at the start is no event (physics.md section 5), so no count of contacts
/// tells of it: the note of its row does, and is read back from there, for the parts of a study keep nothing else of it.
/// </summary>
public static class AtRest
{
    private const string OnMetal = "stands on metal at full bump";
    private const string BumpStop = "counts.bump_stop", TopOut = "counts.top_out";
    private const string OnBoundCoils = "stands on bound coils";

    /// <summary>Both of them in a sentence.</summary>
    public const string Either = "stands on metal or bound coils";

    /// <summary>Both of them in a sentence on several.</summary>
    public const string EitherOfMany = "stand on metal or bound coils";

    private static readonly ImmutableArray<string> Words = [OnMetal, OnBoundCoils];

    // Stops that share the load with the springs: such a corner may be meant, but a limit on touches of the stop does not hold there.
    private static readonly ImmutableArray<(string Words, ImmutableArray<string> Touches)> Stops =
    [
        ("stands on its bump stop", [BumpStop]), ("stands topped out", [TopOut]), ("stands topped out and on its bump stop, which is longer than the stroke", [BumpStop, TopOut]),
    ];

    // A balance just short of a stop comes back with its last bits, m.
    private const double Touch = 1e-9;

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

    /// <summary>A stop that the corner leans on, in words; null where it leans on none or does not rest on springs at all.</summary>
    internal static string? Stop(Corner corner) => Of(corner) is not null
        ? null
        : (corner.BumpStopCompression(corner.Standing) > Touch, corner.StandingShaftTravel < -Touch) switch
        {
            (true, true) => Stops[2].Words,
            (true, false) => Stops[0].Words,
            (false, true) => Stops[1].Words,
            _ => null,
        };

    /// <summary>The stop of a note, and the figures that count its touches; null where it names none.</summary>
    internal static (string Words, ImmutableArray<string> Touches)? StopIn(string note)
    {
        foreach (var stop in Stops)
        {
            if (note.EndsWith(stop.Words, StringComparison.Ordinal))
                return stop;
        }

        return null;
    }

    /// <summary>What a corner does on the stop whose touches a figure counts, in words.</summary>
    /// <param name="figure">Dotted name.</param>
    /// <exception cref="InvalidOperationException">It counts no touches of a stop.</exception>
    public static string OnStopOf(string figure) => Stops.First(s => s.Touches[0] == figure).Words;

    /// <summary>A note without what the corner stands on.</summary>
    internal static string Without(string note)
    {
        string? last = In(note) ?? StopIn(note)?.Words;
        return last is null ? note : note[..^last.Length].TrimEnd(' ', ';');
    }
}
