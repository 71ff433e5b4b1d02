using System.Collections.Immutable;
using System.Text;

using QuarterCar.Model;
using QuarterCar.Model.Selection;
using QuarterCar.Model.Terrain;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Scenarios.SpringLists;
using QuarterCar.Scenarios.Weighing;
using QuarterCar.Studies;
using QuarterCar.Studies.Setups;
using QuarterCar.Studies.Sweeps;
using QuarterCar.Studies.Terrains;
using QuarterCar.TestKit.Programs;

namespace QuarterCar.Fuzzing;

/// <summary>Every reader of the library: what it is given, and what is asked of what it accepts.</summary>
internal static class Readers
{
    private const string Name = "input";

    // One accepted scenario in so many is also driven: a run costs as much as a thousand readings.
    private const int DrivenOf = 40;

    // The spectrum of a longer course may take its seconds: whoever asks for it waits for it. m.
    private const double LongestStudied = 20_000;

    // Enough to meet every kind of event; a stiff corner's log of steps, doubled as it grows, takes 100 MB in a tenth of a second.
    private static readonly TimeSpan s_run = TimeSpan.FromMilliseconds(30);

    /// <summary>All of them.</summary>
    public static ImmutableArray<Reader> All =>
    [
        new("scenario", Files("*.yaml", "scenarios", "tests/data/reference", "tests/QuarterCar.Scenarios.Tests/data/bad"), [.. Words.Any, .. Words.Yaml, .. Words.Scenario], Scenario),
        new("overrides", Texts(s_overrides), [.. Words.Any, .. Words.Yaml, .. Words.Scenario], Overrides),
        new("vary", Texts(s_vary), [.. Words.Any, .. Words.Yaml, .. Words.Scenario], Vary),
        new("measured", [.. Files("*.yaml", "scenarios/measured"), .. Texts(s_measured)], [.. Words.Any, .. Words.Yaml, .. Words.Scenario, "corners", "loaded_length", "stop_nut_clear", "rate_error", "length_error"], Measured),
        new("profile", [.. Files("*.csv", "scenarios", "tests/QuarterCar.Scenarios.Tests/data/bad"), .. Texts(s_profiles)], [.. Words.Any, .. Words.Csv], Profile),
        new("springs", [.. Files("*.csv", "tests/QuarterCar.Scenarios.Tests/data/bad"), Head("src/QuarterCar.Scenarios/SpringLists/invented-springs.csv"), .. Texts(s_springs)], [.. Words.Any, .. Words.Csv], Springs),
        new("setups", Texts(s_setups), [.. Words.Any, .. Words.Csv, .. Words.Yaml, .. Words.Scenario], Setups),
        PageReader.Reader,
        PartReader.Reader,
        CommandReader.Reader,
    ];

    /// <summary>The scenario that overrides and lists of setups are read against.</summary>
    public static string Ledge { get; } = File.ReadAllText(Checkout.At("scenarios", "quarry-ledge.yaml"));

    /// <summary>Texts as inputs.</summary>
    public static ImmutableArray<byte[]> Texts(IEnumerable<string> texts) => [.. texts.Select(Encoding.UTF8.GetBytes)];

    /// <summary>What a person is told of these mistakes.</summary>
    public static Verdict Told(bool accepted, ImmutableArray<Problem> problems) =>
        new(accepted, [.. problems.Select(p => p.ToString())], problems.FirstOrDefault(p => p.File.Length == 0 || (p.Line == 0 && p.Key.Length == 0 && !OfWhole(p)))?.ToString());

    // What is said of a file as a whole: it is empty, no text, no CSV, too large or too short; an override's own text is its place.
    private static bool OfWhole(Problem p) => p.File != Name || p.Found.StartsWith("an empty", StringComparison.Ordinal) || p.Found == Scenarios.Texts.NotUtf8
        || p.Found.EndsWith(" rows", StringComparison.Ordinal) || p.Found.EndsWith(" row", StringComparison.Ordinal) || p.Found.StartsWith("no spring", StringComparison.Ordinal) || p.Found.EndsWith("more mistakes", StringComparison.Ordinal);

