using QuarterCar.Reports.Plots;
using QuarterCar.Reports.Plots.Compare;
using QuarterCar.Reports.Units;
using QuarterCar.Reports.Words;
using QuarterCar.Scenarios;

namespace QuarterCar.Reports.Tests;

/// <summary>A crossover and a rate are named only where the stroke has them. Numbers by hand: springs in series give way by F/k each until solid.</summary>
public sealed class StrokeRatesTests
{
    // The ledge: 1/(1/160 + 1/225) = 93.5 lbf/in, the upper solid at 160·7.4 = 1184 lbf, the lower at 225·8.4 = 1890 lbf.
    // Gap 2.6 in, preload 0.4 in: met just beyond full bump, the upper solid at x = 1184/93.5 − 0.4 = 12.26 in of 12 in. Gap 4 in: the upper spring has 7.4 in and was 4.7 in in at ride height, so it
    // is solid first, at x = 1184/93.5 − 1.4 = 11.26 in. Gap 0 in at full droop: the upper is held at 93.5·1.4/160 = 0.818 in, the lower
    // is solid at x = 8.4 + 0.818 − 1.4 = 7.82 in, or never in the stroke if it is 6 in longer.
    // The triple: 60, 220 and 320 lbf/in give 41.1 lbf/in together and 130.4 lbf/in with the tender solid, at 60·3.6 = 216 lbf and
    // x = 216/41.1 − 0.5 = 4.76 in of 13 in. Its nut 1 in off at full droop holds the upper group at 20.5/47.1 + 1 = 1.436 in, under 67.7 lbf,
    // the tender still open: x = 1.436 + 67.7/320 − 0.5 = 1.147 in.
    // Coil bind: 40 and 60 N/mm give 24 N/mm, the upper solid at 6000 N and x = 250 − 20 = 230 mm of 300 mm.
    [Theory]
    [InlineData("quarry-ledge", "", "Crosses over at 3.19 in from 94 lbf/in to 225 lbf/in.", "94 lbf/in becomes 225 lbf/in at 3.19 in showing", "Spring rate steps 2.4 times, from 94 lbf/in to 225 lbf/in")]
    [InlineData("quarry-ledge", "coilover.stop_nut.gap=2.6 in;coilover.preload=0.4 in", "One rate of 94 lbf/in, no crossover within the stroke.", "One rate of 94 lbf/in over the whole stroke", "Spring rate is 94 lbf/in throughout")]
    [InlineData("quarry-ledge", "coilover.stop_nut=none;coilover.preload=0.4 in", "One rate of 94 lbf/in, no crossover.", "", "")]
    [InlineData("quarry-ledge", "coilover.stop_nut.gap=4 in", "The rate is 94 lbf/in at ride height, no crossover within the stroke: 94 lbf/in until the upper spring goes solid at 0.74 in, then 225 lbf/in.", "", "")]
    [InlineData("quarry-ledge", "coilover.stop_nut={ gap: 0 in, at: full_droop }", "The rate is 225 lbf/in at ride height, the slider on the stop nut from full droop on: 225 lbf/in until the coils bind at 4.18 in.", "", "")]
    [InlineData("quarry-ledge", "coilover.stop_nut={ gap: 0 in, at: full_droop };coilover.springs.lower.free_length=20 in", "One rate of 225 lbf/in, the slider on the stop nut from full droop on.", "One rate of 225 lbf/in over the whole stroke", "Spring rate is 225 lbf/in throughout")]
    [InlineData("tender-triple", "coilover.stop_nut=none;coilover.preload=0.5 in", "The rate is 130 lbf/in at ride height, no crossover: 41 lbf/in until the tender closes at 8.24 in, then 130 lbf/in.", "130 lbf/in at ride height: 41 lbf/in until the tender closes at 8.24 in, then 130 lbf/in", "Spring rate is 130 lbf/in at ride height: 41 lbf/in until the tender closes at 8.24 in, then 130 lbf/in")]
    [InlineData("tender-triple", "coilover.stop_nut={ gap: 1 in, at: full_droop };coilover.preload=0.5 in", "Crosses over at 11.85 in from 41 lbf/in to 320 lbf/in.", "41 lbf/in becomes 320 lbf/in at 11.85 in showing", "Spring rate steps 7.8 times, from 41 lbf/in to 320 lbf/in")]
    [InlineData("coil-bind", "", "The rate is 24.0 N/mm at ride height, no crossover: 24.0 N/mm until the upper spring goes solid at 70.0 mm, then 60.0 N/mm.", "", "")]
    public void Sentence_and_titles_name_what_the_stroke_has(string name, string sets, string sentence, string force, string rates)
    {
        var standing = Scene.Check(name, sets.Split(';', StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains(" " + sentence, Scene.Plain(Verdict.Of(standing)), StringComparison.Ordinal);
        string[] titles = [.. RunPlots.Of(standing).Select(s => Scene.Plain(s.Title))];
        if (force.Length > 0) Assert.Equal([force, rates], titles);
    }

    [Fact]
    public void Compared_setups_name_what_their_stroke_has()
    {
        (string, string, QuarterCar.Studies.RunResult) Of(string mark, params string[] sets) => (mark, mark, Scene.Run("quarry-ledge", ["run.duration=20 ms", .. sets]));
        var sheets = ComparePlots.Of([Of("A"), Of("B", "coilover.stop_nut.gap=2.6 in", "coilover.preload=0.4 in"), Of("C", "coilover.stop_nut.gap=4 in")], UnitSystem.Us);
        Assert.Equal("A 94 to 225 lbf/in at 3.19 in; B 94 lbf/in throughout; C 94 lbf/in at ride height, the upper spring goes solid at 0.74 in", Scene.Plain(sheets.Single(s => s.Name == "force_travel").Title));
    }

    // Beside the travel picture 800 − (632 + 18) = 150 px are left for "70.0 mm upper binds".
    [Fact]
    public void An_edge_s_name_fits_beside_the_travel_picture()
    {
        var read = new Readable(UnitSystem.Si);
        var edges = StrokeZones.Of(Scene.Check("coil-bind")).Edges;
        Assert.Contains(edges, e => e.Name == "upper binds");
        Assert.All(edges, e => Assert.InRange(QuarterCar.Reports.Plots.Text.Size($"{read.Text(Dimension.Length, e.Showing)} {e.Name}").Width, 0, 150));
    }

    // 60·3.6 lbf over 41.1 lbf/in less 3.2 in of preload: x = 2.057 in of 13 in. Held by the nut under 67.7 lbf it never closes.
    [Fact]
    public void The_tender_closes_where_it_is_solid_and_nowhere_where_the_nut_holds_it_open()
    {
        var closes = StrokeZones.Of(Scene.Check("tender-triple")).Edges.Single(e => e.Name == "tender closes");
        Assert.Equal(13 - ((216 * ((1 / 60.0) + (1 / 220.0) + (1 / 320.0))) - 3.2), closes.Showing / UnitTable.Inch, 9);
        var held = StrokeZones.Of(Scene.Check("tender-triple", "coilover.stop_nut={ gap: 1 in, at: full_droop }", "coilover.preload=0.5 in"));
        Assert.DoesNotContain(held.Edges, e => e.Name == "tender closes");
    }
}
