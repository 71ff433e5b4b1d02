using System.Text.Json.Nodes;

using QuarterCar.TestKit.Programs;

namespace QuarterCar.LibraryTests.Notebooks;

/// <summary>Every notebook runs from scratch and shows what its file shows. RECORD_NOTEBOOKS=1 writes the outputs into the files.</summary>
public sealed class NotebookTests
{
    public static TheoryData<string> Files => [.. Directory.EnumerateFiles(NotebookHost.Folder, "*.ipynb").Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)];

    [NotebookTheory]
    [MemberData(nameof(Files))]
    public void Notebook_runs_from_scratch_and_shows_what_its_file_shows(string name)
    {
        string path = Path.Combine(NotebookHost.Folder, name);
        Notebook file = Notebook.Load(path), ran = NotebookHost.Run(path);
        if (Environment.GetEnvironmentVariable("RECORD_NOTEBOOKS") == "1" && !NotebookCheck.Failures(ran).Any())
        {
            File.WriteAllText(path, file.WithOutputs(ran));
            file = Notebook.Load(path);
        }

        IReadOnlyList<string> complaints = NotebookCheck.Complaints(file, ran);
        Assert.True(complaints.Count == 0, string.Join('\n', complaints));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Notebook_ends_in_pictures_and_says_what_is_learned_and_holds_key_figures(string name)
    {
        Notebook file = Notebook.Load(Path.Combine(NotebookHost.Folder, name));
        Assert.True(file.Cells[^1].Outputs.Any(o => o.HasPicture), "the last cell of code shows no picture");
        Assert.Contains(file.Cells.SelectMany(c => c.Outputs), o => o.Text.Contains("key figure: ", StringComparison.Ordinal));
        Assert.All(["## What is learned", "What a quarter-car cannot know", "no safe height", "Springs under compression and gas under pressure can injure"], words => Assert.Contains(words, file.Prose, StringComparison.Ordinal));
        Assert.DoesNotContain(file.Cells, c => c.Source.Contains("#r \"nuget", StringComparison.Ordinal));
    }

    [NotebookFact]
    public void The_command_of_the_readme_runs_a_notebook()
    {
        const string To = "../out/splits.ipynb";
        using var scratch = new Scratch();
        string line = File.ReadLines(Checkout.At("README.md")).Single(l => l.Contains("dotnet-repl --run", StringComparison.Ordinal));
        Assert.Contains(To, line, StringComparison.Ordinal);
        ProcessResult result = ProgramProcess.Shell(Checkout.Root, line.Replace(To, scratch.At("splits.ipynb"), StringComparison.Ordinal) + " < /dev/null");
        Assert.True(result.Code == 0, result.Out + result.Messages);
        Notebook ran = Notebook.Load(scratch.At("splits.ipynb"));
        Assert.Empty(NotebookCheck.Failures(ran));
        Assert.Contains(ran.Cells[^1].Outputs, o => o.HasPicture);
    }

    [Fact]
    public void There_are_at_least_three() => Assert.True(Files.Count >= 3);

    [NotebookFact]
    public void A_failing_cell_says_what_the_command_line_says()
    {
        using var scratch = new Scratch();
        string library = "#r \"../src/QuarterCar.Library/bin/Debug/net10.0/UnitsNet.dll\"\n#r \"../src/QuarterCar.Library/bin/Debug/net10.0/QuarterCar.Library.dll\"";
        string bad = "QuarterCar.Scenario.Load(\"../scenarios/quarry-ledge.yaml\").With(\"coilover.stop_nut.gap\", \"1.25\")";
        Notebook ran = NotebookHost.Run(scratch.Write("bad.ipynb", Json(Cell(library), Cell(bad))));

        ProcessResult program = ProgramProcess.Run(NotebookHost.Folder, "check", "../scenarios/quarry-ledge.yaml", "--set", "coilover.stop_nut.gap=1.25");
        string words = program.Messages.Split('\n').First(l => l.Contains("found '1.25'", StringComparison.Ordinal));
        string failure = Assert.Single(NotebookCheck.Failures(ran));
        Assert.Contains(words[words.IndexOf("--set", StringComparison.Ordinal)..], failure, StringComparison.Ordinal);
    }

    [Fact]
    public void A_notebook_that_ran_no_cell_is_no_success() =>
        Assert.Equal(["no cell ran"], Complaints([Cell("1")], [Cell("1")]));

    [Fact]
    public void A_cell_that_failed_is_told_with_its_message() =>
        Assert.Contains("cell 1 failed: no such thing", Complaints([Cell("1")], [Ran("1", new JsonObject { ["output_type"] = "error", ["evalue"] = "no such thing" })]));

    [Fact]
    public void A_figure_may_differ_by_one_in_its_last_digit_and_no_more()
    {
        Assert.Empty(Complaints([Cell("1", Line("key figure: gap = 1.250 in"))], [Ran("1", Line("key figure: gap = 1.251 in"))]));
        Assert.Equal(
            ["cell 1: shows 'key figure: gap = 1.252 in', the file 'key figure: gap = 1.250 in'"],
            Complaints([Cell("1", Line("key figure: gap = 1.250 in"))], [Ran("1", Line("key figure: gap = 1.252 in"))]));
        Assert.NotEmpty(Complaints([Cell("1", Line("ride height 5.3 in"))], [Ran("1", Line("preload 5.3 in"))]));
        Assert.NotEmpty(Complaints([Cell("1", Line("5.3 in"))], [Ran("1")]));
    }

    private static IReadOnlyList<string> Complaints(JsonNode[] file, JsonNode[] ran) => NotebookCheck.Complaints(Notebook.Parse(Json(file)), Notebook.Parse(Json(ran)));

    private static string Json(params JsonNode[] cells) => new JsonObject
    {
        ["cells"] = new JsonArray(cells),
        ["metadata"] = new JsonObject { ["kernelspec"] = new JsonObject { ["language"] = "C#", ["name"] = ".net-csharp" } },
        ["nbformat"] = 4,
        ["nbformat_minor"] = 5,
    }.ToJsonString();

    private static JsonObject Cell(string source, params JsonNode[] outputs) => new()
    {
        ["cell_type"] = "code",
        ["execution_count"] = null,
        ["metadata"] = new JsonObject(),
        ["source"] = source,
        ["outputs"] = new JsonArray(outputs),
    };

    private static JsonObject Ran(string source, params JsonNode[] outputs)
    {
        JsonObject cell = Cell(source, outputs);
        cell["metadata"]!["dotnet_repl_cellExecutionEndTime"] = "now";
        return cell;
    }

    private static JsonObject Line(string text) => new() { ["output_type"] = "stream", ["name"] = "stdout", ["text"] = text };
}
