using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace QuarterCar.LibraryTests.Notebooks;

/// <summary>A notebook file (nbformat 4): its code cells, and what each showed.</summary>
internal sealed class Notebook
{
    // As notebook editors write it.
    private static readonly JsonSerializerOptions s_format = new() { WriteIndented = true, IndentSize = 1, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private readonly JsonNode _root;

    private Notebook(JsonNode root) => _root = root;

    /// <summary>Its code cells, in order.</summary>
    public IReadOnlyList<NotebookCell> Cells => [.. CodeCells(_root).Select(c => new NotebookCell(
        Text(c["source"]), c["metadata"]?["dotnet_repl_cellExecutionEndTime"] is not null, [.. c["outputs"]!.AsArray().Select(o => Shown(o!))]))];

    /// <summary>Its text cells, as one text.</summary>
    public string Prose => string.Join("\n", _root["cells"]!.AsArray().Where(c => (string?)c!["cell_type"] == "markdown").Select(c => Text(c!["source"])));

    /// <summary>Reads a text.</summary>
    public static Notebook Parse(string json) => new(JsonNode.Parse(json)!);

    /// <summary>Reads a file.</summary>
    public static Notebook Load(string path) => Parse(File.ReadAllText(path));

    /// <summary>The text of this file with the outputs of another run of it.</summary>
    public string WithOutputs(Notebook ran)
    {
        JsonNode copy = _root.DeepClone();
        int count = 0;
        foreach ((JsonNode cell, JsonNode fresh) in CodeCells(copy).Zip(CodeCells(ran._root)))
        {
            cell["outputs"] = fresh["outputs"]!.DeepClone();
            cell["execution_count"] = ++count;
        }

        return copy.ToJsonString(s_format) + "\n";
    }

    private static IEnumerable<JsonNode> CodeCells(JsonNode root) => root["cells"]!.AsArray().Where(c => (string?)c!["cell_type"] == "code")!;

    private static NotebookOutput Shown(JsonNode output) => (string?)output["output_type"] switch
    {
        "error" => new(Text(output["evalue"]), IsError: true, HasPicture: false),
        "stream" => new(Text(output["text"]), IsError: false, HasPicture: false),
        _ => new(Text(output["data"]?["text/plain"]), IsError: false, output["data"]?["image/png"] is not null),
    };

    // A text is one string or a list of lines.
    private static string Text(JsonNode? node) => node is JsonArray lines ? string.Concat(lines.Select(l => (string?)l)) : (string?)node ?? "";
}

/// <summary>A code cell.</summary>
/// <param name="Source">Its code.</param>
/// <param name="Ran">True where the kernel noted when it ended.</param>
/// <param name="Outputs">What it showed.</param>
internal sealed record NotebookCell(string Source, bool Ran, IReadOnlyList<NotebookOutput> Outputs);

/// <summary>One output.</summary>
/// <param name="Text">Its words: text, a picture's words, or an error's message.</param>
/// <param name="IsError">True for a cell that failed.</param>
/// <param name="HasPicture">True where it shows a PNG.</param>
internal sealed record NotebookOutput(string Text, bool IsError, bool HasPicture);
