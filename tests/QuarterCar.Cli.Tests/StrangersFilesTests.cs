using System.IO.Compression;
using System.Xml.Linq;

using QuarterCar.TestKit.Programs;

namespace QuarterCar.Cli.Tests;

/// <summary>What strangers write into titles and names stands harmless in every file that comes out, and what they put into the part of a study leads nowhere.</summary>
public sealed class StrangersFilesTests : IDisposable
{
    private const string Title = "=HYPERLINK(\"x\") <img src=x onerror=alert(1)></title><script>alert(2)</script> ]]> ' & ${x} {{springs}}";

    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Theory]
    [InlineData("run", "--also", "xlsx")]
    [InlineData("check")]
    [InlineData("compare", "--setups", "setups.csv", "--also", "xlsx")]
    [InlineData("sweep", "--vary", "coilover.preload=1:3:3 cm")]
    [InlineData("spread", "--samples", "4")]
    [InlineData("sheet")]
    public void No_page_or_picture_takes_a_title_for_its_own_words(params string[] verb)
    {
        Asked asked = Asked.Of([verb[0], Scenario(), .. verb[1..].Select(w => w.EndsWith(".csv", StringComparison.Ordinal) ? _scratch.At(w) : w), "--out", _scratch.At(verb[0] == "sheet" ? "out/sheet.html" : "out")]);
        Assert.True(asked.Code is ExitCode.Done or ExitCode.Broken, asked.Messages);
        foreach (string file in _scratch.Files().Where(f => f.StartsWith("out/", StringComparison.Ordinal)))
        {
            string text = File.ReadAllText(_scratch.At(file));
            if (file.EndsWith(".html", StringComparison.Ordinal) || file.EndsWith(".svg", StringComparison.Ordinal))
            {
                Assert.DoesNotContain("<img src=x", text, StringComparison.Ordinal);
                Assert.DoesNotContain("<script>alert", text, StringComparison.Ordinal);
            }

            if (file.EndsWith(".html", StringComparison.Ordinal)) Assert.Contains("&lt;script&gt;alert(2)", text, StringComparison.Ordinal);
            if (file.EndsWith(".svg", StringComparison.Ordinal)) Assert.NotNull(XDocument.Parse(text).Root);
            if (file.EndsWith(".json", StringComparison.Ordinal)) System.Text.Json.JsonDocument.Parse(text).Dispose();
            if (file.EndsWith(".csv", StringComparison.Ordinal)) Assert.All(File.ReadLines(_scratch.At(file)).Skip(1), l => Assert.False(l.TrimStart('"').StartsWith('=') || l.TrimStart('"').StartsWith('@'), file + ": " + l));
            if (file.EndsWith(".xlsx", StringComparison.Ordinal)) Assert.Empty(Formulas(_scratch.At(file)));
        }
    }

    [Theory]
    [InlineData("so\u001b[2Jft")]
    [InlineData("so\u202eft")]
    [InlineData("so\u0007ft")]
    public void A_setup_s_title_that_steers_a_terminal_is_refused(string title)
    {
        Asked asked = Asked.Of("compare", Scenario(), "--setups", _scratch.Write("bad.csv", $"title,coilover.preload\n{title},1 cm\n"));
        Assert.Equal(ExitCode.BadInput, asked.Code);
        Assert.Contains("bad.csv:2: title: found 'so", asked.Messages, StringComparison.Ordinal);
        Assert.DoesNotContain(asked.Messages, c => c != '\n' && !QuarterCar.Scenarios.PlainText.IsShown(c));
    }

    [Fact]
    public void A_file_s_own_name_is_not_handed_to_the_terminal_as_it_is()
    {
        Asked asked = Asked.Of("check", "no\u001b[2Jsuch.yaml");
        Assert.Equal((ExitCode.BadInput, "quartercar: no [2Jsuch.yaml: found no such file; wanted a scenario file (YAML)\n"), (asked.Code, asked.Messages));
    }

    [Theory]
    [InlineData("\"name\": \"..\"")]
    [InlineData("\"name\": \"\"")]
    [InlineData("\"name\": \"x/..\"")]
    [InlineData("\"name\": null")]
    [InlineData("\"name\": \"../../../elsewhere.yaml\"")]
    [InlineData("\"name\": \"/etc/passwd\"")]
    [InlineData("\"name\": \"a\\u0000b\"")]
    public void A_part_whose_files_are_called_something_else_is_refused_and_writes_nothing(string name)
    {
        string part = Part();
        string asked = File.ReadAllText(Path.Combine(part, "part.json"));
        File.WriteAllText(Path.Combine(part, "part.json"), System.Text.RegularExpressions.Regex.Replace(asked, "\"name\": \"[^\"]*\"", _ => name));
        Refused(part);
        Assert.DoesNotContain(_scratch.Files(), f => f.Contains("elsewhere", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("\"setup_count\": 2", "\"setup_count\": 2, \"part\": 1, \"parts\": 2147483647")]
    [InlineData("\"setup_count\": 2", "\"setup_count\": 2, \"parts\": -1")]
    [InlineData("\"setup_count\": 2", "\"setup_count\": 2, \"part\": 0, \"parts\": 2")]
    [InlineData("\"setup_count\": 2", "\"setup_count\": -2")]
    [InlineData("\"setup_count\": 2", "\"setup_count\": 9000000000000000000")]
    [InlineData("\"study\": \"compare\"", "\"study\": \"reach\"")]
    public void A_part_that_claims_what_cannot_be_is_refused(string was, string now)
    {
        string part = Part(), json = Path.Combine(part, "compare.json");
        string text = File.ReadAllText(json);
        Assert.Contains(was, text, StringComparison.Ordinal);
        File.WriteAllText(json, text.Replace(was, now, StringComparison.Ordinal));
        Refused(part);
    }

    [Theory]
    [InlineData("compare", "--vary", "coilover.preload=1,2 cm")]
    [InlineData("sweep", "--vary", "coilover.preload=1:2:2 cm")]
    [InlineData("spread", "--samples", "2")]
    public void A_part_whose_arguments_are_those_of_a_part_again_is_refused_and_takes_along_nothing(params string[] study)
    {
        string part = Part(study: study), asked = Path.Combine(part, "part.json"), text = File.ReadAllText(asked);
        string secret = _scratch.Write("secret.csv", "title\nthe key of the house\n");
        foreach (string own in (string[])[$"\"--part\", \"1/1\", \"--setups\", \"{secret}\"", "\"--part\", \"1/1\"", "\"--out\", \"elsewhere\"", "\"--json\"", "\"--jobs\", \"1\""])
        {
            File.WriteAllText(asked, text.Replace($"\"{study[2]}\"", $"\"{study[2]}\", {own}", StringComparison.Ordinal));
            Assert.Contains($"part.json: found arguments that no part of {study[0]} keeps", Refused(part), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_part_takes_along_no_file_that_the_scenario_only_mentions()
    {
        _scratch.Write("secret.txt", "the key of the house\n");
        _scratch.Write("course.csv", "distance_m,height_m\n0,0\n5,0.1\n");
        string kept = File.ReadAllText(Path.Combine(Part("# secret.txt course.csv\n"), "part.json"));
        Assert.DoesNotContain("the key of the house", kept, StringComparison.Ordinal);
        Assert.DoesNotContain("distance_m,height_m", kept, StringComparison.Ordinal);
    }

    private static IEnumerable<string> Formulas(string book)
    {
        using ZipArchive zip = ZipFile.OpenRead(book);
        foreach (ZipArchiveEntry entry in zip.Entries.Where(e => e.FullName.StartsWith("xl/worksheets/", StringComparison.Ordinal) && e.Name.EndsWith(".xml", StringComparison.Ordinal)))
        {
            using Stream stream = entry.Open();
            foreach (XElement formula in XDocument.Load(stream).Descendants().Where(e => e.Name.LocalName == "f")) yield return formula.Value;
        }
    }

    private string Refused(string part)
    {
        Asked asked = Asked.Of("gather", part, "--out", _scratch.At("whole"));
        Assert.True(asked.Code == ExitCode.BadInput, $"{asked.Code}: {asked.Messages}");
        Assert.Contains("wanted", asked.Messages, StringComparison.Ordinal);
        Assert.False(Directory.Exists(_scratch.At("whole")));
        return asked.Messages;
    }

    private string Part(string remark = "", params string[] study)
    {
        string folder = _scratch.At("part");
        if (study.Length == 0) study = ["compare", "--vary", "coilover.preload=1,2 cm"];
        Asked asked = Asked.Of([study[0], Scenario(remark), .. study[1..], "--part", "1/1", "--out", folder]);
        Assert.True(asked.Code == ExitCode.Done, asked.Messages);
        return folder;
    }

    private string Scenario(string remark = "")
    {
        _scratch.Write("setups.csv", "title,coilover.preload\n=1+1,1 cm\n+1,1.2 cm\n-1,1.4 cm\n@SUM(A1),1.6 cm\n$=1+1,1.8 cm\n<script>alert(3)</script>,2 cm\n");
        return _scratch.Write("strange.yaml", remark + Scenarios.Plain(limit: 2).Replace("Plain corner", "'" + Title.Replace("'", "''", StringComparison.Ordinal) + "'", StringComparison.Ordinal)
            .Replace("name: loaded", "name: '<img src=x> =1'", StringComparison.Ordinal).Replace("duration: 2 s", "duration: 0.5 s", StringComparison.Ordinal) + "\ntolerances: { coilover.preload: 5 mm }\n");
    }
}
