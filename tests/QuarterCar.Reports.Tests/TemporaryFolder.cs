namespace QuarterCar.Reports.Tests;

/// <summary>A folder that is gone after the test.</summary>
public sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("quartercar-reports-").FullName;

    public string At(string name) => System.IO.Path.Combine(Path, name);

    public string[] Entries() => [.. Directory.EnumerateFileSystemEntries(Path, "*", SearchOption.AllDirectories)
        .Select(e => System.IO.Path.GetRelativePath(Path, e).Replace('\\', '/')).Order(StringComparer.Ordinal)];

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
