namespace QuarterCar.Cli.Tests;

/// <summary>A fact that needs other programs; skipped, with their names, where one is not installed.</summary>
[AttributeUsage(AttributeTargets.Method)]
public class InstalledFactAttribute : FactAttribute
{
    /// <summary>Looks for them along PATH.</summary>
    /// <param name="programs">Their names.</param>
    public InstalledFactAttribute(params string[] programs)
    {
        string[] folders = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator);
        var missing = programs.Where(p => !folders.Any(f => File.Exists(Path.Combine(f, p)))).ToList();
        if (missing.Count > 0) Skip = $"needs {string.Join(", ", missing)}, not installed here";
    }
}
