using System.Globalization;
using System.Text;
using System.Text.Json;

using QuarterCar.Model;

namespace QuarterCar.Cli.Tests;

public sealed class SpreadVerbTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("spread").FullName;

    public SpreadVerbTests() => File.WriteAllText(In("plain.yaml"), Scenarios.Plain().Replace("duration: 2 s", "duration: 0.4 s", StringComparison.Ordinal) + """

        tolerances:
          corner.sprung_weight: 4 %
          coilover.springs.upper.rate: { within: 2 %, shape: uniform }
          coilover.preload: 3 mm
        """);

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private string In(string name) => Path.Combine(_folder, name);

    [Fact]
    public void Files_hold_what_the_contract_says()
    {
        Asked asked = Asked.Of("spread", In("plain.yaml"), "--samples", "24", "--out", In("out"), "--also", "xlsx,parquet");
        Assert.Equal(ExitCode.Done, asked.Code);
        JsonElement json = JsonDocument.Parse(File.ReadAllText(In("out/spread.json"))).RootElement;
        string[] rows = File.ReadAllLines(In("out/spread.csv"));
        Assert.Equal(25, rows.Length);
        Assert.StartsWith("title,corner.sprung_weight_N,coilover.springs.upper.rate_N_m,coilover.preload_m,stop_nut,note,static.ride_height_m,", rows[0], StringComparison.Ordinal);
        Assert.Equal(24, json.GetProperty("setups").GetArrayLength());

        // The percentiles again, from the table.
        int column = Array.IndexOf(rows[0].Split(','), "static.ride_height_m");
        double[] heights = [.. rows.Skip(1).Select(r => double.Parse(r.Split(',')[column], CultureInfo.InvariantCulture)).Order()];
        JsonElement spread = json.GetProperty("figures").GetProperty("static.ride_height_m");
        Assert.Equal(heights[11] + ((heights[12] - heights[11]) / 2), spread.GetProperty("p50").GetDouble(), 1e-15);
        Assert.Equal(heights[1] + ((heights[2] - heights[1]) * 0.15), spread.GetProperty("p05").GetDouble(), 1e-15); // 0.05·23 = 1.15
        Assert.Equal(heights.Sum() / 24, spread.GetProperty("mean").GetDouble(), 1e-14);
        Assert.Equal(EventNames.All.Length, json.GetProperty("contact_share").EnumerateObject().Count());
        foreach (string figure in new[] { "static.ride_height_m", "travel.up_travel_used" })
        {
            double[] shares = [.. json.GetProperty("variance_share").GetProperty(figure).EnumerateObject().Select(s => s.Value.GetDouble())];
            Assert.Equal(3, shares.Length);
            Assert.InRange(shares.Sum(), 0.5, 1 + 1e-12);
        }

        Assert.All(new[] { "spread.xlsx", "spread.parquet", "report.html", "spread.png", "spread_shares.svg" }, f => Assert.True(File.Exists(In("out/" + f)), f));
    }

    [Fact]
    public void One_or_four_jobs_and_three_cultures_write_the_same_bytes()
    {
        var texts = new[] { ("en-US", "1"), ("de-DE", "4"), ("tr-TR", "3") }.Select(run =>
        {
            var before = CultureInfo.CurrentCulture;
            try
            {
                CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(run.Item1);
                string out1 = In("out" + run.Item2);
                Assert.Equal(ExitCode.Done, Asked.Of("spread", In("plain.yaml"), "--samples", "20", "--jobs", run.Item2, "--out", out1, "--also", "xlsx,parquet").Code);
                return new[] { "spread.csv", "spread.json", "spread.xlsx", "spread.parquet", "report.html" }.Select(f => Encoding.Latin1.GetString(File.ReadAllBytes(Path.Combine(out1, f)))).ToArray();
            }
            finally
            {
                CultureInfo.CurrentCulture = before;
            }
        }).ToList();
        Assert.Equal(texts[0], texts[1]);
        Assert.Equal(texts[0], texts[2]);
    }

    [Fact]
    public void Json_is_what_the_file_holds()
    {
        Asked asked = Asked.Of("spread", In("plain.yaml"), "--samples", "5", "--seed", "3", "--json", "--out", In("out"));
        Assert.Equal(File.ReadAllText(In("out/spread.json")), asked.Out);
        Assert.Equal(asked.Out, Asked.Of("spread", In("plain.yaml"), "--samples", "5", "--seed", "3", "--json").Out);
        Assert.NotEqual(asked.Out, Asked.Of("spread", In("plain.yaml"), "--samples", "5", "--seed", "4", "--json").Out);
    }

    [Fact]
    public void A_scenario_without_tolerances_is_bad_input()
    {
        Asked asked = Asked.Of("spread", Scenarios.QuarryLedge, "--set", "tolerances=none");
        Assert.Equal(ExitCode.BadInput, asked.Code);
        Assert.Contains("tolerances: found nothing; wanted what is uncertain", asked.Messages, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--samples", "1")]
    [InlineData("--samples", "many")]
    [InlineData("--seed", "-1")]
    [InlineData("--also", "ods")]
    [InlineData("--also", "xlsx")]
    public void Wrong_numbers_and_formats_are_bad_input(string option, string value)
    {
        Asked asked = Asked.Of("spread", In("plain.yaml"), option, value);
        Assert.Equal(ExitCode.BadInput, asked.Code);
        Assert.Contains(option, asked.Messages, StringComparison.Ordinal);
        Assert.Equal("", asked.Out);
    }

    [Fact]
    public void A_sample_that_cannot_be_run_keeps_its_row_and_the_exit_code_says_so()
    {
        Asked asked = Asked.Of("spread", In("plain.yaml"), "--samples", "10", "--out", In("out"), "--set", "coilover.friction=10 N", "--set", "tolerances={ coilover.friction: { within: 20 N, shape: uniform } }");
        Assert.Equal(ExitCode.Broken, asked.Code);
        Assert.Contains("of 10 samples could not be run", asked.Out, StringComparison.Ordinal);
        Assert.Equal(11, File.ReadAllLines(In("out/spread.csv")).Length);
    }

    [Fact]
    public void A_run_writes_its_tables_as_workbook_and_parquet_too()
    {
        Assert.Equal(ExitCode.Broken, Asked.Of("run", In("plain.yaml"), "--out", In("run"), "--also", "parquet,xlsx").Code);
        Assert.All(new[] { "trace.xlsx", "trace.parquet", "events.xlsx", "events.parquet" }, f => Assert.True(File.Exists(In("run/" + f)), f));
        Assert.Equal(ExitCode.Done, Asked.Of("check", In("plain.yaml"), "--out", In("check"), "--also", "xlsx").Code);
        Assert.True(File.Exists(In("check/curve.xlsx")));
        Assert.False(File.Exists(In("check/curve.parquet")));
    }

    [Fact]
    public void Parts_put_together_are_the_bytes_of_one_run()
    {
        string[] ask = ["spread", In("plain.yaml"), "--samples", "9", "--out"];
        Assert.Equal(ExitCode.Done, Asked.Of([.. ask, In("whole")]).Code);
        Assert.Equal(ExitCode.Done, Asked.Of([.. ask, In("one"), "--part", "1/2"]).Code);
        Assert.Equal(ExitCode.Done, Asked.Of([.. ask, In("two"), "--part", "2/2"]).Code);
        Assert.Equal(ExitCode.Done, Asked.Of("gather", In("two"), In("one"), "--out", In("gathered")).Code);
        Assert.All(new[] { "spread.csv", "spread.json", "report.html", "spread.svg" }, f => Assert.Equal(File.ReadAllText(In("whole/" + f)), File.ReadAllText(In("gathered/" + f))));
    }
}
