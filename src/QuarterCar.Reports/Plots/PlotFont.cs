using System.Collections.Immutable;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Text;

using ScottPlot;

using SkiaSharp;

namespace QuarterCar.Reports.Plots;

/// <summary>The typeface of every plot, carried inside this assembly, so that a picture has the same text on every machine, one without fonts included.</summary>
internal static class PlotFont
{
    /// <summary>Family name (SIL Open Font License 1.1).</summary>
    public const string Family = "Inter";

    private static readonly Lazy<ImmutableDictionary<string, byte[]>> Files = new(ReadFiles);

    private static readonly Lazy<bool> Known = new(Register);

    /// <summary>Upright.</summary>
    public static SKTypeface Regular { get; } = Load("Inter-Regular.ttf");

    /// <summary>For titles and what matters.</summary>
    public static SKTypeface Bold { get; } = Load("Inter-SemiBold.ttf");

    /// <summary>Makes the plotting library draw with it.</summary>
    public static void Use() => _ = Known.Value;

    private static SKTypeface Load(string file)
    {
        using var data = SKData.CreateCopy(Files.Value[file]);
        return SKTypeface.FromData(data);
    }

    private static bool Register()
    {
        Fonts.FontResolvers.Insert(0, new Resolver());
        Fonts.Default = Family;
        return true;
    }

    /// <summary>The font files inside the package's assembly: its resource "!AvaloniaResources" is an index (path, offset, length of each file) followed by the files.</summary>
    private static ImmutableDictionary<string, byte[]> ReadFiles()
    {
        using var image = typeof(PlotFont).Assembly.GetManifestResourceStream("Inter.dll")
            ?? throw new InvalidOperationException("the assembly was built without its font");
        using var pe = new PEReader(image);
        var metadata = pe.GetMetadataReader();
        var resource = metadata.ManifestResources.Select(metadata.GetManifestResource)
            .First(r => metadata.GetString(r.Name) == "!AvaloniaResources");
        int start = pe.PEHeaders.CorHeader!.ResourcesDirectory.RelativeVirtualAddress + (int)resource.Offset;
        var section = pe.GetSectionData(start);
        int length = section.GetReader().ReadInt32();
        byte[] bytes = [.. section.GetContent(sizeof(int), length)];
        return Index(bytes);
    }

    private static ImmutableDictionary<string, byte[]> Index(byte[] bytes)
    {
        using var reader = new BinaryReader(new MemoryStream(bytes), Encoding.UTF8);
        int files = sizeof(int) + reader.ReadInt32();
        int version = reader.ReadInt32();
        if (version != 2) throw new InvalidOperationException($"the font package's index has version {version}, not 2");
        int count = reader.ReadInt32();
        var found = ImmutableDictionary.CreateBuilder<string, byte[]>(StringComparer.Ordinal);
        for (int i = 0; i < count; i++)
        {
            string path = reader.ReadString();
            int offset = reader.ReadInt32(), length = reader.ReadInt32();
            found[Path.GetFileName(path)] = bytes[(files + offset)..(files + offset + length)];
        }

        return found.ToImmutable();
    }

    private sealed class Resolver : IFontResolver
    {
        public SKTypeface? CreateTypeface(string fontName, FontWeight weight, FontSlant slant, FontSpacing spacing) =>
            weight >= FontWeight.SemiBold ? Bold : Regular;

        public SKTypeface? CreateTypeface(string fontName, bool bold, bool italic) => bold ? Bold : Regular;
    }
}
