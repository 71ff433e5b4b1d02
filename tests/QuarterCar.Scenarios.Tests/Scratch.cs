namespace QuarterCar.Scenarios.Tests;

/// <summary>A file in a folder of its own that goes when the test ends.</summary>
internal sealed class Scratch : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scenario");

    public Scratch(string name, string text = "")
    {
        Path = System.IO.Path.Combine(_folder.FullName, name);
        File.WriteAllText(Path, text);
    }

    public string Path { get; }

    public string Folder => _folder.FullName;

    public void Dispose() => _folder.Delete(recursive: true);
}
