using System.Text;

using QuarterCar.Reports.Files;

namespace QuarterCar.Reports.Tests;

/// <summary>One run at a time in a folder and at a file.</summary>
public sealed class WriteLockTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_lock_is_held_by_one_and_free_again_after_it()
    {
        using (WriteLock.Take(_folder.At("lock"), TimeSpan.Zero)) Assert.Null(WriteLock.Take(_folder.At("lock"), TimeSpan.Zero));
        using WriteLock? again = WriteLock.Take(_folder.At("lock"), TimeSpan.Zero);
        Assert.NotNull(again);
    }

    [Fact]
    public void It_leaves_no_file_and_takes_over_one_that_a_killed_run_left()
    {
        File.WriteAllText(_folder.At("lock"), "");
        using (WriteLock? taken = WriteLock.Take(_folder.At("lock"), TimeSpan.Zero)) Assert.NotNull(taken);
        Assert.Empty(_folder.Entries());
    }

    [Fact]
    public void Of_many_who_want_it_one_at_a_time_has_it_and_all_have_it_in_turn()
    {
        const int threads = 8, turns = 25;
        int inside = 0, most = 0, all = 0;
        Parallel.For(0, threads, new ParallelOptions { MaxDegreeOfParallelism = threads }, _ =>
        {
            for (int i = 0; i < turns; i++)
            {
                using WriteLock taken = WriteLock.Take(_folder.At("lock"), TimeSpan.FromMinutes(2))!;
                most = Math.Max(most, Interlocked.Increment(ref inside));
                all++;
                Interlocked.Decrement(ref inside);
            }
        });
        Assert.Equal((1, threads * turns), (most, all));
    }

    [Fact]
    public void A_folder_that_another_run_is_writing_to_is_named_and_unchanged()
    {
        File.WriteAllText(_folder.At("trace.csv"), "old");
        using var first = ResultFolder.Open(_folder.Path);
        first.Write("trace.csv", s => s.Write("new"u8));
        var failure = Assert.Throws<ResultFolderException>(() => ResultFolder.Open(_folder.Path, TimeSpan.Zero));
        Assert.Contains($"'{_folder.Path}': another run of quartercar is writing there; nothing was changed", failure.Message, StringComparison.Ordinal);
        first.Commit();
        Assert.Equal(["trace.csv"], _folder.Entries());
    }

    [Fact]
    public void Many_runs_into_one_folder_that_is_not_there_yet_leave_the_results_of_one()
    {
        string[] names = ["events.csv", "report.html", "setups/01/trace.csv", "summary.json", "trace.csv"];
        Parallel.For(0, 16, run =>
        {
            using var files = ResultFolder.Open(_folder.At("a/b"), TimeSpan.FromMinutes(2));
            foreach (string name in names) files.Write(name, s => s.Write(Encoding.UTF8.GetBytes($"{run}")));
            if (run % 3 > 0) files.Commit();
        });
        Assert.Equal(["a", "a/b", "a/b/events.csv", "a/b/report.html", "a/b/setups", "a/b/setups/01", "a/b/setups/01/trace.csv", "a/b/summary.json", "a/b/trace.csv"], _folder.Entries());
        Assert.Single(names.Select(n => File.ReadAllText(_folder.At("a/b/" + n))).Distinct());
    }

    [Fact]
    public void One_file_comes_whole_from_one_of_many_and_a_part_that_a_killed_run_left_does_not_matter()
    {
        Parallel.For(0, 16, run => WholeFile.Write(_folder.At("sheet.html"), Encoding.UTF8.GetBytes(new string((char)('a' + run), 100_000)), replace: true));
        Assert.Equal(["sheet.html"], _folder.Entries());
        string text = File.ReadAllText(_folder.At("sheet.html"));
        Assert.Equal(new string(text[0], 100_000), text);
    }

    [Fact]
    public void A_name_as_long_as_a_name_can_be_is_written_and_a_longer_one_refused()
    {
        string longest = new('n', 255);
        WholeFile.Write(_folder.At(longest), "text"u8.ToArray(), replace: false);
        Assert.Equal([longest], _folder.Entries());
        Assert.ThrowsAny<IOException>(() => WholeFile.Write(_folder.At(longest + "n"), "text"u8.ToArray(), replace: false));
        Assert.Equal([longest], _folder.Entries());
    }

    [Fact]
    public void A_file_that_is_there_is_not_replaced_unless_asked_and_a_link_is_followed()
    {
        File.WriteAllText(_folder.At("real.html"), "old");
        File.CreateSymbolicLink(_folder.At("link.html"), "real.html");
        Assert.ThrowsAny<IOException>(() => WholeFile.Write(_folder.At("real.html"), "new"u8.ToArray(), replace: false));
        Assert.Equal("old", File.ReadAllText(_folder.At("real.html")));
        WholeFile.Write(_folder.At("link.html"), "new"u8.ToArray(), replace: true);
        Assert.Equal("new", File.ReadAllText(_folder.At("real.html")));
        Assert.NotNull(new FileInfo(_folder.At("link.html")).LinkTarget);
        Assert.Equal(["link.html", "real.html"], _folder.Entries());
    }

    [Theory]
    [InlineData("mine.txt")]
    [InlineData("nobody.txt")]
    public void A_link_in_the_place_of_a_lock_is_refused_by_its_name_and_what_it_leads_to_stays(string target)
    {
        File.WriteAllText(_folder.At("mine.txt"), "mine");
        File.CreateSymbolicLink(_folder.At(".quartercar-lock"), target);
        var failure = Assert.Throws<ResultFolderException>(() => ResultFolder.Open(_folder.Path, TimeSpan.Zero));
        Assert.Contains("found a link named .quartercar-lock there", failure.Message, StringComparison.Ordinal);
        Assert.Equal([".quartercar-lock", "mine.txt"], _folder.Entries());
        Assert.Equal("mine", File.ReadAllText(_folder.At("mine.txt")));
    }

    [Fact]
    public void A_link_in_the_place_of_a_file_s_lock_is_refused_and_one_in_the_place_of_its_part_goes()
    {
        const string hash = "c653aa7cb4e6c44d";
        File.WriteAllText(_folder.At("mine.txt"), "mine");
        File.CreateSymbolicLink(_folder.At(".quartercar-part-" + hash), "mine.txt");
        WholeFile.Write(_folder.At("sheet.html"), "new"u8.ToArray(), replace: true);
        Assert.Equal(["mine.txt", "sheet.html"], _folder.Entries());
        File.CreateSymbolicLink(_folder.At(".quartercar-lock-" + hash), "mine.txt");
        var failure = Assert.ThrowsAny<IOException>(() => WholeFile.Write(_folder.At("sheet.html"), "newer"u8.ToArray(), replace: true));
        Assert.Contains($"found a link named .quartercar-lock-{hash} there", failure.Message, StringComparison.Ordinal);
        Assert.Equal(("mine", "new"), (File.ReadAllText(_folder.At("mine.txt")), File.ReadAllText(_folder.At("sheet.html"))));
    }
}
