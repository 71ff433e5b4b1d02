using System.Text;
using System.Text.Json;

using QuarterCar.TestKit;

namespace QuarterCar.Cli.Tests;

/// <summary>`weigh`: from the command line to loads, and what is wrong with it in words.</summary>
public sealed class WeighVerbTests : IDisposable
{
    private static readonly string s_example = Path.Combine(Root(), "scenarios", "measured", "buggy-corners.yaml");
    private static readonly Tolerance s_byHand = Tolerance.Share(1e-12, "a few operations on doubles");
    private static readonly string[] s_lower = ["--lower-rate", "40 N/mm", "--lower-free", "350 mm", "--lower-loaded", "300 mm"];
    private readonly string _folder = Directory.CreateTempSubdirectory("weigh").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static (ExitCode Code, string Out, string Messages) Ask(params string[] args)
    {
        using var results = new MemoryStream();
        using var messages = new StringWriter();
        ExitCode code;
        using (var session = new Session(results, messages, Colour: false, default)) code = CommandLine.Run(["weigh", .. args], session);
        return (code, Encoding.UTF8.GetString(results.ToArray()), messages.ToString());
    }

    private static JsonElement Json(params string[] args)
    {
        var (code, output, messages) = Ask([.. args, "--json"]);
        Assert.Equal((ExitCode.Done, ""), (code, messages));
        return JsonDocument.Parse(output).RootElement;
    }

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder!.FullName, "QuarterCar.sln"))) folder = folder.Parent;
        return folder.FullName;
    }

    [Fact]
    public void A_single_spring_is_the_lower_one()
    {
        // 40 N/mm · 50 mm; √(2·(40·3)² + (2 % of 2000)²).
        JsonElement corner = Json(s_lower).GetProperty("corners")[0];
        s_byHand.Holds(2000, corner.GetProperty("spring_load_N").GetDouble());
        s_byHand.Holds(Math.Sqrt(30_400), corner.GetProperty("uncertainty_N").GetDouble());
        Assert.Equal(JsonValueKind.Null, corner.GetProperty("name").ValueKind);
    }

    [Fact]
    public void A_script_gets_the_load_that_the_screen_gives()
    {
        // 160·3.6 = 576 lbf against 225·3 = 675: the slider is on the nut, and the lower alone counts.
        string[] nut = ["--upper-rate", "160 lbf/in", "--upper-free", "12 in", "--upper-loaded", "8.4 in", "--lower-rate", "225 lbf/in", "--lower-free", "14 in", "--lower-loaded", "11.0 in"];
        s_byHand.Holds(675 * 4.4482216152605, Json(nut).GetProperty("corners")[0].GetProperty("spring_load_N").GetDouble());
        Assert.Contains("the lower spring alone counts: 675 ± 40 lbf", Ask(nut).Out.Replace('\u00a0', ' ').ReplaceLineEndings(" "), StringComparison.Ordinal);
    }

    [Fact]
    public void Errors_and_motion_ratio_are_taken_from_the_flags()
    {
        JsonElement corner = Json([.. s_lower, "--length-error", "1 mm", "--rate-error", "5 %", "--motion-ratio", "0.8"]).GetProperty("corners")[0];
        s_byHand.Holds(Math.Sqrt(2 * 40 * 40 + 100 * 100), corner.GetProperty("uncertainty_N").GetDouble());
        s_byHand.Holds(1600, corner.GetProperty("sprung_weight_N").GetDouble());
    }

    [Fact]
    public void The_example_file_pairs_its_corners_and_reads_the_lower_spring_where_the_slider_is_on_the_nut()
    {
        JsonElement root = Json("--file", s_example);
        Assert.Equal(["front left", "rear left"], root.GetProperty("differences").EnumerateArray().Select(d => d.GetProperty("left").GetString()));
        // 225 lbf/in · (14 − 11.025) in.
        s_byHand.Holds(225 * 2.975 * 4.4482216152605, root.GetProperty("corners")[2].GetProperty("spring_load_N").GetDouble());
    }

    [Theory]
    [InlineData("front left: 502 ± 18 lbf on the springs")]
    [InlineData("front right carries more than front left")]
    [InlineData("Stay out of a compressed spring's line.")]
    public void The_example_s_page_says(string words)
    {
        var (code, output, _) = Ask("--file", s_example);
        Assert.Equal(ExitCode.Done, code);
        Assert.Contains(words, output.Replace('\u00a0', ' ').ReplaceLineEndings(" "), StringComparison.Ordinal);
    }

    [Fact]
    public void The_readme_shows_what_its_command_prints()
    {
        string shown = File.ReadAllText(Path.Combine(Root(), "README.md")).Split("## Weighing a corner")[1].Split("```text\n")[1].Split("```")[0];
        var (_, output, _) = Ask(
            "--upper-rate", "160 lbf/in", "--upper-free", "12 in", "--upper-loaded", "8.5 in", "--lower-rate", "225 lbf/in", "--lower-free", "14 in", "--lower-loaded", "11.5 in,11.4 in",
            "--motion-ratio", "0.94");
        Assert.StartsWith(shown, output, StringComparison.Ordinal);
    }

    [Fact]
    public void Units_are_the_spring_s_unless_asked_otherwise()
    {
        Assert.Contains("2000", Ask(s_lower).Out, StringComparison.Ordinal);
        Assert.Contains("450 ± 39 lbf", Ask([.. s_lower, "--units", "us"]).Out.Replace('\u00a0', ' '), StringComparison.Ordinal); // 2000/4.44822
    }

    [Fact]
    public void Nothing_to_weigh_is_bad_input()
    {
        var (code, output, messages) = Ask();
        Assert.Equal((ExitCode.BadInput, ""), (code, output));
        Assert.Equal(
            "quartercar: weigh: found nothing to weigh; wanted --lower-rate, --lower-free and --lower-loaded (and the same for other springs), or --file MEASURED.yaml",
            messages.Trim());
    }

    [Fact]
    public void A_file_beside_flags_is_refused_and_its_own_mistakes_are_named_too()
    {
        string file = Path.Combine(_folder, "m.yaml");
        File.WriteAllText(file, "corners: [{ name: a, lower: { rate: 40, free_length: 9 mm, loaded_length: 8 mm } }]");
        var (code, _, messages) = Ask("--file", file, "--lower-rate", "40 N/mm");
        Assert.Equal(ExitCode.BadInput, code);
        Assert.Equal(2, messages.Trim().Split('\n').Length);
        Assert.Contains("--file: found it beside --lower-rate", messages, StringComparison.Ordinal);
        Assert.Contains("corners[0].lower.rate: found '40'", messages, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--lower-loaded", "360 mm", "quartercar: --lower-loaded: found '360 mm'; wanted a loaded length that is not above the free length")]
    [InlineData("--length-error", "-3 mm", "quartercar: --length-error: found '-3 mm'; wanted a length of 0 or more")]
    [InlineData("--rate-error", "2", "quartercar: --rate-error: found '2'; wanted a percentage with its unit: %")]
    [InlineData("--motion-ratio", "0", "quartercar: --motion-ratio: found '0'; wanted a plain number above 0")]
    [InlineData("--lower-rate", "-40 N/mm", "quartercar: --lower-rate: found '-40 N/mm'; wanted a spring rate above 0")]
    public void One_bad_flag_is_named_with_what_is_wanted(string flag, string text, string line)
    {
        string[] args = [.. s_lower.Chunk(2).Where(p => p[0] != flag).SelectMany(p => p), flag, text];
        var (code, output, messages) = Ask(args);
        Assert.Equal((ExitCode.BadInput, "", line), (code, output, messages.Trim()));
    }
}
