using System.Text;

using QuarterCar.Reports.Files;

namespace QuarterCar.Reports.Tests;

/// <summary>
/// A run that stops at any moment while it moves results in. The folder is copied before and after every rename, as a kill there would leave the disk; each copy is then opened by a next run, whose mending is stopped at each of its own renames in the same way.
/// </summary>
public sealed class CrashPointTests : IDisposable
{
    private static readonly string[] s_earlier = ["curve.csv", "events.csv", "setups/01/trace.csv", "setups/02/trace.csv", "trace.csv"];
    private static readonly string[] s_fresh = ["report.html", "setups/01/trace.csv", "setups/03/trace.csv", "trace.csv"];

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Stopped_before_or_after_any_rename_the_next_run_finds_one_runs_results()
    {
        List<string> stops = Stops(Earlier("live"), Run);
        Assert.Equal(2 * (1 + s_earlier.Length + s_fresh.Length), stops.Count); // the journal, what goes, what comes
        Assert.Equal("old", Mended(stops[0]));
        Assert.All(stops.Skip(1), stop => Assert.Equal("new", Mended(stop)));
    }

    [Fact]
    public void Stopped_while_it_mends_the_run_after_that_finds_one_runs_results()
    {
        int mendings = 0;
        foreach (string stop in Stops(Earlier("live"), Run).Where((_, i) => i % 2 == 1)) // a stop after a rename is one before the next
        {
            List<string> again = Stops(stop, Open);
            mendings += again.Count;
            Assert.All(again, s => Assert.Equal("new", Mended(s)));
        }

        Assert.InRange(mendings, s_fresh.Length * s_earlier.Length, int.MaxValue);
    }

    [Fact]
    public void Stopped_while_earlier_results_come_back_the_next_run_finds_one_runs_results()
    {
        Earlier("live");
        Directory.CreateDirectory(At("live/report.html")); // nothing can be moved over a folder
        List<string> stops = Stops(At("live"), (folder, move) => Assert.Throws<ResultFolderException>(() => Run(folder, move)));
        Assert.Equal("old", Whole("live", ignored: "report.html"));
        Assert.All(stops, stop =>
        {
            Directory.Delete(Path.Combine(stop, "report.html"));
            Assert.Contains(Mended(stop), (string[])["old", "new"]);
        });
    }

    [Fact]
    public void Between_a_stop_and_mending_every_file_is_an_earlier_or_a_new_one_whole_and_a_note_says_so()
    {
        foreach (string stop in Stops(Earlier("live"), Run).Skip(2))
        {
            Assert.Contains("of two runs", File.ReadAllText(Path.Combine(stop, CommitJournal.Name)), StringComparison.Ordinal);
            Assert.All(Ours(stop), name => Assert.Contains(File.ReadAllText(Path.Combine(stop, name)), (string[])["old " + name, "new " + name]));
        }
    }

    [Fact]
    public void A_move_that_fails_brings_earlier_results_back_whichever_move_it_is()
    {
        for (int failing = 1; failing <= s_earlier.Length + s_fresh.Length; failing++)
        {
            string folder = Earlier($"live{failing}");
            int moves = 0;
            var failure = Assert.Throws<ResultFolderException>(() => Run(folder, (from, to) =>
            {
                if (moves++ == failing) throw new IOException("Input/output error");
                Rename(from, to);
            }));
            Assert.Contains("Input/output error; earlier results there are unchanged", failure.Message, StringComparison.Ordinal);
            Assert.Equal("old", Whole(folder));
            Assert.False(File.Exists(Path.Combine(folder, CommitJournal.Name)));
        }
    }

    [Fact]
    public void Where_earlier_results_cannot_come_back_either_nothing_is_lost_and_the_next_run_mends_it()
    {
        for (int failing = 2; failing <= s_earlier.Length + s_fresh.Length; failing++)
        {
            string folder = Earlier($"live{failing}");
            int moves = 0;
            var failure = Assert.Throws<ResultFolderException>(() => Run(folder, (from, to) =>
            {
                if (moves++ >= failing) throw new IOException("Input/output error");
                Rename(from, to);
            }));
            Assert.Contains("nor the earlier ones back", failure.Message, StringComparison.Ordinal);
            Assert.Contains("Nothing is lost", failure.Message, StringComparison.Ordinal);
            Assert.Equal("new", Mended(folder));
        }
    }

