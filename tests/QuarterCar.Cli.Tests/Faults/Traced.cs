using System.ComponentModel;
using System.Diagnostics;

namespace QuarterCar.Cli.Tests.Faults;

/// <summary>The program under strace, which kills it at a system call that the test chooses: moves take a millisecond, and a watcher's news of them comes later than that.</summary>
internal static class Traced
{
    /// <summary>True where strace is installed and may be used.</summary>
    public static bool IsHere { get; } = Try();

    /// <summary>Runs the program and kills it at its n-th rename.</summary>
    /// <param name="n">Counted from 1.</param>
    /// <param name="folder">Working directory.</param>
    /// <param name="args">Arguments.</param>
    /// <returns>False where it came to its end before.</returns>
    public static bool KilledAtRename(int n, string folder, params string[] args)
    {
        const string renames = "?rename,?renameat,?renameat2";
        string[] asked = ["-f", "-qq", "-o", "/dev/null", "-e", "trace=" + renames, "-e", FormattableString.Invariant($"inject={renames}:signal=SIGKILL:when={n}"), "dotnet", Path.Combine(AppContext.BaseDirectory, "quartercar.dll"), .. args];
        return Run(folder, asked) == 128 + 9;
    }

    private static bool Try()
    {
        try
        {
            return OperatingSystem.IsLinux() && Run(Path.GetTempPath(), "-f", "-qq", "-o", "/dev/null", "true") == 0;
        }
        catch (Win32Exception)
        {
            return false;
        }
    }

    private static int Run(string folder, params string[] args)
    {
        using var process = Process.Start(new ProcessStartInfo("strace", args) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true })!;
        process.WaitForExit();
        return process.ExitCode;
    }
}
