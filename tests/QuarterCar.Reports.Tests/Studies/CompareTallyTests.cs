using QuarterCar.Reports.Studies;
using QuarterCar.Reports.Units;
using QuarterCar.Studies;
using QuarterCar.Studies.Setups;
using QuarterCar.Studies.Sweeps;

using UnitSystem = QuarterCar.Scenarios.UnitSystem;

namespace QuarterCar.Reports.Tests.Studies;

/// <summary>What a comparison says, over rows whose figures are made up here.</summary>
public sealed class CompareTallyTests
{
    [Fact]
    public void Setups_that_no_table_shows_are_in_the_verdict_all_the_same()
    {
        CompareTally tally = Of([.. Enumerable.Range(0, 45).Select(i => i switch
        {
            41 => Failed(i),
            40 => Ran(i, 2, 0.9, metal: 1),
            44 => Ran(i, 1.5, 0.4),
            _ => Ran(i, 2, 0.5),
        })]);
        Assert.Equal(40, tally.First.Count);
        Assert.Equal((45, 44, 1, 1), (tally.Rows, tally.Ran, tally.Failed, tally.OnMetal));
        Assert.Equal(
            "45 has the lowest peak acceleration, 1.50\u00a0g; it also uses least of the up-travel, 40\u00a0%. 41 meets metal or binds its coils. 1 of 45 setups could not be run: 42.",
            tally.Verdict());
        Assert.Equal(41, Assert.Single(tally.Failures).Index);
    }

    // 1.234 and 1.233 g are both shown as 1.23 g.
    [Theory]
    [InlineData(1.234, 0.501, 1.233, 0.499, "All are alike in peak acceleration, 1.23\u00a0g, and in up-travel used, 50\u00a0%.")]
    [InlineData(1.234, 0.6, 1.233, 0.5, "All are alike in peak acceleration, 1.23\u00a0g; B uses least of the up-travel, 50\u00a0%.")]
    [InlineData(1.1, 0.501, 1.2, 0.499, "A has the lowest peak acceleration, 1.10\u00a0g; all are alike in up-travel used, 50\u00a0%.")]
    [InlineData(1.1, 0.6, 1.2, 0.5, "A has the lowest peak acceleration, 1.10\u00a0g; B uses least of the up-travel, 50\u00a0%.")]
    [InlineData(1.1, double.NaN, 1.2, double.NaN, "A has the lowest peak acceleration, 1.10\u00a0g.")]
    [InlineData(1.1, 0.6, 1.2, double.NaN, "A has the lowest peak acceleration, 1.10\u00a0g; up-travel used applies to A alone, 60\u00a0%.")]
    public void What_looks_the_same_has_no_winner_and_what_does_not_apply_no_clause(double peakA, double travelA, double peakB, double travelB, string verdict) =>
        Assert.Equal(verdict, Of(Ran(0, peakA, travelA), Ran(1, peakB, travelB)).Verdict());

    [Fact]
    public void Several_of_more_share_the_lowest() =>
        Assert.StartsWith("A and C have the lowest peak acceleration, 1.00\u00a0g; they also use least of the up-travel, 30\u00a0%.", Of(Ran(0, 1, 0.3), Ran(1, 2, 0.4), Ran(2, 1, 0.3)).Verdict(), StringComparison.Ordinal);

    [Fact]
    public void A_setup_that_stands_on_metal_counts_though_it_has_no_contact()
    {
        CompareTally tally = Of(Ran(0, 1, 0.5), Ran(1, 2, double.NaN) with { Note = "stands on metal at full bump" });
        Assert.Equal(1, tally.OnMetal);
        Assert.Equal("A alone is held up by its springs: peak acceleration 1.00\u00a0g, up-travel used 50\u00a0%. B stands on metal or bound coils and is left out of that.", tally.Verdict());
    }

    // It may have the least of both, for metal holds it still; wherever it stands in the row, it wins nothing.
    [Fact]
    public void A_setup_that_stands_on_metal_is_lowest_in_nothing()
    {
        StudyRow still = Ran(0, 0.1, 0.1) with { Note = "stands on bound coils" }, low = Ran(1, 1, 0.3), high = Ran(2, 2, 0.4);
        foreach (StudyRow[] rows in new[] { new[] { still, low, high }, [high, still, low], [low, high, still] })
        {
            string mark = CompareTable.Mark(low.Index), verdict = Of(rows).Verdict();
            Assert.Equal($"{mark} has the lowest peak acceleration, 1.00\u00a0g; it also uses least of the up-travel, 30\u00a0%. A stands on metal or bound coils and is left out of that.", verdict);
            CompareLine peak = CompareTable.Of(rows, new Readable(UnitSystem.Us)).Single(l => l.Name == "acceleration.peak_g");
            Assert.Equal([true], rows.Select((r, i) => (r, Best: peak.Cells[i].Rest.StartsWith('*'))).Where(c => c.Best).Select(c => c.r == low));
        }
    }

