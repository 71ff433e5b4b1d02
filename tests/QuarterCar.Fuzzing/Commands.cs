using System.Collections.Immutable;
using System.Text;

using QuarterCar.Cli;
using QuarterCar.TestKit.Programs;

namespace QuarterCar.Fuzzing;

/// <summary>Commands run inside this process, in a folder of their own, and stopped after a short while.</summary>
internal static class Commands
{
    // What a message of bad input has: the place, what was found there, what is wanted.
    private const string Found = "found ", Wanted = "wanted ";

    // How a run ends, and says so, where its numbers are beyond all proportion.
    private const string OutOfRange = "The run stopped at t = ";

    // What is wrong with the words of a command names the word itself.
    private static readonly string[] s_usage = ["lacks its value", "is missing", "one argument too many", "there is no ", "see 'quartercar", "expects a single argument", "computes one corner of a vehicle"];

    private static readonly TimeSpan s_patience = TimeSpan.FromMilliseconds(150);

    /// <summary>A folder that is gone with the process.</summary>
    public static Scratch Scratch { get; } = Made();

    /// <summary>Runs one.</summary>
    public static Verdict Run(params string[] args)
    {
        using var cancel = new CancellationTokenSource(s_patience);
        using var results = new MemoryStream();
        using var messages = new StringWriter();
        ExitCode code;
        using (var session = new Session(results, messages, Colour: false, cancel.Token)) code = CommandLine.Run(args, session);
        string[] lines = messages.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        if (code == ExitCode.Failed && lines.FirstOrDefault(l => l.StartsWith("quartercar: ", StringComparison.Ordinal) && !l.Contains(OutOfRange, StringComparison.Ordinal)) is { } failed) throw new InvalidOperationException(failed);
        string shown = Encoding.UTF8.GetString(results.ToArray());
        if (shown.Any(c => char.IsControl(c) && c is not ('\n' or '\r' or '\t'))) throw new InvalidOperationException("results with control characters");
        return code == ExitCode.BadInput ? Refused(lines) : Verdict.Good;
    }

    private static Verdict Refused(string[] lines)
    {
        string[] mistakes = [.. lines.Where(l => l.StartsWith("quartercar: ", StringComparison.Ordinal))];
        return new(false, [.. lines], mistakes.FirstOrDefault(l => !(l.Contains(Found, StringComparison.Ordinal) && l.Contains(Wanted, StringComparison.Ordinal)) && !s_usage.Any(w => l.Contains(w, StringComparison.Ordinal))));
    }

    private static Scratch Made()
    {
        var scratch = new Scratch();
        AppDomain.CurrentDomain.ProcessExit += (_, _) => scratch.Dispose();
        return scratch;
    }
}

/// <summary>The command line: an argument a line. What it writes is not fuzzed: names of files to write are taken out, and the page is not served.</summary>
internal static class CommandReader
{
    private static readonly string[] s_seeds =
    [
        "check\nledge.yaml\n--json\n--case\nx\n--units\nsi", "run\nledge.yaml\n--set\ncoilover.preload=2 in\n--nut\nstays", "weigh\n--upper-rate\n160 lbf/in\n--upper-free\n12 in\n--upper-loaded\n9 in,9.2 in\n--lower-rate\n225 lbf/in\n--lower-free\n14 in\n--lower-loaded\n12 in",
        "weigh\n--file\nmeasured.yaml\n--json", "weigh\n--lower-rate\n225 lbf/in\n--lower-free\n14 in\n--lower-loaded\n12 in\n--gas-pressure\n180 psi\n--gas-volume\n28 in^3\n--rod-diameter\n0.875 in\n--shaft-showing\n5 in\n--stroke\n12 in\n--motion-ratio\n0.94\n--rate-error\n2 %",
        "pick\n--load\n850 lbf\n--stroke\n12 in\n--ride-height\n5 in\n--preload\n1 in\n--gap\n1 in\n--springs\nsprings.csv", "pick\n--load\n4 kN\n--stroke\n300 mm\n--ride-height\n130 mm\n--seat-length\n700 mm\n--thread\n150 mm\n--slider\n30 mm\n--diameter\n2.5 in\n--springs\nsprings.csv\n--tenders\nsprings.csv",
        "compare\nledge.yaml\n--vary\ncoilover.stop_nut.gap=0.8,1.3,1.9 in\n--hold\nride_height,crossover\n--jobs\n1", "compare\nledge.yaml\n--setups\nsetups.csv\n--part\n1/2\n--also\nxlsx", "compare\nledge.yaml\n--split\n150/250,175/225 lbf/in\n--springs\nsprings.csv",
        "sweep\nledge.yaml\n--vary\nspeed=2:10:3 mph\n--goal\nacceleration.peak_g:least", "reach\nledge.yaml\n--vary\nterrain[1].step=-8:-40 in", "tweak\nledge.yaml\n--goal\nup_travel_used:most", "spread\nledge.yaml\n--samples\n10\n--seed\n7",
        "terrain\ncourse.csv\n--json", "terrain\nledge.yaml", "schema", "sheet\nledge.yaml", "completion\nbash", "--version", "--help", "check\n--help", "chekc\nledge.yaml",
    ];

