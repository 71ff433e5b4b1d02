using System.Globalization;

using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Studies.Setups;
using QuarterCar.Studies.Spreads;

using Xunit;

namespace QuarterCar.Studies.Tests.Spreads;

public sealed class SpreadStudyTests
{
    private const int Samples = 1000;

    /// <summary>One spring, no gas, no friction: x = W/k − p, to be worked out on paper.</summary>
    private const string Paper = """
        title: One spring
        corner: { sprung_weight: 4000 N, unsprung_weight: 600 N }
        tyre: { rate: 220 N/mm }
        coilover:
          stroke: 300 mm
          springs:
            lower: { rate: 40 N/mm, free_length: 400 mm, solid_length: 90 mm }
          preload: 20 mm
        terrain: [{ flat: 10 m }]
        speed: 1 m/s
        run: { duration: 2 ms }

        """;

    private const string Widths = """
        tolerances:
          corner.sprung_weight: 1 %
          coilover.springs.lower.rate: { within: 1.5 %, shape: uniform }
          coilover.preload: 0.8 mm
        """;

    private static SpreadResult Spread(string text, int samples, ulong seed = 1, StudyOptions? options = null) =>
        Of(Rows(text, samples, seed, options));

    private static SpreadResult Of(List<StudyRow> rows)
    {
        var samples = new SpreadSamples([.. rows[0].Request.Values.Select(v => v.Path)]);
        rows.ForEach(samples.Add);
        return SpreadStudy.Of(samples);
    }

    private static List<StudyRow> Rows(string text, int samples, ulong seed = 1, StudyOptions? options = null)
    {
        StudyBase study = Base(text);
        var rows = new List<StudyRow>();
        StudyEngine.Run(study, SpreadPlan.Of(study.Scenario.Tolerances, samples, seed), options ?? new StudyOptions(1), rows.Add, null, CancellationToken.None);
        return rows;
    }

    private static StudyBase Base(string text)
    {
        var problems = new ProblemList();
        var options = ReadOptions.Plain with { Base = StandingBase.Instance };
        var document = ScenarioDocument.Parse("paper.yaml", text, null, problems)!;
        return new StudyBase(document, options, ScenarioReader.Read(document, options).Scenario!);
    }

    /// <summary>
    /// u²(x) = (u_W/k)² + (W·u_k/k²)² + u_p², standard uncertainties: a 95 % half-width over 1.96, a bound over √3
    /// (law of propagation of uncertainty, JCGM 100:2008, 5.1.2; rectangular distribution 4.3.7).
    /// </summary>
    [Fact]
    public void Ride_height_varies_as_uncertainties_propagate()
    {
        double weight = 0.01 * 4000 / 1.959964 / 40e3, rate = 4000 * 0.015 * 40e3 / Math.Sqrt(3) / (40e3 * 40e3), preload = 0.8e-3 / 1.959964;
        double variance = (weight * weight) + (rate * rate) + (preload * preload);
        var result = Spread(Paper + Widths, Samples);
        double[] heights = result.Samples.Figure("static.ride_height_m");
        double mean = heights.Average(), found = heights.Sum(h => (h - mean) * (h - mean)) / (Samples - 1);
        TestKit.Tolerance.Share(4 * Math.Sqrt(2.0 / (Samples - 1)), "four standard errors of a variance of 1000 values").Holds(variance, found);
        new TestKit.Tolerance(4 * Math.Sqrt(variance / Samples), "four standard errors of a mean").Holds(0.3 - (4000 / 40e3) + 0.02, result.Figure("static.ride_height_m")!.Mean);

        var shares = result.VarianceShare.Single(v => v.Figure == "static.ride_height_m");
        var sampling = new TestKit.Tolerance(4 * Math.Sqrt(2.0 / Samples), "four standard errors of a share of a variance, from above");
        double[] expected = [weight * weight / variance, rate * rate / variance, preload * preload / variance];
        for (int i = 0; i < 3; i++) sampling.Holds(expected[i], shares.Shares[i].Value!.Value, shares.Shares[i].Key);
        new TestKit.Tolerance(1e-3, "the bend of 1/k over 1.5 %").Holds(0, shares.Rest!.Value);
    }

    [Fact]
    public void Median_and_percentiles_of_one_normal_tolerance_are_those_of_the_normal_distribution()
    {
        var height = Spread(Paper + "tolerances: { coilover.preload: 2 mm }", Samples).Figure("static.ride_height_m")!;
        // Φ⁻¹(0.95) = 1.644854 (tables); within a stratum the quantile is off by 1/N over the density 0.103.
        var stratum = new TestKit.Tolerance(2e-3 / 1.959964 / 0.103 * 2 / Samples, "a place within its stratum");
        stratum.Holds(0.22, height.P50);
        stratum.Holds(0.22 + (2e-3 * 1.644854 / 1.959964), height.P95);
        stratum.Holds(0.22 - (2e-3 * 1.644854 / 1.959964), height.P05);
    }