    // It has none for it never leaves the stop.
    [Fact]
    public void A_setup_that_leans_on_its_bump_stop_has_not_the_fewest_touches_of_it()
    {
        StudyRow Touching(long index, double touches, string note = "") =>
            Ran(index, 1 + index, 0.5) with { Note = note, Figures = Ran(index, 1 + index, 0.5).Figures!.Value.SetItem(FigureTable.Names.IndexOf("counts.bump_stop"), touches) };
        StudyRow[] rows = [Touching(0, 0, "preload 1.00 in; stands on its bump stop"), Touching(1, 2), Touching(2, 1)];
        var lines = CompareTable.Of(rows, new Readable(UnitSystem.Us));
        Assert.Equal([false, false, true], lines.Single(l => l.Name == "counts.bump_stop").Cells.Select(c => c.Rest.StartsWith('*')));
        Assert.Equal([true, false, false], lines.Single(l => l.Name == "acceleration.peak_g").Cells.Select(c => c.Rest.StartsWith('*')));
        Assert.Equal("preload 1.00 in", rows[0].HeldBy);
        var tally = new CompareTally(UnitSystem.Us, _ => LimitSet.Own([new QuarterCar.Scenarios.Limit("counts.bump_stop", 1)]));
        foreach (StudyRow row in rows) tally.Take(row);
        Assert.EndsWith("A and B break a limit of their scenario.", tally.Verdict(), StringComparison.Ordinal);
    }

    [Fact]
    public void Where_all_stand_on_metal_none_is_starred()
    {
        StudyRow[] rows = [Ran(0, 1, 0.1) with { Note = "stands on bound coils" }, Ran(1, 2, 0.2) with { Note = "stands on metal at full bump" }];
        Assert.DoesNotContain(CompareTable.Of(rows, new Readable(UnitSystem.Us)), l => l.Cells.Any(c => c.Rest.StartsWith('*')));
        Assert.StartsWith("What is best here", CompareTable.Legend(CompareTable.Of(rows, new Readable(UnitSystem.Us))), StringComparison.Ordinal);
        Assert.Equal("All of them stand on metal or bound coils, so that none is better than another.", Of(rows).Verdict());
        Assert.Equal("Setup A ran. It stands on metal or bound coils.", Of(rows[0]).Verdict());
    }

    [Fact]
    public void Those_that_are_alike_are_named_where_others_stand_on_metal()
    {
        StudyRow[] still = [Ran(0, 0.1, 0.1) with { Note = "stands on bound coils" }, Ran(1, 0.2, 0.1) with { Note = "stands on bound coils" }];
        const string left = " A and B stand on metal or bound coils and are left out of that.";
        Assert.Equal($"C and D are alike in peak acceleration, 1.00\u00a0g, and in up-travel used, 30\u00a0%.{left}", Of([.. still, Ran(2, 1, 0.3), Ran(3, 1, 0.3)]).Verdict());
        Assert.Equal($"D has the lowest peak acceleration, 0.90\u00a0g; C and D are alike in up-travel used, 30\u00a0%.{left}", Of([.. still, Ran(2, 1, 0.3), Ran(3, 0.9, 0.3)]).Verdict());
        Assert.Equal(
            $"D has the lowest peak acceleration, 0.90\u00a0g; it also uses least of the up-travel, 20\u00a0%.{left} C meets metal or binds its coils. 1 of 5 setups could not be run: E.",
            Of([.. still, Ran(2, 1, 0.3, metal: 1), Ran(3, 0.9, 0.2), Failed(4)]).Verdict());
    }

    private static CompareTally Of(params StudyRow[] rows)
    {
        var tally = new CompareTally(UnitSystem.Us, _ => LimitSet.Own([]));
        foreach (StudyRow row in rows) tally.Take(row);
        return tally;
    }

    private static StudyRow Failed(long index) => new(index, SetupRequest.Of([]), null, "why", null, null);

    private static StudyRow Ran(long index, double peak, double travel, double metal = 0) => new(
        index,
        SetupRequest.Of([]),
        null,
        "",
        [.. FigureTable.Names.Select(n => n switch
        {
            "acceleration.peak_g" => peak,
            "travel.up_travel_used" => double.IsNaN(travel) ? null : travel,
            "counts.bottom_out" => metal,
            "counts.coil_bind" => 0,
            _ => (double?)null,
        })],
        null);
}
