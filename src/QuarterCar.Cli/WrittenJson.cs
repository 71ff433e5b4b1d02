using QuarterCar.Reports.Files;

namespace QuarterCar.Cli;

/// <summary>The JSON of a study as it went into its folder, for standard output: opened before it is moved in, so that it is this run's even where another one replaces it at once.</summary>
/// <param name="name">The file's name.</param>
internal sealed class WrittenJson(string name) : IDisposable
{
    private Stream? _json;

    /// <summary>Opens it in a folder that is not committed yet.</summary>
    public void Open(ResultFolder folder) => _json = folder.Read(name);

    /// <summary>Copies it; nothing where it was never opened.</summary>
    public void CopyTo(Stream results) => _json?.CopyTo(results);

    /// <inheritdoc/>
    public void Dispose() => _json?.Dispose();
}
