namespace QuarterCar.TestKit.Programs;

/// <summary>A folder that is gone after the test.</summary>
public sealed class Scratch : IDisposable
{
    /// <summary>Where it is.</summary>
    public string Folder { get; } = Directory.CreateTempSubdirectory("quartercar-test-").FullName;

    /// <summary>A path in it.</summary>
    public string At(string name) => Path.Combine(Folder, name);

    /// <summary>Writes a text; gives the path.</summary>
    public string Write(string name, string text)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(At(name))!);
        File.WriteAllText(At(name), text);
        return At(name);
    }

    /// <summary>Copies the checkout's scenarios into it, as a user of a checkout has them.</summary>
    public Scratch WithScenarios()
    {
        string from = Checkout.At("scenarios");
        foreach (string file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            string to = Path.Combine(At("scenarios"), Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            File.Copy(file, to);
        }

        return this;
    }

    /// <summary>Names of all files in it, relative, hidden ones too.</summary>
    public string[] Files() =>
        [.. Directory.EnumerateFiles(Folder, "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(Folder, f).Replace('\\', '/')).Order(StringComparer.Ordinal)];

    /// <inheritdoc/>
    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
