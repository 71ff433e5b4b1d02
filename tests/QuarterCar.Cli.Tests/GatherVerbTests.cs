using QuarterCar.TestKit.Programs;

namespace QuarterCar.Cli.Tests;

/// <summary>A study done in parts against the same study done at once.</summary>
public sealed class GatherVerbTests : IDisposable
{
    private const int Parts = 8;

    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    public static TheoryData<string[]> Studies => new()
    {
        new[] { "compare", "plain.yaml", "--vary", "coilover.preload=1,2,3,4,5,6,7,8,9 cm", "--hold", "ride_height", "--traces", "--also", "xlsx,parquet" },
        new[] { "compare", "plain.yaml", "other.yaml" },
        new[] { "compare", "plain.yaml", "--setups", "setups.csv", "--set", "coilover.preload=2 cm" },
        new[] { "sweep", "plain.yaml", "--vary", "coilover.preload=1:9:9 cm", "--goal", "up_travel_used:least", "--also", "parquet,xlsx" },
        new[] { "sweep", "plain.yaml", "--vary", "coilover.preload=1:9:3 cm", "--vary", "coilover.stop_nut.gap=1:3:4 cm", "--units", "us" },
        new[] { "sweep", "plain.yaml", "--vary", "coilover.springs.lower.rate=5:40:8 N/mm", "--set", "coilover.bump_stop=none" }, // the softest stand on metal
        new[] { "spread", "plain.yaml", "--samples", "20", "--seed", "7", "--also", "xlsx" },
    };

    [Theory]
    [MemberData(nameof(Studies))]
    public void Eight_parts_put_together_are_every_byte_of_one_run(string[] study)
    {
        string[] asked = Prepared(study);
        ExitCode code = Asked.Of([.. asked, "--out", _scratch.At("whole")]).Code;
        Assert.True(code is ExitCode.Done or ExitCode.Broken);
        int parts = study.Contains("other.yaml") ? 2 : Parts;
        foreach (int k in Enumerable.Range(1, parts)) Part(asked, k, parts);

        // What the parts were made of is not needed again.
        foreach (string file in (string[])["plain.yaml", "other.yaml", "setups.csv"]) File.Move(_scratch.At(file), _scratch.At(file + ".away"));
        Asked gathered = Asked.Of(["gather", .. Enumerable.Range(1, parts).Reverse().Select(k => _scratch.At($"part{k}")), "--out", _scratch.At("gathered")]);
        Assert.True(gathered.Code == code, gathered.Messages);
        string[] files = Names("whole");
        Assert.Contains("report.html", files);
        Assert.Contains(files, f => f.EndsWith(".svg", StringComparison.Ordinal));
        Assert.Equal(files, Names("gathered"));
        Assert.All(files, f => Assert.True(File.ReadAllBytes(_scratch.At("whole/" + f)).AsSpan().SequenceEqual(File.ReadAllBytes(_scratch.At("gathered/" + f))), f));
    }

    [Fact]
    public void A_profile_beside_the_scenario_goes_with_the_part()
    {
        _scratch.Write("course.csv", "distance_m,height_m\n0,0\n2,0\n3,0.1\n4,0\n");
        string scenario = Scenarios.Plain(limit: 2).Replace("drop: { height: 0.3 m }", "terrain:\n  - profile: { file: course.csv }\nspeed: 2 m/s", StringComparison.Ordinal);
        string[] asked = ["compare", _scratch.Write("bumpy.yaml", scenario), "--vary", "coilover.preload=2,3 cm"];
        Asked.Of([.. asked, "--out", _scratch.At("whole")]);
        foreach (int k in (int[])[1, 2]) Part(asked, k, 2);
        File.Delete(_scratch.At("course.csv"));
        Assert.Equal(ExitCode.Done, Asked.Of("gather", _scratch.At("part1"), _scratch.At("part2"), "--out", _scratch.At("gathered")).Code);
        foreach (string f in Names("whole")) Assert.Equal(File.ReadAllBytes(_scratch.At("whole/" + f)), File.ReadAllBytes(_scratch.At("gathered/" + f)));
    }

