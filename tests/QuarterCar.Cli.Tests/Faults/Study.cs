using System.Collections.Immutable;
using System.Globalization;

using QuarterCar.Reports.Files;
using QuarterCar.TestKit.Programs;

namespace QuarterCar.Cli.Tests.Faults;

/// <summary>A command whose result files are known to the byte, because a run that nothing happened to wrote them.</summary>
internal sealed class Study
{
    private Study(string name, ImmutableArray<string> arguments, IReadOnlyDictionary<string, byte[]> files) => (Name, Arguments, Files) = (name, arguments, files);

    /// <summary>For messages.</summary>
    public string Name { get; }

    /// <summary>The command without its --out.</summary>
    public ImmutableArray<string> Arguments { get; }

    /// <summary>Its files by name, relative to the folder.</summary>
    public IReadOnlyDictionary<string, byte[]> Files { get; }

    /// <summary>Eight setups with their traces: 24 files and more to move.</summary>
    public static Study Comparison { get; } = Of("compare", Scenarios.Plain(limit: 2), "--vary", "coilover.preload=1,2,3,4,5,6,7,8 cm", "--set", "run.sample=10 ms", "--traces");

    /// <summary>Another five, so that some files go and the others change.</summary>
    public static Study Other { get; } = Of("compare", Scenarios.Plain(limit: 2, height: 0.4), "--vary", "coilover.preload=1,2,3,4,5 cm", "--set", "run.sample=10 ms", "--traces");

    /// <summary>One drop.</summary>
    public static Study Run { get; } = Of("run", Scenarios.Plain(limit: 2), "--set", "run.sample=10 ms");

    /// <summary>A higher one.</summary>
    public static Study HigherRun { get; } = Of("run", Scenarios.Plain(limit: 2, height: 0.4), "--set", "run.sample=10 ms");

    /// <summary>The command with its --out.</summary>
    public string[] Into(string folder) => [.. Arguments, "--out", folder];

    /// <summary>Lays its files into a folder, as an earlier run would have, with one that is not ours.</summary>
    public void Lay(string folder)
    {
        foreach (var (name, bytes) in Files.Append(new(Foreign, "mine"u8.ToArray())))
        {
            string path = Path.Combine(folder, name);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllBytes(path, bytes);
        }
    }

    /// <summary>A file that is not ours.</summary>
    public const string Foreign = "notes of mine.txt";

    /// <summary>True where a folder holds these result files, each of them whole, and no others.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="elsewhere">True where the scenario was read from another file, whose name the report then gives.</param>
    public bool Is(string folder, bool elsewhere = false) =>
        Ours(folder).ToHashSet(StringComparer.Ordinal).SetEquals(Files.Keys) && Files.All(f => (elsewhere && f.Key == "report.html") || File.ReadAllBytes(Path.Combine(folder, f.Key)).AsSpan().SequenceEqual(f.Value));

    /// <summary>Names of the result files in a folder.</summary>
    public static IEnumerable<string> Ours(string folder) => All(folder).Where(OurFiles.Contains);

    /// <summary>Names of all files in a folder.</summary>
    public static IEnumerable<string> All(string folder) =>
        Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(folder, f).Replace('\\', '/'));

    /// <summary>Names in a folder that the user did not ask for: hidden ones of ours and the note of a run that was killed.</summary>
    public static string[] Remnants(string folder) =>
        [.. Directory.EnumerateFileSystemEntries(folder, "*quartercar*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(folder, f))];

    /// <summary>A number of tries that an environment variable raises.</summary>
    public static int Times(string variable, int usual) => int.TryParse(Environment.GetEnvironmentVariable(variable), NumberStyles.None, CultureInfo.InvariantCulture, out int times) ? times : usual;

    private static Study Of(string verb, string scenario, params string[] options)
    {
        using var scratch = new Scratch();
        string kept = Path.Combine(Path.GetTempPath(), $"quartercar-fault-{Guid.NewGuid():N}.yaml");
        File.WriteAllText(kept, scenario);
        AppDomain.CurrentDomain.ProcessExit += (_, _) => File.Delete(kept);
        string[] arguments = [verb, kept, .. options];
        Asked asked = Asked.Of([.. arguments, "--out", scratch.At("good")]);
        Assert.True(asked.Code == ExitCode.Done, asked.Messages);
        return new Study(verb, [.. arguments], All(scratch.At("good")).ToDictionary(n => n, n => File.ReadAllBytes(Path.Combine(scratch.At("good"), n)), StringComparer.Ordinal));
    }
}
