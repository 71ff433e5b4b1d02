using System.Reflection;

using PublicApiGenerator;

using QuarterCar.TestKit.Programs;

namespace QuarterCar.LibraryTests;

/// <summary>What the library shows is recorded in surface.txt: a change of it is a change of that file.</summary>
public class SurfaceTests
{
    private static readonly Assembly s_library = typeof(Scenario).Assembly;

    [Fact]
    public void Surface_is_the_recorded_one()
    {
        string now = s_library.GeneratePublicApi(new ApiGeneratorOptions { IncludeAssemblyAttributes = false }).ReplaceLineEndings("\n").TrimEnd() + "\n";
        string recorded = Checkout.At("tests/QuarterCar.Library.Tests/surface.txt");
        if (Environment.GetEnvironmentVariable("RECORD_SURFACE") == "1") File.WriteAllText(recorded, now);
        Assert.Equal(File.ReadAllText(recorded), now);
    }

    [Fact]
    public void Nothing_of_the_inner_assemblies_shows()
    {
        string[] foreign = [.. s_library.GetExportedTypes().SelectMany(Shown).Select(t => t.Assembly.GetName().Name!)
            .Where(n => n.StartsWith("QuarterCar.", StringComparison.Ordinal) && n != s_library.GetName().Name).Distinct()];
        Assert.Equal([], foreign);
    }

    private static IEnumerable<Type> Shown(Type type) => type
        .GetMembers(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly)
        .SelectMany(m => m switch
        {
            PropertyInfo p => [p.PropertyType],
            MethodBase method => [.. method.GetParameters().Select(p => p.ParameterType), .. method is MethodInfo i ? new[] { i.ReturnType } : []],
            FieldInfo f => [f.FieldType],
            _ => Array.Empty<Type>(),
        })
        .SelectMany(Parts);

    private static IEnumerable<Type> Parts(Type type) => type.IsGenericType ? [type, .. type.GetGenericArguments().SelectMany(Parts)] : [type.GetElementType() ?? type];
}
