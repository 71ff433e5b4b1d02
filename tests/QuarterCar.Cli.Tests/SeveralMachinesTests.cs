using System.Text.RegularExpressions;

using QuarterCar.TestKit.Programs;

namespace QuarterCar.Cli.Tests;

/// <summary>The README's scripts for more than one machine, run as they stand there but for a coarser grid, against one run.</summary>
public sealed partial class SeveralMachinesTests : IDisposable
{
    private readonly Scratch _scratch = new Scratch().WithScenarios();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public void Plain_processes_give_the_bytes_of_one_run()
    {
        string[] scripts = Scripts();
        Ran(Environment("") + scripts[0]);
        Same();
    }

    [SlurmFact]
    public void An_array_job_of_slurm_gives_the_bytes_of_one_run()
    {
        string[] scripts = Scripts();
        _scratch.Write("ledge.sh", scripts[1]);
        using var cluster = new OneNodeCluster();
        Ran(Environment(cluster.Configuration) + scripts[2] + "\nsbatch --wait --dependency=afterany:$(squeue -h -o %A | sort -n | tail -1) --output=/dev/null --wrap true");
        Same();
    }

    /// <summary>The shell blocks of the section, in order, with three points in place of each 33.</summary>
    private static string[] Scripts()
    {
        string readme = File.ReadAllText(Checkout.At("README.md"));
        string section = readme[readme.IndexOf("## Over several machines", StringComparison.Ordinal)..];
        section = section[..section.IndexOf("\n## ", 3, StringComparison.Ordinal)];
        string[] scripts = [.. Block().Matches(section).Select(m => m.Groups[1].Value)];
        Assert.Equal(3, scripts.Length);
        Assert.True(scripts[1].TrimEnd().Split('\n').Length <= 10);
        return [.. scripts.Select(s => s.Replace(":33 in", ":3 in", StringComparison.Ordinal))];
    }

    // The program under its own name, as the README calls it.
    private string Environment(string configuration)
    {
        string bin = _scratch.At("bin");
        _scratch.Write("bin/quartercar", $"#!/bin/bash\nexec dotnet '{Path.Combine(AppContext.BaseDirectory, "quartercar.dll")}' \"$@\"\n");
        return $"chmod +x '{bin}/quartercar'; export PATH='{bin}':$PATH; {(configuration.Length > 0 ? $"export SLURM_CONF='{configuration}'; " : "")}set -e\n";
    }

    private void Ran(string script)
    {
        ProcessResult done = ProgramProcess.Shell(_scratch.Folder, script);
        string logs = string.Concat(Directory.EnumerateFiles(_scratch.Folder, "*.log", SearchOption.AllDirectories).Select(File.ReadAllText));
        Assert.True(done.Code == 0, done.Out + done.Messages + logs);
        Assert.True(File.Exists(_scratch.At("out/whole/sweep.json")), done.Out + done.Messages + logs);
    }

    private void Same()
    {
        Ran(Environment("") + "quartercar sweep scenarios/quarry-ledge.yaml --vary coilover.stop_nut.gap='0.8:2.4:3 in' --vary coilover.preload='1:3:3 in' --out out/one");
        string[] files = [.. Directory.EnumerateFiles(_scratch.At("out/one")).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)];
        Assert.Equal(files, Directory.EnumerateFiles(_scratch.At("out/whole")).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal));
        Assert.All(files, f => Assert.Equal(File.ReadAllBytes(_scratch.At("out/one/" + f)), File.ReadAllBytes(_scratch.At("out/whole/" + f))));
    }

    [GeneratedRegex(@"^```bash\n(.*?)^```", RegexOptions.Multiline | RegexOptions.Singleline | RegexOptions.CultureInvariant)]
    private static partial Regex Block();
}
