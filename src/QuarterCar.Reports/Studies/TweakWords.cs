using System.Collections.Immutable;

using QuarterCar.Reports.Units;
using QuarterCar.Reports.Words;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Scenarios.SpringLists;
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

    /// <summary>The answer; before it what the corner stands on as written where that is not its springs.</summary>
    public string Verdict() => _result.Rest is { } rest ? $"As written the corner {rest}. {Answer()}" : Answer();

    /// <summary>True where the corner as written stands on metal or bound coils.</summary>
    public bool OnMetal => _result.Rest is not null;

    /// <summary>True where <see cref="Cautions.Metal"/> belongs to the answer.</summary>
    public bool MeetsMetal => _result.MeetsMetal;

    private string Answer()
    {
        if (_result.Base is null)
            return $"{Goal.Head} does not apply to this corner";
        // By what is shown: "from 1.52 g to 1.52 g" helps nobody.
        var better = _result.Steps.Where(s => s.Change is { } c && _result.Goal.Better(c, 0) && Goal.Text(s.Goal) != Goal.Text(_result.Base)).ToList();
        var best = better.FirstOrDefault(s => s.Feasible && s.Rest is null && s.LimitsBroken.IsEmpty && (_result.MeetsMetal || !s.MeetsMetal));
        string sound = OnMetal ? "that lifts it off " : better.Count > 0 ? "that can be done, breaks no limit and meets no metal " : "";
        return best is null
            ? $"No single step {sound}betters {Goal.Word}, {Goal.Text(_result.Base)} as written"
            : $"{Capital(best.Step.What)} helps most: {Goal.Word} from {Goal.Text(_result.Base)} to {Goal.Text(best.Goal)}{Still(best)}";
    }

    // What is wrong as written and stays wrong, which no list of changes tells.
    private string Still(TweakOutcome best)
    {
        ImmutableArray<string> limits = best.LimitsStillBroken;
        string broken = limits.IsEmpty ? "" : $"the {LimitWords.On(limits, _read)} {(limits.Length == 1 ? "is" : "are")} still broken";
        string metal = best.MeetsMetal ? "it still meets metal or binds its coils" : "";
        string[] wrong = [.. new[] { metal, broken }.Where(w => w.Length > 0)];
        return wrong.Length == 0 ? "" : "; " + string.Join(", and ", wrong);
    }

    /// <summary>What the table shows.</summary>
    public string Heading() => $"Steps, best first: {Goal.Word} ({Goal.Text(_result.Base)} as written), its change, changes of ride height and of bind clearance at full bump";

    /// <summary>Heads of the table.</summary>
    public string[] Heads() => ["", Goal.Unit.Length == 0 ? "goal" : Goal.Unit, "change", "ride, " + Length, "bind, " + Length];

    /// <summary>Rows, best first.</summary>
    public List<string[]> Rows() => [.. _result.Steps.Select(s => new[]
    {
        s.Step.What + (s.Step.UnderLoad ? " †" : "") + (s.Feasible ? "" : " *"), Goal.Number(s.Goal), s.EventChanges.IsEmpty ? Goal.Change(s.Change) : Jump, Effect(s, "static.ride_height_m"), Effect(s, "static.bind_clearance_full_bump_m"),
    })];

    /// <summary>Head of the remarks.</summary>
    public const string RemarksHead = "Springs of the steps; what appears, vanishes or breaks";

    /// <summary>Remarks below the table: which steps lift the corner off metal where it stands on it, the spring of a step, what appears, vanishes, breaks or cannot be done.</summary>
    public IEnumerable<string> Remarks()
    {
        if (OnMetal)
        {
            string[] lifting = [.. _result.Steps.Where(s => s.Ran && s.Rest is null).Select(s => s.Step.What)];
            yield return lifting.Length == 0 ? "No step lifts the corner off." : $"The corner is lifted off by {string.Join("; ", lifting)}; by no other step.";
        }

        foreach (TweakOutcome s in _result.Steps)
        {
            var parts = Spring(s).Concat(Nut(s)).Concat(s.EventChanges.Select(e => e.After == 0 ? $"{EventWords.Of(e.Event)} vanishes" : $"{EventWords.Of(e.Event)} appears, {EventWords.Times(e.After)}"))
                .Concat(s.LimitsBroken.Select(l => "breaks the limit on " + new FigureScale(l, _read).Word)).ToList();
            if (s.Reason is { } reason)
                parts.Add("* cannot be done as it stands: " + reason);
            if (parts.Count > 0)
                yield return $"{Capital(s.Step.What)}: {string.Join("; ", parts)}.";
        }
    }

    /// <summary>True where a step touches springs under load.</summary>
    public bool UnderLoad => _result.Steps.Any(s => s.Step.UnderLoad);

    /// <summary>Stands in place of a change that is no slope.</summary>
    private const string Jump = "no slope";

    /// <summary>Says what the marks in the table mean; empty without marks.</summary>
    /// <param name="caution">About springs and gas, or where it stands.</param>
    public IEnumerable<string> Marks(string caution)
    {
        if (_result.Steps.Any(s => !s.EventChanges.IsEmpty))
            yield return $"{char.ToUpperInvariant(Jump[0])}{Jump[1..]}: a contact or a change of rate appears or vanishes with this step, so that half of it is not half the effect.";
        if (UnderLoad)
            yield return "† Wrench on springs or gas under load. " + char.ToUpperInvariant(caution[0]) + caution[1..];
        if (_result.Invented)
            yield return InventedSprings.Caution;
    }

    private IEnumerable<string> Spring(TweakOutcome s)
    {
        if (s.Step.Spring is not { } spring)
            yield break;
        yield return $"{_read.Text(Dimension.Length, spring.FreeLength)} free, {_read.Text(Dimension.Length, spring.SolidLength)} solid";
        foreach ((string name, double change) in s.SideEffects.Where(e => e.Key == "fit.nut_from_top_m" && Math.Abs(e.Value) > 1e-6))
            yield return $"coil nut {_read.Text(Dimension.Length, Math.Abs(change))} further {(change > 0 ? "down" : "up")} its thread";
        foreach ((string name, double change) in s.SideEffects.Where(e => e.Key == "fit.radial_clearance_m" && Math.Abs(e.Value) > 1e-6))
            yield return $"clearance over the body {new FigureScale("static.ride_height_m", _read).Change(change)} {Length}";
    }

    private IEnumerable<string> Nut(TweakOutcome s)
    {
        if (s.Nut == NutRule.Reset && (s.Step.Spring is not null || s.Step.Path == "coilover.preload"))
            yield return "stop nut set anew to the gap as written";
        foreach ((string name, double change) in s.SideEffects.Where(e => s.Nut == NutRule.Stays && s.Step.Path == "coilover.preload" && e.Key == "static.stop_nut_gap_ride_height_m" && Math.Abs(e.Value) > 1e-4))
            yield return $"the stop nut stays, so that its gap at ride height is {_read.Text(Dimension.Length, Math.Abs(change))} {(change > 0 ? "larger" : "smaller")}";
    }

    private string Length => _read.Unit(Dimension.Length).Name;

    private string Effect(TweakOutcome step, string name) =>
        step.SideEffects.Where(e => e.Key == name).Select(e => new FigureScale(name, _read).Change(e.Value)).FirstOrDefault(Readable.None);

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
