using QuarterCar.Reports.Units;
using QuarterCar.Reports.Words;
using QuarterCar.Studies.Sweeps;

namespace QuarterCar.Reports.Studies;

/// <summary>A tweak's answer in sentences and rows.</summary>
internal sealed class TweakWords
{
    private readonly TweakResult _result;
    private readonly Readable _read;

    public TweakWords(TweakResult result)
    {
        (_result, _read) = (result, new Readable(result.Scenario.Units));
        Goal = new FigureScale(result.Goal.Figure, _read);
    }

    /// <summary>The goal's figure.</summary>
    public FigureScale Goal { get; }

    /// <summary>The answer.</summary>
    public string Verdict()
    {
        var best = _result.Steps.FirstOrDefault(s => s.Feasible && s.LimitsBroken.IsEmpty && s.Change is { } c && _result.Goal.Better(c, 0));
        return best is null
            ? $"No single step betters {Goal.Word}, {Goal.Text(_result.Base)} as written"
            : $"{Capital(best.Step.What)} helps most: {Goal.Word} from {Goal.Text(_result.Base)} to {Goal.Text(best.Goal)}";
    }

    /// <summary>What the table shows.</summary>
    public string Heading() => $"Steps, best first: {Goal.Word} ({Goal.Text(_result.Base)} as written), its change, changes of ride height and of bind clearance at full bump";

    /// <summary>Heads of the table.</summary>
    public string[] Heads() => ["", Goal.Unit.Length == 0 ? "goal" : Goal.Unit, "change", "ride, " + Length, "bind, " + Length];

    /// <summary>Rows, best first.</summary>
    public List<string[]> Rows() => [.. _result.Steps.Select(s => new[]
    {
        s.Step.What + (s.Feasible ? "" : " *"), Goal.Number(s.Goal), Goal.Change(s.Change), Effect(s, "static.ride_height_m"), Effect(s, "static.bind_clearance_full_bump_m"),
    })];

    /// <summary>Remarks below the table: what appears, vanishes, breaks or cannot be done.</summary>
    public IEnumerable<string> Remarks()
    {
        foreach (TweakOutcome s in _result.Steps)
        {
            var parts = s.EventChanges.Select(e => e.After == 0 ? $"{EventWords.Of(e.Event)} vanishes" : $"{EventWords.Of(e.Event)} appears, {EventWords.Times(e.After)}")
                .Concat(s.LimitsBroken.Select(l => "breaks the limit on " + new FigureScale(l, _read).Word)).ToList();
            if (s.Reason is { } reason)
                parts.Add("* cannot be done as it stands: " + reason);
            if (parts.Count > 0)
                yield return $"{Capital(s.Step.What)}: {string.Join("; ", parts)}.";
        }
    }

    /// <summary>True where a step touches springs under load.</summary>
    public bool UnderLoad => _result.Steps.Any(s => s.Step.UnderLoad);

    private string Length => _read.Unit(Dimension.Length).Name;

    private string Effect(TweakOutcome step, string name) => step.Goal is null ? Readable.None
        : step.SideEffects.Where(e => e.Key == name).Select(e => new FigureScale(name, _read).Change(e.Value)).FirstOrDefault(Readable.None);

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
