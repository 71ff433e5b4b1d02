using System.Globalization;
using System.Text;

using QuarterCar.Reports.Tables;
using QuarterCar.Reports.Tests.Reference;
using QuarterCar.Scenarios;

namespace QuarterCar.Reports.Tests;

public sealed class CsvTableTests
{
    [Theory]
    [InlineData("quarry_ledge")]
    [InlineData("hard_bottom")]
    public void Every_number_of_the_trace_reads_back_to_the_number_it_was(string name)
    {
        var run = ReferenceRun.Read(name);
        var units = run.Scenario.Units;
        string[][] rows = Parse(Trace(run, units));
        var samples = run.Track.Rows().ToList();
        Assert.Equal(samples.Count + 1, rows.Length);
        for (int r = 0; r < samples.Count; r++)
        {
            for (int c = 0; c < Columns.Trace.Columns.Length; c++)
            {
                var column = Columns.Trace.Columns[c];
                if (column.Word is not null) continue;
                double written = column.In(units, samples[r]);
                Assert.Equal(written + 0.0, double.Parse(rows[r + 1][c], NumberStyles.Float, CultureInfo.InvariantCulture));
            }
        }
    }

    [Fact]
    public void The_trace_in_SI_holds_the_reference_numbers()
    {
        var run = ReferenceRun.Read("hard_bottom");
        string[][] ours = Parse(Trace(run, UnitSystem.Si));
        string[][] reference = [.. File.ReadAllLines(ReferenceData.File("hard_bottom.trace.csv")).Select(l => l.Split(','))];
        int[] places = [.. reference[0].Select(h => Array.IndexOf(ours[0], h))];
        Assert.DoesNotContain(-1, places);
        for (int r = 1; r < reference.Length; r++)
        {
            for (int c = 0; c < places.Length - 1; c++)
            {
                double expected = double.Parse(reference[r][c], CultureInfo.InvariantCulture);
                double got = double.Parse(ours[r][places[c]], CultureInfo.InvariantCulture);
                Assert.Equal(expected, got, 1e-12 * Math.Max(1, Math.Abs(expected))); // accelerations go through m/s² and back: rounding
            }
        }
    }

    [Theory]
    [InlineData("en-US")]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    public void The_trace_is_the_same_bytes_in_every_culture(string culture)
    {
        var run = ReferenceRun.Read("tender_triple");
        byte[] plain = Cultures.In("", () => Trace(run, run.Scenario.Units));
        Assert.Equal(plain, Cultures.In(culture, () => Trace(run, run.Scenario.Units)));
    }

    [Fact]
    public void Lines_end_as_RFC_4180_says_and_there_is_no_byte_order_mark()
    {
        string text = Encoding.UTF8.GetString(Trace(ReferenceRun.Read("sand_drop"), UnitSystem.Us));
        Assert.StartsWith("time_s,", text, StringComparison.Ordinal);
        Assert.EndsWith("\r\n", text, StringComparison.Ordinal);
        Assert.Equal(text.Count(c => c == '\n'), text.Split("\r\n").Length - 1);
    }

    [Fact]
    public void Without_a_stop_nut_the_slider_gap_is_empty()
    {
        string[][] rows = Parse(Trace(ReferenceRun.Read("single_spring_ditch"), UnitSystem.Us));
        int gap = Array.IndexOf(rows[0], "slider_gap_in");
        Assert.All(rows.Skip(1), r => Assert.Equal("", r[gap]));
    }

    [Fact]
    public void Contact_figures_stand_on_the_touch_row_alone()
    {
        var run = ReferenceRun.Read("quarry_ledge");
        using var stream = new MemoryStream();
        CsvTable.Write(stream, Columns.Events, run.Events, UnitSystem.Us);
        string[][] rows = Parse(stream.ToArray());
        Assert.Equal(9, rows.Length);
        Assert.All(rows.Skip(1), r => Assert.Equal(r[0] is "bump_stop" or "top_out", r[5].Length > 0));
        string[] bump = rows.Single(r => r[0] == "bump_stop");
        Assert.Equal(128.48065095285628 / 1.3558179483314004, double.Parse(bump[8], CultureInfo.InvariantCulture), 10); // reference energy in ft·lbf
    }

    private static byte[] Trace(QuarterCar.Studies.RunResult run, UnitSystem units)
    {
        using var stream = new MemoryStream();
        CsvTable.Write(stream, Columns.Trace, run.Track.Rows(), units);
        return stream.ToArray();
    }

    private static string[][] Parse(byte[] csv) =>
        [.. Encoding.UTF8.GetString(csv).Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Select(l => l.Split(','))];
}
