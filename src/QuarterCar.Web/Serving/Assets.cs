using System.Collections.Frozen;
using System.Reflection;
using System.Text;

using QuarterCar.Reports.Html;
using QuarterCar.Reports.SetupSheet;
using QuarterCar.Reports.Words;

namespace QuarterCar.Web.Serving;

/// <summary>A file of the page.</summary>
/// <param name="Type">Content type.</param>
/// <param name="Bytes">Its bytes.</param>
internal sealed record Asset(string Type, byte[] Bytes);

/// <summary>The files of the page, out of the program itself: no folder beside it is needed, and no name leads to a disk.</summary>
internal static class Assets
{
    private const string Prefix = "page/";

    private static readonly FrozenDictionary<string, Asset> s_all = Load();

    /// <summary>A file by its name; null where the page has none of that name.</summary>
    public static Asset? Find(string name) => s_all.GetValueOrDefault(name);

    private static FrozenDictionary<string, Asset> Load()
    {
        Assembly assembly = typeof(Assets).Assembly;
        return assembly.GetManifestResourceNames().Where(n => n.StartsWith(Prefix, StringComparison.Ordinal))
            .ToFrozenDictionary(n => n[Prefix.Length..], n => Read(assembly, n), StringComparer.Ordinal);
    }

    private static Asset Read(Assembly assembly, string name)
    {
        using Stream stream = assembly.GetManifestResourceStream(name)!;
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        string type = Path.GetExtension(name) switch { ".html" => "text/html", ".css" => "text/css", ".js" => "text/javascript", ".svg" => "image/svg+xml", _ => "application/octet-stream" };
        byte[] content = type == "text/html" ? Encoding.UTF8.GetBytes(WithCautions(Encoding.UTF8.GetString(bytes.ToArray()))) : bytes.ToArray();
        return new(type + "; charset=utf-8", content);
    }

    // The cautions stand once in the program; the page has places for them.
    private static string WithCautions(string page) => page
        .Replace("{{springs}}", HtmlText.Encode(Cautions.Springs), StringComparison.Ordinal)
        .Replace("{{wrench}}", HtmlText.Encode(Cautions.Wrench), StringComparison.Ordinal)
        .Replace("{{nut}}", HtmlText.Encode(SheetCautions.Nut), StringComparison.Ordinal)
        .Replace("{{unknown}}", string.Concat(Cautions.Unknown.Select(u => $"<li>{HtmlText.Encode(u)}</li>")), StringComparison.Ordinal);
}