    [Theory]
    [InlineData("compare", "--setups", "courses.csv", "--traces")]
    [InlineData("compare", "--vary", "terrain[0].profile.file=course.csv,2024-05-01.csv,empty.csv,secret.txt")]
    [InlineData("sweep", "--setups", "courses.csv", "--vary", "coilover.preload=2:3:2 cm")]
    public void Profiles_that_only_the_setups_name_go_with_the_part_and_what_is_no_profile_does_not(params string[] study)
    {
        string[] files = ["course.csv", "2024-05-01.csv", "empty.csv", "secret.txt", "courses.csv"];
        _scratch.Write("course.csv", "distance_m,height_m\n0,0\n2,0\n3,0.1\n4,0\n");
        _scratch.Write("2024-05-01.csv", "\ufeffdistance_m,height_m\n0,0\n2,0\n3,0.05\n4,0\n");
        _scratch.Write("empty.csv", "");
        _scratch.Write("secret.txt", "the key of the house\n");
        _scratch.Write("courses.csv", "title,terrain[0].profile.file\na,course.csv\nb,2024-05-01.csv\nc,empty.csv\nd,secret.txt\n");
        string scenario = Scenarios.Plain(limit: 2).Replace("drop: { height: 0.3 m }", "terrain:\n  - profile: { file: course.csv }\nspeed: 2 m/s", StringComparison.Ordinal);
        string[] asked = [study[0], _scratch.Write("bumpy.yaml", "# secret.txt\n" + scenario), .. study[1..].Select(w => w == "courses.csv" ? _scratch.At(w) : w)];
        Assert.Equal(ExitCode.Broken, Asked.Of([.. asked, "--out", _scratch.At("whole")]).Code);
        foreach (int k in (int[])[1, 2]) Part(asked, k, 2);
        foreach (string file in files) File.Delete(_scratch.At(file));
        Asked gathered = Asked.Of("gather", _scratch.At("part1"), _scratch.At("part2"), "--out", _scratch.At("gathered"));
        Assert.True(gathered.Code == ExitCode.Broken, gathered.Messages);
        Assert.Equal(Names("whole"), Names("gathered"));
        foreach (string f in Names("whole")) Assert.Equal(File.ReadAllBytes(_scratch.At("whole/" + f)), File.ReadAllBytes(_scratch.At("gathered/" + f)));
        Assert.DoesNotContain("the key of the house", File.ReadAllText(_scratch.At("part1/part.json")), StringComparison.Ordinal);
    }

    [Fact]
    public void Lists_that_come_through_a_pipe_go_with_the_part_as_they_were_read()
    {
        Prepared("compare", "plain.yaml");
        _scratch.Write("springs.csv", "rate_N_mm,free_length_mm,solid_length_mm\n30,300,100\n40,350,130\n");
        const string script =
            """
            set -e
            for k in 1 2; do
              $QUARTERCAR compare plain.yaml --setups <(sed 's/^never.*$/d,4 cm,1 cm/' setups.csv) --split '30/40 N/mm' --springs <(cat springs.csv) --part $k/2 --out part$k
            done
            $QUARTERCAR gather part1 part2 --out gathered
            """;
        ProcessResult result = ProgramProcess.Shell(_scratch.Folder, script);
        Assert.True(result.Code == 0, result.Messages);
        Assert.Equal(5, File.ReadAllLines(_scratch.At("gathered/compare.csv")).Length);
    }

    [Fact]
    public void A_missing_part_is_named()
    {
        string[] asked = Prepared("sweep", "plain.yaml", "--vary", "coilover.preload=1:4:4 cm");
        foreach (int k in (int[])[1, 3]) Part(asked, k, 3);
        Refused("found no part 2/3", 1, 3);
    }

