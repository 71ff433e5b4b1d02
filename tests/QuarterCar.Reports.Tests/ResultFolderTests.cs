using System.Text;

using QuarterCar.Reports.Files;
using QuarterCar.Reports.Tests.Reference;

namespace QuarterCar.Reports.Tests;

public sealed class ResultFolderTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Nothing_appears_before_the_commit_and_everything_after()
    {
        using var files = ResultFolder.Open(_folder.Path);
        files.Write("trace.csv", Text("new"));
        Assert.DoesNotContain("trace.csv", _folder.Entries());
        files.Write("setups/01/trace.csv", Text("one"));
        files.Commit();
        Assert.Equal(["setups", "setups/01", "setups/01/trace.csv", "trace.csv"], _folder.Entries());
    }

    [Fact]
    public void A_failure_midway_leaves_earlier_results_and_nothing_else()
    {
        File.WriteAllText(_folder.At("trace.csv"), "old");
        var failure = Assert.Throws<ResultFolderException>(() =>
        {
            using var files = ResultFolder.Open(_folder.Path);
            files.Write("trace.csv", Text("new"));
            files.Write("events.csv", _ => throw new IOException("No space left on device"));
            files.Commit();
        });
        Assert.Contains(_folder.Path, failure.Message, StringComparison.Ordinal);
        Assert.Contains("No space left on device", failure.Message, StringComparison.Ordinal);
        Assert.Equal(["trace.csv"], _folder.Entries());
        Assert.Equal("old", File.ReadAllText(_folder.At("trace.csv")));
    }

    [Fact]
    public void A_file_that_cannot_be_moved_in_brings_all_earlier_results_back()
    {
        File.WriteAllText(_folder.At("events.csv"), "old events");
        File.WriteAllText(_folder.At("trace.csv"), "old trace");
        Directory.CreateDirectory(_folder.At("summary.json"));
        Assert.Throws<ResultFolderException>(() =>
        {
            using var files = ResultFolder.Open(_folder.Path);
            foreach (string name in new[] { "events.csv", "trace.csv", "summary.json" }) files.Write(name, Text("new"));
            files.Commit();
        });
        Assert.Equal(["events.csv", "summary.json", "trace.csv"], _folder.Entries());
        Assert.Equal("old events", File.ReadAllText(_folder.At("events.csv")));
        Assert.Equal("old trace", File.ReadAllText(_folder.At("trace.csv")));
    }

    [Fact]
    public void A_cancelled_run_leaves_no_trace_and_no_folder_that_it_made()
    {
        using var cancel = new CancellationTokenSource();
        cancel.Cancel();
        string made = _folder.At("a/b");
        Assert.Throws<OperationCanceledException>(() => RunFiles.Write(ReferenceRun.Read("sand_drop"), made, cancel: cancel.Token));
        Assert.Empty(_folder.Entries());
    }

    [Fact]
    public void A_file_where_the_folder_should_be_is_said_in_words()
    {
        File.WriteAllText(_folder.At("taken"), "");
        var failure = Assert.Throws<ResultFolderException>(() => ResultFolder.Open(_folder.At("taken")));
        Assert.Contains("taken", failure.Message, StringComparison.Ordinal);
        Assert.Equal(["taken"], _folder.Entries());
    }

    [Fact]
    public void A_folder_that_takes_no_files_is_said_in_words()
    {
        const string closed = "/proc/quartercar"; // not writable even for the superuser
        if (!Directory.Exists("/proc/self")) return;
        Assert.Throws<ResultFolderException>(() => ResultFolder.Open(closed));
    }

    [Fact]
    public void Files_that_are_not_ours_stay_and_stale_ones_of_ours_go()
    {
        foreach (string name in new[] { "notes.txt", "trace.bak", "curve.csv", "rates.png", "sweep.json", "photo.png" }) File.WriteAllText(_folder.At(name), "before");
        Directory.CreateDirectory(_folder.At("setups/03"));
        File.WriteAllText(_folder.At("setups/03/trace.csv"), "before");
        File.WriteAllText(_folder.At("setups/mine.txt"), "before");
        using var files = ResultFolder.Open(_folder.Path);
        files.Write("trace.csv", Text("new"));
        files.Commit();
        Assert.Equal(["notes.txt", "photo.png", "setups", "setups/mine.txt", "trace.bak", "trace.csv"], _folder.Entries());
    }

    [Fact]
    public void A_run_writes_its_files_and_a_check_its_own()
    {
        var run = ReferenceRun.Read("quarry_ledge");
        RunFiles.Write(run, _folder.Path);
        string[] plots = ["acceleration", "damper", "force_travel", "shaft_travel", "travel_use", "tyre_load"];
        Assert.Equal(
            plots.SelectMany(p => new[] { p + ".png", p + ".svg" }).Concat(["events.csv", "report.html", "summary.json", "trace.csv"]).Order(StringComparer.Ordinal),
            _folder.Entries());
        CheckFiles.Write(run.Standing, _folder.Path);
        Assert.Equal(["curve.csv", "force_travel.png", "force_travel.svg", "rates.png", "rates.svg"], _folder.Entries());
    }

    private static Action<Stream> Text(string text) => s => s.Write(Encoding.UTF8.GetBytes(text));
}
