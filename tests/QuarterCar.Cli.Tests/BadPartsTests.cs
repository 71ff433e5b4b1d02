using System.Diagnostics;

using QuarterCar.TestKit.Programs;

namespace QuarterCar.Cli.Tests;

/// <summary>Parts of a study that are damaged, or made to do harm: each ends as bad input that names the file.</summary>
public sealed class BadPartsTests : IDisposable
{
    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(60);

    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Theory]
    [InlineData("\"note\":\"\"", "\"note\":null")]
    [InlineData("\"title\":\"preload 2 cm\"", "\"title\":null")]
    [InlineData("\"title\": \"Plain corner\"", "\"title\": null")]
    [InlineData("\"hold\": \"none\"", "\"hold\": null")]
    [InlineData("\"paths\": [\"coilover.preload\"]", "\"paths\": [null]")]
    [InlineData("\"setup_count\": 2", "\"setup_count\": 2.5")]
    public async Task Something_else_in_place_of_a_text_or_number_is_no_part_of_ours(string was, string now)
    {
        string json = Path.Combine(Part(), "compare.json"), text = File.ReadAllText(json);
        Assert.Contains(was, text, StringComparison.Ordinal);
        File.WriteAllText(json, text.Replace(was, now, StringComparison.Ordinal));
        await Refused(json, "that is not as this program writes it");
    }

    [Theory]
    [InlineData("part.json")]
    [InlineData("compare.json")]
    public async Task A_file_that_cannot_be_read_is_named(string name)
    {
        string file = Path.Combine(Part(), name);
        using var held = new FileStream(file, FileMode.Open, FileAccess.ReadWrite, FileShare.None);
        await Refused(file, "found a file that cannot be read");
    }

    [Theory]
    [InlineData("part.json")]
    [InlineData("compare.json")]
    public async Task A_pipe_is_not_waited_for_and_a_link_not_followed(string name)
    {
        string file = Path.Combine(Part(), name);
        File.Move(file, _scratch.At("real.json"));
        using (var made = Process.Start("mkfifo", [file])) await made.WaitForExitAsync();
        await Refused(file, "found an empty file");
        File.Delete(file);
        File.CreateSymbolicLink(file, _scratch.At("real.json"));
        await Refused(file, "found a link");
    }

    [Theory]
    [InlineData("{\n")]
    [InlineData("  \"setups\": [\n    {")]
    public async Task A_line_without_end_is_not_read_to_its_end(string until)
    {
        string json = Path.Combine(Part(), "compare.json"), text = File.ReadAllText(json);
        File.WriteAllText(json, text[..(text.IndexOf(until, StringComparison.Ordinal) + until.Length)]);
        using (FileStream file = File.OpenWrite(json)) file.SetLength(5L << 30); // more characters than memory can hold in one text; the file is sparse
        await Refused(json, "found a line of more than 16,777,216 characters");
    }

    [Theory]
    [InlineData("trace.csv")]
    [InlineData("events.csv")]
    public async Task A_trace_that_is_not_there_or_leads_elsewhere_is_named(string name)
    {
        string file = Path.Combine(Part("--traces"), "setups/02", name);
        File.Move(file, _scratch.At("real.csv"));
        await Refused(file, "found no such file");
        File.CreateSymbolicLink(file, _scratch.At("real.csv"));
        await Refused(file, "found a link");
        File.Delete(file);
        File.WriteAllText(file, "");
        await Refused(file, "found an empty file");
        File.Move(_scratch.At("real.csv"), file, overwrite: true);
        string folder = Path.GetDirectoryName(file)!;
        Directory.Move(folder, _scratch.At("real"));
        Directory.CreateSymbolicLink(folder, _scratch.At("real"));
        await Refused(folder, "found a link");
        Directory.Delete(folder);
        Directory.Move(_scratch.At("real"), folder);
        Assert.Equal(ExitCode.Done, Asked.Of("gather", _scratch.At("part"), "--out", _scratch.At("whole")).Code);
        Assert.Equal(File.ReadAllText(file), File.ReadAllText(Path.Combine(_scratch.At("whole/setups/02"), name)));
    }

    [Fact]
    public async Task A_trace_of_a_setup_that_a_part_does_not_hold_is_named()
    {
        string stray = Path.Combine(Part("--traces"), "setups/03/trace.csv");
        Directory.CreateDirectory(Path.GetDirectoryName(stray)!);
        File.WriteAllText(stray, "time_s\n0\n");
        await Refused(stray, "found a trace of a setup that did not run in this part");
    }

    [Fact]
    public async Task Traces_longer_than_a_sheet_are_refused_where_parts_are_put_together()
    {
        string asked = Path.Combine(Part("--traces", "--set", "run.sample=1 ms"), "part.json");
        File.WriteAllText(asked, File.ReadAllText(asked).Replace("run.sample=1 ms", "run.sample=0.001 ms", StringComparison.Ordinal));
        await Refused("--also xlsx", "found a table of 2,000,001 rows; wanted at most 1,048,575", "--also", "xlsx");
    }

    private async Task Refused(string file, string words, params string[] also)
    {
        Asked asked = await Task.Run(() => Asked.Of(["gather", _scratch.At("part"), "--out", _scratch.At("whole"), .. also])).WaitAsync(s_patience);
        Assert.True(asked.Code == ExitCode.BadInput, $"{asked.Code}: {asked.Messages}");
        Assert.StartsWith($"quartercar: {file}: found ", asked.Messages, StringComparison.Ordinal);
        Assert.Contains(words, asked.Messages, StringComparison.Ordinal);
        Assert.False(Directory.Exists(_scratch.At("whole")));
    }

    private string Part(params string[] more)
    {
        string folder = _scratch.At("part");
        Asked asked = Asked.Of(["compare", _scratch.Write("plain.yaml", Scenarios.Plain(limit: 2)), "--vary", "coilover.preload=1,2 cm", .. more, "--part", "1/1", "--out", folder]);
        Assert.True(asked.Code == ExitCode.Done, asked.Messages);
        return folder;
    }
}
