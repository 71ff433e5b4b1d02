namespace QuarterCar.Cli;

/// <summary>How a command ended, for the shell.</summary>
internal enum ExitCode
{
    /// <summary>Done.</summary>
    Done = 0,

    /// <summary>It ran and its results are there, but a limit set in the scenario was broken, or one of several setups could not be run.</summary>
    Broken = 1,

    /// <summary>Bad input or usage.</summary>
    BadInput = 2,

    /// <summary>The computation, or the writing of its results, failed.</summary>
    Failed = 3,

    /// <summary>Interrupted.</summary>
    Interrupted = 130,
}
