using QuarterCar.TestKit.Programs;

namespace QuarterCar.Cli.Tests.Faults;

/// <summary>Places where nothing can be written: read-only ones, and files where a folder is wanted.</summary>
public sealed class PlaceTests : IDisposable
{
    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [MountFact]
    public void A_read_only_place_is_bad_input_by_its_name_and_stays_as_it_is()
    {
        _scratch.Write("plain.yaml", Scenarios.Plain());
        const string script =
            """
            mkdir disk; mount -t tmpfs none disk; echo mine > disk/summary.json; mount -o remount,ro disk
            said() { "$@" > out 2> messages; echo "$?|$(wc -c < out)|$(cat messages)"; }
            said $QUARTERCAR run plain.yaml --out disk
            said $QUARTERCAR check plain.yaml --out disk/below/it
            said $QUARTERCAR compare plain.yaml --vary 'coilover.preload=1,2 cm' --out disk
            said $QUARTERCAR sheet plain.yaml --out disk/sheet.html
            said $QUARTERCAR new disk/new.yaml
            ls -A disk | tr '\n' ' '; cat disk/summary.json
            """;
        string at = _scratch.At("disk");
        string[] lines = ProgramProcess.MountingShell(_scratch.Folder, script).Out.TrimEnd().Split('\n');
        string cannot = $"2|0|quartercar: cannot write results to '{at}", end = "; earlier results there are unchanged. Free space or name another folder.";
        Assert.Equal(
            [
                $"{cannot}': Read-only file system{end}",
                $"{cannot}/below/it': Read-only file system : '{at}/below'{end}",
                $"{cannot}': Read-only file system{end}",
                "2|0|quartercar: --out: disk/sheet.html: cannot be written: Read-only file system",
                "2|0|quartercar: disk/new.yaml: cannot be written: Read-only file system",
                "summary.json mine",
            ],
            lines);
    }

    [Theory]
    [InlineData("taken", "--out {0}: found a file; wanted a folder, which is made where it is missing")]
    [InlineData("taken/below", "cannot write results to '{0}': The file '")]
    [InlineData("taken/far/below", "cannot write results to '{0}': The file '")]
    public void A_file_where_a_folder_is_wanted_is_bad_input_for_every_verb(string name, string words)
    {
        string taken = _scratch.Write("taken", "mine"), scenario = _scratch.Write("plain.yaml", Scenarios.Plain(limit: 2) + "\ntolerances: { corner.sprung_weight: 4 % }\n"), folder = _scratch.At(name);
        foreach (string[] command in (string[][])
            [["check", scenario], ["run", scenario], ["terrain", Scenarios.QuarryLedge], ["spread", scenario, "--samples", "3"], ["tweak", scenario], ["compare", scenario, "--vary", "coilover.preload=1,2 cm"],
             ["sweep", scenario, "--vary", "coilover.preload=1:2:2 cm"], ["reach", scenario, "--vary", "drop.height=0.1:0.2 m"]])
        {
            Asked asked = Asked.Of([.. command, "--out", folder]);
            if (asked.Code == ExitCode.BadInput && asked.Messages.Contains("Unrecognized", StringComparison.Ordinal)) continue;
            Assert.True(asked.Code == ExitCode.BadInput, command[0] + asked.Messages);
            Assert.Contains(string.Format(System.Globalization.CultureInfo.InvariantCulture, words, folder), asked.Messages, StringComparison.Ordinal);
            Assert.Equal("", asked.Out);
        }

        Assert.Equal("mine", File.ReadAllText(taken));
        Assert.Equal(["plain.yaml", "taken"], _scratch.Files());
    }

    // The names of the hidden files are those that this program gives: the folder's one, and a file's with the start of its name's SHA-256.
    [Theory]
    [InlineData(".quartercar-lock", "run", "--out", "")]
    [InlineData(".quartercar-lock-c653aa7cb4e6c44d", "sheet", "--out", "sheet.html")]
    [InlineData(".quartercar-lock-7665bb235a650a4d", "new", "new.yaml")]
    public void A_link_where_a_lock_comes_is_bad_input_and_what_it_leads_to_stays(string link, params string[] command)
    {
        string scenario = _scratch.Write("plain.yaml", Scenarios.Plain()), mine = _scratch.Write("mine", "mine");
        File.CreateSymbolicLink(_scratch.At(link), "mine");
        string[] words = command[0] == "new" ? [] : [scenario];
        Asked asked = Asked.Of([command[0], .. words, .. command[1..^1], _scratch.At(command[^1])]);
        Assert.Equal((ExitCode.BadInput, ""), (asked.Code, asked.Out));
        Assert.Contains($"found a link named {link} there", asked.Messages, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(mine));
        Assert.Equal([link, "mine", "plain.yaml"], _scratch.Files());
    }
}
