using System.Globalization;
using System.Text.Json;

using QuarterCar.Model;
using QuarterCar.Model.Motion;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Studies;

namespace QuarterCar.Benchmarks;

/// <summary>One reference scenario as the yardstick runs it: statics, stop nut, spring stack, the whole integration, shaft travel on a 10 ms grid, the list of events; one thread, warm, no files.</summary>
internal sealed class Yard
{
    private const double GridStep = 0.01;

    private readonly CornerData _corner;
    private readonly CourseModel _course;
    private readonly double _duration;
    private readonly double _tolerance;
    private readonly double[] _grid;

    public Yard(string name)
    {
        Name = name;
        ReadResult read = ScenarioReader.Read(Path.Combine(Folder, name + ".yaml"), ReadOptions.Plain);
        Scenario = read.Scenario ?? throw new InvalidOperationException(string.Join('\n', read.Problems));
        _corner = Scenario.Corner;
        _course = CourseModel.Of(Scenario);
        _duration = _course.Duration(Scenario.Run);
        _tolerance = Scenario.Run.Tolerance;
        _grid = new double[(int)(_duration / GridStep + 1.5)];
    }

    public static string Folder => Path.Combine(AppContext.BaseDirectory, "reference");

    public string Name { get; }

    public Scenario Scenario { get; }

    public MotionRun Run { get; } = new();

    /// <summary>One timed run.</summary>
    /// <param name="gap">Another stop-nut gap, m; null for the scenario's own.</param>
    /// <returns>Largest shaft travel on the grid, m.</returns>
    public double Once(double? gap = null) => Once(Run, _grid, _tolerance, gap);

    /// <summary>The same in memory of another thread, or at another tolerance.</summary>
    public double Once(MotionRun run, double[] grid, double tolerance, double? gap)
    {
        CornerData data = gap is { } g ? _corner with { Coilover = _corner.Coilover with { StopNut = _corner.Coilover.StopNut! with { Length = g } } } : _corner;
        var corner = Corner.Build(data);
        run.Drive(corner, _course.Road, _course.Speed, _duration, tolerance);
        var steps = run.Steps.Steps;
        double most = 0;
        int k = 0;
        for (int i = 0; i < grid.Length; i++)
        {
            double t = i * GridStep;
            while (k + 1 < steps.Length && steps[k + 1].Start <= t)
                k++;
            grid[i] = corner.Ratio.Travel(CornerState.WheelTravel(steps[k].At(t)));
            most = Math.Max(most, grid[i]);
        }

        return most;
    }

    public double[] NewGrid() => new double[_grid.Length];

    public double Tolerance => _tolerance;

    /// <summary>How far the last run of <see cref="Once(double?)"/> is off the reference: shaft travel, m, and events, s; infinite where the events differ.</summary>
    public (double Travel, double Event) Errors() => Errors(Name, i => i < _grid.Length ? _grid[i] : double.NaN, [.. Events()]);

    /// <summary>Any grid and events against the reference.</summary>
    public static (double Travel, double Event) Errors(string name, Func<int, double> grid, (string Name, double Time)[] events)
    {
        double travel = 0, time = 0;
        string[] lines = File.ReadAllLines(Path.Combine(Folder, name + ".trace.csv"));
        int column = Array.IndexOf(lines[0].Split(','), "shaft_travel_m");
        foreach (string line in lines.Skip(1))
        {
            string[] row = line.Split(',');
            int i = (int)Math.Round(double.Parse(row[0], CultureInfo.InvariantCulture) / GridStep);
            travel = Math.Max(travel, Math.Abs(grid(i) - double.Parse(row[column], CultureInfo.InvariantCulture)));
        }

        JsonElement[] theirs = [.. JsonDocument.Parse(File.ReadAllText(Path.Combine(Folder, name + ".expected.json"))).RootElement.GetProperty("events").EnumerateArray()];
        if (theirs.Length != events.Length)
            return (travel, double.PositiveInfinity);
        for (int i = 0; i < theirs.Length; i++)
        {
            time = theirs[i].GetProperty("event").GetString() == events[i].Name
                ? Math.Max(time, Math.Abs(theirs[i].GetProperty("time_s").GetDouble() - events[i].Time))
                : double.PositiveInfinity;
        }

        return (travel, time);
    }

    private IEnumerable<(string Name, double Time)> Events()
    {
        foreach (NotedEvent e in Run.Events.Events.ToArray())
            yield return (EventNames.Of(e.Event), e.Time);
    }
}