    private static Verdict Scenario(byte[] input)
    {
        var problems = new ProblemList();
        if (TextFiles.Read(new MemoryStream(input), Name, Scenarios.Texts.ScenarioFile, problems) is not { } text) return Told(false, problems.ToImmutable());
        return Read(text, ReadOptions.Plain with { Base = StandingBase.Instance }, input);
    }

    // The first override may be a case: what stands before the first line's end.
    private static Verdict Overrides(byte[] input)
    {
        string[] lines = Encoding.UTF8.GetString(input).Split('\n');
        string? loadCase = lines[0].StartsWith("case ", StringComparison.Ordinal) ? lines[0]["case ".Length..] : null;
        return Read(Ledge, ReadOptions.Plain with { Base = StandingBase.Instance, Case = loadCase, Sets = [.. lines.Skip(loadCase is null ? 0 : 1).Take(20)], Nut = input.Length % 3 == 0 ? NutRule.Stays : null }, input);
    }

    private static Verdict Read(string text, ReadOptions options, byte[] input)
    {
        ReadResult read = ScenarioReader.ReadText(Name, text, options);
        if (read.Scenario is not { } scenario) return Told(false, read.Problems);
        Stand(scenario, drive: input.Sum(b => b) % DrivenOf == 0);
        return Verdict.Good;
    }

    private static void Stand(Scenario scenario, bool drive)
    {
        using var cancel = new CancellationTokenSource(s_run);
        try
        {
            StandingStudy.Of(scenario);
            if (drive) SingleRun.Of(scenario, cancel.Token);
        }
        catch (Exception e) when (e is CornerException or OperationCanceledException)
        {
            // Words that describe no corner that stands, or a run that takes longer: both are said to whoever asks.
        }
    }

    private static Verdict Vary(byte[] input)
    {
        var problems = new ProblemList();
        var document = ScenarioDocument.Parse(Name, Ledge, null, problems)!;
        var check = new ValueCheck(document, ReadOptions.Plain, problems);
        string text = Encoding.UTF8.GetString(input);
        bool all = VaryText.Read(text, check) is not null;
        all |= SplitText.Read(text, check) is not null;
        var ranges = new RangeText(document, [], problems);
        all |= ranges.GridAxis(text) is not null;
        all |= ranges.Reach(text) is not null;
        return Told(all, problems.ToImmutable());
    }

    private static Verdict Measured(byte[] input)
    {
        var problems = new ProblemList();
        if (TextFiles.Read(new MemoryStream(input), Name, Scenarios.Texts.ReadableFile, problems) is not { } text) return Told(false, problems.ToImmutable());
        MeasuredReading read = MeasuredReader.ReadText(Name, text);
        if (read.Input is not { } measured) return Told(false, read.Problems);
        Weigh.Of(measured.Corners, measured.Errors);
        return Verdict.Good;
    }

    private static Verdict Profile(byte[] input)
    {
        var problems = new ProblemList();
        if (ProfileReader.Read(new MemoryStream(input), Name, problems) is not { } profile) return Told(false, problems.ToImmutable());
        if (profile.Points[^1].At - profile.Points[0].At > LongestStudied) return Verdict.Good;
        using var cancel = new CancellationTokenSource(s_run);
        try
        {
            TerrainStudy.Of(new ProfilePiece(Name, profile.Points), profile.Units, cancel.Token);
        }
        catch (Exception e) when (e is CornerException or OperationCanceledException)
        {
            // Said to whoever asks.
        }

        return Verdict.Good;
    }

    private static Verdict Springs(byte[] input)
    {
        var problems = new ProblemList();
        return SpringListReader.Read(new MemoryStream(input), Name, problems) is null ? Told(false, problems.ToImmutable()) : Verdict.Good;
    }

