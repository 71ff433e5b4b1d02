using System.Globalization;
using System.Text.Json;

using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Reading;

namespace QuarterCar.Studies.Tests.Reference;

/// <summary>One independently computed run: figures, events and a 10 ms trace (SciPy's DOP853 at 1e-11 and a second program in C; mark C).</summary>
public sealed class ReferenceRun
{
    private static readonly string s_folder = Path.Combine(AppContext.BaseDirectory, "reference");

    private ReferenceRun(string name)
    {
        Name = name;
        Expected = JsonDocument.Parse(File.ReadAllText(Path.Combine(s_folder, name + ".expected.json"))).RootElement;
        string[] lines = File.ReadAllLines(Path.Combine(s_folder, name + ".trace.csv"));
        Columns = lines[0].Split(',');
        Rows = [.. lines.Skip(1).Where(l => l.Length > 0).Select(l => l.Split(','))];
    }

    /// <summary>All that there are.</summary>
    public static IEnumerable<string> Names { get; } =
        [.. Directory.GetFiles(s_folder, "*.expected.json").Select(f => Path.GetFileName(f)[..^".expected.json".Length]).Order(StringComparer.Ordinal)];

    public string Name { get; }

    public JsonElement Expected { get; }

    public string[] Columns { get; }

    public string[][] Rows { get; }

    public static ReferenceRun Load(string name) => new(name);

    /// <summary>The scenario that the numbers describe, with overrides.</summary>
    /// <remarks>
    /// desert_table.yaml puts its bump stop on the axle, but its numbers are those of one on the shaft: it touches at
    /// stroke − length of shaft travel, its force follows the shaft's velocity and is part of the shaft's force
    /// (m_s·(a + g) = r·shaft_force to 1e-8 N in every row). So the numbers are compared with a shaft bump stop, and the
    /// axle's is held against a second integrator (AxleBumpStopTests).
    /// </remarks>
    public Scenario Scenario(params string[] sets)
    {
        if (Name == "desert_table")
            sets = [.. sets, "coilover.bump_stop.on=shaft"];
        ReadResult read = ScenarioReader.Read(Path.Combine(s_folder, Name + ".yaml"), ReadOptions.Plain with { Sets = [.. sets] });
        return read.Scenario ?? throw new InvalidOperationException(string.Join('\n', read.Problems));
    }

    public double Tolerance(string key) => Expected.GetProperty("tolerance").GetProperty(key).GetDouble();

    public static double Parse(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
