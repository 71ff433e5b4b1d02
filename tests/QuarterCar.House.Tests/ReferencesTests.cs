using System.Xml.Linq;

using QuarterCar.TestKit.Programs;

namespace QuarterCar.House.Tests;

/// <summary>References point one way: Cli and Web to Reports, Studies, Scenarios, Model, Numerics.</summary>
public sealed class ReferencesTests
{
    /// <summary>From the outside in. A project may reference what stands after it.</summary>
    private static readonly string[] s_order = ["Library", "Cli", "Web", "Reports", "Studies", "Scenarios", "Model", "Numerics"];

    public static TheoryData<string> Projects => [.. Directory.EnumerateDirectories(Checkout.At("src")).Select(d => Path.GetFileName(d)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Projects))]
    public void A_project_references_only_projects_further_in(string project)
    {
        int own = Rank(project);
        Assert.All(References(project), r => Assert.True(Rank(r) > own, $"{project} must not reference {r}"));
    }

    [Theory]
    [InlineData("QuarterCar.Model")]
    [InlineData("QuarterCar.Numerics")]
    [InlineData("QuarterCar.Studies")]
    public void What_computes_does_not_know_units(string project)
    {
        Assert.DoesNotContain("UnitsNet", Packages(project));
        Assert.DoesNotContain("UnitsNet", File.ReadAllText(Checkout.At("src", project, $"{project}.csproj")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("QuarterCar.Reports")]
    [InlineData("QuarterCar.Cli")]
    public void What_writes_results_reads_no_YAML_itself(string project) => Assert.DoesNotContain("YamlDotNet", Packages(project));

    private static int Rank(string project)
    {
        int rank = Array.IndexOf(s_order, project.Replace("QuarterCar.", "", StringComparison.Ordinal));
        Assert.True(rank >= 0, $"{project} has no place in the order of projects");
        return rank;
    }

    private static IEnumerable<string> References(string project) =>
        Items(project, "ProjectReference").Select(i => Path.GetFileNameWithoutExtension(i.Replace('\\', '/')));

    private static IEnumerable<string> Packages(string project) => Items(project, "PackageReference");

    private static IEnumerable<string> Items(string project, string kind) =>
        XDocument.Load(Checkout.At("src", project, $"{project}.csproj")).Descendants(kind).Select(e => (string)e.Attribute("Include")!);
}