    [Theory]
    [InlineData("sweep plain.yaml --vary coilover.preload=1:4:4_cm", "sweep plain.yaml --vary coilover.preload=1:5:4_cm")]
    [InlineData("sweep plain.yaml --vary coilover.preload=1:4:4_cm", "sweep plain.yaml --vary coilover.preload=1:4:4_cm --goal up_travel_used:least")]
    [InlineData("spread plain.yaml --samples 4 --seed 1", "spread plain.yaml --samples 4 --seed 2")]
    [InlineData("spread plain.yaml --samples 4", "spread plain.yaml --samples 5")]
    [InlineData("compare plain.yaml --vary coilover.preload=1,2_cm", "compare plain.yaml --vary coilover.preload=1,2_cm --nut reset")]
    [InlineData("compare plain.yaml --vary coilover.preload=1,2_cm", "compare other.yaml --vary coilover.preload=1,2_cm")]
    public void Parts_of_different_studies_are_refused(string one, string other)
    {
        Part(Prepared(one.Split(' ')), 1, 2);
        Part(Prepared(other.Split(' ')), 2, 2);
        Refused("a part of another study", 1, 2);
    }

    [Fact]
    public void A_part_that_was_tampered_with_is_refused()
    {
        string[] asked = Prepared("sweep", "plain.yaml", "--vary", "coilover.preload=1:4:4 cm");
        foreach (int k in (int[])[1, 2]) Part(asked, k, 2);
        string json = _scratch.At("part2/sweep.json");
        File.WriteAllText(json, File.ReadAllText(json).Replace("\"title\":\"preload 2 cm\"", "\"title\":\"preload 7 cm\"", StringComparison.Ordinal));
        Refused("wanted 'preload 2 cm'", 1, 2);
        File.Delete(_scratch.At("part1/part.json"));
        Refused("found no part.json", 1, 2);
    }

    [Fact]
    public void A_whole_study_keeps_no_copy_of_what_it_read()
    {
        Asked.Of([.. Prepared("sweep", "plain.yaml", "--vary", "coilover.preload=1:2:2 cm"), "--out", _scratch.At("whole")]);
        Assert.DoesNotContain("part.json", Names("whole"));
    }

    private void Part(string[] asked, int k, int n)
    {
        Asked part = Asked.Of([.. asked, "--part", $"{k}/{n}", "--out", _scratch.At($"part{k}")]);
        Assert.True(part.Code is ExitCode.Done or ExitCode.Broken, part.Messages);
    }

    private void Refused(string words, params int[] parts)
    {
        Asked asked = Asked.Of(["gather", .. parts.Select(k => _scratch.At($"part{k}")), "--out", _scratch.At("gathered")]);
        Assert.Equal(ExitCode.BadInput, asked.Code);
        Assert.Contains(words, asked.Messages, StringComparison.Ordinal);
        Assert.False(Directory.Exists(_scratch.At("gathered")));
    }

    // '_' stands for the blank before a unit where a test's words are split at blanks.
    private string[] Prepared(params string[] study)
    {
        string tolerances = "\ntolerances: { corner.sprung_weight: 4 %, coilover.preload: 5 mm }\n";
        _scratch.Write("plain.yaml", Scenarios.Plain(limit: 2) + tolerances);
        _scratch.Write("other.yaml", Scenarios.Plain(limit: 2, height: 0.4) + tolerances);
        _scratch.Write("setups.csv", "title,coilover.preload,coilover.stop_nut.gap\n=soft,1 cm,1 cm\nb,2 cm,2 cm\nnever,-90 cm,2 cm\nc,3 cm,1 cm\n");
        return [.. study.Select(w => w.EndsWith(".yaml", StringComparison.Ordinal) || w.EndsWith(".csv", StringComparison.Ordinal) ? _scratch.At(w) : w.Replace("_cm", " cm", StringComparison.Ordinal))];
    }

    private string[] Names(string folder) =>
        [.. Directory.EnumerateFiles(_scratch.At(folder), "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(_scratch.At(folder), f).Replace('\\', '/')).Order(StringComparer.Ordinal)];
}
