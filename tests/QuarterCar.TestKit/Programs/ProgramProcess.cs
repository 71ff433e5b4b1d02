using System.Diagnostics;
using System.Text;

namespace QuarterCar.TestKit.Programs;

/// <summary>What a process said and how it ended.</summary>
/// <param name="Code">Exit code.</param>
/// <param name="Out">Standard output.</param>
/// <param name="Messages">Standard error.</param>
public sealed record ProcessResult(int Code, string Out, string Messages);

/// <summary>The command-line program as a process of its own, as a shell starts it. The test project must reference the program.</summary>
public static class ProgramProcess
{
    /// <summary>Longest time that a command of the tests may take; beyond it something hangs.</summary>
    public static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    /// <summary>Starts it.</summary>
    /// <param name="folder">Working directory.</param>
    /// <param name="args">Arguments.</param>
    public static Process Start(string folder, params string[] args) => Start(folder, [], args);

    /// <summary>Starts it in other surroundings.</summary>
    /// <param name="folder">Working directory.</param>
    /// <param name="environment">Variables that are set beside those of the tests.</param>
    /// <param name="args">Arguments.</param>
    public static Process Start(string folder, IEnumerable<(string Name, string Value)> environment, params string[] args)
    {
        // A shell's background job hands an ignored Ctrl-C on to all that it starts, nohup an ignored end of the terminal; env puts both back and
        // becomes the program.
        var start = new ProcessStartInfo("env", ["--default-signal=INT,HUP", "dotnet", Path.Combine(AppContext.BaseDirectory, "quartercar.dll"), .. args])
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = Encoding.UTF8,
            StandardErrorEncoding = Encoding.UTF8,
        };
        foreach (var (name, value) in environment) start.Environment[name] = value;
        return Process.Start(start)!;
    }

    /// <summary>Runs it to its end.</summary>
    /// <param name="folder">Working directory.</param>
    /// <param name="args">Arguments.</param>
    public static ProcessResult Run(string folder, params string[] args) => End(Start(folder, args));

    /// <summary>Runs a line of shell in a folder, for what only a shell can do; QUARTERCAR in it is the program.</summary>
    public static ProcessResult Shell(string folder, string line) => Shell(folder, Patience, "bash", "-c", line);

    /// <summary>Runs a script that may mount file systems, which nobody else sees and which go with it. Needs the right to mount.</summary>
    /// <param name="folder">Working directory.</param>
    /// <param name="script">The script.</param>
    /// <param name="commands">How many commands of the program it runs, where they are many.</param>
    public static ProcessResult MountingShell(string folder, string script, int commands = 1) =>
        Shell(folder, Patience * Math.Max(1, commands / 20.0), "unshare", "-m", "bash", "-c", script);

    private static ProcessResult Shell(string folder, TimeSpan patience, string program, params string[] args)
    {
        var start = new ProcessStartInfo(program, args) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["QUARTERCAR"] = "dotnet " + Path.Combine(AppContext.BaseDirectory, "quartercar.dll");
        return End(Process.Start(start)!, patience);
    }

    /// <summary>Waits for a process and takes what it said.</summary>
    public static ProcessResult End(Process process) => End(process, Patience);

    private static ProcessResult End(Process process, TimeSpan patience)
    {
        using (process)
        {
            var (output, messages) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
            if (!process.WaitForExit(patience))
            {
                process.Kill(entireProcessTree: true);
                throw new TimeoutException($"no end within {patience.TotalSeconds} s");
            }

            return new ProcessResult(process.ExitCode, output.GetAwaiter().GetResult(), messages.GetAwaiter().GetResult());
        }
    }
}