    /// <summary>The command line.</summary>
    public static Reader Reader => new("command", Readers.Texts(s_seeds), [.. Words.Any, .. Words.Scenario, "--", "-", "--set=", "--json", "--case", "--units", "--vary", "--jobs", "--part", "--also", "@ledge.yaml", "[suggest]", "ledge.yaml", "setups.csv", "springs.csv", "/dev/zero", "/dev/null", "."], Read)
    {
        MostAllocated = 400_000_000,
    };

    private static readonly Lazy<string> s_folder = new(() =>
    {
        Scratch scratch = Commands.Scratch;
        scratch.Write("ledge.yaml", Readers.Ledge);
        scratch.Write("course.csv", "distance_m,height_mm\n0,0\n1,20\n2,-10\n40,0\n");
        scratch.Write("springs.csv", "rate_lbf_in,free_length_in,solid_length_in\n150,12,4.5\n175,12,4.6\n225,14,5.6\n250,14,5.7\n");
        scratch.Write("setups.csv", "title,coilover.preload\nsoft,1 in\n=b,2 in\n");
        scratch.Write("measured.yaml", "corners:\n  - { name: left, lower: { rate: 39 N/mm, free_length: 356 mm, loaded_length: 300 mm } }\n");
        Environment.CurrentDirectory = scratch.Folder;
        return scratch.Folder;
    });

    private static Verdict Read(byte[] input)
    {
        _ = s_folder.Value;
        string[] args = [.. Encoding.UTF8.GetString(input).Split('\n').Take(40).Where(a => !a.Contains('\0', StringComparison.Ordinal))];
        if (args.Any(a => a is "serve" or "new" or "gather" || a.StartsWith("--o", StringComparison.OrdinalIgnoreCase))) return Verdict.Good;
        return Commands.Run(args);
    }
}

/// <summary>Parts of a study made by strangers. An input's first line names the file of the part that it takes the place of.</summary>
internal static class PartReader
{
    private static readonly Lazy<ImmutableDictionary<string, byte[]>> s_good = new(Good);

    /// <summary>What `gather` reads.</summary>
    public static Reader Reader => new("part", [.. s_good.Value.Select(f => (byte[])[.. Encoding.UTF8.GetBytes(f.Key + "\n"), .. f.Value])], [.. Words.Any, .. Words.Json, .. Words.Scenario, "--also", "xlsx", "--setups", "--springs"], Read)
    {
        MostAllocated = 400_000_000,
    };

    private static Verdict Read(byte[] input)
    {
        int line = Math.Max(0, Array.IndexOf(input, (byte)'\n'));
        string name = Encoding.UTF8.GetString(input.AsSpan(0, line));
        string folder = Commands.Scratch.At("part");
        Directory.CreateDirectory(folder);
        foreach ((string file, byte[] bytes) in s_good.Value) File.WriteAllBytes(Path.Combine(folder, file), file == name ? input[(line + 1)..] : bytes);
        return Commands.Run("gather", folder, "--out", Commands.Scratch.At("whole"));
    }

    private static ImmutableDictionary<string, byte[]> Good()
    {
        Scratch scratch = Commands.Scratch;
        scratch.Write("study/ledge.yaml", Readers.Ledge);
        using var results = new MemoryStream();
        using var messages = new StringWriter();
        using (var session = new Session(results, messages, Colour: false, default))
            CommandLine.Run(["compare", scratch.At("study/ledge.yaml"), "--vary", "coilover.preload=1,2 in", "--set", "run.duration=0.2 s", "--part", "1/1", "--out", scratch.At("study/out")], session);
        return ((string[])["part.json", "compare.json"]).ToImmutableDictionary(f => f, f => File.ReadAllBytes(scratch.At("study/out/" + f)));
    }
}
