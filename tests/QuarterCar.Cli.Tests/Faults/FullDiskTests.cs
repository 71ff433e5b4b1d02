using System.Globalization;

using QuarterCar.TestKit.Programs;

using Xunit.Abstractions;

namespace QuarterCar.Cli.Tests.Faults;

/// <summary>Disks of many sizes, so that each file in turn is the one that does not fit.</summary>
public sealed class FullDiskTests(ITestOutputHelper output) : IDisposable
{
    private const int UsualSizes = 5, Page = 4096;

    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [MountFact]
    public void A_disk_that_is_full_after_any_file_leaves_the_earlier_results_and_nothing_else()
    {
        Study.Run.Lay(_scratch.At("earlier"));
        Study.HigherRun.Lay(_scratch.At("later"));
        int room = Pages(Study.Run) + 1, wanted = Pages(Study.HigherRun) + 2, count = Study.Times("QUARTERCAR_DISKS", UsualSizes); // a page for the note, one for names
        var sizes = Enumerable.Range(0, count).Select(i => room + i * (wanted + 2) / (count - 1));
        const string script =
            """
            mkdir disk
            for pages in $(cat sizes); do
              mount -t tmpfs -o size=$((4 * pages))k none disk; cp -r earlier/. disk/
              $QUARTERCAR $(cat command) --out disk > said 2> messages; code=$?
              state=neither; diff -r earlier disk > /dev/null && state=earlier; diff -r later disk > /dev/null && state=later
              echo "$pages|$code|$state|$(ls -A disk | grep -c quartercar)|$(tr '\n' ' ' < messages)"
              umount disk
            done
            """;
        _scratch.Write("sizes", string.Join(' ', sizes.Select(s => s.ToString(CultureInfo.InvariantCulture))));
        _scratch.Write("command", string.Join(' ', Study.HigherRun.Arguments.Select(a => a.Replace("=10 ms", "=10ms", StringComparison.Ordinal))));
        string[][] lines = [.. ProgramProcess.MountingShell(_scratch.Folder, script, count).Out.TrimEnd().Split('\n').Select(l => l.Split('|'))];
        Assert.Equal(count, lines.Length);
        foreach (string[] line in lines)
        {
            output.WriteLine(string.Join(' ', line));
            bool fits = line[1] == "0";
            Assert.Equal(fits ? "later" : "earlier", line[2]);
            Assert.Equal("0", line[3]);
            if (fits) continue;
            Assert.Equal("3", line[1]);
            Assert.Contains("cannot write results to '", line[4], StringComparison.Ordinal);
            Assert.Contains("/disk': No space left on device; earlier results there are unchanged", line[4], StringComparison.Ordinal);
            Assert.DoesNotContain("   at ", line[4], StringComparison.Ordinal);
        }

        Assert.Equal("0", lines[^1][1]);
        Assert.InRange(lines.Count(l => l[1] == "3"), count / 2, count - 1);
    }

    [MountFact]
    public void A_full_disk_leaves_no_half_scenario_and_the_earlier_sheet()
    {
        string scenario = _scratch.Write("plain.yaml", Scenarios.Plain());
        string sheet = _scratch.At("sheet.html");
        Assert.Equal(ExitCode.Done, Asked.Of("sheet", scenario, "--out", sheet).Code);
        File.AppendAllText(sheet, "<!-- an earlier one -->");
        long pages = (new FileInfo(sheet).Length + Page - 1) / Page;
        string script =
            $$"""
            mkdir disk
            for free in 0 1 2; do
              mount -t tmpfs -o size=$((4 * ({{pages}} + $free)))k none disk; cp sheet.html disk/
              $QUARTERCAR sheet plain.yaml --out disk/sheet.html > said 2> messages; code=$?
              echo "$free|sheet|$code|$(cmp sheet.html disk/sheet.html && echo earlier)|$(ls -A disk | tr '\n' ' ')|$(tr '\n' ' ' < messages)"
              if [ $free = 0 ]; then
                $QUARTERCAR new disk/new.yaml > said 2> messages; code=$?
                echo "$free|new|$code|earlier|$(ls -A disk | tr '\n' ' ')|$(tr '\n' ' ' < messages)"
              fi
              umount disk
            done
            """;
        string[][] lines = [.. ProgramProcess.MountingShell(_scratch.Folder, script).Out.TrimEnd().Split('\n').Select(l => l.Split('|'))];
        Assert.Equal(4, lines.Length);
        foreach (string[] line in lines)
        {
            output.WriteLine(string.Join(' ', line));
            Assert.Equal(["3", "earlier", "sheet.html "], line[2..5]);
            Assert.Contains($"cannot write the results: disk/{(line[1] == "new" ? "new.yaml" : "sheet.html")}: No space left on device", line[5], StringComparison.Ordinal);
        }
    }

    // A file takes whole pages of a tmpfs.
    private static int Pages(Study study) => study.Files.Values.Sum(f => (f.Length + Page - 1) / Page);
}
