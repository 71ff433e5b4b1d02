using System.Reflection;
using System.Text.Json;

using QuarterCar.Drafts;
using QuarterCar.TestKit.Programs;

namespace QuarterCar.LibraryTests;

/// <summary>Every key of the scenario file can be set by a draft, and no draft has a key that the file does not know.</summary>
public class DraftKeysTests
{
    [Fact]
    public void Drafts_have_the_keys_of_the_schema_and_no_others()
    {
        using JsonDocument schema = JsonDocument.Parse(File.ReadAllText(Checkout.At("scenarios/scenario.schema.json")));
        Assert.Equal(Keys(schema.RootElement, "").Order(StringComparer.Ordinal), Properties(typeof(ScenarioDraft), "").Order(StringComparer.Ordinal));
    }

    // Maps of known keys only: lists, tables and open maps are values of their key.
    private static IEnumerable<string> Keys(JsonElement map, string prefix) => map.GetProperty("properties").EnumerateObject().SelectMany(p =>
        p.Value.TryGetProperty("properties", out _) && p.Name != "limits" ? Keys(p.Value, prefix + p.Name + ".") : [prefix + p.Name]);

    private static IEnumerable<string> Properties(Type draft, string prefix) => draft.GetProperties(BindingFlags.Public | BindingFlags.Instance).SelectMany(p =>
        p.PropertyType.IsSubclassOf(typeof(Draft)) ? Properties(p.PropertyType, prefix + Snake(p.Name) + ".") : [prefix + Snake(p.Name)]);

    private static string Snake(string name) => System.Text.RegularExpressions.Regex.Replace(name, "(?<!^)([A-Z])", "_$1").ToLowerInvariant();
}
