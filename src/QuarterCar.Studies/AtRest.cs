using System.Collections.Immutable;

using QuarterCar.Model;
using QuarterCar.Scenarios;

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
    private static readonly ImmutableArray<Resting> Stops =
    [
        new("stands on its bump stop", BumpStop), new("stands topped out", TopOut), new("stands topped out and on its bump stop, which is longer than the stroke", BumpStop, TopOut),
    ];

    // The balance is found to the last bits, m: a corner just short of a stop does not stand on it.
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

    /// <summary>True where a bump stop carries a part of the corner.</summary>
    /// <param name="corner">The corner.</param>
    /// <param name="wheelTravel">m.</param>
    public static bool IsOnBumpStop(Corner corner, double wheelTravel) => corner.BumpStopCompression(wheelTravel) > Touch;

    /// <summary>True where the top-out holds the shaft.</summary>
    /// <param name="shaftTravel">m.</param>
    public static bool IsToppedOut(double shaftTravel) => shaftTravel < -Touch;

    /// <summary>True where a run begins at rest on the stop whose touches a figure counts. A drop begins at full droop: all its touches are counted.</summary>
    /// <param name="run">The run.</param>
    /// <param name="figure">Dotted name.</param>
    public static bool StandsOn(RunResult run, string figure) => run.Scenario.Excitation is not Drop && figure switch
    {
        BumpStop => IsOnBumpStop(run.Standing.Corner, run.Standing.Corner.Standing),
        TopOut => IsToppedOut(run.Standing.Corner.StandingShaftTravel),
        _ => false,
    };

    /// <summary>The stops that a run begins at rest on, in words; null where it begins on none.</summary>
    internal static string? Stop(RunResult run) => (StandsOn(run, BumpStop), StandsOn(run, TopOut)) switch
    {
        (true, true) => Stops[2].Words,
        (true, false) => Stops[0].Words,
        (false, true) => Stops[1].Words,
        _ => null,
    };

    /// <summary>The stops of a note; null where it names none.</summary>
    internal static Resting? StopIn(string note) => Stops.FirstOrDefault(s => note.EndsWith(s.Words, StringComparison.Ordinal));

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

    /// <summary>Stops that a corner rests on.</summary>
    /// <param name="Words">As a note says it.</param>
    /// <param name="Touches">The figures that count their touches.</param>
    internal sealed record Resting(string Words, params ImmutableArray<string> Touches);
}