    [Fact]
    public void A_stopped_folder_does_not_concern_another_one()
    {
        string stop = Stops(Earlier("live"), Run)[7], other = Earlier("other");
        string[] before = All(stop);
        Run(other, Rename);
        Assert.Equal("new", Whole(other));
        Assert.Equal(before, All(stop));
        Assert.Equal("new", Mended(stop));
    }

    [Fact]
    public void A_note_that_cannot_be_followed_costs_nobody_the_files_it_leads_to()
    {
        string stop = Stops(Earlier("live"), Run)[7], note = Path.Combine(stop, CommitJournal.Name);
        File.AppendAllText(note, "new of_a_later_version.csv\n");
        string[] before = All(stop);
        var failure = Assert.Throws<ResultFolderException>(() => ResultFolder.Open(stop));
        Assert.Contains($"'{CommitJournal.Name}' cannot be followed; nothing was changed", failure.Message, StringComparison.Ordinal);
        Assert.Equal(before, All(stop));
    }

    [Theory]
    [InlineData("mkfifo")]
    [InlineData("ln", "-s", "/dev/zero")]
    public async Task A_note_that_is_no_plain_file_is_neither_waited_for_nor_read(string make, params string[] arguments)
    {
        Directory.CreateDirectory(At("live/.quartercar-part-x"));
        using (var made = System.Diagnostics.Process.Start(make, [.. arguments, At("live/" + CommitJournal.Name)])) await made.WaitForExitAsync();
        Task<ResultFolderException> refused = Task.Run(() => Assert.Throws<ResultFolderException>(() => ResultFolder.Open(At("live"))));
        Assert.Contains("cannot be followed; nothing was changed", (await refused.WaitAsync(TimeSpan.FromSeconds(20))).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("from ../elsewhere\nnew trace.csv\n")]
    [InlineData("from .quartercar-part-x/../../elsewhere\nnew trace.csv\n")]
    [InlineData("from .quartercar-part-x\nnew ../notes.txt\n")]
    [InlineData("from .quartercar-part-x\nearlier mine.txt\n")]
    public void A_note_that_somebody_wrote_moves_no_file_that_is_not_ours(string note)
    {
        foreach (string name in (string[])["elsewhere/new/trace.csv", "live/mine.txt", "notes.txt", "live/.quartercar-part-x/new/notes.txt", $"live/{CommitJournal.Name}"]) Write(At(name), note);
        string[] before = All(_folder.Path);
        Assert.Throws<ResultFolderException>(() => ResultFolder.Open(At("live")));
        Assert.Equal(before, All(_folder.Path));
    }

    [Theory]
    [InlineData("live/.quartercar-part-x", "../elsewhere")]
    [InlineData("live/.quartercar-part-x/new", "../../elsewhere/new")]
    public void A_note_that_leads_through_a_link_moves_nothing(string link, string target)
    {
        foreach (string name in (string[])["elsewhere/new/trace.csv", "live/trace.csv", $"live/{CommitJournal.Name}"]) Write(At(name), "from .quartercar-part-x\nearlier trace.csv\nnew trace.csv\n");
        Directory.CreateDirectory(Path.GetDirectoryName(At(link))!);
        Directory.CreateSymbolicLink(At(link), target);
        string[] before = All(_folder.Path);
        Assert.Throws<ResultFolderException>(() => ResultFolder.Open(At("live")));
        Assert.Equal(before, All(_folder.Path));
    }

    // A result that somebody moved elsewhere and left a link to is set aside as a link; what it leads to stays.
    [Fact]
    public void A_link_among_the_earlier_results_is_no_reason_not_to_mend()
    {
        string live = Earlier("live"), moved = At("moved.csv");
        File.Move(Path.Combine(live, "trace.csv"), moved);
        File.CreateSymbolicLink(Path.Combine(live, "trace.csv"), moved);
        int moves = 0;
        var files = ResultFolder.Open(live, TimeSpan.Zero, (from, to) =>
        {
            if (++moves > 3) throw new InvalidOperationException("killed");
            Rename(from, to);
        });
        foreach (string name in s_fresh) files.Write(name, s => s.Write(Encoding.UTF8.GetBytes("new " + name)));
        Assert.ThrowsAny<Exception>(files.Commit);
        string stop = At("stop");
        Directory.Move(live, stop); // as a kill leaves it: nobody clears up
        File.Delete(Path.Combine(stop, ".quartercar-lock"));
        Assert.True(File.Exists(Path.Combine(stop, CommitJournal.Name)));
        Assert.Contains(Directory.EnumerateFiles(stop, "trace.csv", SearchOption.AllDirectories), f => new FileInfo(f).LinkTarget is not null && f.Contains("/earlier/", StringComparison.Ordinal));
        Assert.Equal("new", Mended(stop));
        Assert.Equal("old trace.csv", File.ReadAllText(moved));
    }

    [Fact]
    public void Part_folders_without_a_note_were_never_begun_to_be_moved_and_go()
    {
        Earlier("live");
        Write(At("live/.quartercar-part-a/new/trace.csv"), "half");
        Write(At("live/.quartercar-part-b/earlier/curve.csv"), "left behind after the last move");
        Assert.Equal("old", Mended(At("live")));
    }

    private static void Open(string folder, Action<string, string> move) => ResultFolder.Open(folder, TimeSpan.Zero, move).Dispose();

    private static void Run(string folder, Action<string, string> move)
    {
        using var files = ResultFolder.Open(folder, TimeSpan.Zero, move);
        foreach (string name in s_fresh) files.Write(name, s => s.Write(Encoding.UTF8.GetBytes("new " + name)));
        files.Commit();
    }

    private static void Rename(string from, string to) => File.Move(from, to, overwrite: true);

    /// <summary>Copies of a folder before and after each rename that an action makes in it.</summary>
    private List<string> Stops(string folder, Action<string, Action<string, string>> action)
    {
        var stops = new List<string>();
        action(folder, (from, to) =>
        {
            stops.Add(Copied(folder));
            Rename(from, to);
            stops.Add(Copied(folder));
        });
        return stops;
    }

    private string Copied(string folder)
    {
        string copy = At("stop-" + Guid.NewGuid().ToString("N"));
        foreach (string directory in Directory.EnumerateDirectories(folder, "*", SearchOption.AllDirectories)) Directory.CreateDirectory(Path.Combine(copy, Path.GetRelativePath(folder, directory)));
        foreach (string name in All(folder))
        {
            if (!name.EndsWith("lock", StringComparison.Ordinal)) Write(Path.Combine(copy, name), File.ReadAllText(Path.Combine(folder, name))); // the system lets go of a killed run's lock
        }

        return copy;
    }

    private string Earlier(string name)
    {
        foreach (string file in s_earlier) Write(At(name + "/" + file), "old " + file);
        Write(At(name + "/notes.txt"), "mine");
        Write(At(name + "/setups/01/mine.txt"), "mine");
        return At(name);
    }

    /// <summary>What the next run finds before it does anything of its own: "old" or "new" where one run's results are whole, all that is not ours is as it was and nothing hidden is left.</summary>
    private string Mended(string folder)
    {
        Open(folder, Rename);
        Assert.All(All(folder), name => Assert.DoesNotContain("quartercar", name, StringComparison.Ordinal));
        return Whole(folder);
    }

    private string Whole(string folder, string? ignored = null)
    {
        folder = Path.Combine(_folder.Path, folder);
        Assert.Equal("mine", File.ReadAllText(Path.Combine(folder, "notes.txt")));
        Assert.Equal("mine", File.ReadAllText(Path.Combine(folder, "setups/01/mine.txt")));
        string[] names = [.. Ours(folder).Where(n => n != ignored)];
        string run = File.ReadAllText(Path.Combine(folder, "trace.csv"))[..3];
        Assert.Equal(run == "old" ? s_earlier : s_fresh, names);
        Assert.All(names, name => Assert.Equal($"{run} {name}", File.ReadAllText(Path.Combine(folder, name))));
        return run;
    }

    private static string[] Ours(string folder) => [.. All(folder).Where(OurFiles.Contains)];

    private static string[] All(string folder) =>
        [.. Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(folder, f)).Order(StringComparer.Ordinal)];

    private string At(string name) => _folder.At(name);

    private static void Write(string path, string text)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
    }
}
