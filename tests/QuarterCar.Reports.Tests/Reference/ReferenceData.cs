namespace QuarterCar.Reports.Tests.Reference;

/// <summary>Finds the reference files by walking up from the test's own folder.</summary>
internal static class ReferenceData
{
    public static string File(string name)
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            string path = Path.Combine(at.FullName, "tests", "data", "reference", name);
            if (System.IO.File.Exists(path)) return path;
        }

        throw new FileNotFoundException("no reference file " + name);
    }
}
