using QuarterCar.TestKit.Programs;

namespace QuarterCar.House.Tests;

/// <summary>What the files of the project keep to.</summary>
public sealed class FilesTests
{
    private const int MostLines = 400;

    /// <summary>Longer files, each with why it is not cut; none so far.</summary>
    private static readonly Dictionary<string, string> s_long = [];

    private static readonly string[] s_top = ["README.md", "DEVELOPERS.md", "QuarterCar.sln", "src", "tests", "scenarios", "notebooks-csharp"];

    private static readonly string[] s_topOfDotNet = ["Directory.Build.props", "Directory.Build.targets", "Directory.Packages.props", "global.json", "nuget.config"];

    public static IEnumerable<string> Sources =>
        new[] { "src", "tests" }.SelectMany(d => Directory.EnumerateFiles(Checkout.At(d), "*.cs", SearchOption.AllDirectories))
            .Select(f => Path.GetRelativePath(Checkout.Root, f).Replace('\\', '/'))
            .Where(f => !f.Split('/').Any(p => p is "obj" or "bin"));

    [Fact]
    public void No_file_is_longer_than_400_lines_without_a_reason()
    {
        var found = Sources.Where(f => File.ReadLines(Checkout.At(f)).Count() > MostLines).Order(StringComparer.Ordinal);
        Assert.Equal(s_long.Keys.Order(StringComparer.Ordinal), found);
    }

    [Fact]
    public void Nothing_is_left_for_later_in_the_sources()
    {
        // The words are put together here, so that this file does not find itself.
        string[] words = ["TO" + "DO", "HA" + "CK", "FIX" + "ME"];
        var found = Sources.Where(f => File.ReadAllText(Checkout.At(f)) is var text && words.Any(w => text.Contains(w, StringComparison.Ordinal)));
        Assert.Empty(found);
    }

    [Fact]
    public void The_top_folder_holds_what_a_newcomer_expects()
    {
        var others = Directory.EnumerateFileSystemEntries(Checkout.Root).Select(e => Path.GetFileName(e))
            .Where(n => !n.StartsWith('.') && n is not ("out" or "TestResults" or "BenchmarkDotNet.Artifacts") && !s_top.Contains(n) && !s_topOfDotNet.Contains(n));
        Assert.Empty(others);
    }
}
