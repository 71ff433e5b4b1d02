using System.ComponentModel;
using System.Diagnostics;

namespace QuarterCar.Cli.Tests;

/// <summary>A fact that needs a file system of its own; skipped, with the reason, where mounting is not allowed.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class MountFactAttribute : FactAttribute
{
    public MountFactAttribute()
    {
        if (!CanMount) Skip = "needs Linux and the right to mount a file system";
    }

    private static bool CanMount { get; } = Try();

    private static bool Try()
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo("unshare", ["-m", "bash", "-c", "mount -t tmpfs none /mnt"]) { RedirectStandardError = true })!;
            process.WaitForExit();
            return process.ExitCode == 0;
        }
        catch (Win32Exception)
        {
            return false;
        }
    }
}
