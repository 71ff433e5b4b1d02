using System.Collections.Immutable;

using QuarterCar.Scenarios.Quantities;

namespace QuarterCar.Cli.Help;

/// <summary>Words of the help pages, on a few pages so that they stay in one voice: here those of the program and what holds for every verb.</summary>
internal static partial class HelpTexts
{
    /// <summary>The first line of the program's page.</summary>
    public const string Program = "quartercar: computes one corner of a vehicle on coilovers, standing and moving.";

    /// <summary>Exit code 2.</summary>
    public const string BadInput = "Bad input or usage: every mistake is named, with file, line, key, what was found and what is wanted; nothing is written.";

    /// <summary>Exit code 3.</summary>
    public const string Failed = "The computation failed, or its results could not be written; earlier results stay.";

    /// <summary>Exit code 130.</summary>
    public const string Interrupted = "Interrupted by Ctrl-C; no results are written.";

    private const string SetupFailed = "It ran and its results are there, but a setup could not be run; a broken limit is part of the answer.";

    private const string EarlierResults = "Files appear whole or not at all. Those of an earlier call are replaced together; files that are not QuarterCar's stay.";

    private const string OneModel = "The answer is what one model corner survives on this course: no safe speed and no safe height.";

    /// <summary>What the program does.</summary>
    public static readonly ImmutableArray<string> ProgramAbout =
    [
        "Reads a scenario, a text file that describes one corner (weights, tyre, springs, preload, stop nut, damper, bump stop), the ground and the speed. Shows where the corner stands, where its rate changes, how much of the stroke an obstacle uses, what touches and how hard, and what a change to the setup would do.",
        "'new' writes a scenario to start from, with a line on every key; 'check' and 'run' answer it; 'serve' does the same on a page in the browser. Results go to standard output, progress and messages to standard error.",
    ];

    /// <summary>Exit codes of all verbs together.</summary>
    public static readonly ImmutableArray<HelpEntry> ProgramCodes =
    [
        new("0", "Done."),
        new("1", "It ran and results are there, but a limit that the scenario sets is broken (run), or one of several setups could not be run (compare, sweep, reach, tweak, spread, gather)."),
        new("2", BadInput),
        new("3", Failed),
        new("130", Interrupted),
    ];

    /// <summary>Units that values may carry.</summary>
    public static ImmutableArray<HelpEntry> Units =>
    [
        new("length", UnitTable.Names(Dimension.Length)),
        new("force, weight", UnitTable.Names(Dimension.Force) + " (a mass means its weight)"),
        new("spring rate", UnitTable.Names(Dimension.SpringRate)),
        new("damping", UnitTable.Names(Dimension.Damping)),
        new("speed", UnitTable.Names(Dimension.Speed)),
        new("pressure", UnitTable.Names(Dimension.Pressure)),
        new("volume", UnitTable.Names(Dimension.Volume)),
        new("time", UnitTable.Names(Dimension.Time)),
        new("angle", UnitTable.Names(Dimension.Angle)),
        new("temperature", UnitTable.Names(Dimension.Temperature)),
        new("loss", UnitTable.Names(Dimension.Loss)),
    ];

    /// <summary>The first minutes.</summary>
    public static readonly ImmutableArray<string> ProgramExamples =
    [
        "quartercar new my-corner.yaml",
        "quartercar check my-corner.yaml",
        "quartercar run my-corner.yaml --out out/my-corner",
        "quartercar run my-corner.yaml --set coilover.preload='1.8 in'",
    ];
}
