using System.Collections.Immutable;
using System.Text;
using System.Text.Json;

using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Studies;
using QuarterCar.Studies.Setups;

namespace QuarterCar.Reports.Studies;

/// <summary>One part of a study, or a whole one, as its JSON file has it: head and rows, read row by row.</summary>
public sealed class StudyPart
{
    /// <summary>Studies that can be done in parts, by the name of their files.</summary>
    public static readonly ImmutableArray<string> Studies = ["compare", "sweep", "spread"];

    private const string RowsBegin = "  \"setups\": [";

    private const string Wanted = "the JSON of a part of a study";

    // The head, characters: a line a property, of which the longest names the varied paths.
    private const int LongestHead = 1 << 24;

    private StudyPart(string folder, string file, StudyHead head, string version, PartAsked asked) =>
        (Folder, File, Head, Version, Asked) = (folder, file, head, version, asked);

    /// <summary>Where it lies, as given.</summary>
    public string Folder { get; }

    /// <summary>The JSON file.</summary>
    public string File { get; }

    /// <summary>Its head.</summary>
    public StudyHead Head { get; }

    /// <summary>The program that wrote it.</summary>
    public string Version { get; }

    /// <summary>What it was asked.</summary>
    public PartAsked Asked { get; }

    /// <summary>Finds the study in a folder.</summary>
    /// <exception cref="FormatException">There is none, or it is not as we write it; the message says which.</exception>
    public static StudyPart Open(string folder)
    {
        string? file = Studies.Select(s => Path.Combine(folder, s + ".json")).FirstOrDefault(System.IO.File.Exists);
        if (file is null) throw new FormatException($"{folder}: found no {string.Join(", ", Studies.Select(s => s + ".json"))}; wanted the --out folder of a part of a study");
        PartAsked asked = PartAsked.Read(folder);
        string? text = TextOfHead(file);
        try
        {
            if (text is not null)
            {
                using var json = JsonDocument.Parse(text);
                StudyHead found = HeadOf(json.RootElement);
                if (found.Study + ".json" == Path.GetFileName(file) && found.Setups >= 0 && found.Part >= 1 && found.Parts >= found.Part)
                    return new(folder, file, found, Text(json.RootElement.GetProperty("version")), asked);
            }
        }
        catch (Exception e) when (e is JsonException or FormatException or KeyNotFoundException or InvalidOperationException)
        {
            // Said below, like a file that lacks something.
        }

        throw new FormatException($"{file}: found a file that is not as this program writes it; wanted {Wanted}");
    }

    /// <summary>Its rows, in order, with their places in the whole study.</summary>
    /// <exception cref="FormatException">A row is not as we write it, or rows are missing.</exception>
    public IEnumerable<StudyRow> Rows()
    {
        long want = new StudyOptions(1, Head.Part, Head.Parts).Count(Head.Setups), have = 0;
        foreach (string line in PartText.Lines(File, Wanted))
        {
            if (!line.StartsWith("    {", StringComparison.Ordinal)) continue;
            if (have == want) throw new FormatException(FormattableString.Invariant($"{File}: found more than {have} setups; wanted {want}"));
            yield return Row(line.Trim().TrimEnd(','), Head.Part - 1 + (have++ * Head.Parts));
        }

        if (have != want) throw new FormatException(FormattableString.Invariant($"{File}: found {have} setups; wanted {want}"));
    }

    // Null where no rows follow.
    private static string? TextOfHead(string file)
    {
        var head = new StringBuilder();
        foreach (string line in PartText.Lines(file, Wanted))
        {
            if (line.StartsWith(RowsBegin, StringComparison.Ordinal)) return head.ToString().TrimEnd().TrimEnd(',') + "}";
            if (head.Append(line).Length > LongestHead) break;
        }

        return null;
    }

    private static StudyHead HeadOf(JsonElement root) => new(
        Text(root.GetProperty("study")),
        Text(root.GetProperty("title")),
        Text(root.GetProperty("scenario_hash")),
        root.GetProperty("units").GetString() == "us" ? UnitSystem.Us : UnitSystem.Si,
        [.. root.GetProperty("paths").EnumerateArray().Select(Text)],
        Text(root.GetProperty("hold")),
        root.GetProperty("setup_count").GetInt64(),
        root.TryGetProperty("part", out JsonElement part) ? part.GetInt32() : 1,
        root.TryGetProperty("parts", out JsonElement parts) ? parts.GetInt32() : 1,
        root.TryGetProperty("seed", out JsonElement seed) ? seed.GetUInt64() : null);

    private StudyRow Row(string line, long index)
    {
        try
        {
            using var json = JsonDocument.Parse(line);
            JsonElement row = json.RootElement, figures = row.GetProperty("figures");
            return new StudyRow(
                index,
                new SetupRequest(Text(row.GetProperty("title")), [.. row.GetProperty("values").EnumerateObject().Select(Value)]),
                row.GetProperty("stop_nut").GetString() switch { "stays" => NutRule.Stays, "reset" => NutRule.Reset, _ => null },
                Text(row.GetProperty("note")),
                figures.ValueKind == JsonValueKind.Null ? null : [.. FigureTable.Names.Select(n => Number(figures.GetProperty(n)))],
                null);
        }
        catch (Exception e) when (e is JsonException or FormatException or KeyNotFoundException or InvalidOperationException)
        {
            throw new FormatException(FormattableString.Invariant($"{File}: found a setup ({index + 1}) that is not as this program writes it; wanted {Wanted}"));
        }
    }

    private static SetupValue Value(JsonProperty value) => value.Value.ValueKind == JsonValueKind.String
        ? new SetupValue(value.Name, value.Value.GetString()!, null)
        : SetupValue.OfSi(value.Name, Finite(value.Value));

    private static string Text(JsonElement value) => value.GetString() ?? throw new InvalidOperationException("null in place of a text");

    private static double? Number(JsonElement value) => value.ValueKind == JsonValueKind.Null ? null : Finite(value);

    // A number that no double holds comes out infinite; we write none such.
    private static double Finite(JsonElement value) => value.GetDouble() is var number && double.IsFinite(number) ? number : throw new FormatException();
}
