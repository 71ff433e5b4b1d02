using System.Reflection;
using System.Xml.Linq;

using QuarterCar.Model;
using QuarterCar.Numerics.Integration;

namespace QuarterCar.House.Tests;

/// <summary>Every public type of Model and Numerics says in its first sentence what it is; every public member there says its unit or meaning.</summary>
public sealed class CommentsTests
{
    public static TheoryData<string> Assemblies => [typeof(Corner).Assembly.GetName().Name!, typeof(Integrator).Assembly.GetName().Name!];

    [Theory]
    [MemberData(nameof(Assemblies))]
    public void Every_public_type_says_what_it_is(string name)
    {
        var comments = Comments(name);
        var missing = Assembly.Load(name).GetExportedTypes().Select(t => "T:" + t.FullName!.Replace('+', '.')).Where(id => !Says(comments, id));
        Assert.Empty(missing);
    }

    [Theory]
    [MemberData(nameof(Assemblies))]
    public void Every_public_property_and_field_says_what_it_holds(string name)
    {
        var comments = Comments(name);
        const BindingFlags declared = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
        var missing =
            from type in Assembly.Load(name).GetExportedTypes()
            where !type.IsEnum
            let parameters = RecordParameters(type)
            from member in type.GetMembers(declared)
            where member is PropertyInfo or FieldInfo && !parameters.Contains(member.Name)
            let id = (member is PropertyInfo ? "P:" : "F:") + type.FullName!.Replace('+', '.') + "." + member.Name
            where !Indexer(member) && !Says(comments, id)
            select id;
        Assert.Empty(missing);
    }

    private static HashSet<string> RecordParameters(Type type) =>
        [.. type.GetConstructors().SelectMany(c => c.GetParameters()).Select(p => p.Name!), "EqualityContract"];

    private static bool Indexer(MemberInfo member) => member is PropertyInfo p && p.GetIndexParameters().Length > 0;

    private static bool Says(Dictionary<string, string> comments, string id) => comments.TryGetValue(id, out string? text) && text.Length > 0;

    private static Dictionary<string, string> Comments(string name) =>
        XDocument.Load(Path.Combine(AppContext.BaseDirectory, name + ".xml")).Descendants("member")
            .ToDictionary(m => (string)m.Attribute("name")!, m => m.Element("inheritdoc") is null ? m.Element("summary")?.ToString(SaveOptions.DisableFormatting).Trim() ?? "" : "inherited");
}
