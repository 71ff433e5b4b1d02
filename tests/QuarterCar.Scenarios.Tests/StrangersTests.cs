using System.Diagnostics;

using QuarterCar.Scenarios.Reading;
using QuarterCar.Scenarios.SpringLists;

namespace QuarterCar.Scenarios.Tests;

/// <summary>A scenario, with its folder, may come from a stranger: its tags make nothing, its links lead nowhere, its texts do nothing but stand there.</summary>
public class StrangersTests
{
    // ESC of a terminal, the start of a control sequence in one character, a bell, override and isolate of the reading order, separators, half a character.
    public static TheoryData<string> Steering => ["\\e[2J", "\\x9b2J", "\\a", "\\u202e", "\\u2066", "\\L", "\\P", "\\uFEFF", "\\x7f", "\\n", "\\0"];

    [Theory]
    [InlineData("!!System.Diagnostics.Process")]
    [InlineData("!System.IO.FileInfo,System.Runtime")]
    [InlineData("!<tag:yaml.org,2002:python/object/apply:os.system>")]
    [InlineData("!!binary")]
    [InlineData("!!str")]
    public void A_tag_is_refused_where_it_stands_and_makes_nothing(string tag)
    {
        var lines = Readings.Read(Readings.Bench.Replace("sprung_weight: 800 lbf", $"sprung_weight: {tag} 800 lbf", StringComparison.Ordinal)).Lines();
        Assert.StartsWith("bench.yaml:3: corner.sprung_weight: found a YAML tag", lines[0], StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(Steering))]
    public void A_title_that_steers_a_terminal_or_turns_the_line_is_refused_and_not_repeated(string piece)
    {
        var line = Assert.Single(Readings.Read(Readings.Bench.Replace("title: Bench corner", $"title: \"Bench {piece} corner\"", StringComparison.Ordinal)).Lines());
        Assert.StartsWith("bench.yaml:1: title: found 'Bench ", line, StringComparison.Ordinal);
        Assert.True(PlainText.IsLine(line));
    }

    [Theory, MemberData(nameof(Steering))]
    public void The_name_of_a_case_likewise(string piece)
    {
        var line = Assert.Single(Readings.Read(Readings.Bench.Replace("name: hot", $"name: \"hot {piece}\"", StringComparison.Ordinal)).Lines());
        Assert.StartsWith("bench.yaml:24: cases[1].name: found 'hot", line, StringComparison.Ordinal);
        Assert.True(PlainText.IsLine(line));
    }

    [Fact]
    public void A_spring_s_name_likewise()
    {
        var problems = new ProblemList();
        using var stream = new MemoryStream("name,rate_lbf_in,free_length_in,solid_length_in\nb\u001b[2J,150,12,4\n"u8.ToArray());
        Assert.Null(SpringListReader.Read(stream, "list.csv", problems));
        Assert.Equal("list.csv:2: name: found 'b [2J'; wanted plain text, without control characters", Assert.Single(problems.ToImmutable()).ToString());
    }

    [Theory]
    [InlineData("Bench \u0627\u0644\u0632\u0627\u0648\u064a\u0629 \u05e4\u05d9\u05e0\u05d4")]
    [InlineData("Bench \U0001f6a7 <b>\"'&</b> =1+1")]
    [InlineData("\u06a9\u0648\u0646\u0647\u200c\u0627\u06cc")]
    public void Words_of_any_script_and_signs_of_any_kind_are_a_title(string title) =>
        Assert.Equal(title, Readings.Read(Readings.Bench.Replace("Bench corner", "'" + title.Replace("'", "''", StringComparison.Ordinal) + "'", StringComparison.Ordinal)).Good().Title);

    [Fact]
    public void A_link_out_of_the_folder_is_not_followed_and_one_inside_is()
    {
        using var secret = new Scratch("secret.csv", "distance_m,height_m\n0,0\n5,0.1\n");
        using var own = new Scratch("real.csv", "distance_m,height_m\n0,0\n5,0.1\n");
        File.CreateSymbolicLink(Path.Combine(own.Folder, "out.csv"), secret.Path);
        File.CreateSymbolicLink(Path.Combine(own.Folder, "chain.csv"), "out.csv");
        File.CreateSymbolicLink(Path.Combine(own.Folder, "endless.csv"), "/dev/zero");
        File.CreateSymbolicLink(Path.Combine(own.Folder, "self.csv"), "self.csv");
        File.CreateSymbolicLink(Path.Combine(own.Folder, "inside.csv"), "real.csv");
        Assert.Empty(Problems("inside.csv", own.Folder));
        foreach (var name in new[] { "out.csv", "chain.csv", "endless.csv" })
        {
            Assert.Equal("bench.yaml:20: terrain[1].profile.file: found a link that leads out of the scenario's folder; wanted the plain name of a file beside the scenario file", Assert.Single(Problems(name, own.Folder)));
        }

        Assert.Single(Problems("self.csv", own.Folder));
    }

    [Theory]
    [InlineData("d/../secret.csv")]
    [InlineData("./d/../secret.csv")]
    [InlineData("hop.csv")]
    public void A_link_that_goes_up_behind_another_link_is_not_taken_for_the_file_that_its_text_names(string target)
    {
        using var secret = new Scratch("secret.csv", "distance_m,height_m\n0,0\n5,0.1\n");
        using var own = new Scratch("secret.csv", "distance_m,height_m\n0,0\n5,0.2\n");
        Directory.CreateSymbolicLink(Path.Combine(own.Folder, "d"), Directory.CreateDirectory(Path.Combine(secret.Folder, "below")).FullName);
        File.CreateSymbolicLink(Path.Combine(own.Folder, "hop.csv"), "d/../secret.csv");
        File.CreateSymbolicLink(Path.Combine(own.Folder, "course.csv"), target);
        Assert.Equal(File.ReadAllText(secret.Path), File.ReadAllText(Path.Combine(own.Folder, "course.csv")));
        Assert.Equal("bench.yaml:20: terrain[1].profile.file: found a link that leads out of the scenario's folder; wanted the plain name of a file beside the scenario file", Assert.Single(Problems("course.csv", own.Folder)));
    }

    [Fact]
    public async Task A_pipe_is_not_waited_for()
    {
        using var own = new Scratch("real.csv");
        using (var made = Process.Start("mkfifo", [Path.Combine(own.Folder, "pipe.csv")]))
        {
            await made.WaitForExitAsync();
        }

        Assert.Equal(
            "pipe.csv: found an empty file; wanted a CSV file with columns distance_<unit> and height_<unit>",
            Assert.Single(await Task.Run(() => Problems("pipe.csv", own.Folder)).WaitAsync(TimeSpan.FromSeconds(30))));
    }

    private static string[] Problems(string file, string folder)
    {
        var text = Readings.Bench.Replace("- step: -20 in", $"- profile: {{ file: {file} }}", StringComparison.Ordinal).Replace("terrain[1].step: =-10 in", "speed: 5 mph", StringComparison.Ordinal).Replace("terrain[1].step: -4 in", "speed: 4 mph", StringComparison.Ordinal);
        return [.. ScenarioReader.ReadText("bench.yaml", text, ReadOptions.Plain, folder).Problems.Select(p => p.ToString())];
    }
}
