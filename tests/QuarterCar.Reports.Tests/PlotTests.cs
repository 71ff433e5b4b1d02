using QuarterCar.Reports.Plots;
using QuarterCar.Reports.Plots.Compare;
using QuarterCar.Reports.Tests.Reference;

using SkiaSharp;

namespace QuarterCar.Reports.Tests;

public sealed class PlotTests
{
    [Theory]
    [InlineData("quarry_ledge")]
    [InlineData("sand_drop")]
    [InlineData("gravel_lane")]
    public void Pictures_are_1600_pixels_wide_and_have_ink_on_them(string name)
    {
        var run = ReferenceRun.Read(name);
        foreach (var sheet in RunPlots.Of(run).AddRange(RunPlots.Of(run.Standing)))
        {
            using var picture = SKBitmap.Decode(sheet.Png());
            Assert.Equal(1600, picture.Width);
            Assert.Equal((int)(2 * sheet.Height), picture.Height);
            double dark = picture.Pixels.Count(p => p.Red + p.Green + p.Blue < 3 * 128) / (double)picture.Pixels.Length;
            Assert.InRange(dark, 0.004, 0.3); // text and lines cover about a hundredth; a picture without text falls below
        }
    }

    // 18 in of preload on 15.8 in of spring travel: nothing is left to compress from full droop on.
    [Fact]
    public void Springs_that_are_solid_over_the_whole_stroke_are_drawn()
    {
        var run = Scene.Run("quarry-ledge", "coilover.preload=18 in", "run.duration=0.1 s");
        Assert.All(RunPlots.Of(run).AddRange(RunPlots.Of(run.Standing)), s => Assert.NotEmpty(s.Png()));
        Assert.NotEmpty(ComparePlots.Of([("A", "one", run), ("B", "other", run)], run.Scenario.Units));
    }

    [Fact]
    public void A_picture_is_drawn_once_and_the_same_each_time()
    {
        // Drawn twice over each other, lines and letters come out too heavy, and the first file has each line twice.
        foreach (var sheet in RunPlots.Of(ReferenceRun.Read("quarry_ledge")))
        {
            string first = sheet.Svg();
            Assert.Equal(first, sheet.Svg());
            Assert.Equal(sheet.Png(1), sheet.Png(1));
        }
    }

    [Fact]
    public void A_title_draws_text_from_the_carried_typeface()
    {
        Assert.Equal("Inter", PlotFont.Regular.FamilyName);
        Assert.True(PlotFont.Regular.GetGlyphs("ft·lbf ×1.6 – −3 m/s² “q”").All(g => g != 0), "a character of ours has no glyph");
    }

    [Fact]
    public void The_plotting_library_draws_in_the_carried_typeface_whatever_the_machine_has()
    {
        PlotFont.Use();
        Assert.Equal("Inter", ScottPlot.Fonts.GetTypeface("No such face", bold: false, italic: false).FamilyName);
    }

    [Fact]
    public void A_corner_that_never_moves_and_a_run_that_ended_at_once_still_have_their_pictures()
    {
        var run = ReferenceRun.Read("quarry_ledge");
        var first = run.Track.At(0);
        var still = run with
        {
            Events = [],
            Figures = run.Figures with { Travel = run.Figures.Travel with { PeakCompressionSpeed = 0, PeakReboundSpeed = 0 } },
        };
        foreach (double end in new[] { 0.0, 2.0 })
        {
            var sheets = RunPlots.Of(still with { Track = new StillTrack(first, end) });
            Assert.Equal(6, sheets.Length);
            foreach (var sheet in sheets) Assert.DoesNotContain("NaN", sheet.Svg(), StringComparison.Ordinal);
        }
    }

    private sealed class StillTrack(QuarterCar.Studies.Sample sample, double end) : QuarterCar.Studies.Track
    {
        public override double EndTime => end;

        public override long RowCount => 1;

        public override QuarterCar.Studies.Sample At(double time) => sample with { Time = time, Distance = time };

        public override IEnumerable<QuarterCar.Studies.Sample> Rows() => [sample];
    }

    [Fact]
    public void Svg_has_real_text_with_a_list_of_typefaces_and_no_outside_reference()
    {
        string svg = RunPlots.Of(ReferenceRun.Read("quarry_ledge"))[0].Svg();
        Assert.Contains(">shaft showing, in</text>", svg, StringComparison.Ordinal);
        Assert.Contains("sans-serif", svg, StringComparison.Ordinal);
        Assert.Contains("viewBox=\"0 0 800 ", svg, StringComparison.Ordinal);
        Assert.DoesNotContain("http", svg.Replace("http://www.w3.org/", "", StringComparison.Ordinal), StringComparison.Ordinal);
        System.Xml.Linq.XDocument.Parse(svg);
    }

    [Fact]
    public void Pictures_are_the_same_in_every_culture()
    {
        var run = ReferenceRun.Read("sand_drop");
        string Of() => string.Join('\n', RunPlots.Of(run).AddRange(RunPlots.Of(run.Standing)).Select(s => s.Svg()));
        Assert.Equal(Cultures.In("", Of), Cultures.In("de-DE", Of));
    }

    [Fact]
    public void Twelve_bump_stop_contacts_share_one_word()
    {
        string svg = RunPlots.Of(ReferenceRun.Read("fast_whoops"))[0].Svg();
        Assert.Single(System.Text.RegularExpressions.Regex.Matches(svg, ">bump stop, 12 times<"));
        Assert.Single(System.Text.RegularExpressions.Regex.Matches(svg, ">crossover, 12 times<"));
    }

    [Fact]
    public void A_decimated_line_keeps_its_extremes_and_its_ends()
    {
        var points = Enumerable.Range(0, 5000).Select(i => new SKPoint(i * 0.02f, MathF.Sin(i * 0.37f) * (i == 2501 ? 9 : 1))).ToList();
        var kept = Decimate.Series(points);
        Assert.InRange(kept.Count, 100, 400);
        Assert.Equal(points.Max(p => p.Y), kept.Max(p => p.Y));
        Assert.Equal(points.Min(p => p.Y), kept.Min(p => p.Y));
        Assert.Equal((points[0], points[^1]), (kept[0], kept[^1]));
    }

    [Fact]
    public void Spread_labels_keep_their_distance_their_order_and_their_bounds()
    {
        float[] placed = ZoneBands.Spread([10, 11, 12, 100], 16, 0, 120);
        for (int i = 1; i < placed.Length; i++) Assert.True(placed[i] - placed[i - 1] >= 15.9f);
        Assert.All(placed, p => Assert.InRange(p, 0, 120));
        Assert.Equal(100, placed[3]);
    }

    [Fact]
    public void Labels_that_were_placed_overlap_neither_each_other_nor_the_line()
    {
        var placer = new LabelPlacer(new SKRect(0, 0, 400, 200));
        placer.AvoidLine([new(0, 100), new(400, 100)]);
        var placed = Enumerable.Range(0, 12).Select(i => placer.Near(new SKPoint(20 + (i * 30), 100), new SKSize(60, 15))).OfType<SKRect>().ToList();
        Assert.True(placed.Count >= 8);
        for (int i = 0; i < placed.Count; i++)
        {
            Assert.False(placed[i].Top < 100 && placed[i].Bottom > 100);
            for (int k = 0; k < i; k++) Assert.False(placed[i].IntersectsWith(placed[k]));
        }
    }
}
