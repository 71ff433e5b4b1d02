using System.Globalization;

using QuarterCar.TestKit.Programs;

namespace QuarterCar.Cli.Tests.Faults;

/// <summary>Machines that are set up otherwise: no home folder, no room for temporary files, other languages.</summary>
public sealed class SurroundingsTests : IDisposable
{
    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public void Without_a_home_folder_and_almost_without_variables_it_writes_the_same_files()
    {
        _scratch.Write("run.sh", $"env -i PATH=\"$PATH\" DOTNET_ROOT=\"$DOTNET_ROOT\" $QUARTERCAR run '{Study.Run.Arguments[1]}' --set run.sample='10 ms' --out out");
        ProcessResult result = ProgramProcess.Shell(_scratch.Folder, ". ./run.sh");
        Assert.True(result.Code == 0, result.Messages);
        Assert.True(Study.Run.Is(_scratch.At("out")));
    }

    [MountFact]
    public void Without_room_for_temporary_files_a_run_works_and_what_needs_them_says_so()
    {
        _scratch.Write("plain.yaml", Scenarios.Plain(limit: 2));
        Assert.Equal(ExitCode.Done, Asked.Of("sweep", _scratch.At("plain.yaml"), "--vary", "coilover.preload=1:2:2 cm", "--part", "1/1", "--out", _scratch.At("part")).Code);
        const string script =
            """
            mkdir none; mount -t tmpfs -o ro none none; export TMPDIR=$PWD/none
            said() { "$@" > out 2> messages; echo "$?|$(wc -c < out)|$(head -1 messages)"; }
            said $QUARTERCAR run plain.yaml --out run | cut -d'|' -f1
            said $QUARTERCAR sweep plain.yaml --vary 'coilover.preload=1:2:2 cm' --json
            said $QUARTERCAR run plain.yaml --out book --also xlsx
            said $QUARTERCAR gather part --out whole
            """;
        string[] lines = ProgramProcess.MountingShell(_scratch.Folder, script).Out.TrimEnd().Split('\n');
        Assert.Equal("0", lines[0]);
        Assert.All(lines[1..], line =>
        {
            Assert.StartsWith("3|0|quartercar: cannot write ", line, StringComparison.Ordinal);
            Assert.Contains($"{_scratch.At("none")}/, the folder for temporary files, takes none (Read-only file system", line, StringComparison.Ordinal);
            Assert.Contains("TMPDIR names another one", line, StringComparison.Ordinal);
        });
        Assert.True(File.Exists(_scratch.At("run/trace.csv")));
        Assert.False(Directory.Exists(_scratch.At("book")) || Directory.Exists(_scratch.At("whole")));
    }

    [Theory]
    [InlineData("tr_TR")]
    [InlineData("ar_SA")]
    [InlineData("fa_IR")]
    [InlineData("he_IL")]
    public void The_program_writes_the_same_bytes_whatever_the_machine_speaks(string language)
    {
        // As it ships the program knows no cultures; here it runs with all of them, as its parts do in another program.
        string settings = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "quartercar.runtimeconfig.json"));
        const string invariant = "\"System.Globalization.Invariant\": true";
        Assert.Contains(invariant, settings, StringComparison.Ordinal);
        _scratch.Write("cultures.json", settings.Replace(invariant, "\"System.Globalization.Invariant\": false", StringComparison.Ordinal));
        string said = Asked.Of([.. Study.Run.Arguments]).Out, command = $"'{Study.Run.Arguments[1]}' --set run.sample='10 ms'", program = Path.Combine(AppContext.BaseDirectory, "quartercar");
        ProcessResult result = ProgramProcess.Shell(
            _scratch.Folder, $"export LC_ALL={language}.UTF-8 LANG={language}.UTF-8; dotnet exec --runtimeconfig cultures.json --depsfile '{program}.deps.json' '{program}.dll' run {command} --out out");
        Assert.True(result.Code == 0, result.Messages);
        Assert.Equal(said, result.Out);
        Assert.True(Study.Run.Is(_scratch.At("out")));
    }

    [Fact]
    public void Every_verb_says_and_writes_the_same_in_every_culture()
    {
        _scratch.Write("plain.yaml", Scenarios.Plain(limit: 2) + "\ntolerances: { corner.sprung_weight: 4 % }\n");
        _scratch.Write("setups.csv", "title,coilover.preload\nİı,1.5 cm\nb,2 cm\n");
        string[][] commands =
        [
            ["check", "plain.yaml", "--out", "OUT", "--also", "xlsx,parquet"], ["check", "plain.yaml", "--json"], ["compare", "plain.yaml", "--setups", "setups.csv", "--out", "OUT"], ["sweep", "plain.yaml", "--vary", "coilover.preload=1:2:3 cm", "--out", "OUT"],
            ["spread", "plain.yaml", "--samples", "4", "--out", "OUT"], ["reach", "plain.yaml", "--vary", "drop.height=0.1:0.6 m"], ["tweak", "plain.yaml"], ["terrain", "LEDGE", "--out", "OUT"], ["sheet", "plain.yaml", "--out", "OUT.html"],
            ["weigh", "--upper-rate", "28 N/mm", "--upper-free", "300 mm", "--upper-loaded", "230 mm", "--lower-rate", "40 N/mm", "--lower-free", "350 mm", "--lower-loaded", "301.5 mm"],
            ["pick", "--load", "3500 N", "--stroke", "300 mm", "--ride-height", "130 mm"], ["run", "plain.yaml", "--set", "coilover.preload=1,5 cm"], ["check", "plain.yaml", "--set", "TİTLE=x"],
        ];
        foreach (string[] command in commands)
        {
            var usual = In(CultureInfo.InvariantCulture, command);
            foreach (string culture in (string[])["tr-TR", "ar-SA", "fa-IR", "he-IL"])
            {
                var here = In(CultureInfo.GetCultureInfo(culture), command);
                Assert.Equal(usual.Said, here.Said);
                Assert.Equal(usual.Files.Keys, here.Files.Keys);
                Assert.All(usual.Files, f => Assert.True(f.Value.AsSpan().SequenceEqual(here.Files[f.Key]), $"{culture}, {command[0]}: {f.Key}"));
            }
        }
    }

    private (Asked Said, SortedDictionary<string, byte[]> Files) In(CultureInfo culture, string[] command)
    {
        string output = _scratch.At("OUT");
        var (before, beforeUi) = (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture);
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = culture;
            Asked asked = Asked.Of([.. command.Select(w => w is "LEDGE" ? Scenarios.QuarryLedge : w.EndsWith(".yaml", StringComparison.Ordinal) || w.EndsWith(".csv", StringComparison.Ordinal) || w.StartsWith("OUT", StringComparison.Ordinal) ? _scratch.At(w) : w)]);
            var files = new SortedDictionary<string, byte[]>(StringComparer.Ordinal);
            foreach (string name in _scratch.Files().Where(n => n.StartsWith("OUT", StringComparison.Ordinal))) files.Add(name, File.ReadAllBytes(_scratch.At(name)));
            return (asked, files);
        }
        finally
        {
            (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = (before, beforeUi);
            if (Directory.Exists(output)) Directory.Delete(output, recursive: true);
            File.Delete(output + ".html");
        }
    }
}
