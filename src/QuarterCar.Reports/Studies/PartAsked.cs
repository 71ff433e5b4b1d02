using System.Collections.Immutable;
using System.Text;
using System.Text.Json;

using QuarterCar.Reports.Files;
using QuarterCar.Reports.Json;

namespace QuarterCar.Reports.Studies;

/// <summary>What a part of a study was asked, kept beside its rows: the whole study can be put together where the scenario is not at hand, and parts of different studies are told apart.</summary>
/// <param name="Arguments">The verb's arguments in the order of its help page, without those of a single part.</param>
/// <param name="Files">Every file that was read.</param>
public sealed record PartAsked(ImmutableArray<string> Arguments, ImmutableArray<PartFile> Files)
{
    private const string Wanted = $"the {Name} of a part of a study";

    // Of the file, bytes: a text of it has at most what one JSON value can hold.
    private const long Largest = 1 << 30;

    // What the usual file systems allow, bytes.
    private const int LongestName = 255;

    /// <summary>Its file.</summary>
    public const string Name = "part.json";

    /// <summary>Writes it into an open folder.</summary>
    public void Write(ResultFolder folder) => folder.Write(Name, s => JsonSerializer.Serialize(s, this, s_options));

    /// <summary>Reads it.</summary>
    /// <param name="folder">The part's folder.</param>
    /// <exception cref="FormatException">It is not there, or not as we write it.</exception>
    public static PartAsked Read(string folder)
    {
        string file = Path.Combine(folder, Name);
        if (!File.Exists(file)) throw new FormatException($"{folder}: found no {Name}; wanted the --out folder of a part, run with --part K/N");
        try
        {
            using FileStream stream = PartText.Open(file, Wanted);
            if (stream.Length <= Largest && JsonSerializer.Deserialize<PartAsked>(stream, s_options) is { Arguments.IsDefault: false, Files.IsDefault: false } asked && asked.IsWhole) return asked;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw PartText.Unreadable(file, Wanted, e);
        }
        catch (JsonException)
        {
            // Said below, like a file that lacks something.
        }

        throw new FormatException($"{file}: found a file that is not as this program writes it; wanted {Wanted}");
    }

    /// <summary>True where both were asked the same of the same files.</summary>
    public bool Same(PartAsked other) => Arguments.SequenceEqual(other.Arguments) && Files.SequenceEqual(other.Files);

    // Whoever made the part may have left anything out, or have named files as no file can be named.
    private bool IsWhole => Arguments.All(a => a is not null) && Files.All(f => f is { Text: not null, Name: not null } && IsName(Path.GetFileName(f.Name)));

    private static bool IsName(string name) => name is not ("" or "." or "..") && !name.Contains('\0', StringComparison.Ordinal) && Encoding.UTF8.GetByteCount(name) <= LongestName;

    private static readonly JsonSerializerOptions s_options = new() { WriteIndented = true, Encoder = FigureJson.Options.Encoder, PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower };
}

/// <summary>A file that a study read.</summary>
/// <param name="Name">As given; a profile has its scenario's folder before its name.</param>
/// <param name="Text">What was in it.</param>
public sealed record PartFile(string Name, string Text);