    [Theory]
    [InlineData("en-US")]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    public void Samples_are_the_same_to_the_last_bit_for_any_jobs_and_culture(string culture)
    {
        double[] alone = Bits(Spread(Paper + Widths, 60, 5));
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            Assert.Equal(alone, Bits(Spread(Paper + Widths, 60, 5, new StudyOptions(3))));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }

        static double[] Bits(SpreadResult result) => [.. FigureTable.Names.SelectMany(n => result.Samples.Figure(n).Where(double.IsFinite))];
    }

    [Fact]
    public void Parts_together_are_the_whole()
    {
        string Title(StudyRow row) => row.Request.Title + string.Join(' ', row.Request.Values.Select(v => v.Text)) + string.Join(' ', row.Figures!.Value);
        var whole = Rows(Paper + Widths, 7).Select(Title).ToList();
        var first = Rows(Paper + Widths, 7, 1, new StudyOptions(2, 1, 2)).Select(Title).ToList();
        var second = Rows(Paper + Widths, 7, 1, new StudyOptions(2, 2, 2)).Select(Title).ToList();
        Assert.Equal(whole, Enumerable.Range(0, 7).Select(i => (i % 2 == 0 ? first : second)[i / 2]));
    }

    /// <summary>Friction of 10 N ± 20 N, evenly: a quarter of the samples lies below 0, which is bad input.</summary>
    [Fact]
    public void A_sample_that_is_bad_input_keeps_its_row_with_the_reason()
    {
        var rows = Rows(Paper.Replace("  preload", "  friction: 10 N\n  preload", StringComparison.Ordinal) + "tolerances: { coilover.friction: { within: 20 N, shape: uniform } }", 40);
        Assert.Equal(10, Of(rows).Samples.Failed);
        var failed = rows.Where(r => r.Figures is null).ToList();
        Assert.Equal(10, failed.Count);
        Assert.All(failed, r => Assert.Contains("coilover.friction", r.Note, StringComparison.Ordinal));
        Assert.Equal(40, rows.Count);
    }

    /// <summary>4000 N less 20 mm of preload stand past 300 mm on less than 12.5 N/mm: an eighth of 10 to 30 N/mm, and of 40 even samples five.</summary>
    [Fact]
    public void Samples_that_stand_on_metal_are_counted_and_a_figure_says_how_many_it_comes_from()
    {
        string soft = Paper.Replace("rate: 40 N/mm, free_length: 400 mm, solid_length: 90 mm", "rate: 20 N/mm, free_length: 500 mm, solid_length: 90 mm", StringComparison.Ordinal);
        var rows = Rows(soft + "tolerances: { coilover.springs.lower.rate: { within: 50 %, shape: uniform } }", 40);
        Assert.Equal(5, rows.Count(r => r.Note == "stands on metal at full bump"));
        var result = Of(rows);
        Assert.Equal((40, 5, 5), (result.Samples.Ran, result.Samples.AtRestOnMetal, result.Samples.OnMetal));
        Assert.Equal(35, result.Figure("travel.up_travel_used")!.Samples);
        Assert.Equal(40, result.Figure("static.ride_height_m")!.Samples);
    }

    /// <summary>Likewise 4000 N stand past the first touch of a bump stop, 202.2 mm in, on less than 18 N/mm: sixteen, of them five on metal, for the stop gives next to nothing.</summary>
    [Fact]
    public void Samples_that_lean_on_their_bump_stop_are_counted()
    {
        string soft = Paper.Replace("rate: 40 N/mm, free_length: 400 mm, solid_length: 90 mm", "rate: 20 N/mm, free_length: 500 mm, solid_length: 90 mm", StringComparison.Ordinal)
            .Replace("  preload", "  bump_stop: { on: shaft, length: 97.7778 mm, force: [[100 mm, 0.01 N]] }\n  preload", StringComparison.Ordinal);
        var rows = Rows(soft + "tolerances: { coilover.springs.lower.rate: { within: 50 %, shape: uniform } }", 40);
        Assert.Equal(11, rows.Count(r => r.Note == "stands on its bump stop"));
        Assert.Equal((5, 11, 5), (Of(rows).Samples.AtRestOnMetal, Of(rows).Samples.AtRestOnStop, Of(rows).Samples.OnMetal));
    }

    /// <summary>Dropped from some height a stroke of 120 mm is always used up.</summary>
    [Fact]
    public void The_share_that_bottoms_is_counted_in_samples_not_in_hits()
    {
        string drop = Paper.Replace("terrain: [{ flat: 10 m }]\nspeed: 1 m/s\nrun: { duration: 2 ms }", "drop: { height: 1 m }\nrun: { duration: 2 s }", StringComparison.Ordinal);
        var result = Spread(drop + Widths, 6);
        Assert.Equal(1, result.Share("bottom_out"));
        Assert.Equal(0, result.Share("bump_stop"));
        Assert.True(result.Figure("counts.bottom_out")!.Mean > 1);
    }
}