    private static Verdict Setups(byte[] input)
    {
        var problems = new ProblemList();
        var check = new ValueCheck(ScenarioDocument.Parse(Name, Ledge, null, problems), ReadOptions.Plain, problems);
        return SetupsFile.Read(new MemoryStream(input), Name, check) is null ? Told(false, problems.ToImmutable()) : Verdict.Good;
    }

    private static ImmutableArray<byte[]> Files(string pattern, params string[] folders) =>
        [.. folders.SelectMany(f => Directory.EnumerateFiles(Checkout.At(f), pattern)).Order(StringComparer.Ordinal).Select(File.ReadAllBytes).Where(b => b.Length < Mutator.Longest / 2)];

    private static byte[] Head(string file) => Encoding.UTF8.GetBytes(string.Join('\n', File.ReadLines(Checkout.At(file)).Take(30)));

    private static readonly string[] s_overrides =
    [
        "coilover.preload=2 in", "coilover.stop_nut=none\ncoilover.springs.upper.rate=150 lbf/in", "terrain[1].step=-4 in\nspeed=9 mph", "case two up\ncoilover.gas.pressure=150 psi",
        "coilover.damper={ compression: [[0.1 m/s, 300 N], [1 m/s, 1500 N]], rebound: [[0.1 m/s, 500 N], [1 m/s, 2500 N]] }", "drop={ height: 3 ft }\nterrain=none\nspeed=none", "corner.motion_ratio=[[0 in, 0.90], [12 in, 0.97]]",
        "terrain=[{ random: { iso8608: D, length: 20 m, seed: 7 } }, { whoops: { height: 20 in, spacing: 18 ft, count: 6 } }]", "limits={ bottom_out: 0 }", "cases=[{ name: a, speed: +1 mph }]", "tolerances={ coilover.preload: 4 % }",
    ];

    private static readonly string[] s_vary =
    [
        "coilover.stop_nut.gap=0.8,1.3,1.9 in", "150/250,175/225 lbf/in", "speed=2:10:9 mph", "coilover.preload=1:2 in", "coilover.damper={ a: 1 },none", "terrain[1].step=-8:-40 in", "terrain[0].random.seed=1:3:3", "coilover.gas.temperature=0,90 degC",
    ];

    private static readonly string[] s_measured =
    [
        """
        length_error: 3 mm
        rate_error: 2 %
        corners:
          - name: front left
            stop_nut_clear: false
            motion_ratio: 0.94
            shaft_showing: 140 mm
            stroke: 300 mm
            gas: { pressure: 12 bar, rod_diameter: 22 mm, volume: 450 cm^3 }
            upper: { rate: 28 N/mm, free_length: 305 mm, loaded_length: [231 mm, 228 mm] }
            lower: { rate: 39 N/mm, free_length: 356 mm, loaded_length: 302 mm, solid_length: 120 mm }
          - { name: front right, lower: { rate: 39 N/mm, free_length: 356 mm, loaded_length: 300 mm } }
        """,
    ];

    private static readonly string[] s_profiles = ["distance_m,height_mm\n0,0\n1,20\n2,-10\n2,15\n9,0\n", "height_in,distance_ft\n\"0\",\"0\"\n1,10\n0,60\n", "a;b\n1;2\n"];

    private static readonly string[] s_springs =
    [
        "name,rate_lbf_in,free_length_in,solid_length_in\na,150,12,4.5\nb,225,14,5.6\n", "# remark\nrate_N_mm,free_length_mm,solid_length_mm,inner_diameter_mm,wire_diameter_mm,mean_diameter_mm\n28,300,110,63.5,11,75\n30,300,110,,,\n",
    ];

    private static readonly string[] s_setups =
    [
        "title,coilover.preload,coilover.stop_nut.gap\nsoft,1 in,1 in\n=b,2 in,none\n", "coilover.springs.upper.rate,terrain[1].step\n150 lbf/in,-4 in\n\"175 lbf/in\",=-8 in\n", "coilover.damper\n\"{ compression: [[1 m/s, 9 N]], rebound: [[1 m/s, 9 N]] }\"\n",
    ];
}
