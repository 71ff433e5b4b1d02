using QuarterCar.Reports.Plots;
using QuarterCar.Reports.Tables;
using QuarterCar.Reports.Tests.Reference;
using QuarterCar.Scenarios;

namespace QuarterCar.Reports.Tests;

[CollectionDefinition(nameof(Timed), DisableParallelization = true)]
public sealed class Timed;

/// <summary>How long writers take: processor time, and the best of several, because the machine does other things meanwhile.</summary>
[Collection(nameof(Timed))]
public sealed class SpeedTests
{
    [Fact]
    public void Six_thousand_rows_of_the_trace_are_written_in_a_tenth_of_a_second()
    {
        var rows = ReferenceRun.Read("quarry_ledge", step: 0.001).Track.Rows().ToList();
        Assert.Equal(6001, rows.Count);
        Assert.InRange(Best(20, () => CsvTable.Write(Stream.Null, Columns.Trace, rows, UnitSystem.Us)).TotalSeconds, 0, 0.1);
    }

    [Fact]
    public void All_pictures_of_a_run_are_drawn_in_eight_tenths_of_a_second()
    {
        var run = ReferenceRun.Read("fast_whoops");
        Assert.InRange(Best(6, () => _ = RunPlots.Of(run).Select(s => (s.Png(), s.Svg())).ToList()).TotalSeconds, 0, 0.8);
    }

    private static TimeSpan Best(int times, Action act) => Enumerable.Range(0, times).Min(_ =>
    {
        TimeSpan before = Environment.CpuUsage.TotalTime;
        act();
        return Environment.CpuUsage.TotalTime - before;
    });
}
