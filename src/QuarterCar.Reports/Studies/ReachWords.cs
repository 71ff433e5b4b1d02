using QuarterCar.Reports.Units;
using QuarterCar.Reports.Words;
using QuarterCar.Studies.Sweeps;

namespace QuarterCar.Reports.Studies;

/// <summary>A reach's answer in sentences.</summary>
internal sealed class ReachWords(ReachResult result)
{
    private readonly Readable _read = new(result.Scenario.Units);

    /// <summary>The path, its values with the decimals that the resolution needs.</summary>
    public PathScale Path { get; } = new PathScale(result.Axis.Path, result.Scenario.Units).Telling(result.Setups.Min(s => s.Resolution));

    /// <summary>The first value of the way.</summary>
    public string From => Path.End(result.Axis.FromSi);

    /// <summary>The last value of the way.</summary>
    public string To => Path.End(result.Axis.ToSi);

    /// <summary>The last value that holds, rounded to the side that holds; a dash without one.</summary>
    public string Largest(ReachSetup setup) => setup.Largest is { } largest ? Path.NumberToward(result.Axis.FromSi, largest) : Readable.None;

    /// <summary>The answer for one setup.</summary>
    public string Verdict(ReachSetup setup) => (setup.Largest, setup.FirstBroken) switch
    {
        (null, { } first) => $"A limit breaks at the first value already, {Path.Name} {From}: {Broken(first)}",
        (not null, null) => $"Every limit holds all the way to {Path.Name} {To}",
        (not null, { } first) => $"Every limit holds up to {Path.Name} {Path.WithUnit(Largest(setup))}; then {Broken(first)}",
        _ => "nothing was run",
    };

    /// <summary>How closely the answer is known.</summary>
    public string Resolution(ReachSetup setup)
    {
        string scan = $"Scanned at {ReachStudy.ScanPoints} points from {From} to {To}";
        string pinned = setup.Largest is null || setup.FirstBroken is null ? "." : $", the first break pinned to {Path.Difference(setup.Resolution)}.";
        return scan + pinned + " A break between two points that hold is not seen.";
    }

    /// <summary>How closely the answers of several setups are known: where one broke within the way, it tells.</summary>
    public string Resolution() => Resolution(result.Setups.FirstOrDefault(s => s.Largest is not null && s.FirstBroken is not null) ?? result.Setups[0]);

    /// <summary>What is held there by, and where the stop nut stands at the largest value; empty where nothing is held and nothing moves it.</summary>
    public string Nut(ReachSetup setup) => NutWords.Sentence($"At {Path.Name} {Path.WithUnit(Largest(setup))}", setup.HeldBy, Varied(setup), setup.LargestFigures, _read);

    /// <summary>The limits that the figures at the largest value do not tell of; empty where all are judged.</summary>
    public string NotJudged(ReachSetup setup) => LimitWords.NotJudged(result.Limits, setup.LargestFigures, _read) is { } open ? $"At {Path.Name} {Path.WithUnit(Largest(setup))} {open}." : "";

    /// <summary>True where <see cref="Cautions.Springs"/> belongs to the answer.</summary>
    public bool Wrenched => result.Setups.Any(s => Cautions.Wrenched(Varied(s), result.Held));

    private string[] Varied(ReachSetup setup) => [result.Axis.Path, .. setup.Request.Values.Select(v => v.Path)];

    /// <summary>Where it holds again beyond the first break; empty where it does not.</summary>
    public string Again(ReachSetup setup)
    {
        if (!setup.HoldsAgain)
            return "";
        var beyond = setup.Scan.SkipWhile(p => p.Holds).Where(p => p.Holds).ToList();
        return $"Beyond the break {beyond.Count} of the {ReachStudy.ScanPoints} points hold again, the first at {Path.End(beyond[0].At)}, the last at {Path.End(beyond[^1].At)}: the answer is not one-way.";
    }

    /// <summary>What broke first.</summary>
    public string Broken(ReachBreak first)
    {
        if (first.Verdict is not { } verdict || !(verdict.Value > verdict.Largest))
            return first.Failure is { } failure ? $"it cannot be run at {Path.Text(first.At)}: {failure}" : $"it {first.Rest}";
        var figure = new FigureScale(verdict.Figure, _read);
        return $"{figure.Word} goes above {figure.Text(verdict.Largest)}";
    }

    private IEnumerable<string> Remarks(ReachSetup setup)
    {
        if (setup.HoldsAgain) yield return "holds again beyond";
        if (setup.HeldBy.Length > 0) yield return setup.HeldBy;
        if (NutWords.Moves(Varied(setup)) && NutWords.Short(setup.LargestFigures, _read) is { } nut) yield return nut;
        if (LimitWords.NotJudged(result.Limits, setup.LargestFigures, _read) is { } open) yield return open;
    }

    /// <summary>Rows of the table of setups.</summary>
    public List<string[]> Rows() => [.. result.Setups.Select(s => new[]
    {
        s.Request.Title,
        Largest(s),
        s.FirstBroken is { } first ? Broken(first) : "holds throughout",
        string.Join("; ", Remarks(s)),
    })];
}
