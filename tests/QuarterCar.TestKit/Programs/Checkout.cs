namespace QuarterCar.TestKit.Programs;

/// <summary>The checkout that the tests were built from.</summary>
public static class Checkout
{
    /// <summary>Its top folder.</summary>
    public static string Root { get; } = Find(AppContext.BaseDirectory);

    /// <summary>A path in it.</summary>
    public static string At(params string[] parts) => Path.Combine([Root, .. parts]);

    private static string Find(string from)
    {
        for (DirectoryInfo? at = new(from); at is not null; at = at.Parent)
        {
            if (File.Exists(Path.Combine(at.FullName, "QuarterCar.sln"))) return at.FullName;
        }

        throw new InvalidOperationException($"no checkout above {from}");
    }
}
